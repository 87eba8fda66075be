import { dxfFile } from '../../../src/drawing/dxf/dxf-file.ts'
import { sheetsDxf } from '../../../src/drawing/dxf/sheet-dxf.ts'
import { composeSheets } from '../../../src/drawing/plan/compose.ts'
import type { SheetPlan } from '../../../src/drawing/plan/sheet-plan.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import type { HeadDesign } from '../../../src/families/fly-cutter-head/design.ts'
import { drawingFont } from '../../drawing/drawing-font.ts'
import { sheetFactsOf } from '../../families/sheet-facts.ts'

/** One drawing of a head as its DXF file, without the time that all the others take. */
export function dxfOf(design: HeadDesign, plan: SheetPlan): string {
  const made = composeSheets([plan], design.parameters.drawing.sheet, sheetFactsOf(design), styleOf(), drawingFont())
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return dxfFile(sheetsDxf(made.value[0]!.sheets, styleOf(), design.units))
}

import { expect, it } from 'vitest'
import { composeSheets } from '../../../src/drawing/plan/compose.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import { assemblyDimensions } from '../../../src/families/fly-cutter-head/assembly-dimensions.ts'
import { setUpDimensions } from '../../../src/families/fly-cutter-head/set-up-dimensions.ts'
import { assemblySheet } from '../../../src/families/fly-cutter-head/sheets/assembly-sheet.ts'
import { orderSheet } from '../../../src/families/fly-cutter-head/sheets/order-sheet.ts'
import { setUpSheet } from '../../../src/families/fly-cutter-head/sheets/set-up-sheet.ts'
import { drawingFont } from '../../drawing/drawing-font.ts'
import { sheetFaults } from '../../drawing/sheet-faults.ts'
import { forRandomHeads } from '../random-heads.ts'
import { sheetFactsOf } from '../sheet-facts.ts'

const font = drawingFont()
const style = styleOf()
/** 400 where the whole width of the family is wanted: `HEADS=400`. */
const heads = Number(process.env.HEADS ?? 40)

it('assembly, order of work and set-ups of random heads are whole and clear, in any unit, on any paper, either way', () => {
  const seen = new Set<string>()
  forRandomHeads(
    heads,
    (design) => {
      const { sheet, projection, 'shown-in': shownIn } = design.parameters.drawing
      for (const kind of [sheet, projection, shownIn, design.units]) seen.add(kind)
      const plans = [assemblySheet(design, style), orderSheet(design), setUpSheet(design, style)]
      const made = composeSheets(plans, sheet, sheetFactsOf(design), style, font)
      if (!made.ok) throw new Error(JSON.stringify(made.problems))
      const sheets = made.value.flatMap((d) => d.sheets)
      const shown = sheets.flatMap((s) => s.views.flatMap((v) => v.dimensions.map((d) => d.request.id)))
      const named = [...assemblyDimensions(design), ...setUpDimensions(design)].map((d) => d.id)
      expect(shown.filter((id) => !id.includes('@')).sort()).toEqual(named.sort())
      expect(sheets.flatMap((s) => sheetFaults(font, s))).toEqual([])
    },
    20261128,
  )
  const kinds = 'A3 A4 both file-units first-angle in letter mm tabloid third-angle'
  expect([...seen].sort().join(' ')).toBe(kinds)
})

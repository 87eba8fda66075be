import type { SheetFacts } from '../../src/drawing/plan/compose.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'

/** What the sheets of a head say alike, for a test that composes some of them. */
export function sheetFactsOf({ parameters: { title, drawing }, units }: HeadDesign): SheetFacts {
  const shown = drawing['shown-in']
  return {
    title,
    drawingNumber: '–',
    units: shown === 'both' ? `${units} [${units === 'mm' ? 'in' : 'mm'}]` : shown === 'file-units' ? units : shown,
    generalTolerance: 'ISO 2768-m',
    revision: 'a1b2c3d4',
    projection: drawing.projection === 'first-angle' ? 'first angle' : 'third angle',
  }
}

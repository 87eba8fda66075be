import type { SheetFacts } from '../../src/drawing/plan/compose.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'

/** What the sheets of a head say alike, for a test that composes some of them. */
export const sheetFactsOf = ({ parameters, units }: HeadDesign): SheetFacts => ({
  title: parameters.title,
  drawingNumber: '–',
  units,
  generalTolerance: 'ISO 2768-m',
  revision: 'a1b2c3d4',
  projection: 'first angle',
})

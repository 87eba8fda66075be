import type { DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { sheetUnits } from '../words.ts'
import { letters } from './body-views.ts'

/** Bare lengths for a readout, to its usual last digit; the other unit beside them where the sheets show both. */
export function readout(design: HeadDesign, value: number): string {
  const { units, both } = sheetUnits(design)
  const other = units === 'mm' ? 'in' : 'mm'
  return both === true ? `${readoutIn(value, units)} [${readoutIn(value, other)}]` : readoutIn(value, units)
}

/** The same in one unit. */
export const readoutIn = (value: number, unit: 'mm' | 'in'): string =>
  formatNumber(unit === 'mm' ? value : value / 25.4, unit === 'mm' ? 2 : 4).replace('-', '−')

/**
 * Readout coordinates: of slot, step and screws at the tilt, zeroed on O, X down the slope to the bit side, Y as in the
 * true-size view, Z into the metal; and of the screw holes with the step up and level. `axes`: where X and Y are shown.
 */
export function bodyCoordinates(design: HeadDesign, axes = `by the arrows of view ${letters.face}`): DrawnTable[] {
  const { layout: l } = design
  const { slot, step, screws } = l
  const { units, both } = sheetUnits(design)
  const unit = both === true ? `${units} [${units === 'mm' ? 'in' : 'mm'}]` : units
  const at = (value: number) => readout(design, value)
  const middle = (slot.leading + slot.trailing) / 2
  const row = (name: string, x: number | undefined, y: number | undefined, z: number) => [
    name,
    x === undefined ? '' : at(x),
    y === undefined ? '' : at(y),
    at(z),
  ]
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const laid = screws.xs.map((x): Vec3 => pointFrom(face, [x, step.wall, screws.height]))
  return [
    {
      kind: 'table',
      title: `At the tilt, face up (${unit}): zero on O, X and Y ${axes}, Z down into the metal`,
      columns: ['', 'X', 'Y', 'Z'],
      rows: [
        row('O, bore axis at the face', 0, 0, 0),
        row('slot, leading wall', undefined, slot.leading, slot.depth),
        row('slot, middle', undefined, middle, slot.depth),
        row('slot, trailing wall', undefined, slot.trailing, slot.depth),
        ...(slot.end ? [row('slot, deepest point of its end', slot.end.x, middle, slot.depth)] : []),
        row('step, wall', undefined, step.wall, step.depth),
        ...screws.xs.map((x, i) => row(`screw ${i + 1}, axis`, x, undefined, screws.height)),
      ],
    },
    {
      kind: 'table',
      title: `Screw holes, step up and level (${unit}): drilled square to C`,
      columns: ['', 'from A', 'from B, + to the bit', 'drilled face above C'],
      rows: laid.map(([x, y, z], i) => [`screw ${i + 1}`, at(-z), at(x), at(step.towards * y)]),
    },
  ]
}

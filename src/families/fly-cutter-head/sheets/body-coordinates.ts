import type { DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { sheetUnits } from './sizes.ts'

/** Bare lengths for a readout, to its usual last digit. */
export function readout(design: HeadDesign, value: number): string {
  const { units } = sheetUnits(design)
  const text = formatNumber(units === 'mm' ? value : value / 25.4, units === 'mm' ? 2 : 4)
  return text.replace('-', '−')
}

/**
 * Readout coordinates: of slot, step and screws at the tilt, zeroed on O, X down the slope to the bit side, Y in the
 * direction of motion at the bit, Z into the metal; and of the screw holes in the set-up on the flat.
 */
export function bodyCoordinates(design: HeadDesign): DrawnTable[] {
  const { layout: l } = design
  const { slot, step, screws } = l
  const { units } = sheetUnits(design)
  const at = (value: number) => readout(design, value)
  const middle = (slot.leading + slot.trailing) / 2
  const row = (name: string, x: number | undefined, y: number | undefined, z: number) => [
    name,
    x === undefined ? '' : at(x),
    y === undefined ? '' : at(y),
    at(z),
  ]
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const laid = screws.xs.map((x): Vec3 => pointFrom(face, [x, screws.seat, screws.height]))
  return [
    {
      kind: 'table',
      title: `At the tilt, zero at O (${units}): X down the slope to the bit, Y as the plan of the head, Z into the metal`,
      columns: ['', 'X', 'Y', 'Z'],
      rows: [
        row('O, bore axis at the face', 0, 0, 0),
        row('slot, middle', undefined, middle, slot.depth),
        row('slot, leading wall', undefined, slot.leading, slot.depth),
        row('slot, trailing wall', undefined, slot.trailing, slot.depth),
        ...(slot.end ? [row('slot, deepest point of its end', slot.end.x, middle, slot.depth)] : []),
        row('step, wall', undefined, step.wall, step.depth),
        ...screws.xs.map((x, i) => row(`screw ${i + 1}, axis`, x, undefined, screws.height)),
      ],
    },
    {
      kind: 'table',
      title: `Laid on the flat, step up (${units}): zero at datum A and bore axis B`,
      columns: ['', 'from A', 'from B to the bit side'],
      rows: laid.map(([x, , z], i) => [`screw ${i + 1}`, at(-z), at(x)]),
    },
  ]
}

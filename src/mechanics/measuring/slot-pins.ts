import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * The picture of this file, a section square to a slot with upright walls and a flat floor. Two pins lie along it: the lower on the floor
 * against one wall, the upper against the other wall and on the lower. Their middles are (d₁ + d₂)/2 = s apart, w − s across and so
 * √(s² − (w − s)²) up; the top of the upper pin is H = s + √(s² − (w − s)²) above the floor. That holds while the upper pin does not reach the floor:
 * each pin thinner than the slot, both together thicker.
 */
interface SlotPins {
  /** Diameters, mm; which lies below does not matter. */
  readonly first: number
  readonly second: number
}

/** Top of the upper pin above the floor, mm, in a slot of a width. Problems: pins above 0 that do not lie one on the other in it. */
export function heightOverSlotPins({ first, second, width }: SlotPins & { readonly width: number }): Result<number> {
  const faults = pinFaults({ first, second })
  if (faults.problems.length === 0) {
    const bounds = { above: Math.max(first, second), below: first + second }
    faults.keeps('width', width, 'length', bounds)
  }
  return faults.result(() => {
    const s = (first + second) / 2
    return s + Math.sqrt(s * s - (width - s) ** 2)
  })
}

/**
 * Width of a slot, mm, from two pins in it: w = s + √(s² − (H − s)²), H = depth − reading. `depth` is that of the floor below
 * the face beside the slot, `reading` how far the upper pin's top lies below that face (negative: it stands proud). With q = w − s: slopes
 * reading (H − s)/q, depth −(H − s)/q, each pin (1 + H/q)/2. The flatter the pins' middles lie, the less the reading's error counts: see `idealSlotPin`.
 *
 * Problems: pins that are not above 0, and a height at which the upper pin cannot lie on the lower against the wall.
 */
export function widthFromSlotPins({
  first,
  second,
  depth,
  reading,
}: SlotPins & { readonly depth: number; readonly reading: number }): Result<
  Measured<'reading' | 'depth' | 'first' | 'second'>
> {
  const faults = pinFaults({ first, second })
  faults.keeps('depth', depth, 'length', { above: 0 })
  const s = (first + second) / 2
  // At this height both middles are as far across as the thicker pin still lets them be.
  const highest = s + Math.sqrt(Math.max(0, s * s - (Math.max(first, second) - s) ** 2))
  if (faults.problems.length === 0) {
    faults.keeps('reading', reading, 'length', { above: depth - highest, below: depth - s })
  }
  return faults.result(() => {
    const height = depth - reading
    const across = Math.sqrt(s * s - (height - s) ** 2)
    const perHeight = -(height - s) / across
    const perPin = (1 + height / across) / 2
    return {
      size: s + across,
      slopes: { reading: -perHeight, depth: perHeight, first: perPin, second: perPin },
    }
  })
}

/**
 * Diameter, mm, of two equal pins for a slot of a width (mm, above 0): their middles then lie 30° above the floor, so that an error of the
 * reading counts tan 30°, little over half (the 30° are a rule of thumb). d = w/(1 + cos 30°). Throws RangeError on a width that is not above 0.
 */
export function idealSlotPin(width: number): number {
  if (!(width > 0)) throw new RangeError(`a slot of ${width} mm`)
  return width / (1 + Math.cos(Math.PI / 6))
}

/**
 * Depth of a slot, mm, from one pin or block on its floor: thickness less how far it stands above the face beside the slot (`reading`, negative:
 * it lies below). Problems: a pin that is not above 0, a reading as large as the pin (no slot).
 */
export function depthFromSlotPin({
  pin,
  reading,
}: {
  readonly pin: number
  readonly reading: number
}): Result<Measured<'pin' | 'reading'>> {
  const faults = new InputFaults()
  if (faults.keeps('pin', pin, 'length', { above: 0 })) faults.keeps('reading', reading, 'length', { below: pin })
  return faults.result(() => ({ size: pin - reading, slopes: { pin: 1, reading: -1 } }))
}

/**
 * Width of a slot, mm, from parallels, blocks and pins side by side between its walls: it lies from the sum of what goes in to the sum of
 * what does not. Problems: pieces that are not above 0, a no-go sum that is not above the go sum.
 */
export function widthFromFilling(
  goes: readonly number[],
  doesNot: readonly number[],
): Result<{ readonly low: number; readonly high: number }> {
  const faults = new InputFaults()
  const sum = (path: string, pieces: readonly number[]) => {
    for (const [i, piece] of pieces.entries()) faults.keeps(`${path}.${i}`, piece, 'length', { above: 0 })
    return pieces.reduce((total, piece) => total + piece, 0)
  }
  const [low, high] = [sum('goes', goes), sum('doesNot', doesNot)]
  faults.keeps('doesNot', high, 'length', { above: low })
  return faults.result(() => ({ low, high }))
}

function pinFaults({ first, second }: SlotPins): InputFaults {
  const faults = new InputFaults()
  faults.keeps('first', first, 'length', { above: 0 })
  faults.keeps('second', second, 'length', { above: 0 })
  return faults
}

import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * The picture of this file, a section square to the pin: the work stands on a surface plate, heights count up from it. A wall
 * stands upright, such as a block held against a flat of the work. The face begins at the wall and rises away from it by `angle` (rad, between −π/2 and
 * π/2; negative: falls away, so that the corner is wider than square). The pin, or a ball, lies in the corner and touches both. With r its radius, the
 * middle lies r from the wall and r from the face: height above the face's own at the wall r·tan a + r/cos a, and half-angle
 * formulas make that r·tan(45° + a/2). Its top is r higher.
 *
 * The high side of an angled face is reached in the same way with a negative angle, where the pin has to be held.
 */
interface Corner {
  /** Diameter of the pin, mm, above 0. */
  readonly pin: number
  /** Of the face, rad, between −π/2 and π/2; positive rises away from the wall. */
  readonly angle: number
}

/** tan a + 1/cos a. */
const lift = (angle: number): number => Math.tan(Math.PI / 4 + angle / 2)

/**
 * Where the pin touches, mm from the corner, both along the face and up the wall (tangents from one point are equal): r·tan(45° + a/2).
 * The face must be that long and the wall that high. Throws RangeError outside the ranges of the corner.
 */
export function cornerContact({ pin, angle }: Corner): number {
  requireCorner({ pin, angle })
  return (pin / 2) * lift(angle)
}

/** Diameter, mm, of the pin that touches the face at its middle, when so much of it (mm, above 0) is free beside the wall. */
export function idealCornerPin(freeLength: number, angle: number): number {
  requireCorner({ pin: freeLength, angle })
  return freeLength / lift(angle)
}

/** What a height gauge shows over the pin, mm, when the face's plane is `corner` mm high at the wall. RangeError as `cornerContact`. */
export function heightOverCornerPin({ pin, angle, corner }: Corner & { readonly corner: number }): number {
  requireCorner({ pin, angle })
  return corner + (pin / 2) * (1 + lift(angle))
}

/**
 * Height of the face's plane at a distance from the wall (mm, 0 at the wall; half the size across flats for the axis), from the height
 * over a pin in the corner. With r = pin/2 and k = tan(45° + a/2): H = reading − r(1 + k) + s·tan a. Slopes: reading 1, pin −(1 + k)/2, angle
 * (s − r(1 + sin a))/cos² a, distance tan a.
 *
 * Problems: a pin that is not above 0 mm, an angle of 90° or more either way, a reading below the pin's own diameter (a corner below the plate).
 */
export function heightFromCornerPin({
  reading,
  pin,
  angle,
  distance,
}: Corner & { readonly reading: number; readonly distance: number }): Result<
  Measured<'reading' | 'pin' | 'angle' | 'distance'>
> {
  const faults = new InputFaults()
  faults.keeps('distance', distance, 'length', {})
  const whole = faults.keeps('pin', pin, 'length', { above: 0 })
  if (faults.keeps('angle', angle, 'angle', { above: -Math.PI / 2, below: Math.PI / 2 }) && whole) {
    faults.keeps('reading', reading, 'length', { min: (pin / 2) * (1 + lift(angle)) })
  }
  return faults.result(() => {
    const [r, k] = [pin / 2, lift(angle)]
    return {
      size: reading - r * (1 + k) + distance * Math.tan(angle),
      slopes: {
        reading: 1,
        pin: -(1 + k) / 2,
        angle: (distance - r * (1 + Math.sin(angle))) / Math.cos(angle) ** 2,
        distance: Math.tan(angle),
      },
    }
  })
}

/**
 * Angle of the face, rad, from the heights over two pins of different diameter, one after the other in the same corner. The heights differ by
 * (r₁ − r₂)(1 + k), so k = (M₁ − M₂)/(r₁ − r₂) − 1 and a = 2·atan k − 90°: neither the height of the corner nor the length of the work is needed. da =
 * 2·dk/(1 + k²). The more the pins differ, the less a reading's error counts. Readings and diameters in mm; which one is large does not matter.
 *
 * Problems: diameters that are not above 0 or are equal, readings whose difference no corner makes (k ≤ 0).
 */
export function angleFromCornerPins(
  first: { readonly reading: number; readonly pin: number },
  second: { readonly reading: number; readonly pin: number },
): Result<Measured<'firstReading' | 'secondReading' | 'firstPin' | 'secondPin'>> {
  const faults = new InputFaults()
  faults.keeps('first.reading', first.reading, 'length', {})
  faults.keeps('second.reading', second.reading, 'length', {})
  const whole = [
    faults.keeps('first.pin', first.pin, 'length', { above: 0 }),
    faults.keeps('second.pin', second.pin, 'length', { above: 0 }),
  ].every((kept) => kept)
  const radii = (first.pin - second.pin) / 2
  const rise = first.reading - second.reading
  const k = rise / radii - 1
  if (whole && radii === 0) {
    faults.add(
      'second.pin',
      'contradiction',
      'the same pin twice',
      'a pin of another diameter',
      'take a pin half as thick',
    )
  } else if (whole && !(k > 0)) {
    faults.add(
      'second.reading',
      'contradiction',
      'heights that differ by less than the radii of the pins',
      'heights over two pins that both lie in the corner',
      'see whether a pin rests on the edge of the wall or on a burr',
    )
  }
  return faults.result(() => {
    const perK = 2 / (1 + k * k)
    const perReading = perK / radii
    const perDiameter = (perK * rise) / (2 * radii * radii)
    return {
      size: 2 * Math.atan(k) - Math.PI / 2,
      slopes: {
        firstReading: perReading,
        secondReading: -perReading,
        firstPin: -perDiameter,
        secondPin: perDiameter,
      },
    }
  })
}

function requireCorner({ pin, angle }: Corner): void {
  if (!(pin > 0 && Math.abs(angle) < Math.PI / 2))
    throw new RangeError(`a pin of ${pin} mm in a corner of ${angle} rad`)
}

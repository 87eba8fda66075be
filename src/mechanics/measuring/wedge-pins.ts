import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * The picture of this file: two pins or discs of different diameter, a gap between them (blocks; 0 where they touch), and two straight
 * edges laid along both. The line of the middles halves the wedge, and a perpendicular from the small middle on the radius of the large one
 * gives sin(α/2) = (D − d)/2 ÷ C with C = gap + (D + d)/2. It measures a wedge, or sets an angle like a sine bar.
 */
interface WedgePins {
  /** Diameters, mm: `large` above `small` above 0. */
  readonly large: number
  readonly small: number
}

/**
 * Included angle, rad, of the edges along two pins a gap (mm, 0 or more) apart. With S = (D − d)/2 and N = √(C² − S²), dα =
 * 2(dS − (S/C)·dC)/N: slopes large (1 − S/C)/N, small −(1 + S/C)/N, gap −2(S/C)/N. Problems: pins that are not above 0 or not of different
 * diameter, a negative gap.
 */
export function angleFromWedgePins({
  large,
  small,
  gap,
}: WedgePins & { readonly gap: number }): Result<Measured<'large' | 'small' | 'gap'>> {
  const faults = new InputFaults()
  if (faults.keeps('small', small, 'length', { above: 0 })) faults.keeps('large', large, 'length', { above: small })
  faults.keeps('gap', gap, 'length', { min: 0 })
  return faults.result(() => {
    const half = (large - small) / 2
    const centres = gap + (large + small) / 2
    const along = Math.sqrt(centres * centres - half * half)
    const sin = half / centres
    return {
      size: 2 * Math.asin(sin),
      slopes: { large: (1 - sin) / along, small: (-1 - sin) / along, gap: (-2 * sin) / along },
    }
  })
}

/**
 * Gap, mm, between two pins whose edges are to include an angle (rad, above 0, below π): (D − d)/(2·sin(α/2)) − (D + d)/2. Problems: pins
 * as in `angleFromWedgePins`, an angle that even touching pins do not reach.
 */
export function gapForWedge({ large, small, angle }: WedgePins & { readonly angle: number }): Result<number> {
  const faults = new InputFaults()
  const whole =
    faults.keeps('small', small, 'length', { above: 0 }) && faults.keeps('large', large, 'length', { above: small })
  if (whole) {
    const steepest = 2 * Math.asin((large - small) / (large + small))
    faults.keeps('angle', angle, 'angle', { above: 0, max: steepest })
  }
  return faults.result(() => Math.max(0, (large - small) / 2 / Math.sin(angle / 2) - (large + small) / 2))
}

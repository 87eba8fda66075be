import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * How far a face is from level, rad, when an indicator rises by `rise` (mm, negative: falls) over a `travel` of the table (mm,
 * above 0): tan θ = rise/travel. Added to the angle that a sine bar under the work makes, it is the face's own angle. Slopes: dθ/d rise = cos²θ/travel,
 * dθ/d travel = −sin θ·cos θ/travel. Problems: a travel that is not above 0.
 */
export function indicatorAngle(rise: number, travel: number): Result<Measured<'rise' | 'travel'>> {
  const faults = new InputFaults()
  faults.keeps('rise', rise, 'length', {})
  faults.keeps('travel', travel, 'length', { above: 0 })
  return faults.result(() => {
    const angle = Math.atan2(rise, travel)
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
    return { size: angle, slopes: { rise: (cos * cos) / travel, travel: (-sin * cos) / travel } }
  })
}

import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * Angle (rad) that a stack under one roller of a sine bar makes, with what errors of stack and centre distance do to it. The
 * bar is the hypotenuse, the stack the height: sin θ = H/L, so dθ = dH/(L·cos θ) − (tan θ/L)·dL. The slopes grow without end towards 90°: up
 * to 45° an error counts less than one and a half times as on the level (common practice: set the complement beyond).
 *
 * Problems: a bar that is not above 0 mm, a stack below 0 or as long as the bar.
 */
export function sineBarReading(bar: number, height: number): Result<Measured<'height' | 'bar'>> {
  const faults = new InputFaults()
  if (faults.keeps('bar', bar, 'length', { above: 0 })) faults.keeps('height', height, 'length', { min: 0, below: bar })
  return faults.result(() => {
    const angle = Math.asin(height / bar)
    return { size: angle, slopes: { height: 1 / (bar * Math.cos(angle)), bar: -Math.tan(angle) / bar } }
  })
}

import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { angleProblem, inWords } from './angle-problem.ts'
import type { GroundFacets } from './facets.ts'
import { type BitBlank, groundBit } from './ground-bit.ts'
import { heelOf } from './heel.ts'
import { type TipSetting, tipOf } from './tip-setting.ts'

/** The relief at which the heel just runs on the tip's circle. rad. */
export interface LeastRelief {
  /** α_f, against the tangent at the tip. */
  readonly inUse: number
  /** End relief to grind. */
  readonly asGround: number
}

/**
 * Least relief of the end flank that lets the heel through, at the height of the tip: the chord from tip to heel makes
 * half the arc between them with the tangent, so α_f = ½·(asin((e − g)/R) + asin((w − e)/R)), ½·asin(w/R) at e = g = 0.
 * On the bit that is (cos a + tan ε·sin a)·(P_x − √(R² − (w − e)²))/(w − g) as the tangent of the end relief, for face
 * angle a, end edge angle ε, e ahead of centre, g off the leading face. `width` w of the bit in mm, > g.
 *
 * Problem `out-of-range`: a bit so wide that its trailing side lies outside the tip's circle. Throws RangeError where
 * `width` is not above what is ground off, or the end edge angle puts the end flank's edge upside down.
 */
export function leastEndReliefAtTip(setting: TipSetting, width: number, endEdgeAngle: number): Result<LeastRelief> {
  const tip = tipOf(setting)
  if (!(width > setting.groundOffLeading)) throw new RangeError(`width: ${width} mm is all ground off`)
  const slope = Math.cos(setting.faceAngle) + Math.tan(endEdgeAngle) * Math.sin(setting.faceAngle)
  if (!(slope > 0)) throw new RangeError(`end edge angle: ${endEdgeAngle} rad turns the edge upside down`)
  const behind = width - setting.ahead
  if (Math.abs(behind) >= tip.radius) {
    const problem = angleProblem(
      'width',
      'out-of-range',
      `a trailing side ${formatLength(behind, 'mm')} behind the axis`,
      `less than the tip's radius ${formatLength(tip.radius, 'mm')}`,
    )
    return { ok: false, problems: [problem] }
  }
  const inUse = (tip.lead + Math.asin(behind / tip.radius)) / 2
  return { ok: true, value: { inUse, asGround: Math.atan(slope * Math.tan(inUse - tip.lead)) } }
}

/**
 * Least end relief to grind, rad, 0 at least, with which the exact bit clears by `margin` (mm, ≥ 0) everywhere behind
 * its end edge within the depth of cut; every other angle stays as it is. To 1e-12 rad.
 *
 * Problem `contradiction` where no relief up to 60° clears, and the problems of `groundBit` and `heelOf`.
 */
export function leastEndRelief(
  blank: BitBlank,
  facets: Omit<GroundFacets, 'endRelief'>,
  setting: TipSetting,
  depthOfCut: number,
  margin = 0,
): Result<number> {
  const clears = (endRelief: number): Result<boolean> => {
    const bit = groundBit(blank, { ...facets, endRelief }, setting)
    const heel = bit.ok ? heelOf(bit.value, depthOfCut) : bit
    return heel.ok ? { ok: true, value: heel.value.end.clearance >= margin } : heel
  }
  let low = 0
  let high = 0
  for (;;) {
    const tried = clears(high)
    if (!tried.ok) return tried
    if (tried.value) break
    low = high
    high += step
    if (high > most + step / 2) {
      const problem = angleProblem(
        'facets.endRelief',
        'contradiction',
        `no end relief up to ${inWords(most)} that clears`,
        'a narrower bit, a larger swing or a smaller depth of cut',
      )
      return { ok: false, problems: [problem] }
    }
  }
  while (high - low > 1e-12) {
    const middle = (low + high) / 2
    const tried = clears(middle)
    if (!tried.ok) return tried
    if (tried.value) high = middle
    else low = middle
  }
  return { ok: true, value: high }
}

const step = Math.PI / 180
const most = Math.PI / 3

import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'
import type { Radial } from './static-balance.ts'

export interface LessOverhangInput {
  /** Unbalance at the present setting, kg·mm, x and y of the body frame; the bit reaches along +X. */
  readonly unbalance: Radial
  /** What may remain, kg·mm, at least 0. */
  readonly aim: number
  /** Of the bit, kg, above 0. */
  readonly bitMass: number
  /** Tilt of the face that the bit slides along, rad, 0 to below π/2. */
  readonly faceAngle: number
  /** How far the bit can go in, mm, at least 0. */
  readonly most: number
}

export interface LessOverhang {
  /** `reaches`: no more than the aim remains. `cannot`: the setting with the least unbalance within reach. */
  readonly kind: 'not-needed' | 'reaches' | 'cannot'
  /** How much less the bit stands out, along it, mm. */
  readonly less: number
  /** What then remains, kg·mm. */
  readonly remains: number
}

/**
 * How far to push the bit in so that no more than the aim remains. Sliding in by s moves its centroid by s·cos a against
 * +X and nothing else. The swing gets smaller with it. Problems: a figure outside the ranges of the input.
 */
export function lessOverhang({ unbalance, aim, bitMass, faceAngle, most }: LessOverhangInput): Result<LessOverhang> {
  const problems = outOfRange([
    ['unbalance.0', 'ratio', unbalance[0], {}],
    ['unbalance.1', 'ratio', unbalance[1], {}],
    ['aim', 'ratio', aim, { min: 0 }],
    ['bitMass', 'mass', bitMass, { above: 0 }],
    ['faceAngle', 'angle', faceAngle, { min: 0, below: Math.PI / 2 }],
    ['most', 'length', most, { min: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const [x, y] = unbalance
  const perLength = bitMass * Math.cos(faceAngle)
  const remains = (less: number) => Math.hypot(x - perLength * less, y)
  if (remains(0) <= aim) return { ok: true, value: { kind: 'not-needed', less: 0, remains: remains(0) } }
  const sideways = Math.abs(y)
  const needed = sideways > aim ? Infinity : (x - Math.sqrt((aim - sideways) * (aim + sideways))) / perLength
  if (needed >= 0 && needed <= most) {
    return { ok: true, value: { kind: 'reaches', less: needed, remains: remains(needed) } }
  }
  const best = Math.min(most, Math.max(0, x / perLength))
  return { ok: true, value: { kind: 'cannot', less: best, remains: remains(best) } }
}

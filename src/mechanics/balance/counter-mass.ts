import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'
import type { Radial } from './static-balance.ts'

export interface CounterMassInput {
  /** Unbalance, kg·mm, x and y of the body frame. */
  readonly unbalance: Radial
  /** What may remain, kg·mm, at least 0. */
  readonly aim: number
  /** Where the centroid of the counter-mass can sit, mm from the axis, above 0. */
  readonly radius: number
  /** Of its material, kg/m³, above 0. */
  readonly density: number
}

export interface CounterMass {
  /** kg; 0 where none is needed. */
  readonly mass: number
  /** mm³ of its material. */
  readonly volume: number
  /** Where it belongs, mm, x and y of the body frame: opposite the heavy side. */
  readonly centroid: Radial
}

/** Counter-mass that leaves the aim. Problems: a figure outside the ranges of the input. */
export function counterMass({ unbalance, aim, radius, density }: CounterMassInput): Result<CounterMass> {
  const problems = outOfRange([
    ['unbalance.0', 'ratio', unbalance[0], {}],
    ['unbalance.1', 'ratio', unbalance[1], {}],
    ['aim', 'ratio', aim, { min: 0 }],
    ['radius', 'length', radius, { above: 0 }],
    ['density', 'density', density, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const amount = Math.hypot(...unbalance)
  const mass = Math.max(0, amount - aim) / radius
  const opposite = (part: number) => (amount > 0 ? -radius * (part / amount) : 0)
  return {
    ok: true,
    value: { mass, volume: (mass / density) * 1e9, centroid: [opposite(unbalance[0]), opposite(unbalance[1])] },
  }
}

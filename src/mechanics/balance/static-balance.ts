import type { Vec3 } from '../../geometry/vector.ts'
import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

/** A piece of the turning tool. Metal taken away counts as a negative mass. */
export interface MassItem {
  /** kg */
  readonly mass: number
  /** mm, in a frame whose third axis is the spindle axis. */
  readonly centroid: Vec3
}

/** A direction and size square to the spindle axis: x and y of the body frame. */
export type Radial = readonly [number, number]

export interface StaticBalance {
  /** kg, above 0. */
  readonly mass: number
  /** mm */
  readonly centroid: Vec3
  /** Centroid beside the axis, mm, and how far. */
  readonly offset: Radial
  readonly eccentricity: number
  /** Mass times offset, kg·mm: its direction is the heavy side. One kg·mm is 1000 g·mm. */
  readonly unbalance: Radial
  readonly amount: number
  /** Of the heavy side, rad from +X towards +Y, −π to π; undefined where the tool is in balance. */
  readonly heavySide: number | undefined
}

/**
 * Mass, centroid and static unbalance of pieces put together (first moments add up). Static only: a couple, from masses
 * on opposite sides at different heights, shakes the spindle too and is not seen here. Problem: pieces that weigh
 * nothing together.
 */
export function staticBalance(items: readonly MassItem[]): Result<StaticBalance> {
  const mass = items.reduce((sum, item) => sum + item.mass, 0)
  const moment = [0, 1, 2].map((k) => items.reduce((sum, item) => sum + item.mass * (item.centroid[k] ?? 0), 0))
  const problems = outOfRange([
    ...items.flatMap(({ centroid }, at) =>
      centroid.map((length, k) => [`${at}.centroid.${k}`, 'length', length, {}] as const),
    ),
    ['mass', 'mass', mass, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const [x = 0, y = 0, z = 0] = moment
  const amount = Math.hypot(x, y)
  return {
    ok: true,
    value: {
      mass,
      centroid: [x / mass, y / mass, z / mass],
      offset: [x / mass, y / mass],
      eccentricity: amount / mass,
      unbalance: [x, y],
      amount,
      heavySide: amount > 0 ? Math.atan2(y, x) : undefined,
    },
  }
}

import { Barrier } from './barrier.ts'
import { backSubstitute, factor } from './cholesky.ts'
import type { Surface } from './surface.ts'
import type { Vec3 } from './vector.ts'

/**
 * Small convex programs over points that must stay inside surfaces, by the barrier method (Boyd and Vandenberghe,
 * Convex Optimization, §11.3). One method answers every question about convex cells: how far apart (two points, least
 * distance), how far one reaches (one point, linear goal) and whether they share a point at all (one point, greatest
 * depth). It converges for tangent, parallel and coplanar cases alike and ends with a bound on its own error, which
 * support-function methods do not give.
 */
export interface Program {
  /** Surfaces that hold the first point, and the second where there is one. */
  readonly holds: readonly (readonly Surface[])[]
  readonly goal: 'least-distance' | 'reach' | 'depth'
  /** Unit direction of `reach`. */
  readonly direction?: Vec3
}

export interface Solution {
  /** The moving points, three numbers each; `depth`: the point, then minus the depth (mm, > 0: nothing in common). */
  readonly x: Float64Array
  /** Bound on how far the goal (½·distance² in mm², reach or depth in mm) can still be from its optimum. */
  readonly gap: number
}

/** How much nearer to the optimum each stage goes. */
const growth = 60

/**
 * Solves the program from `start`, which must be strictly inside every surface (for `depth` it may be anywhere).
 * `enough(x, gap)` ends the search; it is asked at points of the central path, with `gap` falling by steps.
 * Throws Error when the start is not inside: a defect of this library, never of the input.
 */
export function solveConvex(
  program: Program,
  start: readonly number[],
  enough: (x: Float64Array, gap: number) => boolean,
): Solution {
  const depth = program.goal === 'depth'
  const n = depth ? 4 : start.length
  const barrier = new Barrier(program.holds, depth)
  const x = new Float64Array(n)
  for (let k = 0; k < start.length; k++) x[k] = start[k]!
  if (depth) x[3] = Math.max(0, -barrier.leastRoom(x)) + 1
  if (barrier.value(x) === Infinity) throw new Error('convex program: the start lies outside')

  const grad = new Float64Array(n)
  const hess = new Float64Array(n * n)
  const step = new Float64Array(n)
  const trial = new Float64Array(n)
  const last = new Float64Array(n)
  let tau = program.goal === 'least-distance' ? barrier.nu / Math.max(goalValue(program, x), 1e-3) : 1

  for (let stage = 0; stage < 60; stage++) {
    for (let round = 0; round < 40; round++) {
      grad.fill(0)
      hess.fill(0)
      addGoal(program, x, tau, grad, hess, n)
      barrier.addDerivatives(x, grad, hess)
      for (let k = 0; k < n; k++) step[k] = -grad[k]!
      factor(hess, n)
      backSubstitute(hess, step, n)
      let decrement = 0
      for (let k = 0; k < n; k++) decrement -= grad[k]! * step[k]!
      // A decrement of a quarter is close enough to the path for the gap to hold within a factor of 4/3.
      if (!(decrement > 0.06)) {
        for (let k = 0; k < n; k++) trial[k] = x[k]! + step[k]!
        if (barrier.value(trial) < Infinity) x.set(trial)
        break
      }
      const before = tau * goalValue(program, x) + barrier.value(x)
      let size = Math.min(1, 0.9 * barrier.reachAlong(x, step))
      for (;;) {
        for (let k = 0; k < n; k++) trial[k] = x[k]! + size * step[k]!
        const after = tau * goalValue(program, trial) + barrier.value(trial)
        if (after <= before - 0.1 * size * decrement) break
        size *= 0.5
        if (size < 1e-9) break
      }
      if (size < 1e-9) break // rounding is all that is left to gain
      x.set(trial)
    }
    const gap = (4 / 3) * (barrier.nu / tau)
    if (enough(x, gap)) return { x, gap }
    // The path runs almost straight in 1/tau: go on along the chord of the last two stages where that stays inside.
    if (stage > 0) {
      for (let k = 0; k < n; k++) trial[k] = x[k]! + (x[k]! - last[k]!) / growth
      last.set(x)
      if (barrier.value(trial) < Infinity) x.set(trial)
    } else last.set(x)
    tau *= growth
  }
  return { x, gap: barrier.nu / tau }
}

function goalValue(program: Program, x: Float64Array): number {
  if (program.goal === 'depth') return x[3]!
  if (program.goal === 'reach') {
    const d = program.direction!
    return -(d[0] * x[0]! + d[1] * x[1]! + d[2] * x[2]!)
  }
  const a = x[0]! - x[3]!
  const b = x[1]! - x[4]!
  const c = x[2]! - x[5]!
  return (a * a + b * b + c * c) / 2
}

function addGoal(
  program: Program,
  x: Float64Array,
  tau: number,
  grad: Float64Array,
  hess: Float64Array,
  n: number,
): void {
  if (program.goal === 'depth') {
    grad[3] = tau
    return
  }
  for (let k = 0; k < 3; k++) {
    if (program.goal === 'reach') {
      grad[k] = -tau * program.direction![k]!
      continue
    }
    const d = tau * (x[k]! - x[k + 3]!)
    grad[k] = d
    grad[k + 3] = -d
    hess[k * n + k] = tau
    hess[(k + 3) * n + k + 3] = tau
    hess[(k + 3) * n + k] = -tau
  }
}

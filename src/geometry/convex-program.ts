import type { Surface } from './surface.ts'
import type { Vec3 } from './vector.ts'

/**
 * Small convex programs over points that must stay inside surfaces, by the barrier method (Boyd and Vandenberghe,
 * Convex Optimization, §11.3) with the self-concordant barriers of the half-space and the circular cone. One method
 * answers every question about convex cells: how far apart (two points, least distance), how far one reaches (one
 * point, linear goal) and whether they share a point at all (one point, greatest depth). It converges for tangent,
 * parallel and coplanar cases alike and ends with a bound on its own error, which support-function methods do not give.
 *
 * Every surface becomes "(level)² − |across|² > 0, level > 0" or "level > 0", where `level` is linear in the point:
 * half-space: level = offset − n·p; cylinder: level = radius, across = part of p − point square to the axis;
 * cone: level = slope·(axis·(p − apex)), across likewise. In a search for depth every level is raised by the slack.
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

const stride = 9 // kind, point index, three of place, three of direction, one of size

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
  const held = flatten(program.holds)
  const m = held.length / stride
  let nu = 0
  for (let i = 0; i < m; i++) nu += held[i * stride] === 0 ? 1 : 2

  const x = new Float64Array(n)
  for (let k = 0; k < start.length; k++) x[k] = start[k]!
  if (depth) x[3] = Math.max(0, -leastLevel(held, m, x)) + 1
  if (barrier(held, m, x, depth) === Infinity) throw new Error('convex program: the start lies outside')

  const grad = new Float64Array(n)
  const hess = new Float64Array(n * n)
  const step = new Float64Array(n)
  const trial = new Float64Array(n)
  const last = new Float64Array(n)
  let tau = depth ? 1 : program.goal === 'reach' ? 1 : nu / Math.max(goalValue(program, x), 1e-3)

  for (let stage = 0; stage < 60; stage++) {
    for (let round = 0; round < 40; round++) {
      grad.fill(0)
      hess.fill(0)
      addGoal(program, x, tau, grad, hess, n)
      addBarrier(held, m, x, n, depth, grad, hess)
      for (let k = 0; k < n; k++) step[k] = -grad[k]!
      factor(hess, n)
      backSubstitute(hess, step, n)
      let decrement = 0
      for (let k = 0; k < n; k++) decrement -= grad[k]! * step[k]!
      // A decrement of a quarter is close enough to the path for the gap to hold within a factor of 4/3.
      if (!(decrement > 0.06)) {
        for (let k = 0; k < n; k++) trial[k] = x[k]! + step[k]!
        if (barrier(held, m, trial, depth) < Infinity) x.set(trial)
        break
      }
      const before = tau * goalValue(program, x) + barrier(held, m, x, depth)
      let size = Math.min(1, 0.9 * roomAlong(held, m, x, step, depth))
      for (;;) {
        for (let k = 0; k < n; k++) trial[k] = x[k]! + size * step[k]!
        const after = tau * goalValue(program, trial) + barrier(held, m, trial, depth)
        if (after <= before - 0.1 * size * decrement) break
        size *= 0.5
        if (size < 1e-9) break
      }
      if (size < 1e-9) break // rounding is all that is left to gain
      x.set(trial)
    }
    const gap = (4 / 3) * (nu / tau)
    if (enough(x, gap)) return { x, gap }
    // The path runs almost straight in 1/tau: go on along the chord of the last two stages where that stays inside.
    if (stage > 0) {
      for (let k = 0; k < n; k++) trial[k] = x[k]! + (x[k]! - last[k]!) / growth
      last.set(x)
      if (barrier(held, m, trial, depth) < Infinity) x.set(trial)
    } else last.set(x)
    tau *= growth
  }
  return { x, gap: nu / tau }
}

function flatten(holds: readonly (readonly Surface[])[]): Float64Array {
  const out = new Float64Array(stride * holds.reduce((sum, list) => sum + list.length, 0))
  let o = 0
  holds.forEach((list, point) => {
    for (const s of list) {
      const place = s.kind === 'plane' ? undefined : s.kind === 'cylinder' ? s.point : s.apex
      const direction = s.kind === 'plane' ? s.normal : s.axis
      out[o] = s.kind === 'plane' ? 0 : s.kind === 'cylinder' ? 1 : 2
      out[o + 1] = point * 3
      for (let k = 0; k < 3; k++) {
        out[o + 2 + k] = place ? place[k]! : 0
        out[o + 5 + k] = direction[k]!
      }
      out[o + 8] = s.kind === 'plane' ? s.offset : s.kind === 'cylinder' ? s.radius : s.slope
      o += stride
    }
  })
  return out
}

/** Least of level − |across| over all surfaces: negative by as much as the worst level must be raised. */
function leastLevel(held: Float64Array, m: number, x: Float64Array): number {
  let least = Infinity
  for (let i = 0; i < m; i++) {
    const o = i * stride
    const p = held[o + 1]!
    const ux = held[o + 5]!
    const uy = held[o + 6]!
    const uz = held[o + 7]!
    const vx = x[p]! - held[o + 2]!
    const vy = x[p + 1]! - held[o + 3]!
    const vz = x[p + 2]! - held[o + 4]!
    const t = vx * ux + vy * uy + vz * uz
    const size = held[o + 8]!
    const kind = held[o]!
    if (kind === 0) least = Math.min(least, size - t)
    else {
      const across = Math.hypot(vx - t * ux, vy - t * uy, vz - t * uz)
      least = Math.min(least, (kind === 1 ? size : size * t) - across)
    }
  }
  return least
}

/** Sum of the logarithmic barriers; Infinity outside. */
function barrier(held: Float64Array, m: number, x: Float64Array, depth: boolean): number {
  const slack = depth ? x[3]! : 0
  let product = 1
  let sum = 0
  for (let i = 0; i < m; i++) {
    const o = i * stride
    const p = held[o + 1]!
    const ux = held[o + 5]!
    const uy = held[o + 6]!
    const uz = held[o + 7]!
    const vx = x[p]! - held[o + 2]!
    const vy = x[p + 1]! - held[o + 3]!
    const vz = x[p + 2]! - held[o + 4]!
    const t = vx * ux + vy * uy + vz * uz
    const size = held[o + 8]!
    const kind = held[o]!
    let room: number
    if (kind === 0) room = size - t + slack
    else {
      const level = (kind === 1 ? size : size * t) + slack
      if (!(level > 0)) return Infinity
      const wx = vx - t * ux
      const wy = vy - t * uy
      const wz = vz - t * uz
      room = level * level - (wx * wx + wy * wy + wz * wz)
    }
    if (!(room > 0)) return Infinity
    product *= room
    if (product < 1e-100 || product > 1e100) {
      sum -= Math.log(product)
      product = 1
    }
  }
  return sum - Math.log(product)
}

/** How many times the step fits inside the surfaces, Infinity where it never leaves them. */
function roomAlong(held: Float64Array, m: number, x: Float64Array, step: Float64Array, depth: boolean): number {
  let most = Infinity
  const slack = depth ? x[3]! : 0
  const rise = depth ? step[3]! : 0
  for (let i = 0; i < m; i++) {
    const o = i * stride
    const p = held[o + 1]!
    const ux = held[o + 5]!
    const uy = held[o + 6]!
    const uz = held[o + 7]!
    const vx = x[p]! - held[o + 2]!
    const vy = x[p + 1]! - held[o + 3]!
    const vz = x[p + 2]! - held[o + 4]!
    const dx = step[p]!
    const dy = step[p + 1]!
    const dz = step[p + 2]!
    const t = vx * ux + vy * uy + vz * uz
    const dt = dx * ux + dy * uy + dz * uz
    const size = held[o + 8]!
    const kind = held[o]!
    if (kind === 0) {
      const closing = dt - rise
      if (closing > 0) most = Math.min(most, (size - t + slack) / closing)
      continue
    }
    const level = (kind === 1 ? size : size * t) + slack
    const dLevel = (kind === 1 ? 0 : size * dt) + rise
    // level² − |across|² along the step: c + 2b·a + a·a²; its first positive root.
    const c = level * level - (vx * vx + vy * vy + vz * vz - t * t)
    const b = level * dLevel - (vx * dx + vy * dy + vz * dz - t * dt)
    const a = dLevel * dLevel - (dx * dx + dy * dy + dz * dz - dt * dt)
    const disc = b * b - a * c
    if (disc < 0) continue
    const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(disc))
    const first = q / a
    const second = c / q
    if (first > 0) most = Math.min(most, first)
    if (second > 0) most = Math.min(most, second)
  }
  return most
}

/** Adds gradient and (lower triangle of the) second derivative of the barriers. */
function addBarrier(
  held: Float64Array,
  m: number,
  x: Float64Array,
  n: number,
  depth: boolean,
  grad: Float64Array,
  hess: Float64Array,
): void {
  const slack = depth ? x[3]! : 0
  for (let i = 0; i < m; i++) {
    const o = i * stride
    const p = held[o + 1]!
    const ux = held[o + 5]!
    const uy = held[o + 6]!
    const uz = held[o + 7]!
    const vx = x[p]! - held[o + 2]!
    const vy = x[p + 1]! - held[o + 3]!
    const vz = x[p + 2]! - held[o + 4]!
    const t = vx * ux + vy * uy + vz * uz
    const size = held[o + 8]!
    const kind = held[o]!
    const r0 = p * n + p
    const r1 = r0 + n
    const r2 = r1 + n
    if (kind === 0) {
      const a = 1 / (size - t + slack)
      const ax = a * ux
      const ay = a * uy
      const az = a * uz
      grad[p]! += ax
      grad[p + 1]! += ay
      grad[p + 2]! += az
      hess[r0]! += ax * ax
      hess[r1]! += ax * ay
      hess[r1 + 1]! += ay * ay
      hess[r2]! += ax * az
      hess[r2 + 1]! += ay * az
      hess[r2 + 2]! += az * az
      if (depth) {
        grad[3]! -= a
        hess[12]! -= a * ax
        hess[13]! -= a * ay
        hess[14]! -= a * az
        hess[15]! += a * a
      }
      continue
    }
    // room q = level² − |w|²; dq = 2·level·dlevel − 2w; −log q has gradient −dq/q and Hessian dq·dqᵀ/q² − d²q/q.
    const k = kind === 1 ? 0 : size
    const level = (kind === 1 ? size : size * t) + slack
    const wx = vx - t * ux
    const wy = vy - t * uy
    const wz = vz - t * uz
    const q = level * level - (wx * wx + wy * wy + wz * wz)
    const c = 2 / q
    const lk = level * k
    const gx = c * (lk * ux - wx)
    const gy = c * (lk * uy - wy)
    const gz = c * (lk * uz - wz)
    const kk = c * (1 + k * k)
    grad[p]! -= gx
    grad[p + 1]! -= gy
    grad[p + 2]! -= gz
    hess[r0]! += gx * gx + c - kk * ux * ux
    hess[r1]! += gx * gy - kk * ux * uy
    hess[r1 + 1]! += gy * gy + c - kk * uy * uy
    hess[r2]! += gx * gz - kk * ux * uz
    hess[r2 + 1]! += gy * gz - kk * uy * uz
    hess[r2 + 2]! += gz * gz + c - kk * uz * uz
    if (depth) {
      const gs = c * level
      const ck = c * k
      grad[3]! -= gs
      hess[12]! += gs * gx - ck * ux
      hess[13]! += gs * gy - ck * uy
      hess[14]! += gs * gz - ck * uz
      hess[15]! += gs * gs - c
    }
  }
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

/** Cholesky factor of a symmetric positive definite matrix, lower triangle given, in place. */
function factor(h: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    let d = h[j * n + j]!
    const least = 1e-15 * d
    for (let k = 0; k < j; k++) d -= h[j * n + k]! * h[j * n + k]!
    d = Math.sqrt(Math.max(d, least, 1e-300))
    h[j * n + j] = d
    for (let i = j + 1; i < n; i++) {
      let v = h[i * n + j]!
      for (let k = 0; k < j; k++) v -= h[i * n + k]! * h[j * n + k]!
      h[i * n + j] = v / d
    }
  }
}

/** Solves L·Lᵀ·y = b in place of b. */
function backSubstitute(h: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    let v = b[i]!
    for (let k = 0; k < i; k++) v -= h[i * n + k]! * b[k]!
    b[i] = v / h[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    let v = b[i]!
    for (let k = i + 1; k < n; k++) v -= h[k * n + i]! * b[k]!
    b[i] = v / h[i * n + i]!
  }
}

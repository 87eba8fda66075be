import type { Surface } from './surface.ts'
import { cross, dot, squareTo } from './vector.ts'

/**
 * Surfaces as self-concordant barriers (the half-space and the second-order cone). Each surface is "level > 0", or
 * "level² − across₁² − across₂² > 0, level > 0", with forms that are linear in the point it holds:
 * half-space: level = offset − n·p; cylinder: level = radius; cone: level = slope·(axis·(p − apex)); the across forms
 * are the two parts of p − place square to the axis. In a search for depth a slack raises every level.
 */
export class Barrier {
  /** Barrier parameter: 1 a half-space, 2 a round surface. */
  readonly nu: number
  private readonly held: Float64Array
  private readonly slack: boolean
  private readonly n: number

  /** Surfaces that hold each point. `withSlack`: one point, and a fourth unknown raises every level. */
  constructor(holds: readonly (readonly Surface[])[], withSlack: boolean) {
    this.held = flatten(holds)
    this.slack = withSlack
    this.n = withSlack ? 4 : 3 * holds.length
    let nu = 0
    for (let o = 0; o < this.held.length; o += stride) nu += 1 + this.held[o]!
    this.nu = nu
  }

  /** Sum of the logarithmic barriers at `x`; Infinity outside. */
  value(x: Float64Array): number {
    const held = this.held
    const slack = this.slack ? x[slackIndex]! : 0
    let product = 1
    let sum = 0
    for (let o = 0; o < held.length; o += stride) {
      const p = held[o + 1]!
      const level = form(held, o + 2, x, p) + slack
      if (!(level > 0)) return Infinity
      let room = level
      if (held[o] === 1) {
        const a = form(held, o + 6, x, p)
        const b = form(held, o + 10, x, p)
        room = level * level - a * a - b * b
        if (!(room > 0)) return Infinity
      }
      product *= room
      // One logarithm for many factors, before their product leaves the range of a double.
      if (product < 1e-100 || product > 1e100) {
        sum -= Math.log(product)
        product = 1
      }
    }
    return sum - Math.log(product)
  }

  /** Least of level − |across|: negative by as much as the worst level must be raised to let `x` in. */
  leastRoom(x: Float64Array): number {
    const held = this.held
    let least = Infinity
    for (let o = 0; o < held.length; o += stride) {
      const p = held[o + 1]!
      const across = held[o] === 1 ? Math.hypot(form(held, o + 6, x, p), form(held, o + 10, x, p)) : 0
      least = Math.min(least, form(held, o + 2, x, p) - across)
    }
    return least
  }

  /** How many times the step fits inside, Infinity where it never leaves. */
  reachAlong(x: Float64Array, step: Float64Array): number {
    const held = this.held
    const slack = this.slack ? x[slackIndex]! : 0
    const rise = this.slack ? step[slackIndex]! : 0
    let most = Infinity
    for (let o = 0; o < held.length; o += stride) {
      const p = held[o + 1]!
      const level = form(held, o + 2, x, p) + slack
      const dLevel = slope(held, o + 2, step, p) + rise
      if (held[o] === 0) {
        if (dLevel < 0) most = Math.min(most, -level / dLevel)
        continue
      }
      const a = form(held, o + 6, x, p)
      const b = form(held, o + 10, x, p)
      const da = slope(held, o + 6, step, p)
      const db = slope(held, o + 10, step, p)
      // level² − across² along the step is c + 2·h·t + q·t²; its first positive root.
      const c = level * level - a * a - b * b
      const h = level * dLevel - a * da - b * db
      const q = dLevel * dLevel - da * da - db * db
      const disc = h * h - q * c
      if (disc < 0) continue
      const r = -(h + (h < 0 ? -1 : 1) * Math.sqrt(disc))
      if (r / q > 0) most = Math.min(most, r / q)
      if (c / r > 0) most = Math.min(most, c / r)
    }
    return most
  }

  /** Adds gradient and (lower triangle of the) second derivative at `x`. */
  addDerivatives(x: Float64Array, grad: Float64Array, hess: Float64Array): void {
    const { held, n } = this
    const withSlack = this.slack
    const slack = withSlack ? x[slackIndex]! : 0
    for (let o = 0; o < held.length; o += stride) {
      const p = held[o + 1]!
      const level = form(held, o + 2, x, p) + slack
      const lx = held[o + 2]!
      const ly = held[o + 3]!
      const lz = held[o + 4]!
      if (held[o] === 0) {
        const g = 1 / level
        addRow(grad, hess, n, p, g * lx, g * ly, g * lz, withSlack ? g : 0)
        continue
      }
      const a = form(held, o + 6, x, p)
      const b = form(held, o + 10, x, p)
      const ax = held[o + 6]!
      const ay = held[o + 7]!
      const az = held[o + 8]!
      const bx = held[o + 10]!
      const by = held[o + 11]!
      const bz = held[o + 12]!
      // −log q with q = level² − a² − b²: gradient −q′/q, second derivative q′q′ᵀ/q² − q″/q.
      const c = 2 / (level * level - a * a - b * b)
      const gx = c * (level * lx - a * ax - b * bx)
      const gy = c * (level * ly - a * ay - b * by)
      const gz = c * (level * lz - a * az - b * bz)
      addRow(grad, hess, n, p, gx, gy, gz, withSlack ? c * level : 0)
      const r0 = p * n + p
      const r1 = r0 + n
      const r2 = r1 + n
      hess[r0]! += c * (ax * ax + bx * bx - lx * lx)
      hess[r1]! += c * (ay * ax + by * bx - ly * lx)
      hess[r1 + 1]! += c * (ay * ay + by * by - ly * ly)
      hess[r2]! += c * (az * ax + bz * bx - lz * lx)
      hess[r2 + 1]! += c * (az * ay + bz * by - lz * ly)
      hess[r2 + 2]! += c * (az * az + bz * bz - lz * lz)
      if (!withSlack) continue
      hess[slackIndex * n]! -= c * lx
      hess[slackIndex * n + 1]! -= c * ly
      hess[slackIndex * n + 2]! -= c * lz
      hess[slackIndex * n + slackIndex]! -= c
    }
  }
}

const form = (held: Float64Array, o: number, x: Float64Array, p: number): number =>
  held[o]! * x[p]! + held[o + 1]! * x[p + 1]! + held[o + 2]! * x[p + 2]! + held[o + 3]!

const slope = (held: Float64Array, o: number, step: Float64Array, p: number): number =>
  held[o]! * step[p]! + held[o + 1]! * step[p + 1]! + held[o + 2]! * step[p + 2]!

/** Index of the slack among the unknowns of a search for depth: after the three of the point. */
const slackIndex = 3
/** Round or not, first unknown of the point, then level, across₁, across₂ with three coefficients and a constant each. */
const stride = 14

/** Takes the row from the gradient and adds its square to the second derivative. */
function addRow(
  grad: Float64Array,
  hess: Float64Array,
  n: number,
  p: number,
  gx: number,
  gy: number,
  gz: number,
  gs: number,
): void {
  grad[p]! -= gx
  grad[p + 1]! -= gy
  grad[p + 2]! -= gz
  const r0 = p * n + p
  const r1 = r0 + n
  const r2 = r1 + n
  hess[r0]! += gx * gx
  hess[r1]! += gy * gx
  hess[r1 + 1]! += gy * gy
  hess[r2]! += gz * gx
  hess[r2 + 1]! += gz * gy
  hess[r2 + 2]! += gz * gz
  if (gs === 0) return
  const rs = slackIndex * n
  grad[slackIndex]! -= gs
  hess[rs]! += gs * gx
  hess[rs + 1]! += gs * gy
  hess[rs + 2]! += gs * gz
  hess[rs + 3]! += gs * gs
}

function flatten(holds: readonly (readonly Surface[])[]): Float64Array {
  const out = new Float64Array(stride * holds.reduce((sum, list) => sum + list.length, 0))
  let o = 0
  holds.forEach((list, point) => {
    for (const s of list) {
      out[o + 1] = 3 * point
      if (s.kind === 'plane') {
        for (let k = 0; k < 3; k++) out[o + 2 + k] = -s.normal[k]!
        out[o + 5] = s.offset
      } else {
        const place = s.kind === 'cylinder' ? s.point : s.apex
        const x = squareTo(s.axis)
        const rise = s.kind === 'cylinder' ? 0 : s.slope
        out[o] = 1
        ;[s.axis, x, cross(s.axis, x)].forEach((axis, form) => {
          const factor = form === 0 ? rise : 1
          for (let k = 0; k < 3; k++) out[o + 2 + 4 * form + k] = factor * axis[k]!
          out[o + 5 + 4 * form] = -factor * dot(axis, place)
        })
        if (s.kind === 'cylinder') out[o + 5] = s.radius
      }
      o += stride
    }
  })
  return out
}

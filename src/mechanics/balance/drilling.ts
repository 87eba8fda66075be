import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'
import type { Radial } from './static-balance.ts'

export interface DrillingInput {
  /** Unbalance to take out, kg·mm, x and y of the body frame. */
  readonly unbalance: Radial
  /** What may remain, kg·mm, at least 0. Beyond balance as much is allowed, or what one step of depth makes. */
  readonly aim: number
  /** Of the metal drilled, kg/m³, above 0. */
  readonly density: number
  /** Ring of whole metal on the heavy side, mm: radii of its inside and outside, and its depth below the face. */
  readonly metal: { readonly innerRadius: number; readonly outerRadius: number; readonly depth: number }
  /** Drills in the drawer, mm, above 0, and their point angle, rad, above 0 and below π. */
  readonly drills: readonly number[]
  readonly pointAngle: number
  /** Metal to leave between holes and to every side, mm, at least 0. */
  readonly leastWall: number
  /** Most holes, at least 1, and how far from the heavy side a hole may lie, rad, above 0, at most π/2. */
  readonly mostHoles: number
  readonly halfAngle: number
  /** Depths are drilled in steps of this, mm, above 0. */
  readonly depthStep: number
}

/** Holes of one drill, parallel to the axis, all on one circle and to one depth, even about the heavy side. */
export interface DrillPlan {
  readonly drill: number
  readonly holes: number
  /** Of the circle that the holes lie on, mm. */
  readonly radius: number
  /** Of the full diameter below the face, mm, without the point. */
  readonly depth: number
  /** Centres, mm, x and y of the body frame. */
  readonly centres: readonly Radial[]
  /** Metal taken out, kg. */
  readonly mass: number
  /** Unbalance taken out, kg·mm, and what remains on the heavy side (negative: a little too much was taken). */
  readonly removes: number
  readonly remains: number
}

export type Drilling =
  | { readonly kind: 'not-needed' }
  /** Every drill that does it, the fewest holes first, then the shallowest. */
  | { readonly kind: 'plans'; readonly plans: readonly DrillPlan[] }
  /** None does; the plan that leaves least, or undefined where none betters things: no room, or a point too large. */
  | { readonly kind: 'cannot'; readonly nearest: DrillPlan | undefined }

/** Rules of thumb, common practice without a source: point of a jobber drill, depth by the quill's dial. */
export const drillingRules = { pointAngle: (118 * Math.PI) / 180, depthStep: 0.1, halfAngle: Math.PI / 3 } as const

/**
 * Where to drill on the heavy side so that no more than the aim remains. Each hole takes out density × volume (cylinder
 * and point) × radius along its own direction; on the outermost circle that the wall allows, holes bring most and
 * stand closest to the heavy side. For each drill: the fewest holes that can do it, then the depth that does,
 * rounded up to the step, and what that really leaves. Static only: the couple that holes at one end leave stays.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function drilling(input: DrillingInput): Result<Drilling> {
  const { unbalance, aim, density, metal, drills, pointAngle, leastWall, mostHoles, halfAngle, depthStep } = input
  const problems = outOfRange([
    ['unbalance.0', 'ratio', unbalance[0], {}],
    ['unbalance.1', 'ratio', unbalance[1], {}],
    ['aim', 'ratio', aim, { min: 0 }],
    ['density', 'density', density, { above: 0 }],
    ['metal.innerRadius', 'length', metal.innerRadius, { min: 0 }],
    ['metal.outerRadius', 'length', metal.outerRadius, { above: metal.innerRadius }],
    ['metal.depth', 'length', metal.depth, { above: 0 }],
    ...drills.map((drill, at) => [`drills.${at}`, 'length', drill, { above: 0 }] as const),
    ['pointAngle', 'angle', pointAngle, { above: 0, below: Math.PI }],
    ['leastWall', 'length', leastWall, { min: 0 }],
    ['mostHoles', 'ratio', mostHoles, { min: 1 }],
    ['halfAngle', 'angle', halfAngle, { above: 0, max: Math.PI / 2 }],
    ['depthStep', 'length', depthStep, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }

  const amount = Math.hypot(...unbalance)
  if (amount <= aim) return { ok: true, value: { kind: 'not-needed' } }
  const found = drills.flatMap((drill) => planFor(drill, input))
  const plans = found
    .filter(({ does }) => does)
    .map(({ plan }) => plan)
    .toSorted((a, b) => a.holes - b.holes || a.depth - b.depth || a.drill - b.drill)
  if (plans.length > 0) return { ok: true, value: { kind: 'plans', plans } }
  const better = found.map(({ plan }) => plan).filter(({ remains }) => Math.abs(remains) < amount)
  const nearest = better.toSorted((a, b) => Math.abs(a.remains) - Math.abs(b.remains))[0]
  return { ok: true, value: { kind: 'cannot', nearest } }
}

/**
 * The fewest holes of one drill that take out what has to go, or as much as it can, and whether that does; empty where
 * no hole fits.
 */
function planFor(drill: number, input: DrillingInput): { readonly plan: DrillPlan; readonly does: boolean }[] {
  const { unbalance, aim, metal, leastWall, mostHoles, halfAngle, depthStep } = input
  const radius = metal.outerRadius - leastWall - drill / 2
  if (radius <= 0 || radius < metal.innerRadius + leastWall + drill / 2) return []
  const point = drill / 2 / Math.tan(input.pointAngle / 2)
  // The small allowance keeps a depth that is a whole number of steps from losing one to the last digit.
  const stepsDown = Math.floor((metal.depth - leastWall - point) / depthStep + 1e-9)
  if (stepsDown < 0) return []

  /** Mass, kg, that one hole takes out for each mm of depth; the point counts as a third of its height. */
  const massPerDepth = input.density * 1e-9 * (Math.PI / 4) * drill ** 2
  const pointDepth = point / 3
  const apart = drill + leastWall
  const between = apart < 2 * radius ? 2 * Math.asin(apart / (2 * radius)) : Infinity
  const fitting = Math.max(1, Math.min(Math.floor(mostHoles), 1 + Math.floor((2 * halfAngle) / between + 1e-9)))
  const amount = Math.hypot(...unbalance)
  const heavy = Math.atan2(unbalance[1], unbalance[0])

  const anglesOf = (holes: number) =>
    holes === 1 ? [0] : Array.from({ length: holes }, (_, i) => (i - (holes - 1) / 2) * between)
  /** kg·mm for each mm of depth of all holes: what they bring square to the heavy side cancels. */
  const bringsPerDepth = (holes: number) =>
    massPerDepth * radius * anglesOf(holes).reduce((sum, angle) => sum + Math.cos(angle), 0)
  const fullDepth = stepsDown * depthStep + pointDepth
  const counts = Array.from({ length: fitting }, (_, i) => i + 1)
  const holes = counts.find((count) => bringsPerDepth(count) * fullDepth >= amount - aim) ?? fitting

  const brings = bringsPerDepth(holes)
  const steps = Math.ceil(((amount - aim) / brings - pointDepth) / depthStep - 1e-9)
  const depth = Math.min(stepsDown, Math.max(0, steps)) * depthStep
  const removes = brings * (depth + pointDepth)
  const plan: DrillPlan = {
    drill,
    holes,
    radius,
    depth,
    centres: anglesOf(holes).map((angle) => [radius * Math.cos(heavy + angle), radius * Math.sin(heavy + angle)]),
    mass: massPerDepth * (depth + pointDepth) * holes,
    removes,
    remains: amount - removes,
  }
  // Too much is no better than too little, but a step of depth is the finest there is.
  const tooMuch = Math.max(aim, brings * depthStep) * (1 + 1e-9)
  return [{ plan, does: plan.remains <= aim + 1e-9 * amount && -plan.remains <= tooMuch }]
}

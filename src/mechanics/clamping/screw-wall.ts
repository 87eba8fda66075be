import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface ScrewWallInput {
  /** Force of each screw, N (count on the most), at least 0, and its place along the wall, mm. */
  readonly screws: readonly { readonly force: number; readonly x: number }[]
  /** Both ends of the wall, same scale as the screws, mm. */
  readonly wall: { readonly outer: number; readonly inner: number }
  /** Metal between slot and step, mm, above 0. */
  readonly thickness: number
  /** Depths of slot and step below the face, mm, above 0: the wall stands free down to the shallower. */
  readonly slotDepth: number
  readonly stepDepth: number
  /** Screw axis below the face, mm, above 0. */
  readonly screwHeight: number
  /** Major diameter of the screws, mm, above 0. */
  readonly screwDiameter: number
  /** Of the body, MPa, above 0. */
  readonly youngsModulus: number
  /** Of the body, MPa, above 0; undefined for a brittle material, which has none. */
  readonly yieldStrength: number | undefined
}

export interface ScrewWall {
  /** Screw axis to where the wall is held, mm; 0 where the screws lie below that and nothing bends. */
  readonly arm: number
  /** Length of wall that takes part, mm. */
  readonly length: number
  /** Bending stress where the wall is held, MPa. */
  readonly stress: number
  /** How far the wall gives way at the screws, mm. */
  readonly deflection: number
  /** Yield strength over stress; undefined where either is missing. */
  readonly factor: number | undefined
}

/**
 * The wall between slot and step as a cantilever under all screws: stress 6·ΣF·arm/(length·thickness²), deflection
 * ΣF·arm³/(3·E·I) (beam formulas of any strength-of-materials book). The length that takes part spreads at 45° from
 * each screw to the root, overlaps counted once, no more than the wall itself (rule of thumb, common practice without
 * a source).
 *
 * Problems: a figure outside the ranges of the input, a wall whose ends are exchanged.
 */
export function screwWall(input: ScrewWallInput): Result<ScrewWall> {
  const { screws, wall, thickness, slotDepth, stepDepth, screwHeight, screwDiameter, youngsModulus } = input
  const { yieldStrength } = input
  const problems = outOfRange([
    ...screws.flatMap(
      ({ force, x }, at) =>
        [
          [`screws.${at}.force`, 'force', force, { min: 0 }],
          [`screws.${at}.x`, 'length', x, { min: wall.inner, max: wall.outer }],
        ] as const,
    ),
    ['wall.outer', 'length', wall.outer, { above: wall.inner }],
    ['thickness', 'length', thickness, { above: 0 }],
    ['slotDepth', 'length', slotDepth, { above: 0 }],
    ['stepDepth', 'length', stepDepth, { above: 0 }],
    ['screwHeight', 'length', screwHeight, { above: 0 }],
    ['screwDiameter', 'length', screwDiameter, { above: 0 }],
    ['youngsModulus', 'pressure', youngsModulus, { above: 0 }],
    ...(yieldStrength === undefined ? [] : [['yieldStrength', 'pressure', yieldStrength, { above: 0 }] as const]),
  ])
  if (problems.length > 0) return { ok: false, problems }

  const arm = Math.max(0, Math.min(slotDepth, stepDepth) - screwHeight)
  const spread = screwDiameter / 2 + arm
  const length = lengthCovered(
    screws.map(({ x }) => ({ from: Math.max(wall.inner, x - spread), to: Math.min(wall.outer, x + spread) })),
  )
  const force = screws.reduce((sum, screw) => sum + screw.force, 0)
  const stress = length > 0 ? (6 * force * arm) / (length * thickness ** 2) : 0
  const deflection = length > 0 ? (4 * force * arm ** 3) / (youngsModulus * length * thickness ** 3) : 0
  const factor = yieldStrength === undefined || stress === 0 ? undefined : yieldStrength / stress
  return { ok: true, value: { arm, length, stress, deflection, factor } }
}

/** Length of the union of stretches. */
function lengthCovered(stretches: readonly { readonly from: number; readonly to: number }[]): number {
  let length = 0
  let reached = -Infinity
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    length += Math.max(0, to - Math.max(from, reached))
    reached = Math.max(reached, to)
  }
  return length
}

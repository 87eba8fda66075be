import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface TramInput {
  /** How far the spindle leans in the direction of travel, rad, either sign, below 45°. */
  readonly along: number
  /** How far it leans across the travel, rad, either sign, below 45°. */
  readonly across: number
  /** Of the tip's circle, mm, above 0. */
  readonly radius: number
  /** Width cut in one pass, the circle centred on it, mm, above 0, at most the swing. */
  readonly width: number
  /** Distance between neighbouring passes, mm, at least 0; 0 where there is only one. */
  readonly stepOver: number
}

export interface Tram {
  /** How much lower the middle of the width is cut than its sides, mm, at least 0. */
  readonly dish: number
  /** How much one side of the width is cut lower than the other, mm, at least 0. */
  readonly slope: number
  /** Step between neighbouring passes, mm, at least 0. */
  readonly step: number
}

/**
 * What a spindle that leans leaves. In the direction of travel the lower arc of the tip's circle cuts last and hollows
 * the width b by sin θ·(R − √(R² − (b/2)²)); across it the surface is a slope, b·tan θ from side to side, and a saw
 * tooth of stepOver·tan θ between passes. Exact, each lean for itself. (Geometry; the trade knows both effects, and that
 * they grow with the cutter.)
 *
 * Problems: a figure outside the ranges of the input.
 */
export function tram({ along, across, radius, width, stepOver }: TramInput): Result<Tram> {
  const lean = { above: -Math.PI / 4, below: Math.PI / 4 }
  const problems = outOfRange([
    ['along', 'angle', along, lean],
    ['across', 'angle', across, lean],
    ['radius', 'length', radius, { above: 0 }],
    ['width', 'length', width, { above: 0, max: Math.max(0, 2 * radius) }],
    ['stepOver', 'length', stepOver, { min: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const tangent = Math.abs(Math.tan(across))
  return {
    ok: true,
    value: {
      dish: Math.abs(Math.sin(along)) * sagOf(radius, width),
      slope: width * tangent,
      step: stepOver * tangent,
    },
  }
}

/**
 * Largest lean in the direction of travel, rad, that hollows the width by no more than `dish`; undefined where no lean
 * hollows it so much. Radius, width and dish in mm; problems: none above 0, a width beyond the swing.
 */
export function largestLeanFor(dish: number, radius: number, width: number): Result<number | undefined> {
  const problems = outOfRange([
    ['dish', 'length', dish, { above: 0 }],
    ['radius', 'length', radius, { above: 0 }],
    ['width', 'length', width, { above: 0, max: Math.max(0, 2 * radius) }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const sine = dish / sagOf(radius, width)
  return { ok: true, value: sine < 1 ? Math.asin(sine) : undefined }
}

/**
 * Lean, rad, of a spindle whose indicator reads a difference (mm, with its sign) between two points `span` mm apart on
 * the circle it is swept round; span above 0.
 */
export const leanFromReading = (difference: number, span: number): number => Math.atan2(difference, span)

/** Rise of a circle over its half-chord, R − √(R² − (b/2)²), without losing digits on a narrow width. */
function sagOf(radius: number, width: number): number {
  const half = width / 2
  return half ** 2 / (radius + Math.sqrt((radius - half) * (radius + half)))
}

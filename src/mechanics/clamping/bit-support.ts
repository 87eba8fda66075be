import type { Problem, Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import type { BarSection } from '../../tables/bar-section.ts'
import { outOfRange } from '../cutting/out-of-range.ts'
import { barReach, type SlotRuns } from './bar-reach.ts'

export interface BitSupportInput {
  readonly section: BarSection
  readonly slotRuns: SlotRuns
  /**
   * y of the wall that the screws push the bit against, mm: the trailing wall with screws on the leading side. Its sign
   * does not matter.
   */
  readonly wallY: number
  /** Tilt of the face, rad, 0 to below π/2. */
  readonly faceAngle: number
  /** Of the slot, square to the face, mm, above 0. */
  readonly slotDepth: number
  /** x of the tip in the face frame, mm. */
  readonly tipX: number
  /** x of the bit's inner end in the face frame, mm. */
  readonly bitInnerEnd: number
  /** x at which the straight wall of a stopped slot ends, face frame, mm; left out for a through slot. */
  readonly slotEnd?: number
}

/** All along the face: x of the face frame, mm. */
export interface BitSupport {
  /** Where the wall ends towards the tip, at the face and, further in on a tilted face, at the slot floor. */
  readonly outerAtFace: number
  readonly outerAtFloor: number
  /** Where the wall, or the bit on it, ends on the other side; the shorter of face and floor. */
  readonly inner: number
  /** Tip to the outer end of the wall at the face. */
  readonly overhangAtFace: number
  /** Tip to the outer end of the wall at the slot floor: the longest unsupported length, which stress is judged by. */
  readonly overhang: number
  /** Length of bit that lies on the wall over its whole height; 0 where none does. */
  readonly grip: number
}

/**
 * What holds the bit: the wall behind it, from the outside of the bar to the outside or to the bit's inner end. The
 * face is tilted, so lengths along it are those of the bar's section over cos a, and a point deeper in the slot lies
 * d·tan a further in. The wall opposite is no support: on a hexagon it ends elsewhere.
 *
 * Problems: a figure outside its range, a wall outside the bar, a tip that does not stand out beyond the wall.
 */
export function bitSupport(input: BitSupportInput): Result<BitSupport> {
  const { section, slotRuns, wallY, faceAngle, slotDepth, tipX, bitInnerEnd, slotEnd = -Infinity } = input
  const problems: Problem[] = outOfRange([
    ['section.size', 'length', section.size, { above: 0 }],
    ['wallY', 'length', wallY, {}],
    ['faceAngle', 'angle', faceAngle, { min: 0, below: Math.PI / 2 }],
    ['slotDepth', 'length', slotDepth, { above: 0 }],
    ['tipX', 'length', tipX, {}],
    ['bitInnerEnd', 'length', bitInnerEnd, {}],
    ...(input.slotEnd === undefined ? [] : [['slotEnd', 'length', input.slotEnd, {}] as const]),
  ])
  if (problems.length > 0) return { ok: false, problems }
  const fault = (path: string, found: string, allowed: string): Result<never> => ({
    ok: false,
    problems: [{ code: 'contradiction', where: { file: '', path }, found, allowed }],
  })
  const reach = barReach(section, slotRuns, wallY)
  if (reach === undefined) {
    return fault('wallY', `a slot wall ${formatLength(Math.abs(wallY), 'mm')} beside the axis`, 'a wall inside the bar')
  }
  const deeper = slotDepth * Math.tan(faceAngle)
  const outerAtFace = reach / Math.cos(faceAngle)
  const outerAtFloor = outerAtFace - deeper
  const inner = Math.max(-outerAtFace, bitInnerEnd, slotEnd)
  if (tipX <= outerAtFace) {
    return fault('tipX', `a tip ${formatLength(tipX, 'mm')} out`, `beyond the wall, ${formatLength(outerAtFace, 'mm')}`)
  }
  return {
    ok: true,
    value: {
      outerAtFace,
      outerAtFloor,
      inner,
      overhangAtFace: tipX - outerAtFace,
      overhang: tipX - outerAtFloor,
      grip: Math.max(0, outerAtFloor - inner),
    },
  }
}

import { type ArcEntity, apart2, type CircleEntity, endsOf, type LineEntity, type Vec2 } from '../edges/entity.ts'
import type { Frame } from '../geometry/frame.ts'

/** What CAM follows without asking: nothing but lines, arcs and circles, mm and rad. */
export type ProfileEdge = LineEntity | ArcEntity | CircleEntity

/** Edges end to end, each in either sense, back to the start. */
export type Outline = readonly ProfileEdge[]

/** What a cutter follows for one feature: true size in the plane of its set-up. */
export interface Profile {
  /** What is cut: `slot`, `bore chamfer`. */
  readonly name: string
  /** mm below the plane that the set-up is zeroed on; absent for a cut right through. */
  readonly depth?: number
  /** mm that the blank stands above the plane, for a face that is milled down to it. */
  readonly blankAbove?: number
  /** Thread of a hole whose outline is its tap drill. */
  readonly thread?: string
  /** What else the one who cuts must know, a few words each: `through wall`, `point 118deg`. */
  readonly notes?: readonly string[]
  /** Closed outlines in the set-up's x and y. */
  readonly outlines: readonly Outline[]
}

/** One clamping of the part, and all that is cut in it. */
export interface SetUp {
  /** `tilted face` */
  readonly name: string
  /** Where the zero is and how x runs, in words. */
  readonly zero: string
  /** Zero of the set-up, in the part's frame: x and y along the table, right-handed, z out of the metal to the cutter. */
  readonly plane: Frame
  readonly profiles: readonly Profile[]
}

/** How far the ends of two neighbouring edges may lie apart, mm; what CAM takes for closed. */
const joined = 1e-4

/** Whether the edges of an outline run end to end and back to their start. */
export function isClosed(outline: Outline): boolean {
  const [first, ...rest] = outline
  if (first === undefined) return false
  if (rest.length === 0) return first.kind === 'circle'
  if (outline.some((e) => e.kind === 'circle')) return false
  const near = (a: Vec2, b: Vec2) => apart2(a, b) <= joined
  const ends = outline.map(endsOf)
  return ends[0]!.some((start, side) => {
    let at = ends[0]![1 - side]!
    for (const [a, b] of ends.slice(1)) {
      if (near(a, at)) at = b
      else if (near(b, at)) at = a
      else return false
    }
    return near(at, start)
  })
}

import { type CutterRun, cutterRun } from '../../../mechanics/set-up/cutter-run.ts'
import type { Travel } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { halfLengthAt } from '../section.ts'

/** A cut along X at the tilt, of a cutter of a diameter; mm. */
export interface CutAlong {
  readonly diameter: number
  /** Depth below the finished face. */
  readonly z: number
  /** Y of what is cut, in either order; the bar is longest nearest to its mid-plane. */
  readonly from: number
  readonly to: number
  /** X in F of the end that it stops at; undefined: it runs out. */
  readonly stopsAt?: number | undefined
}

/** Where a cut lies outside the bar there is nothing to cut; what else is wrong with such a head is for the findings to say. mm */
const hair = 1e-3

/** From clear of the metal on the bit side to clear of it, or to where the front of the cutter is at the end; x in F, mm. */
export function runAlong(design: HeadDesign, { diameter, z, from, to, stopsAt }: CutAlong): CutterRun {
  const { parameters: p, layout: l } = design
  const nearest = from * to <= 0 ? 0 : Math.min(Math.abs(from), Math.abs(to))
  const half = Math.max(hair, halfLengthAt(p.stock, nearest) / Math.cos(l.faceAngle))
  return certain(
    cutterRun({
      from: half,
      to: stopsAt === undefined ? -half : Math.min(stopsAt, half - hair),
      radius: diameter / 2,
      gap: p.settings.cutting.gap,
      end: stopsAt === undefined ? 'runs-out' : 'stops',
      leanFrom: 0,
      // The sides of the bar lean: at depth z the high side stands out further than at the face.
      leanTo: z * Math.tan(l.faceAngle),
    }),
  )
}

/** What the table travels: the axis of a cutter that stops in the metal stands a radius before the end. */
export const travelOf = ({ approach, cut, overrun }: CutterRun): Travel => ({
  approach,
  cut: cut + Math.min(0, overrun),
  overrun: Math.max(0, overrun),
})

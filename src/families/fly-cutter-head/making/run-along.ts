import type { Travel } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { halfLengthAt } from '../section.ts'

/** A cut along X at the tilt: where the axis of the cutter starts, on the bit side, and where it is clear again; x in F, mm. */
export interface RunAlong {
  readonly start: number
  readonly stop: number
  readonly travel: Travel
}

/**
 * From clear of the metal to clear of it, at a depth of `z` mm. `from` and `to`: y of what is cut, in either order; the bar is
 * longest nearest to its mid-plane.
 */
export function runAlong(design: HeadDesign, diameter: number, z: number, from: number, to: number): RunAlong {
  const { parameters: p, layout: l } = design
  const nearest = from * to <= 0 ? 0 : Math.min(Math.abs(from), Math.abs(to))
  const half = halfLengthAt(p.stock, nearest) / Math.cos(l.faceAngle)
  const clear = p.settings.cutting.gap + diameter / 2
  // The sides of the bar lean: at depth z the high side stands out further than at the face.
  const far = half + z * Math.tan(l.faceAngle)
  return {
    start: half + clear,
    stop: -far - clear,
    travel: { approach: clear, cut: half + far, overrun: clear },
  }
}

export const lengthOf = ({ approach, cut, overrun }: Travel): number => approach + cut + overrun

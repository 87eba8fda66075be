import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'
import { slicesOf } from './slices.ts'

/**
 * z of the lowest point of the bar with its face, slot and step, body frame, mm; undefined where they take it all. Holes
 * are taken as filled, and so is what the round end of a stopped slot leaves in its corners. The floors slope down to the
 * bit side, and the bar is the longer the nearer to the mid-plane: between two walls the lowest point is where the bar
 * is longest, or where a stopped slot ends.
 */
export function lowestOfBar(p: Parameters, l: Layout): number | undefined {
  const [sin, cos, tan] = [Math.sin(l.faceAngle), Math.cos(l.faceAngle), Math.tan(l.faceAngle)]
  const heights = slicesOf(p, l).flatMap(({ longest, inSlot, underStep }) => {
    const at = (x: number, cut: number) => -l.depthOnAxis + cut / cos - x * tan
    const floor = Math.max(underStep, inSlot ? l.slot.depth : 0)
    const found = [at(longest, floor)]
    if (inSlot && l.slot.end) {
      // Beyond the end of the slot only the face, or the step, takes metal off.
      const end = (l.slot.end.x + l.slot.end.radius) * cos + underStep * sin
      if (end >= -longest) found.push(at(Math.min(end, longest), underStep))
    }
    return found
  })
  const inBar = heights.filter((z) => z < 0).map((z) => Math.max(z, -l.prismLength))
  return inBar.length > 0 ? Math.min(...inBar) : undefined
}

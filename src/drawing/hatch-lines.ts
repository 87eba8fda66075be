import type { Hatch, Point } from './entity.ts'
import { flattened } from './entity-shape.ts'

/** How far a hatch line may end from its edge, mm on paper: far below its width. */
const chord = 0.005

/**
 * The lines of a hatch, `spacing` mm apart, for writers that have no hatch of their own. Lines of hatches with the same
 * angle lie on one grid through the origin, so that faces of one part are hatched alike.
 */
export function hatchLines(hatch: Hatch<string>, spacing: number): (readonly [Point, Point])[] {
  const [c, s] = [Math.cos(hatch.angle), Math.sin(hatch.angle)]
  const turned = ([x, y]: Point): Point => [x * c + y * s, y * c - x * s]
  const back = ([x, y]: Point): Point => [x * c - y * s, x * s + y * c]
  const pieces = hatch.loops.flatMap((loop) =>
    loop.flatMap((edge) => {
      const points = flattened(edge, chord).map(turned)
      return points.slice(1).map((p, i) => [points[i]!, p] as const)
    }),
  )
  const heights = pieces.flatMap(([a, b]) => [a[1], b[1]])
  const [low, high] = [Math.min(...heights), Math.max(...heights)]
  const lines: (readonly [Point, Point])[] = []
  for (let k = Math.ceil(low / spacing); k * spacing <= high; k++) {
    const y = k * spacing
    const cuts = pieces
      .filter(([a, b]) => a[1] <= y !== b[1] <= y)
      .map(([a, b]) => a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]))
      .sort((a, b) => a - b)
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      if (cuts[i + 1]! - cuts[i]! > chord) lines.push([back([cuts[i]!, y]), back([cuts[i + 1]!, y])])
    }
  }
  return lines
}

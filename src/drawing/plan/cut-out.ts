import type { PlacedDimension } from '../dimensions/placed-dimension.ts'
import { isInside } from '../dimensions/room.ts'
import { hatchLoops } from '../dimensions/sketch.ts'
import type { Entity, Line, Point } from '../entity.ts'
import type { Font } from '../font/font.ts'
import { textCorners } from '../font/text-box.ts'
import type { DrawingStyle, LayerName } from '../style.ts'

/**
 * Line work whose hatch is left out round every text that stands on it (ISO 128-50 in its spirit). `lines` in mm of the
 * model, dimensions on paper; `scale`: paper over model.
 */
export function cutOut(
  lines: readonly Entity<LayerName>[],
  dimensions: readonly PlacedDimension[],
  scale: number,
  style: DrawingStyle,
  font: Font,
): Entity<LayerName>[] {
  const texts = dimensions.flatMap((d) => d.graphics.filter((g) => g.kind === 'text'))
  return lines.map((e) => {
    if (e.kind !== 'hatch') return e
    const loops = hatchLoops(e)
    const holes = texts.flatMap((t): Line<LayerName>[][] => {
      const corners = textCorners(font, t, style.textGap / 2).map((p): Point => [p[0] / scale, p[1] / scale])
      const middle: Point = [(corners[0]![0] + corners[2]![0]) / 2, (corners[0]![1] + corners[2]![1]) / 2]
      if (!isInside(loops, middle)) return []
      // By the odd-even rule a loop inside the face is a hole.
      return [corners.map((from, i) => ({ kind: 'line', layer: e.layer, from, to: corners[(i + 1) % 4]! }))]
    })
    return holes.length === 0 ? e : { ...e, loops: [...e.loops, ...holes] }
  })
}

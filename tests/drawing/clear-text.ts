import type { PlacedDimension } from '../../src/drawing/dimensions/placed-dimension.ts'
import type { Entity, Point } from '../../src/drawing/entity.ts'
import { flattened } from '../../src/drawing/entity-shape.ts'
import type { Font } from '../../src/drawing/font/font.ts'
import { textCorners } from '../../src/drawing/font/text-box.ts'

type Quad = readonly Point[]

/** Written apart from the layout's own test of overlap: clipping one shape by the other's sides leaves something. */
export function meets(piece: readonly Point[], quad: Quad): boolean {
  let left = [...piece]
  for (let i = 0; i < quad.length && left.length > 0; i++) {
    const [a, b] = [quad[i]!, quad[(i + 1) % quad.length]!]
    const depth = (p: Point) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
    const closed = left.length > 2
    const next: Point[] = []
    for (let k = 0; k < left.length; k++) {
      const [p, q] = [left[k]!, left[(k + 1) % left.length]!]
      const [dp, dq] = [depth(p), depth(q)]
      if (dp > 1e-6) next.push(p)
      if ((closed || k + 1 < left.length) && dp > 1e-6 !== dq > 1e-6) {
        const t = dp / (dp - dq)
        next.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])])
      }
    }
    left = next
  }
  return left.length > 1
}

/** Pairs of a text and what it overlaps, in words. `view` is mm on paper. Empty where every text is clear. */
export function textsInTheWay(
  font: Font,
  view: readonly Entity<string>[],
  dimensions: readonly PlacedDimension[],
): string[] {
  const all = [...view, ...dimensions.flatMap((d) => d.graphics)]
  const texts = all.filter((e) => e.kind === 'text').map((e) => ({ text: e.text, quad: textCorners(font, e) }))
  const pieces = all.flatMap((e): Point[][] => {
    if (e.kind === 'text' || e.kind === 'hatch') return []
    if (e.kind === 'arrow') {
      const back = (side: number): Point => [
        e.tip[0] - e.length * Math.cos(e.direction) - (side * e.width * Math.sin(e.direction)) / 2,
        e.tip[1] - e.length * Math.sin(e.direction) + (side * e.width * Math.cos(e.direction)) / 2,
      ]
      return [[e.tip, back(1), back(-1)]]
    }
    const points = flattened(e, 0.01)
    return points.slice(1).map((p, i) => [points[i]!, p])
  })
  return texts.flatMap(({ text, quad }, i) => [
    ...texts.slice(i + 1).flatMap((t) => (meets(t.quad, quad) ? [`${text} on ${t.text}`] : [])),
    ...pieces.flatMap((p) => (meets(p, quad) ? [`${text} on ${JSON.stringify(p)}`] : [])),
  ])
}

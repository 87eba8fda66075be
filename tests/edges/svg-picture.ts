import { type Entity, endsOf, pointOf, rangeOf } from '../../src/edges/entity.ts'
import type { ViewLines } from '../../src/edges/view.ts'

/** A view as SVG to look at: seen lines black, tangent ones grey, hidden ones blue and dashed, cut faces pink. */
export function svgOf(view: ViewLines, zoom = 8, faces: readonly (readonly Entity[])[] = []): string {
  const all = [...view.visible, ...view.smooth, ...view.hidden, ...faces.flat()]
  const points = all.flatMap((e) => {
    const [from, to] = rangeOf(e)
    return [0, 1, 2, 3, 4, 5, 6, 7, 8].map((i) => pointOf(e, from + ((to - from) * i) / 8))
  })
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => -p[1])]
  const [x0, x1, y0, y1] = [Math.min(...xs) - 3, Math.max(...xs) + 3, Math.min(...ys) - 3, Math.max(...ys) + 3]
  const group = (entities: readonly Entity[], style: string) =>
    `<g fill="none" ${style}>${entities.map(pathOf).join('')}</g>`
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${(x1 - x0) * zoom}" height="${(y1 - y0) * zoom}" viewBox="${x0} ${y0} ${x1 - x0} ${y1 - y0}">
<rect x="${x0}" y="${y0}" width="100%" height="100%" fill="#fff"/>
${faces.map((loop) => group(loop, 'stroke="#e7a" stroke-width="0.8"')).join('\n')}
${group(view.hidden, 'stroke="#37c" stroke-width="0.18" stroke-dasharray="1.2 0.6"')}
${group(view.smooth, 'stroke="#999" stroke-width="0.18"')}
${group(view.visible, 'stroke="#000" stroke-width="0.35"')}
</svg>`
}

function pathOf(e: Entity): string {
  if (e.kind === 'circle') return `<circle cx="${e.centre[0]}" cy="${-e.centre[1]}" r="${e.radius}"/>`
  const [[ax, ay], [bx, by]] = endsOf(e)
  if (e.kind === 'line') return `<path d="M${ax} ${-ay}L${bx} ${-by}"/>`
  const [from, to] = rangeOf(e)
  const mid = pointOf(e, (from + to) / 2)
  const [rx, ry, turn] =
    e.kind === 'arc'
      ? [e.radius, e.radius, 0]
      : [
          Math.hypot(...e.major),
          Math.hypot(...e.major) * e.ratio,
          (-Math.atan2(e.major[1], e.major[0]) * 180) / Math.PI,
        ]
  // Two halves: one arc cannot go all the way round.
  const half = ([x, y]: readonly number[]) => `A${rx} ${ry} ${turn} ${(to - from) / 2 > Math.PI ? 1 : 0} 0 ${x} ${-y!}`
  return `<path d="M${ax} ${-ay}${half(mid)}${half([bx, by])}"/>`
}

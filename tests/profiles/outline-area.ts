import { apart2, endsOf, type Vec2 } from '../../src/edges/entity.ts'
import type { Outline } from '../../src/profiles/profile.ts'

/** Enclosed area of an outline, mm²: chords by the shoelace rule, and the segment of each arc. */
export function areaOf(outline: Outline): number {
  const [first] = outline
  if (first?.kind === 'circle') return Math.PI * first.radius ** 2
  // Turned so that each edge goes on where the last one ended.
  const [, second] = outline
  const [a, b] = endsOf(first!)
  let at: Vec2 = endsOf(second!).some((p) => apart2(p, b) < 1e-4) ? a : b
  let sum = 0
  for (const edge of outline) {
    const [from, to] = endsOf(edge)
    const ahead = apart2(from, at) < 1e-4
    const [p, q] = ahead ? [from, to] : [to, from]
    sum += (p[0] * q[1] - p[1] * q[0]) / 2
    if (edge.kind === 'arc') {
      const sweep = edge.end - edge.start
      sum += ((ahead ? 1 : -1) * edge.radius ** 2 * (sweep - Math.sin(sweep))) / 2
    }
    at = q
  }
  return Math.abs(sum)
}

import { depthOf, type Surface } from './surface.ts'
import type { Vec3 } from './vector.ts'

/** The surface that `p` lies least deep inside, and how deep, mm; negative outside it. There must be a surface. */
export function worstMissed(p: Vec3, ...lists: readonly (readonly Surface[])[]): { surface: Surface; depth: number } {
  let surface: Surface | undefined
  let depth = Infinity
  for (const list of lists) {
    for (const s of list) {
      const d = depthOf(s, p)
      if (d < depth) {
        depth = d
        surface = s
      }
    }
  }
  if (!surface) throw new RangeError('worstMissed: no surface that a point could miss')
  return { surface, depth }
}

import type { Frame } from '../geometry/frame.ts'
import { pointIn } from '../geometry/frame.ts'
import type { Vec3 } from '../geometry/vector.ts'
import type { Mesh } from './closed-mesh.ts'

/** The mesh with every point moved; `move` must not turn it inside out. */
export function movedMesh({ points, triangles }: Mesh, move: (p: Vec3) => Vec3): Mesh {
  const out = new Float64Array(points.length)
  for (let i = 0; i < points.length; i += 3) {
    out.set(move([points[i]!, points[i + 1]!, points[i + 2]!]), i)
  }
  return { points: out, triangles }
}

/** Least and greatest coordinates, mm. */
export function extentsOf({ points }: Mesh): { readonly low: Vec3; readonly high: Vec3 } {
  const low: [number, number, number] = [Infinity, Infinity, Infinity]
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  points.forEach((v, i) => {
    const k = (i % 3) as 0 | 1 | 2
    low[k] = Math.min(low[k], v)
    high[k] = Math.max(high[k], v)
  })
  return { low, high }
}

/** A body and how it lies on the print bed: the z of `up` points away from the bed. */
export interface ToPrint {
  readonly mesh: Mesh
  readonly up: Frame
}

/** Between bodies on the bed, mm. */
const gap = 5

/** Bodies enlarged by `scale`, each turned as it is to lie, beside one another on the plane z = 0. */
export function laidOut(bodies: readonly ToPrint[], scale: number): Mesh[] {
  let left = 0
  return bodies.map(({ mesh, up }) => {
    const turned = movedMesh(mesh, (p) => {
      const [x, y, z] = pointIn(up, p)
      return [x * scale, y * scale, z * scale]
    })
    const { low, high } = extentsOf(turned)
    const middle = (low[1] + high[1]) / 2
    const at = left
    left += high[0] - low[0] + gap
    return movedMesh(turned, ([x, y, z]) => [x - low[0] + at, y - middle, z - low[2]])
  })
}

import type { Manifold } from 'manifold-3d'
import { meshKernel } from './kernels.ts'

/** A triangle mesh as flat lists: x, y, z of every point, three indices a triangle. */
export interface Triangles {
  readonly coordinates: readonly number[]
  readonly corners: readonly number[]
}

/** The mesh as a solid of the mesh kernel, points of equal place joined; it throws on a mesh that is not closed. */
export function manifoldOf({ coordinates, corners }: Triangles): Manifold {
  const mesh = new meshKernel.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(coordinates),
    triVerts: Uint32Array.from(corners),
  })
  mesh.merge()
  return meshKernel.Manifold.ofMesh(mesh)
}

/**
 * How far two solids differ, mm: the volume that only one of them has, spread over the skin of the second. Two solids
 * that differ by a chord tolerance differ by less than it.
 */
export function apart(one: Manifold, other: Manifold): number {
  const common = one.intersect(other)
  const difference = one.volume() + other.volume() - 2 * common.volume()
  common.delete()
  return difference / other.surfaceArea()
}

/** Runs a piece of work on manifolds and frees them afterwards: the mesh kernel's memory is not collected. */
export function withManifolds<T>(meshes: readonly Triangles[], work: (...solids: Manifold[]) => T): T {
  const solids: Manifold[] = []
  try {
    for (const mesh of meshes) solids.push(manifoldOf(mesh))
    return work(...solids)
  } finally {
    for (const solid of solids) solid.delete()
  }
}

/** The mesh seen in the mirror of the XZ plane, its triangles turned round so that they still face outwards. */
export const mirroredInY = ({ coordinates, corners }: Triangles): Triangles => ({
  coordinates: coordinates.map((v, i) => (i % 3 === 1 ? -v : v)),
  corners: corners.map((_, i) => corners[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1]!),
})

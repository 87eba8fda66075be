import { cast, iterTopo, makeVertex, measureDistanceBetween, type Shape3D } from 'replicad'
import { brep } from './kernels.ts'
import type { Triangles } from './triangles.ts'

export interface Exact {
  /** mm³ */
  readonly volume: number
  /** mm */
  readonly centroid: readonly [number, number, number]
  readonly solids: number
}

/**
 * Volume and centroid of the true B-rep. The kernel's plain integration is off by up to 1e-6 where a cylinder meets a
 * cylinder, so the one that refines until its error is below 1e-9 is used.
 */
export function exactly(shape: Shape3D): Exact {
  const properties = new brep.GProp_GProps()
  brep.BRepGProp.VolumeProperties(shape.wrapped, properties, 1e-9, true, false)
  const centre = properties.CentreOfMass()
  const exact: Exact = {
    volume: properties.Mass(),
    centroid: [centre.X(), centre.Y(), centre.Z()],
    solids: [...iterTopo(shape.wrapped, 'solid')].length,
  }
  centre.delete()
  properties.delete()
  return exact
}

/** The B-rep's own fine mesh: chords within 0.003 mm, seven times finer than what is judged by it. */
export function finely(shape: Shape3D): Triangles {
  const { vertices, triangles } = shape.mesh({ tolerance: 0.003, angularTolerance: 0.3 })
  return { coordinates: vertices, corners: triangles }
}

/** Exact distance of a point from the skin of a solid, inside or outside, mm. */
export function fromSkin(shape: Shape3D, point: readonly [number, number, number]): number {
  const vertex = makeVertex([...point])
  const distances = [...iterTopo(shape.wrapped, 'shell')].map((shell) => measureDistanceBetween(vertex, cast(shell)))
  return Math.min(...distances)
}

// The one place that imports JSCAD: its packages are CommonJS, and named imports compile but fail when run.
import modeling from '@jscad/modeling'
import type { Geom3 } from '@jscad/modeling/src/geometries/types.js'
// @ts-expect-error the package ships no types
import stlSerializer from '@jscad/stl-serializer'
import type { Mesh } from './closed-mesh.ts'

export type { Geom3 }

/** The mesh as a JSCAD solid, one polygon a triangle, ready for JSCAD's own transforms, measurements and booleans. */
export function jscadSolid({ points, triangles }: Mesh): Geom3 {
  const corner = (i: number): [number, number, number] => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]
  const faces: [number, number, number][][] = []
  for (let t = 0; t < triangles.length; t += 3) {
    faces.push([corner(triangles[t]!), corner(triangles[t + 1]!), corner(triangles[t + 2]!)])
  }
  return modeling.geometries.geom3.fromPoints(faces)
}

/** Volume by JSCAD's own measure, mm³. */
export const jscadVolume = (solid: Geom3): number => modeling.measurements.measureVolume(solid)

/** Binary STL of the solids in one file (coordinates as they are: mm). */
export function binaryStl(solids: readonly Geom3[]): Uint8Array {
  const parts: ArrayBuffer[] = stlSerializer.serialize({ binary: true }, ...solids)
  const bytes = new Uint8Array(parts.reduce((sum, p) => sum + p.byteLength, 0))
  let at = 0
  for (const part of parts) {
    bytes.set(new Uint8Array(part), at)
    at += part.byteLength
  }
  return bytes
}

// An independent mesh kernel as the judge of cells, walls and meshes. Nothing here reads src/solid.
import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d'
import type { Cell } from '../../src/geometry/cell.ts'
import type { Surface } from '../../src/geometry/surface.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import type { Mesh } from '../../src/solid/closed-mesh.ts'

let kernel: ManifoldToplevel | undefined

export async function loadKernel(): Promise<ManifoldToplevel> {
  if (!kernel) {
    kernel = await Module()
    kernel.setup()
  }
  return kernel
}

const segments = 256

/** The cell with round faces of 256 flats, corners on the surface (`inside`) or flats on it (`outside`), in a 400 mm cube. */
export function kernelCell({ Manifold }: ManifoldToplevel, cell: Cell, flats: 'inside' | 'outside'): Manifold {
  let body = Manifold.cube([400, 400, 400], true)
  for (const s of cell.surfaces) {
    body =
      s.kind === 'plane'
        ? body.trimByPlane([-s.normal[0], -s.normal[1], -s.normal[2]], -s.offset)
        : body.intersect(roundBody({ Manifold } as ManifoldToplevel, s, flats))
  }
  return body
}

function roundBody(
  { Manifold }: ManifoldToplevel,
  s: Exclude<Surface, { kind: 'plane' }>,
  flats: 'inside' | 'outside',
) {
  const grow = flats === 'inside' ? 1 : 1 / Math.cos(Math.PI / segments)
  const long = 600
  const upright =
    s.kind === 'cylinder'
      ? Manifold.cylinder(2 * long, s.radius * grow, s.radius * grow, segments, true)
      : Manifold.cylinder(long, 0, long * s.slope * grow, segments)
  return upright.transform(turnedTo(s.axis, s.kind === 'cylinder' ? s.point : s.apex))
}

/** Column-major matrix that turns +Z to `axis` and moves the origin to `place`. */
function turnedTo(axis: Vec3, place: Vec3) {
  const seed: Vec3 = Math.abs(axis[0]) < 0.5 ? [1, 0, 0] : [0, 1, 0]
  const d = seed[0] * axis[0] + seed[1] * axis[1] + seed[2] * axis[2]
  const v: Vec3 = [seed[0] - d * axis[0], seed[1] - d * axis[1], seed[2] - d * axis[2]]
  const l = Math.hypot(...v)
  const x: Vec3 = [v[0] / l, v[1] / l, v[2] / l]
  const y: Vec3 = [axis[1] * x[2] - axis[2] * x[1], axis[2] * x[0] - axis[0] * x[2], axis[0] * x[1] - axis[1] * x[0]]
  return [...x, 0, ...y, 0, ...axis, 0, ...place, 1] as Parameters<Manifold['transform']>[0]
}

/** A mesh of ours as the kernel's solid; throws where the kernel does not take it for a closed manifold. */
export function kernelSolid({ Manifold, Mesh: KernelMesh }: ManifoldToplevel, mesh: Mesh): Manifold {
  return new Manifold(
    new KernelMesh({ numProp: 3, vertProperties: Float32Array.from(mesh.points), triVerts: mesh.triangles }),
  )
}

import type { Cell } from '../geometry/cell.ts'
import { largestRadius, regionOf } from '../geometry/region.ts'
import type { Solid } from '../geometry/solid.ts'
import { type Cone, type Cylinder, type Plane, plane, type Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { add, along, cross, dot, length, scale, squareTo, subtract, type Vec3 } from '../geometry/vector.ts'

/**
 * How round faces become flat ones. `chord`: corners lie on the round face, so that no flat is further from it than
 * `tolerance` mm. `equal-area`: a fixed number of flats whose polygon has the circle's area, for volumes.
 */
export type Facetting =
  | { readonly kind: 'chord'; readonly tolerance: number }
  | { readonly kind: 'equal-area'; readonly flats: number }

/** A flat that stands for (a part of) a surface of a cell. */
export interface Facet {
  readonly plane: Plane
  readonly surface: Surface
}

/** Flats of every cell of the solid; round faces about one axis get the same flats, so that their edges meet. */
export function facetsOf(solid: Solid, facetting: Facetting): Map<Cell, Facet[]> {
  const cells = [...solid.stock, ...solid.cuts]
  const axes: { surface: Cylinder | Cone; radius: number }[] = []
  const axisOf = (s: Cylinder | Cone) => axes.find((a) => isCoaxial(a.surface, s))
  for (const cell of cells) {
    for (const s of cell.surfaces) {
      if (s.kind === 'plane') continue
      // How far a face reaches only matters where the number of flats follows from it.
      const radius = facetting.kind === 'chord' ? largestRadiusOf(s, cell) : 0
      const known = axisOf(s)
      if (known) known.radius = Math.max(known.radius, radius)
      else axes.push({ surface: s, radius })
    }
  }
  return new Map(
    cells.map((cell) => [
      cell,
      cell.surfaces.flatMap((s): Facet[] => {
        if (s.kind === 'plane') return [{ plane: s, surface: s }]
        const axis = axisOf(s)!
        const flats = facetting.kind === 'chord' ? flatsFor(axis.radius, facetting.tolerance) : facetting.flats
        return roundFlats(s, axis.surface.axis, flats, facetting.kind === 'equal-area')
      }),
    ]),
  )
}

/** Number of flats, a multiple of four, that keep a circle of `radius` within `tolerance` (both mm, above 0). */
export function flatsFor(radius: number, tolerance: number): number {
  const share = Math.min(tolerance / radius, 0.2)
  return 4 * Math.max(2, Math.ceil(Math.PI / Math.acos(1 - share) / 4 - 1e-9))
}

function largestRadiusOf(s: Cylinder | Cone, cell: Cell): number {
  if (s.kind === 'cylinder') return s.radius
  const region = regionOf([cell], along(s.apex, s.axis, 1))
  if (!region) return 1
  return largestRadius(region, s.apex, s.axis, 4).radius
}

const placeOf = (s: Cylinder | Cone): Vec3 => (s.kind === 'cylinder' ? s.point : s.apex)

function isCoaxial(a: Cylinder | Cone, b: Cylinder | Cone): boolean {
  if (Math.abs(dot(a.axis, b.axis)) < 1 - 1e-12) return false
  return length(cross(a.axis, subtract(placeOf(b), placeOf(a)))) < coincident
}

function roundFlats(s: Cylinder | Cone, axis: Vec3, flats: number, equalArea: boolean): Facet[] {
  const x = squareTo(axis)
  const y = cross(axis, x)
  const turn = (2 * Math.PI) / flats
  const grow = equalArea ? Math.sqrt(turn / Math.sin(turn)) : 1
  const inner = grow * Math.cos(turn / 2)
  return Array.from({ length: flats }, (_, i) => {
    const angle = (i + 0.5) * turn
    const out = add(scale(x, Math.cos(angle)), scale(y, Math.sin(angle)))
    if (s.kind === 'cylinder') return { plane: plane(s.name, along(s.point, out, s.radius * inner), out), surface: s }
    return { plane: plane(s.name, s.apex, subtract(out, scale(s.axis, s.slope * inner))), surface: s }
  })
}

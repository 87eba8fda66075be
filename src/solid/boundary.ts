import type { Cell } from '../geometry/cell.ts'
import { cellVertices } from '../geometry/cell-vertices.ts'
import type { Solid } from '../geometry/solid.ts'
import { type Plane, plane, type Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { along, cross, dot, negate, squareTo } from '../geometry/vector.ts'
import { type Facetting, facetsOf } from './facets.ts'
import { type Polygon, sideOf, splitPolygon } from './polygon.ts'
import { type Box, boxesMeet, boxOf, type Polyhedron, polyhedronOf } from './polyhedron.ts'

/**
 * The skin of a solid as convex flat polygons, facing outwards. They cover the skin once, but their corners need not
 * meet (a corner may lie on a neighbour's edge): `closedMesh` mends that.
 *
 * Since every cell is convex, each face is cut only by the cells it meets, and a face that a cell does not touch stays
 * whole. Faces of two cells that lie in one plane are told apart by which side the metal is on; `touch` (mm) is how
 * near that is.
 */
export function boundaryOf(solid: Solid, facetting: Facetting, touch = coincident): Polygon[] {
  const facets = facetsOf(solid, facetting)
  const bounds = boundsOf(solid.stock)
  if (!bounds) return []
  const stock = solid.stock.map((c) => polyhedronOf(facets.get(c)!, bounds, touch))
  const cuts = solid.cuts.map((c) => polyhedronOf(facets.get(c)!, bounds, touch)).filter((c) => c.faces.length > 0)
  const skin: Polygon[] = []
  stock.forEach((cell, i) => {
    let faces: Polygon[] = [...cell.faces]
    stock.forEach((other, k) => {
      if (k !== i) faces = faces.flatMap((f) => outsideOf(f, other, touch, (same) => (same ? k < i : true)))
    })
    for (const cut of cuts) faces = faces.flatMap((f) => outsideOf(f, cut, touch, (same) => same))
    skin.push(...faces)
  })
  cuts.forEach((cell, j) => {
    const walls = cell.faces.filter((f) => f.facet.surface.name !== 'bounds')
    for (const wall of walls) {
      // A cut leaves a face where there was metal on both sides of it: its own, now gone, and that beyond. Where only
      // the metal beyond was there, the stock's own face is the skin already.
      let faces = insideAny(wall, stock, touch, (same) => same).flatMap((f) =>
        insideAny(f, stock, touch, (same) => !same),
      )
      cuts.forEach((other, k) => {
        if (k !== j) faces = faces.flatMap((f) => outsideOf(f, other, touch, (same) => (same ? k < j : true)))
      })
      skin.push(...faces.map(turned))
    }
  })
  return skin
}

/** A box round the stock, at least 1 mm clear of it and of the flats that stand for its round faces. */
function boundsOf(stock: readonly Cell[]): Box | undefined {
  const corners = stock.flatMap((cell) => cellVertices({ surfaces: cell.surfaces.flatMap(flatsAround) }))
  if (corners.length === 0) return undefined
  const { min, max } = boxOf(corners)
  return { min: [min[0] - 1, min[1] - 1, min[2] - 1], max: [max[0] + 1, max[1] + 1, max[2] + 1] }
}

/** Four planes that enclose a round face with room for flats of its own area (eight of them stand out by 5 %). */
function flatsAround(s: Surface): Plane[] {
  if (s.kind === 'plane') return [s]
  const x = squareTo(s.axis)
  const y = cross(s.axis, x)
  return [x, y, negate(x), negate(y)].map((out) =>
    s.kind === 'cylinder'
      ? plane(s.name, along(s.point, out, 1.1 * s.radius), out)
      : plane(s.name, s.apex, along(out, s.axis, -1.1 * s.slope)),
  )
}

const turned = (p: Polygon): Polygon => ({
  corners: [...p.corners].reverse(),
  facet: {
    surface: p.facet.surface,
    plane: { ...p.facet.plane, normal: negate(p.facet.plane.normal), offset: -p.facet.plane.offset },
  },
})

type Split = { inside?: Polygon; outside: Polygon[] }

/**
 * Cuts a polygon at the faces of a cell. `coplanar(same)` says whether a polygon in the plane of one of the cell's
 * faces counts as inside; `same`: both look the same way.
 */
function splitAt(polygon: Polygon, cell: Polyhedron, touch: number, coplanar: (same: boolean) => boolean): Split {
  if (!boxesMeet(boxOf(polygon.corners), cell.box, touch)) return { outside: [polygon] }
  const across: Plane[] = []
  for (const { plane } of cell.facets) {
    const side = sideOf(polygon.corners, plane, touch)
    if (side === 'across') across.push(plane)
    else if (side === 'front') return { outside: [polygon] }
    else if (side === 'on' && !coplanar(dot(plane.normal, polygon.facet.plane.normal) > 0)) {
      return { outside: [polygon] }
    }
  }
  let inside = polygon
  const outside: Polygon[] = []
  for (const plane of across) {
    const side = sideOf(inside.corners, plane, touch)
    if (side === 'across') {
      const parts = splitPolygon(inside, plane, touch)
      outside.push(parts.front)
      inside = parts.behind
    } else if (side !== 'behind') {
      // Nothing is inside after all: the polygon stays whole instead of in pieces.
      return { outside: [polygon] }
    }
  }
  return { inside, outside }
}

const outsideOf = (p: Polygon, cell: Polyhedron, touch: number, coplanar: (same: boolean) => boolean): Polygon[] =>
  splitAt(p, cell, touch, coplanar).outside

function insideAny(
  polygon: Polygon,
  cells: readonly Polyhedron[],
  touch: number,
  coplanar: (same: boolean) => boolean,
): Polygon[] {
  const found: Polygon[] = []
  let rest = [polygon]
  for (const cell of cells) {
    const next: Polygon[] = []
    for (const piece of rest) {
      const { inside, outside } = splitAt(piece, cell, touch, coplanar)
      if (inside) found.push(inside)
      next.push(...outside)
    }
    rest = next
  }
  return found
}

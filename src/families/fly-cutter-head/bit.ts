import { box, type Cell, cellFrom, cellOf } from '../../geometry/cell.ts'
import { type Plane, plane } from '../../geometry/surface.ts'
import type { Vec3 } from '../../geometry/vector.ts'
import { facetNormals, type GroundFacets, unground } from '../../mechanics/angles/facets.ts'
import type { BitFace } from '../../mechanics/angles/ground-bit.ts'
import type { Dimension } from '../../part/dimension.ts'
import type { Part } from '../../part/part.ts'
import { faceFrame } from './frames.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/**
 * The bit in its slot, in the body frame: the blank, and the facets through the tip when something is ground. Facets
 * are given in the bit's own frame at the tip (x outward along the bit, y in the direction of motion, z towards the
 * work), which is left-handed when the tool turns anticlockwise.
 */
export function bitOf(p: Parameters, l: Layout): Part {
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const [low, high] = l.hand < 0 ? [l.bit.leading, l.bit.trailing] : [l.bit.trailing, l.bit.leading]
  const names = ['inner end', 'outer end', 'side −Y', 'side +Y', 'work side', 'back'] as const
  const blank = box(names, [l.bit.innerEnd, low, l.bit.workSide], [l.bit.outerEnd, high, l.bit.back])
  return {
    id: 'bit',
    label: 'Bit',
    material: p.bit.material,
    stock: [
      {
        id: 'bit',
        label: 'bit',
        role: 'bit',
        cells: groundCells(p, l, blank).map((c) => cellFrom(face, c)),
        frame: face,
        opensInto: [],
        governedBy: [],
        dimensions: bitDimensions(p, l),
      },
    ],
    cuts: [],
  }
}

/** In F: the blank as it is, or its untouched inner part and the ground part at the tip. */
function groundCells(p: Parameters, l: Layout, blank: Cell): Cell[] {
  const { leading, end, underside } = p.bit['ground-off']
  const { facets, tipInFace: tip, groundLength } = l.bit
  if (facets === unground && leading === 0 && end === 0 && underside === 0) return [blank]
  // (x, y, z) of the bit's own frame → F: a change of frame, never a rotation.
  const facet = (name: BitFace, [x, y, z]: Vec3): Plane => plane(name, tip, [x, l.hand * y, -z])
  const normals = facetNormals(facets)
  const back = tip[0] - groundLength
  const seam = (looking: 1 | -1) => plane('end of grinding', [back, 0, 0], [looking, 0, 0])
  const outer = cellOf(
    ...blank.surfaces,
    seam(-1),
    facet('rake face', normals.rake),
    facet('end flank', normals.end),
    facet('work-side flank', normals.workSide),
  )
  return l.bit.innerEnd < back - 1e-6 ? [cellOf(...blank.surfaces, seam(1)), outer] : [outer]
}

/** Angles of the facets by their named sizes, each in a plane parallel to two sides of the blank. */
export const facetAngles: readonly {
  readonly id: keyof NonNullable<Parameters['bit']['facets']>
  readonly label: string
  readonly facet: keyof GroundFacets
}[] = [
  { id: 'rake-along', label: 'rake along the bit', facet: 'rakeAlong' },
  { id: 'rake-across', label: 'rake across the bit', facet: 'rakeAcross' },
  { id: 'end-edge-angle', label: 'lean of the end edge', facet: 'endEdgeAngle' },
  { id: 'end-relief', label: 'relief behind the end edge', facet: 'endRelief' },
  { id: 'work-side-edge-angle', label: 'rise of the work-side edge', facet: 'workSideEdgeAngle' },
  { id: 'work-side-relief', label: 'relief behind the work-side edge', facet: 'workSideRelief' },
]

function bitDimensions(p: Parameters, l: Layout): Dimension[] {
  const plain = (id: string, label: string, value: number, kind: Dimension['kind'] = 'length'): Dimension => ({
    id: `bit.${id}`,
    label,
    kind,
    value,
    tolerance: { kind: 'general' },
    feature: 'bit',
    measurable: true,
  })
  const { leading, end, underside } = p.bit['ground-off']
  const ground = l.bit.facets !== unground
  return [
    plain('width', 'bit width', p.bit.width),
    plain('height', 'bit height', p.bit.height),
    plain('length', 'bit length before it is ground', p.bit.length),
    ...(leading > 0 ? [plain('off-leading', 'ground off the leading face at the tip', leading)] : []),
    ...(end > 0 ? [plain('off-end', 'ground off the end at the tip', end)] : []),
    ...(underside > 0 ? [plain('off-underside', 'ground off the work side at the tip', underside)] : []),
    ...(ground ? [plain('ground-length', 'facets run in from the tip', l.bit.groundLength)] : []),
    // A facet that does not lean is the blank as it was, or ground parallel to it.
    ...facetAngles.flatMap(({ id, label, facet }) => {
      const angle = l.bit.facets[facet]
      return Math.abs(angle) > 1e-9 ? [plain(id, label, angle, 'angle')] : []
    }),
    ...(p.bit['nose-radius'] > 0
      ? [plain('nose-radius', 'nose between end edge and work-side edge', p.bit['nose-radius'], 'radius')]
      : []),
  ]
}

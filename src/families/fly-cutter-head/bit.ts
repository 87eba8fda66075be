import { box, type Cell, cellFrom, cellOf } from '../../geometry/cell.ts'
import { type Frame, pointFrom } from '../../geometry/frame.ts'
import { type Plane, plane } from '../../geometry/surface.ts'
import type { Vec3 } from '../../geometry/vector.ts'
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
  const grinds = grindsOf(p, l, face)
  return {
    id: 'bit',
    label: 'Bit',
    material: p.bit.material,
    stock: [
      {
        id: 'blank',
        label: 'bit blank',
        role: 'bit',
        cells: [cellFrom(face, blank)],
        frame: face,
        opensInto: [],
        dimensions: blankDimensions(p),
      },
    ],
    cuts: grinds.map(({ id, label, cell }) => ({
      id,
      label,
      role: 'bit',
      cells: [cell],
      frame: face,
      opensInto: ['outside', 'rake-face', 'end-flank', 'work-side-flank'],
      dimensions: [],
    })),
  }
}

function grindsOf(p: Parameters, l: Layout, face: Frame): { id: string; label: string; cell: Cell }[] {
  const ground = p.bit['ground-off']
  const f = p.bit.facets
  if (!f && ground.leading === 0 && ground.end === 0 && ground.underside === 0) return []
  const tangent = (angle: number | undefined) => Math.tan(angle ?? 0)
  const tip = l.bit.tipInFace
  // (x, y, z) of the bit's own frame → F: a change of frame, never a rotation.
  const toFace = (v: Vec3): Vec3 => [v[0], l.hand * v[1], -v[2]]
  const facet = (name: string, ...edges: [Vec3, Vec3]): Plane => {
    // The metal of the bit is where n·v < 0; the cut is the other side.
    const [a, b] = edges
    const n: Vec3 = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
    const cut = toFace([-n[0], -n[1], -n[2]])
    return plane(name, tip, cut)
  }
  const back = plane('end of grinding', [tip[0] - l.bit.groundLength, 0, 0], [-1, 0, 0])
  // Rake face y = x·tan(along) + z·tan(across): spanned by (0, across, 1) and (1, along, 0); normal towards +y.
  const rake = facet('rake face', [0, tangent(f?.['rake-across']), 1], [1, tangent(f?.['rake-along']), 0])
  // End flank x = z·tan(edge) + y·tan(relief): normal towards +x.
  const end = facet('end flank', [tangent(f?.['end-relief']), 1, 0], [tangent(f?.['end-edge-angle']), 0, 1])
  // Work-side flank z = x·tan(edge) + y·tan(relief): normal towards +z.
  const work = facet(
    'work-side flank',
    [1, 0, tangent(f?.['work-side-edge-angle'])],
    [0, 1, tangent(f?.['work-side-relief'])],
  )
  return [
    { id: 'rake-face', label: 'rake face', cell: cellFrom(face, cellOf(rake, back)) },
    { id: 'end-flank', label: 'end flank', cell: cellFrom(face, cellOf(end, back)) },
    { id: 'work-side-flank', label: 'work-side flank', cell: cellFrom(face, cellOf(work, back)) },
  ]
}

function blankDimensions(p: Parameters): Dimension[] {
  const plain = (id: string, label: string, value: number): Dimension => ({
    id,
    label,
    kind: 'length',
    value,
    tolerance: { kind: 'general' },
    feature: 'blank',
    measurable: true,
  })
  return [
    plain('blank.width', 'bit width', p.bit.width),
    plain('blank.height', 'bit height', p.bit.height),
    plain('blank.length', 'bit length', p.bit.length),
  ]
}

/** The tip in the body frame, mm. */
export const tipOf = (l: Layout): Vec3 => pointFrom(faceFrame(l.faceAngle, l.depthOnAxis), l.bit.tipInFace)

import { box, type Cell, cellFrom, cellOf } from '../../geometry/cell.ts'
import { pointFrom } from '../../geometry/frame.ts'
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
        dimensions: blankDimensions(p),
      },
    ],
    cuts: [],
  }
}

/** In F: the blank as it is, or its untouched inner part and the ground part at the tip. */
function groundCells(p: Parameters, l: Layout, blank: Cell): Cell[] {
  const ground = p.bit['ground-off']
  const f = p.bit.facets
  if (!f && ground.leading === 0 && ground.end === 0 && ground.underside === 0) return [blank]
  const tip = l.bit.tipInFace
  // (x, y, z) of the bit's own frame → F: a change of frame, never a rotation.
  const facet = (name: string, out: Vec3): Plane => plane(name, tip, [out[0], l.hand * out[1], -out[2]])
  const tangent = (angle: number | undefined) => Math.tan(angle ?? 0)
  const back = tip[0] - l.bit.groundLength
  const facets = [
    // y = x·tan(rake along) + z·tan(rake across)
    facet('rake face', [-tangent(f?.['rake-along']), 1, -tangent(f?.['rake-across'])]),
    // x = z·tan(end edge angle) + y·tan(end relief)
    facet('end flank', [1, -tangent(f?.['end-relief']), -tangent(f?.['end-edge-angle'])]),
    // z = x·tan(work-side edge angle) + y·tan(work-side relief)
    facet('work-side flank', [-tangent(f?.['work-side-edge-angle']), -tangent(f?.['work-side-relief']), 1]),
  ]
  const inner = cellOf(...blank.surfaces, plane('end of grinding', [back, 0, 0], [1, 0, 0]))
  const outer = cellOf(...blank.surfaces, plane('end of grinding', [back, 0, 0], [-1, 0, 0]), ...facets)
  return l.bit.innerEnd < back - 1e-6 ? [inner, outer] : [outer]
}

function blankDimensions(p: Parameters): Dimension[] {
  const plain = (id: string, label: string, value: number): Dimension => ({
    id,
    label,
    kind: 'length',
    value,
    tolerance: { kind: 'general' },
    feature: 'bit',
    measurable: true,
  })
  return [
    plain('bit.width', 'bit width', p.bit.width),
    plain('bit.height', 'bit height', p.bit.height),
    plain('bit.length', 'bit length', p.bit.length),
  ]
}

/** The tip in the body frame, mm. */
export const tipOf = (l: Layout): Vec3 => pointFrom(faceFrame(l.faceAngle, l.depthOnAxis), l.bit.tipInFace)

import type { BitFace, TipViews } from '../../../figures/pictures.ts'
import type { Cell } from '../../../geometry/cell.ts'
import { cellVertices } from '../../../geometry/cell-vertices.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { depthOf, type Plane, plane } from '../../../geometry/surface.ts'
import { coincident } from '../../../geometry/tolerance.ts'
import { add, cross, distance, dot, scale, subtract, type Vec3 } from '../../../geometry/vector.ts'
import type { GroundFacets } from '../../../mechanics/angles/facets.ts'
import { type Tip, tipOf } from '../../../mechanics/angles/tip-setting.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf, isGround } from '../engineering/angles.ts'
import { faceFrame } from '../frames.ts'

/** So much of the bit is shown, in its own widths or heights, whichever is larger. */
const shown = 1.3

export function tipViewsOf(design: HeadDesign): TipViews {
  const { layout, parameters } = design
  const { bit } = layout
  const tip = tipOf(bit.setting)
  const face = faceFrame(layout.faceAngle, layout.depthOnAxis)
  const inner = Math.max(bit.innerEnd, bit.tipInFace[0] - shown * Math.max(bit.blank.width, bit.blank.height))
  const cutOff = plane('cut off', pointFrom(face, [inner, 0, 0]), [-face.x[0], -face.x[1], -face.x[2]])
  const cells = solidOf(design.part('bit')).stock
  const corners = [inner, bit.outerEnd].flatMap((x) =>
    [bit.leading, bit.trailing].flatMap((y) => [bit.workSide, bit.back].map((z): Vec3 => [x, y, z])),
  )
  return {
    rotation: parameters.rotation,
    pieces: cells
      .map((cell, i) => facesOf({ surfaces: [...cell.surfaces, cutOff] }, tip, i === cells.length - 1))
      .filter((faces) => faces.length > 0),
    blank: corners.map((corner) => atTip(tip, pointFrom(face, corner))),
    tipRadius: tip.radius,
    noseRadius: parameters.bit['nose-radius'],
    angles: anglesOf(design),
    ground: isGround(design) ? facetNames.map(({ id, label, name }) => ({ id, label, angle: bit.facets[name] })) : [],
  }
}

const facetNames: readonly { id: string; label: string; name: keyof GroundFacets }[] = [
  { id: 'rake-along', label: 'rake along the bit', name: 'rakeAlong' },
  { id: 'rake-across', label: 'rake across the bit', name: 'rakeAcross' },
  { id: 'end-edge-angle', label: 'end edge, off square', name: 'endEdgeAngle' },
  { id: 'end-relief', label: 'end relief', name: 'endRelief' },
  { id: 'work-side-edge-angle', label: 'work-side edge, off the bit', name: 'workSideEdgeAngle' },
  { id: 'work-side-relief', label: 'work-side relief', name: 'workSideRelief' },
]

/** Sides of a piece of the bit; the seam between its ground and its untouched piece is no side of the ground one. */
function facesOf({ surfaces }: Cell, tip: Tip, isGroundPiece: boolean): BitFace[] {
  const corners = cellVertices({ surfaces })
  const sides = surfaces as readonly Plane[]
  return sides.flatMap((side, i): BitFace[] => {
    const isDouble = sides.slice(0, i).some((s) => distance(s.normal, side.normal) < 1e-8 && s.offset === side.offset)
    if (isDouble || (isGroundPiece && side.name === 'end of grinding')) return []
    const own = corners.filter((p) => Math.abs(depthOf(side, p)) < coincident)
    const around = inOrder(own, side.normal)
    if (around.length < 3) return []
    return [
      {
        corners: around.map((p) => atTip(tip, p)),
        out: directionAtTip(tip, side.normal),
      },
    ]
  })
}

/** Corners of a flat face in turn, each once. */
function inOrder(corners: readonly Vec3[], normal: Vec3): Vec3[] {
  const apart = corners.filter((p, i) => !corners.slice(0, i).some((q) => distance(p, q) < coincident))
  const [first] = apart
  if (first === undefined || apart.length < 3) return []
  const middle = scale(apart.reduce(add), 1 / apart.length)
  const x = subtract(first, middle)
  const y = cross(normal, x)
  const angle = (p: Vec3) => Math.atan2(dot(subtract(p, middle), y), dot(subtract(p, middle), x))
  return apart.toSorted((p, q) => angle(p) - angle(q))
}

const directionAtTip = (tip: Tip, d: Vec3): Vec3 => [dot(d, tip.outward), dot(d, tip.motion), dot(d, tip.up)]
const atTip = (tip: Tip, p: Vec3): Vec3 => directionAtTip(tip, subtract(p, tip.point))

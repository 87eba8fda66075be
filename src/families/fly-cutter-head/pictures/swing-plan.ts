import type { SwingPlan } from '../../../figures/pictures.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { inPlane, planarSection } from '../../../geometry/planar-section.ts'
import { depthIn, type Point, type Segment } from '../../../geometry/polygon.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { barOutline, levelPlane, shadow } from './planes.ts'

export function swingPlanOf(design: HeadDesign): SwingPlan {
  const { layout, parameters } = design
  const plan = levelPlane(0)
  const head = barOutline(design)
  return {
    rotation: parameters.rotation,
    head,
    below: faceEdges(design).filter(([p, q]) => depthIn(head, [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]) > 0.01),
    bit: shadow(design.part('bit'), plan),
    screws: design.screwParts.map((screw, i) => {
      const axis = pointFrom(faceFrame(layout.faceAngle, layout.depthOnAxis), [
        layout.screws.xs[i]!,
        0,
        layout.screws.height,
      ])
      return planarSection(solidOf(screw), levelPlane(axis[2])).stock[0] ?? []
    }),
    tip: inPlane(plan, layout.bit.tip),
    sweptRadius: design.sweptRadius,
    workWidth: parameters.work.width,
    ahead: parameters.slot['ahead-of-centre'],
  }
}

/** Edges of slot and step where they open into the angled face, as the plan shows them. */
function faceEdges(design: HeadDesign): Segment[] {
  const { layout } = design
  const face = faceFrame(layout.faceAngle, layout.depthOnAxis)
  // Just inside the metal: in the face itself there is none on either side.
  const inside = { ...face, origin: pointFrom(face, [0, 0, 1e-3]) }
  const toPlan = ([x, y]: Point): Point => inPlane(levelPlane(0), pointFrom(inside, [x, y, 0]))
  return planarSection(solidOf(design.part('body')), inside).edges.map(([p, q]) => [toPlan(p), toPlan(q)])
}

import type { Drawn, ScrewSection } from '../../../figures/pictures.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { planarSection } from '../../../geometry/planar-section.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { crossPlane } from './planes.ts'

export function screwSectionOf(design: HeadDesign): Drawn<ScrewSection> {
  const { layout, parameters } = design
  const { screws } = layout
  const face = faceFrame(layout.faceAngle, layout.depthOnAxis)
  const [x, , z] = pointFrom(face, [screws.xs[0]!, 0, screws.height])
  const frame = crossPlane(x)
  const shown = (id: string) => planarSection(solidOf(design.part(id)), frame)
  const head = shown('body')
  if (head.edges.length === 0) return { leftOut: 'The first set screw stands outside the head.' }
  return {
    rotation: parameters.rotation,
    head,
    bit: shown('bit').stock,
    screw: shown('screw-1').stock,
    leadingWall: layout.slot.leading,
    screwWall: { from: screws.seat, to: layout.step.wall },
    wallThickness: parameters.step['wall-thickness'],
    ahead: parameters.slot['ahead-of-centre'],
    thread: screws.thread.name,
    // Down the plane of the section, the face is further off than square to it.
    faceAt: z - screws.height / Math.cos(layout.faceAngle),
    screwHeight: screws.height,
  }
}

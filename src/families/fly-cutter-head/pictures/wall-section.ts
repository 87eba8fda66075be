import type { SectionedPart, WallSection } from '../../../figures/pictures.ts'
import { cellVertices } from '../../../geometry/cell-vertices.ts'
import { type Frame, pointIn } from '../../../geometry/frame.ts'
import { inPlane, planarSection } from '../../../geometry/planar-section.ts'
import { hull, overlap } from '../../../geometry/polygon.ts'
import { isInside, type Solid } from '../../../geometry/solid.ts'
import { plane } from '../../../geometry/surface.ts'
import { add, scale, type Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { axialPlane } from './planes.ts'

export function wallSectionOf(design: HeadDesign): WallSection {
  const { layout, parameters } = design
  const { leading, trailing } = layout.slot
  const [low, high] = [Math.min(leading, trailing), Math.max(leading, trailing)]
  // Through the axis where the slot lies there, else through the slot just beside it.
  const beside = low < -margin && high > margin ? 0 : low >= -margin ? low + margin : high - margin
  const frame = axialPlane(beside)
  const body = solidOf(design.part('body'))
  const face = faceFrame(layout.faceAngle, layout.depthOnAxis)
  const behind = axialPlane(high + margin)
  return {
    beside,
    head: planarSection(body, frame),
    behind: planarSection(body, behind).edges.filter(([p, q]) => {
      const [x, z] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
      return Math.abs(pointIn(face, [x, 0, z])[2]) < margin
    }),
    arbor: arborSection(design, beside),
    bit: solidOf(design.part('bit')).stock.map((cell) => hull(cellVertices(cell).map((p) => inPlane(frame, p)))),
    walls: design.walls
      .all()
      .filter(
        ({ meant, distance, from, to }) =>
          !meant &&
          distance > 0 &&
          [from, to].every((p) => Math.abs(p[1] - beside) < nearPlane) &&
          runsInMetal(body, from, to),
      )
      .map(({ between: [a, b], from, to, distance }) => ({
        id: `${a}-${b}`,
        label: `${a} to ${b}`.replaceAll('-', ' '),
        from: inPlane(frame, from),
        to: inPlane(frame, to),
        distance,
      })),
    openings: openingsOf(design, frame),
    face: { depthOnAxis: layout.depthOnAxis, angle: layout.faceAngle, halfWidth: layout.across / 2 },
    seatDepth: layout.slot.depth,
    bore: {
      diameter: parameters.bore.diameter,
      depth: parameters.bore.kind === 'blind' ? parameters.bore.depth : undefined,
    },
    spigotLength: parameters.arbor['spigot-length'],
    tip: inPlane(frame, layout.bit.tip),
  }
}

/** Cuts that break into each other where they should not, as far as they do so in this section. */
function openingsOf(design: HeadDesign, frame: Frame): WallSection['openings'] {
  const { stock, cuts } = design.part('body')
  const cells = stock.flatMap((feature) => feature.cells)
  const shown = (id: string) =>
    planarSection({ stock: cells, cuts: cuts.find((cut) => cut.id === id)?.cells ?? [] }, frame).cuts
  return design.walls
    .all()
    .filter(({ meant, distance, between: [, b] }) => !meant && distance === 0 && b !== 'outside')
    .flatMap(({ between: [a, b] }) => {
      const areas = shown(a).flatMap((one) => shown(b).map((other) => overlap(one, other)))
      const [area] = areas.filter((polygon) => polygon.length > 2)
      return area ? [{ label: `${a} and ${b} break into each other`.replaceAll('-', ' '), area }] : []
    })
}

/** Not a wall between two cuts that a third one lies between. */
const runsInMetal = (solid: Solid, from: Vec3, to: Vec3): boolean =>
  [0.1, 0.3, 0.5, 0.7, 0.9].every((t) => isInside(solid, add(scale(from, 1 - t), scale(to, t))))

/** How far inside the slot's walls a section counts as inside, mm. */
const margin = 0.01

/** A wall whose nearest points lie no further off the section, mm, is drawn in it. */
const nearPlane = 0.5

/** The arbor as far up as it tells something about the joint. */
function arborSection(design: HeadDesign, beside: number): SectionedPart {
  const { arbor, bore } = design.parameters
  const above = arbor.kind === 'shank' ? arbor['shoulder-thickness'] : 0
  const top = above + 0.5 * bore.diameter
  const { stock, cuts } = solidOf(design.part('arbor'))
  const end = plane('drawn to here', [0, 0, top], [0, 0, 1])
  const shortened = stock.map(({ surfaces }) => ({ surfaces: [...surfaces, end] }))
  const section = planarSection({ stock: shortened, cuts }, axialPlane(beside))
  return { ...section, edges: section.edges.filter((edge) => edge.some(([, z]) => z < top - margin)) }
}

import { axisMark, crossMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import { type SectionPart, sectionOf } from '../../../edges/section.ts'
import { type Cell, cellOf, rod } from '../../../geometry/cell.ts'
import type { Solid } from '../../../geometry/solid.ts'
import { cylinder } from '../../../geometry/surface.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { joinedLength, pinDiameter } from '../engineering/fit.ts'
import { cornersBeside } from '../section.ts'
import { type Assembly, itemMark, pinLetter, sectionLetter } from './assembly-views.ts'
import { slotOnAxis } from './body-views.ts'
import { threadSide } from './thread-lines.ts'

/** Through the axis, seen from the step's side; arbor, bit and pin are left whole, as shafts are. */
export function assemblySection(assembly: Assembly): ViewPlan {
  const { design, sizes, views } = assembly
  const { layout: l, parameters: p } = design
  const frame = views.side
  const s = views.bitSide
  const toBit = s > 0 ? 0 : Math.PI
  const pin = catchPin(design)
  const bored = (solid: Solid): Solid => (pin ? { ...solid, cuts: [...solid.cuts, pin.hole] } : solid)
  const whole = (id: string, solid: Solid): SectionPart => ({ id, solid, cut: false })
  const parts: SectionPart[] = [
    { id: 'body', solid: bored(solidOf(design.part('body'))), cut: true },
    whole('arbor', bored(solidOf(design.part('arbor')))),
    // A bit that lies wholly beside the axis is not met by the cut.
    ...(slotOnAxis(design) ? [whole('bit', solidOf(design.part('bit')))] : []),
    ...(pin ? [whole('pin', { stock: [pin.rod], cuts: [] })] : []),
  ]
  const { lines, faces } = sectionOf(parts, frame)
  const spigot = -p.arbor['spigot-length']
  const across = design.parameters.stock.size / 2
  return {
    id: 'assembly-section',
    caption: [
      `${sectionLetter}–${sectionLetter}`,
      `through the axis, ${slotOnAxis(design) ? 'arbor and bit left whole' : 'arbor left whole, bit left out'}`,
    ],
    lines: [
      ...drawnView(lines, false),
      ...hatchedFaces(faces, () => Math.PI / 4),
      ...(l.spigotThread ? threadSide([0, 0], [0, spigot + p.arbor['lead-in']], l.spigotThread.tapDrill) : []),
    ],
    marks: (scale) => [
      ...axisMark([0, arborTop(design)], [0, -l.depthOnAxis])(scale),
      ...(pin?.endOn ? crossMark([0, -pin.depth], pin.radius)(scale) : []),
    ],
    requests: [
      ...(pin
        ? sizes.at('assembly.pin-depth', {
            kind: 'linear',
            direction: 'vertical',
            from: [-s * (l.across / 2), 0],
            to: pin.endOn ? [0, -pin.depth] : [-s * across, -pin.depth],
            side: s > 0 ? 'left' : 'right',
          })
        : []),
      ...itemMark(assembly, 'screw-and-washer', 'assembly-section', [0, spigot], toBit),
    ],
    ...(pin && {
      details: [
        {
          letter: pinLetter,
          says: 'catch pin',
          center: pin.endOn ? [0, -pin.depth] : [s * (across - pin.radius), -pin.depth],
          radius: 2.5 * pin.radius,
          toward: toBit + s * 0.6,
          smallest: 2 * pin.radius,
          requests: [
            ...sizes.at(
              'assembly.pin-diameter',
              pin.endOn
                ? { kind: 'diameter', center: [0, -pin.depth], radius: pin.radius, toward: Math.PI - toBit + s * 0.5 }
                : {
                    kind: 'linear',
                    direction: 'vertical',
                    from: [s * across, -pin.depth - pin.radius],
                    to: [s * across, -pin.depth + pin.radius],
                    side: s > 0 ? 'right' : 'left',
                  },
              { after: 'pin' },
            ),
            ...itemMark(
              assembly,
              'pin',
              'assembly-section',
              // Off the centre lines, which the leader must not run along.
              pin.endOn
                ? [s * 0.3 * pin.radius, 0.3 * pin.radius - pin.depth]
                : [s * (across - pin.radius), -pin.depth],
              toBit + s * 0.8,
            ),
          ],
        },
      ],
    }),
  }
}

interface CatchPin {
  readonly depth: number
  readonly radius: number
  readonly rod: Cell
  readonly hole: Cell
  /** Whether it is seen along its axis. */
  readonly endOn: boolean
}

/** The pin across head and spigot, square to a pair of flats: where the flats face ±X it runs along the slot. */
function catchPin(design: HeadDesign): CatchPin | undefined {
  const { parameters: p } = design
  if (p.fit.catch !== 'pin') return undefined
  const depth = joinedLength(design).middle
  const radius = pinDiameter(p) / 2
  const endOn = !cornersBeside(p.stock)
  const axis: Vec3 = endOn ? [0, 1, 0] : [1, 0, 0]
  const half = p.stock.size / 2
  const start: Vec3 = [-half * axis[0], -half * axis[1], -depth]
  return {
    depth,
    radius,
    endOn,
    rod: rod({ wall: 'pin', start: 'pin end', end: 'pin end' }, start, axis, p.stock.size, radius),
    hole: cellOf(cylinder('pin hole', start, axis, radius)),
  }
}

import { angleInMinutes } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { type Operation, operation } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk, joinedLength, pinDiameter } from '../engineering/fit.ts'
import { circumscribed } from '../section.ts'
import { drillFeed, millSpeedThrough } from './cutting-data.ts'
import { heatingSteps } from './joining.ts'
import { catchWords, joiningWords } from './joining-words.ts'
import { pinDrill } from './pin-drill.ts'
import { isJoinedFirst } from './tilted-set-up.ts'
import { asTool, pecking } from './tooling.ts'

/** Head and arbor together, and what catches the head should the joint slip. `before`: what must be done to both by then. */
export function joiningOperations(design: HeadDesign, before: readonly string[]): Operation[] {
  return [joining(design, before), ...catching(design)]
}

/** Room round the head in its cup, on the diameter, and how much of its short side the cup holds: common practice, no source. */
const cup = { room: 0.5, share: 1 / 3 } as const

/** What an angled face sits in under the press. */
function cupWords(design: HeadDesign): string {
  const { parameters: p, layout: l, units } = design
  const size = (value: number) => formatLength(value, units, { decimals: units === 'mm' ? 1 : 2 })
  const wide = 2 * circumscribed(p.stock) + cup.room
  const deep = cup.share * (l.depthOnAxis - (l.across / 2) * Math.tan(l.faceAngle))
  return `Bore a cup ⌀${size(wide)} in soft stock to take the head, its floor milled to ${angleInMinutes(l.faceAngle)}, ${size(deep)} deep or more on its shallow side, so that the press pushes in line with the bore. A loose wedge can shoot out.`
}

function joining(design: HeadDesign, before: readonly string[]): Operation {
  const { parameters: p } = design
  const first = isJoinedFirst(design)
  const steps = heatingSteps(design)
  const threaded = p.fit.kind === 'threaded'
  const pressed = !threaded && !isShrunk(design)
  const seat =
    first || p.face.angle === 0
      ? ['Stand the head on its square far end on the bed of the press, arbor upright, and start it square.']
      : [cupWords(design)]
  return operation({
    id: 'join',
    title: threaded
      ? 'Screw head and arbor together'
      : pressed
        ? 'Press head and arbor together'
        : 'Shrink the head on',
    setUp: 'joining',
    machine: pressed ? 'press' : 'bench',
    steps: [
      ...joiningWords(design).slice(0, threaded ? 0 : 1),
      ...(pressed ? seat : []),
      ...(steps.length > 0 ? steps : joiningWords(design).slice(threaded ? 0 : 1)),
    ],
    why: first
      ? 'Before the tilt is cut, while both ends are square: the far end is the seat for the press, and the tilt, cut afterwards, comes true to the shank.'
      : 'When nothing more is clamped on the flats: a shank in the way would not go into the vise. The finished head is measured before.',
    needs: before,
    cautions: [
      ...(pressed ? ['A guard round the press; nobody in line with the work.'] : []),
      ...(threaded
        ? []
        : [
            'Parts that are wiped with chlorinated cleaner give off phosgene under a torch. Hot and very cold parts burn; liquid nitrogen suffocates.',
          ]),
    ],
  })
}

function catching(design: HeadDesign): Operation[] {
  const { parameters: p, layout: l } = design
  if (p.fit.catch === 'none' || p.fit.catch === 'shoulder-below') return []
  const steps = catchWords(design)
  const common = { setUp: 'pinning', needs: ['join'] } as const
  if (p.fit.catch === 'screw-and-washer') {
    return [
      operation({
        ...common,
        id: 'catch',
        title: 'Fit the catch',
        setUp: 'bench',
        machine: 'bench',
        steps,
        why: 'After the joint: the washer must not carry what the fit should.',
      }),
    ]
  }
  const size = (value: number) => formatLength(value, design.units, { fractions: true })
  const { drill, depth } = pinDrill(design)!
  const speed = millSpeedThrough(design, [l.materials.body, l.materials.arbor], {
    diameter: drill.diameter,
    isDrill: true,
    feedPerTurn: drillFeed(design, drill.diameter),
  })
  return [
    operation({
      ...common,
      id: 'catch',
      title: 'Drill, ream and pin',
      machine: 'mill',
      steps: [
        `Through head and spigot together, square to ${p.stock.shape === 'round' ? 'the slot' : 'a pair of flats'}: spot, drill ⌀${size(drill.diameter)} right through.`,
        ...pecking(depth, drill.diameter),
        `Ream to ${size(pinDiameter(p))} at half that speed, until the reamer is out with its full diameter; never turn it backwards. Blow out.`,
        'Drive the pin in and stake both ends. File it flush: no edge stands out of the head.',
      ],
      tool: asTool(design, drill),
      ...(speed && { speed }),
      depth,
      places: [
        { name: 'pin: across the axis, from the mounting face', x: 0, y: joinedLength(design).middle, z: depth },
      ],
      why: 'Through both parts at once, so that the holes line up.',
    }),
  ]
}

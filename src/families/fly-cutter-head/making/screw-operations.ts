import { pointFrom, pointIn } from '../../../geometry/frame.ts'
import { tapLeads } from '../../../mechanics/set-up/tap-through.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { type Operation, operation, type Place } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { drillFeed, millSpeed } from './cutting-data.ts'
import { type LaidSetUp, laidSetUp } from './laid-set-up.ts'
import { laidFrame } from './readout-frames.ts'
import { asTool, roundTool } from './tooling.ts'

/** Screw holes, with the head laid down: spot, drill, tap. */
export function screwOperations(design: HeadDesign): Operation[] {
  const { layout: l, units } = design
  const set = laidSetUp(design)
  const { thread, xs } = l.screws
  const size = (value: number) => formatLength(value, units)
  const drill = roundTool(design, 'drill', thread.tapDrill, set.drillReach)
  const speed = millSpeed(design, {
    of: l.materials.body,
    diameter: thread.tapDrill,
    isDrill: true,
    feedPerTurn: drillFeed(design, thread.tapDrill),
  })
  const places = (z: number): Place[] => screwPlaces(design).map(({ name, x, y }) => ({ name, x, y, z }))
  const common = { setUp: 'laid', machine: 'mill' } as const
  const ids = xs.map((_, i) => `screw-hole-${i + 1}`)
  const high = size(set.besideHoles)
  return [
    operation({
      ...common,
      id: 'spot',
      title: 'Spot the screw holes',
      steps: [
        'Step level, mounting face and zero as the set-up says.',
        `Spot all ${xs.length}, no wider than the thread. Beside them the metal stands ${high} above the drilled face: the holder must stay above it.`,
      ],
      tool: { name: 'spot drill', reachNeeded: set.spotReach },
      ...(speed && { speed }),
      places: places(0),
      why: 'After the step: until then solid metal stands where the drill comes in.',
      needs: ['step'],
    }),
    operation({
      ...common,
      id: 'drill',
      title: 'Drill for the thread',
      steps: [
        set.beforeFarWall > 0
          ? `Through the wall into the slot until the full diameter is out, Z to the tip: it then stands ${size(set.beforeFarWall)} short of the far wall, and goes no further.`
          : `Through the wall into the slot, Z to the tip: the point goes ${size(-set.beforeFarWall)} into the far wall.`,
        'Ease off where the point breaks through: it snatches.',
      ],
      tool: asTool(design, drill, thread.tapDrillName),
      ...(speed && { speed }),
      depth: set.drillDepth,
      places: places(set.drillDepth),
      measure: [
        { part: 'body', dimension: 'screw-hole-1.tap-drill' },
        ...ids.map((id) => ({ part: 'body', dimension: `${id}.x` })),
        { part: 'body', dimension: 'screw-hole-1.height' },
      ],
      why: 'In the clamping in which they were spotted.',
      needs: ['spot'],
    }),
    operation({
      ...common,
      id: 'tap',
      title: 'Tap the screw holes',
      steps: [
        `${thread.name}, started in line by a centre or guide in the spindle and turned by hand, square to the wall.`,
        throughWords(set, size),
        'Oil; back off to break the chip. Run a screw through each.',
      ],
      tool: { name: `tap ${thread.name}`, diameter: thread.majorDiameter, reachNeeded: set.tapReach },
      depth: set.tap.tipDepth,
      places: places(set.tap.tipDepth),
      measure: [{ part: 'body', dimension: 'screw-hole-1.thread' }],
      why: 'Last in the wall: a tapped hole would not stand the slot being milled through it.',
      needs: ['drill'],
    }),
  ]
}

/** How far the tap goes: stopped at the wall, its lead would leave the last threads unfinished. */
function throughWords({ tap }: LaidSetUp, size: (value: number) => string): string {
  const lead = `lead of about ${tapLeads[tap.tap]} threads, ${size(tap.lead)},`
  if (tap.tap === 'plug') {
    return `On with a second (plug) tap until its ${lead} is out of the wall, Z to the tip: it then stands ${size(tap.clear)} short of the far wall.`
  }
  const rest =
    tap.unfinished > 0 ? `, as far as the slot lets it: the last ${size(tap.unfinished)} of thread are not full.` : '.'
  return `The slot has no room for the lead of a second (plug) tap. Finish with a bottoming tap, its ${lead} out of the wall, Z to the tip${rest}`
}

/** Where the screw axes meet the step wall, in the readout's frame: X from the bore axis, Y from the mounting face. mm */
export function screwPlaces({ layout: l }: HeadDesign): { name: string; x: number; y: number }[] {
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  return l.screws.xs.map((along, i) => {
    const [x, y] = pointIn(laidFrame(l), pointFrom(face, [along, l.step.wall, l.screws.height]))
    return { name: `screw ${i + 1}`, x, y }
  })
}

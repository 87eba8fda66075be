import { pointLength } from '../../../mechanics/measuring/drill-point.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { referenceTemperature } from '../../../quantity/format-quantity.ts'
import { type Operation, operation, type RouteSpeed } from '../../../route/operation.ts'
import { handedThread } from '../body-dimensions.ts'
import { boreRadius } from '../bore-radius.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { circumscribed } from '../section.ts'
import { drillFeed, latheSpeed, millFeed, millSpeed } from './cutting-data.ts'
import { asTool, drillUpTo, facingCutter, jobberPoint, roundTool } from './tooling.ts'

/** Where ends and bore are made. */
export const isBoredInMill = ({ parameters: { making } }: HeadDesign): boolean => making['bored-in'] === 'mill'

const size = ({ units }: HeadDesign, value: number): string => formatLength(value, units)

/** Both ends square to the bar and to each other, the mounting end last, in the clamping of the bore. */
export function squareEnds(design: HeadDesign): Operation[] {
  const { parameters: p, layout: l } = design
  const { facing } = p.settings
  const inMill = isBoredInMill(design)
  const cutter = facingCutter(design, 2 * circumscribed(p.stock))
  const speed = inMill
    ? millSpeed(design, { of: l.materials.body, diameter: cutter.diameter, feedPerTurn: millFeed(design, cutter) })
    : latheSpeed(design, {
        of: l.materials.body,
        diameter: 2 * circumscribed(p.stock),
        feedPerTurn: p.making['turning-feed'],
      })
  const tool = inMill ? asTool(design, cutter) : { name: 'facing tool' }
  const common = { machine: inMill ? 'mill' : 'lathe', tool, ...(speed && { speed }), depth: facing } as const
  return [
    operation({
      ...common,
      id: 'face-far-end',
      title: 'Face the far end',
      setUp: 'first-end',
      steps: [`Take off no more than cleans up, about ${size(design, facing)}; break the edges.`],
      why: 'A clean, square end to stand on while mounting face and bore are made; the angled face takes it away again.',
      needs: ['saw-head'],
    }),
    operation({
      ...common,
      id: 'face-mounting',
      title: 'Face the mounting face',
      setUp: 'mounting',
      steps: [
        `Face to a length of ${size(design, l.prismLength)} over all.`,
        'This is datum A: no centre pip, no burr.',
      ],
      places: [{ name: 'mounting face', z: 0 }],
      why: 'In the clamping of the bore, so that face and bore are square to each other whatever the jaws do.',
      needs: ['face-far-end'],
    }),
  ]
}

/** Bore, its mouth and its vent, all in one clamping. */
export function boreOperations(design: HeadDesign): Operation[] {
  return [drilling(design), ...chamfering(design), sizing(design), ...venting(design)]
}

/** How far the full diameter goes: right through the blank for a bore that runs out into slot and face. */
const boreDepth = ({ parameters: { bore }, layout }: HeadDesign): number =>
  bore.kind === 'blind' ? bore.depth : layout.prismLength

/** How far a drill's tip is ahead of its full diameter, mm: its point as the bore is drawn, or a jobber drill's. */
const pointOf = ({ parameters: { bore } }: HeadDesign, diameter: number): number => {
  const drawn = bore.kind === 'blind' && bore.bottom === 'drill-point'
  return certain(pointLength({ diameter, pointAngle: drawn ? bore['point-angle'] : jobberPoint }))
}

function boreSpeed(
  design: HeadDesign,
  diameter: number,
  feedPerTurn: number,
  how: { isDrill?: boolean; share?: number } = {},
): RouteSpeed | undefined {
  const cut = { of: design.layout.materials.body, diameter, feedPerTurn, ...how }
  return isBoredInMill(design) ? millSpeed(design, cut) : latheSpeed(design, cut)
}

function drilling(design: HeadDesign): Operation {
  const { parameters: p, layout: l } = design
  const thread = l.spigotThread
  const most = thread ? thread.tapDrill : p.bore.diameter - p.making['left-in-bore']
  const full = boreDepth(design)
  const flat = p.bore.kind === 'blind' && p.bore.bottom === 'flat'
  const through = p.bore.kind === 'through'
  const cutter = drillUpTo(design, most, full + pointOf(design, 2 * boreRadius(p.bore, l)))
  const tip = pointOf(design, cutter.diameter)
  // A drill under size goes on until its cone is that of the finished bore, which starts at the bore's own diameter.
  const coneTip = full + pointOf(design, 2 * boreRadius(p.bore, l))
  // A flat bottom must not show the cone of the drill: its tip stops above the bottom.
  const depth = flat ? full - 0.5 : through ? full + tip : coneTip - tip
  const reach = through || flat ? depth : coneTip
  const drill = { ...cutter, reachNeeded: reach }
  const speed = boreSpeed(design, drill.diameter, drillFeed(design, drill.diameter), { isDrill: true })
  const goesOn =
    depth - full > 1e-6
      ? ` and the tip ${size(design, coneTip)}: deeper than the bore, so that its cone is the one drawn`
      : ''
  const stops = flat
    ? `until the tip is ${size(design, depth)} deep: the flat bottom is bored`
    : through
      ? 'right through'
      : `until the full diameter is ${size(design, depth)} deep${goesOn}`
  return operation({
    id: 'bore-drill',
    title: thread ? 'Drill for the thread of the bore' : 'Drill the bore under size',
    setUp: 'mounting',
    machine: isBoredInMill(design) ? 'mill' : 'lathe',
    steps: ['Spot with a centre drill.', `Open up in steps; the last drill ${stops}. Peck, oil, and clear the chips.`],
    tool: asTool(design, drill, thread?.tapDrillName),
    ...(speed && { speed }),
    depth,
    places: [
      {
        name: flat ? 'drill, tip' : 'drill, full diameter',
        ...(isBoredInMill(design) && { x: 0, y: 0 }),
        z: depth,
      },
    ],
    ...(thread && { measure: [{ part: 'body', dimension: 'bore.tap-drill' }] }),
    why: 'While both ends are square: an angled face is no seat for boring, and this is the last time that the bar stands on its end.',
    needs: ['face-mounting'],
  })
}

function chamfering(design: HeadDesign): Operation[] {
  const { bore } = design.parameters
  if (bore.chamfer === 0) return []
  return [
    operation({
      id: 'bore-chamfer',
      title: 'Chamfer the mouth of the bore',
      setUp: 'mounting',
      machine: isBoredInMill(design) ? 'mill' : 'lathe',
      steps: [
        `45°, until the mouth is ⌀${size(design, bore.diameter + 2 * bore.chamfer)} across. Slow, by hand.`,
        'Before the bore is brought to size, so that no burr is left in it.',
      ],
      tool: { name: 'countersink 90° or turning tool' },
      depth: bore.chamfer,
      measure: hasDimension(design, 'bore.chamfer') ? [{ part: 'body', dimension: 'bore.chamfer' }] : [],
      why: 'The lead-in by which the spigot starts straight.',
      needs: ['bore-drill'],
    }),
  ]
}

function sizing(design: HeadDesign): Operation {
  const { parameters: p, layout: l } = design
  const needs = ['bore-drill', ...(p.bore.chamfer > 0 ? ['bore-chamfer'] : [])]
  const machine = isBoredInMill(design) ? 'mill' : 'lathe'
  const full = boreDepth(design)
  const at = { ...(isBoredInMill(design) && { x: 0, y: 0 }), z: full }
  const bottom = p.bore.kind === 'blind' ? [{ part: 'body', dimension: 'bore.depth' }] : []
  if (p.fit.kind === 'threaded' && l.spigotThread) {
    const thread = handedThread(l.spigotThread.name, p.fit.hand)
    return operation({
      id: 'bore-size',
      title: 'Tap the bore',
      setUp: 'mounting',
      machine,
      steps: [
        `Tap ${thread} in line with the bore: turn by hand, guided by a centre.`,
        'Clean the thread and try the arbor.',
      ],
      tool: { name: `tap ${thread}`, diameter: l.spigotThread.majorDiameter, reachNeeded: full },
      depth: full,
      places: [{ name: 'thread', ...at }],
      measure: [{ part: 'body', dimension: 'bore.diameter' }, ...bottom],
      why: 'In the clamping of the mounting face, so that the head seats square.',
      needs,
    })
  }
  const reamer = roundTool(design, 'reamer', p.bore.diameter, full)
  const flat = p.bore.kind === 'blind' && p.bore.bottom === 'flat'
  // A reamer does not cut to a flat bottom.
  const reams = reamer.reach !== undefined && !flat
  const speed = reams
    ? boreSpeed(design, p.bore.diameter, 2 * p.making['turning-feed'], { isDrill: true, share: 0.5 })
    : boreSpeed(design, p.bore.diameter, p.making['turning-feed'])
  const { smallest, largest } = l.fit!.bore
  return operation({
    id: 'bore-size',
    title: reams ? 'Ream the bore to size' : 'Bore to size',
    setUp: 'mounting',
    machine,
    steps: [
      `To ⌀${formatLength(smallest, design.units, { decimals: design.units === 'mm' ? 3 : 4 })} to ${formatLength(largest, design.units, { decimals: design.units === 'mm' ? 3 : 4 })}; straight and round matter more than where in the limits it comes out.`,
      ...(flat ? ['Face the bottom flat with the same tool.'] : []),
      ...(p.fit.kind === 'matched'
        ? [
            `Measure at three depths, two ways each, at ${referenceTemperature(design.units)}, and write it down: the spigot is turned to this size.`,
          ]
        : []),
    ],
    tool: reams ? asTool(design, reamer) : { name: 'boring bar', reachNeeded: full },
    ...(speed && { speed }),
    depth: full,
    places: [{ name: 'bore, full diameter', ...at }],
    measure: [{ part: 'body', dimension: 'bore.diameter' }, ...bottom],
    why: 'Bore before spigot: an arbor is turned to any bore, while a bore is not easily made to an arbor.',
    needs,
  })
}

/** A vent is drilled from the bottom of the bore to where slot or face will be. */
function venting(design: HeadDesign): Operation[] {
  const { parameters: p, layout: l } = design
  if (p.bore.kind !== 'blind' || p.bore.vent !== 'hole') return []
  const onAxis = l.slot.leading * l.slot.trailing <= 0 && (l.slot.end === undefined || l.slot.end.x < 0)
  const opens = l.depthOnAxis - (onAxis ? l.slot.depth / Math.cos(l.faceAngle) : 0)
  const diameter = p.bore['vent-size']
  const depth = Math.max(opens + diameter, p.bore.depth + diameter)
  const point = certain(pointLength({ diameter, pointAngle: jobberPoint }))
  const drill = roundTool(design, 'drill', diameter, depth + point)
  const speed = boreSpeed(design, diameter, drillFeed(design, diameter), { isDrill: true })
  return [
    operation({
      id: 'vent',
      title: 'Drill the vent',
      setUp: 'mounting',
      machine: isBoredInMill(design) ? 'mill' : 'lathe',
      steps: [
        `From the bottom of the bore down the axis, ${size(design, depth)} below the mounting face: ${onAxis ? 'the slot' : 'the angled face'} opens it later.`,
        'A long thin drill: spot first, peck, no force.',
      ],
      tool: asTool(design, drill),
      ...(speed && { speed }),
      depth,
      places: [{ name: 'vent, full diameter', ...(isBoredInMill(design) && { x: 0, y: 0 }), z: depth }],
      measure: [{ part: 'body', dimension: 'vent.diameter' }],
      why: 'In line with the bore while it is clamped; without it the air under the spigot pushes the arbor out again.',
      needs: ['bore-size'],
    }),
  ]
}

const hasDimension = (design: HeadDesign, id: string): boolean =>
  design.part('body').cuts.some((f) => f.dimensions.some((d) => d.id === id))

import type { Result } from '../../../input/problem.ts'
import { crossPin } from '../../../mechanics/fit/cross-pin.ts'
import { type FreshArbor, freshArbor } from '../../../mechanics/fit/fresh-arbor.ts'
import { keyed, parallelKeys, squareInchKeys } from '../../../mechanics/fit/parallel-key.ts'
import { retainingCompound, usualCompound } from '../../../mechanics/fit/retaining-compound.ts'
import { screwAndWasher } from '../../../mechanics/fit/screw-and-washer.ts'
import { threadedArbor } from '../../../mechanics/fit/threaded-arbor.ts'
import { type Holding, isAllowed, type WayToHold, waysToHold } from '../../../mechanics/fit/way-to-hold.ts'
import { weld, weldabilities } from '../../../mechanics/fit/weld.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { pitchDiameter, stressArea } from '../../../tables/thread-geometry.ts'
import type { ThreadRow } from '../../../tables/threads.ts'
import type { HeadDesign } from '../design.ts'
import { joinedLength, jointInputOf, pinDiameter, pressedFit, wholeRing } from './fit.ts'
import { printStep } from './fit-limits.ts'
import { fitLoadOf } from './fit-load.ts'

/** Another way to hold head and arbor together: the cheapest first, the last resort last. */
export interface OtherWay {
  readonly way: WayToHold
  /** What it was worked out for: a pin of so much, a thread. */
  readonly made: string
  readonly holding: Holding
}

/** Every way in which this head could be held, with what it carries and its conditions; those that cannot be are left out. */
export function otherWaysOf(design: HeadDesign): readonly OtherWay[] {
  return design.once('ways to hold', () =>
    waysToHold.flatMap((way) => {
      const worked = workings[way](design)
      if (worked === undefined || !worked.holding.ok) return []
      return [{ way, made: worked.made, holding: worked.holding.value }]
    }),
  )
}

interface Worked {
  readonly made: string
  readonly holding: Result<Holding>
}

const workings: Readonly<Record<WayToHold, (design: HeadDesign) => Worked | undefined>> = {
  'fresh-arbor': fresh,
  'retaining-compound': compound,
  'cross-pin': (design) => ({
    made: `pin of ${formatLength(pinDiameter(design.parameters), design.units)}, of the arbor's material, staked`,
    holding: crossPinOf(design),
  }),
  'screw-and-washer': screwed,
  threaded: (design) =>
    threadedOf(
      design,
      design.layout.spigotThread ?? threadForBore(design),
      design.parameters.rotation === 'clockwise' ? 'right' : 'left',
    ),
  keyed: keyedOf,
  weld: welded,
}

/** The pin across hub and spigot, in the middle of what is whole of the joint. */
export function crossPinOf(design: HeadDesign): Result<Holding> {
  const { parameters, layout } = design
  const { bore, arbor } = parameters
  return crossPin({
    diameter: bore.diameter,
    hubOutside: layout.inscribed,
    spigotBore: arbor['bore-through'] ?? 0,
    pinDiameter: pinDiameter(parameters),
    fromSpigotEnd: arbor['spigot-length'] - joinedLength(design).middle,
    secured: true,
    pin: layout.materials.arbor,
    hub: layout.materials.body,
    spigot: layout.materials.arbor,
  })
}

/** A head that is screwed on with a thread of a hand; tightened by the cut itself. */
export function threadedOf(
  design: HeadDesign,
  thread: ThreadRow | undefined,
  hand: 'right' | 'left',
): Worked | undefined {
  const { parameters, layout } = design
  const { body, arbor } = layout.materials
  const engagement = joinedLength(design).effective
  if (thread === undefined || engagement <= 0) return undefined
  return {
    made: `${thread.name}, ${hand}-hand`,
    holding: threadedArbor({
      hand,
      rotation: parameters.rotation,
      reversedOrBraked: parameters.machine.reverse,
      majorDiameter: thread.majorDiameter,
      pitch: thread.pitch,
      pitchDiameter: pitchDiameter(thread),
      stressArea: stressArea(thread),
      engagement,
      engagementWanted: body.threadEngagement ?? 2,
      againstShoulder: parameters.arbor.kind === 'shank',
      torqueFactor: parameters.settings.screws['torque-factor'],
      tightened: fitLoadOf(design).cutTorque,
      arbor,
      hub: body,
    }),
  }
}

/** Interference over diameter, and how far either way. */
export type Match = Readonly<Record<'ratio' | 'spread', number>>

/** What a design matches its spigot by; for other fits the rule of thumb that the schema has. */
export const matchOf = ({ parameters: { fit } }: HeadDesign): Match =>
  fit.kind === 'matched'
    ? { ratio: fit['interference-ratio'], spread: fit['interference-spread'] }
    : { ratio: 0.0015, spread: 0.0003 }

/** A spigot turned to the bore as it is, mm. */
export function freshArborOf(design: HeadDesign, match: Match, bore: number): Result<FreshArbor> | undefined {
  const input = jointInputOf(design)
  const fit = pressedFit(design)
  if (input === undefined || fit === undefined) return undefined
  return freshArbor({
    match: { nominal: bore, ...match, measuredBore: { size: bore }, printStep: printStep[design.units] },
    joint: input,
    assembly: fit.assembly,
  })
}

function fresh(design: HeadDesign): Worked | undefined {
  const worked = freshArborOf(design, matchOf(design), design.parameters.bore.diameter)
  return (
    worked && {
      made: 'spigot turned to the bore as measured',
      holding: worked.ok ? { ok: true, value: worked.value.holding } : worked,
    }
  )
}

function compound(design: HeadDesign): Worked | undefined {
  const { parameters, layout } = design
  const length = joinedLength(design).effective
  if (length <= 0) return undefined
  const settings = { ...usualCompound, shearStrength: parameters.settings.fit['compound-shear'] }
  const { least, most } = settings.clearance
  const show = (size: number) => formatLength(size, design.units)
  // A spigot that stands loose enough as it is takes the compound; any other is turned for it.
  const { interference } = layout.fit ?? {}
  const loose = interference !== undefined && -interference.most >= least && -interference.least <= most
  return {
    made: loose
      ? `the spigot as it is, ${show(-interference.most)} under the bore`
      : `spigot turned ${show(least)} to ${show(most)} under the bore`,
    holding: retainingCompound({
      diameter: parameters.bore.diameter,
      length,
      interference: loose ? interference : { least: -most, most: -least },
      heated: false,
      serviceTemperature: parameters.settings.fit.ambient,
      settings,
    }),
  }
}

function screwed(design: HeadDesign): Worked | undefined {
  const { parameters, layout } = design
  const { bore, arbor } = parameters
  // Half the spigot is left round the hole.
  const thread = coarseThread(design, bore.diameter / 2)
  if (thread === undefined) return undefined
  const washerOutside = Math.min(1.5 * bore.diameter, layout.inscribed)
  const wholeCircle = 2 * wholeRadius(layout)
  // On an angled face the washer wants a seat square to the bore, sunk to where the face is lowest round it.
  const sunk = layout.faceAngle > 0 ? ', spot-faced square to the bore' : ''
  const seat =
    wholeCircle >= washerOutside
      ? layout.depthOnAxis - (washerOutside / 2) * Math.tan(layout.faceAngle)
      : wholeRing(layout)
  return {
    made: `screw ${thread.name}, washer of ${formatLength(washerOutside, design.units)}${sunk}`,
    holding: screwAndWasher({
      mouth: bore.diameter,
      washerOutside,
      wholeCircle,
      stressArea: stressArea(thread),
      majorDiameter: thread.majorDiameter,
      engagement: Math.min(2 * thread.majorDiameter, arbor['spigot-length']),
      engagementWanted: layout.materials.arbor.threadEngagement ?? 2,
      proofStress: proofStress88,
      hub: layout.materials.body,
      spigotShortBy: (bore.kind === 'blind' ? bore.depth : seat) - arbor['spigot-length'],
      throughBore: bore.kind === 'through',
      locked: true,
    }),
  }
}

/** How far round the axis neither slot nor step cuts into the end of the head, mm. */
function wholeRadius({ slot, step, inscribed, faceAngle }: HeadDesign['layout']): number {
  const beside = slot.leading * slot.trailing <= 0 ? 0 : Math.min(Math.abs(slot.leading), Math.abs(slot.trailing))
  const stopped = slot.end === undefined ? 0 : slot.end.x * Math.cos(faceAngle)
  return Math.min(inscribed / 2, Math.max(beside, stopped), Math.max(0, step.wall * step.towards))
}

/** Screw and washer that catch the head, in words; undefined where they find no place. */
export function washerCatch(design: HeadDesign): string | undefined {
  const found = otherWaysOf(design).find(({ way }) => way === 'screw-and-washer')
  return found && isAllowed(found.holding) ? found.made : undefined
}

/** Proof stress of a screw of property class 8.8 up to 16 mm, MPa: ISO 898-1, from memory. */
const proofStress88 = 580

function keyedOf(design: HeadDesign): Worked | undefined {
  const { parameters, layout } = design
  const { bore, arbor, fit } = parameters
  const { body, arbor: ofArbor } = layout.materials
  const keyLength = joinedLength(design).effective
  const holding = keyed({
    diameter: bore.diameter,
    hubOutside: layout.inscribed,
    arborBore: arbor['bore-through'] ?? 0,
    keyLength,
    keys: design.units === 'in' ? squareInchKeys : parallelKeys,
    ends: 'round',
    key: ofArbor,
    hub: body,
    arbor: ofArbor,
    axiallyHeld: fit.catch !== 'none',
  })
  if (!holding.ok) return undefined
  const { width, height } = holding.value.size
  const show = (size: number) => formatLength(size, design.units)
  return { made: `key ${show(width)} × ${show(height)}, ${show(keyLength)} long`, holding }
}

function welded(design: HeadDesign): Worked | undefined {
  const { parameters, layout } = design
  const { arbor, bore, settings, stock } = parameters
  // Where there is a shoulder, the mouth of the bore lies under it: the fillet runs round the shoulder.
  const diameter = arbor.kind === 'shank' ? arbor['shoulder-diameter'] : bore.diameter
  const leg = Math.min(0.15 * bore.diameter, (layout.inscribed - diameter) / 2)
  if (leg <= 0) return undefined
  return {
    made: `fillet all round, leg ${formatLength(leg, design.units)}`,
    holding: weld({
      diameter,
      leg,
      share: 1,
      allowedStress: settings.fit['weld-stress'],
      hub: weldabilities[stock.material],
      arbor: weldabilities[arbor.material],
    }),
  }
}

/** The coarse threads of the file's own system. */
const coarseThreads = ({ tables, units }: HeadDesign): readonly ThreadRow[] =>
  tables.threads.filter(({ series }) => series === (units === 'in' ? 'UNC' : 'metric coarse'))

/** The thinnest coarse thread that a bore leaves metal for: its tap drill is no smaller than the bore. */
export const threadForBore = (design: HeadDesign): ThreadRow | undefined =>
  coarseThreads(design)
    .filter(({ tapDrill }) => tapDrill >= design.parameters.bore.diameter - 1e-9)
    .reduce<ThreadRow | undefined>((a, b) => (a && a.majorDiameter <= b.majorDiameter ? a : b), undefined)

/** The thickest coarse thread up to a diameter, mm. */
const coarseThread = (design: HeadDesign, most: number): ThreadRow | undefined =>
  coarseThreads(design)
    .filter(({ majorDiameter }) => majorDiameter <= most + 1e-9)
    .reduce<ThreadRow | undefined>((a, b) => (a && a.majorDiameter >= b.majorDiameter ? a : b), undefined)

import type { Amount } from '../../../checks/finding.ts'
import { capital } from '../../../quantity/capital.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { Operation, SetUpFigure, WorkSetUp } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk } from '../engineering/fit.ts'
import { faceFrame } from '../frames.ts'
import { cornersBeside } from '../section.ts'
import { offMiddle } from './bore-on-middle.ts'
import { isBoredInMill } from './bore-operations.ts'
import { laidHold, laidSetting, laidSetUp } from './laid-set-up.ts'
import { lowPlace } from './low-place.ts'
import { outerPlace } from './outer-place.ts'
import { laidFrame, mountingFrame } from './readout-frames.ts'
import { headRoute } from './route.ts'
import { laidStandsOn, uprightStandsOn } from './stands-on.ts'
import { tiltNotes } from './tilt-notes.ts'
import { isJoinedFirst, tiltedSetUp } from './tilted-set-up.ts'
import { heldInChuck, type UprightId, uprightSetUp } from './upright-set-up.ts'

/** Every clamping of the route, in the order in which it is first used. */
export function headSetUps(design: HeadDesign): WorkSetUp[] {
  const route = headRoute(design)
  const used = [...new Set(route.map((o) => o.setUp))]
  return used.map((id) => {
    const made = makers[id]
    if (!made) throw new Error(`no set-up ${id}`)
    return {
      ...made(
        design,
        route.filter((o) => o.setUp === id),
      ),
      id,
    }
  })
}

type Made = Omit<WorkSetUp, 'id'>

const plain = (title: string, held: string, datum: string): Made => ({
  title,
  tilt: 0,
  held,
  datum,
  figures: [],
  notes: [],
})

const mm = (value: number): Amount => ({ kind: 'length', value })
const figure = (
  id: string,
  label: string,
  value: number,
  limit?: { value: number; is: 'least' | 'most' },
): SetUpFigure => ({
  id,
  label,
  amount: mm(value),
  ...(limit && { limit: { amount: mm(limit.value), is: limit.is } }),
})

/** What of the bar is touched on both sides to find its middle along X, with the step up. */
function outermost({ parameters: { stock } }: HeadDesign): string {
  if (stock.shape === 'round') return 'sides'
  return stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point' ? 'corners' : 'flats'
}

/** What keeps the flats, or the round, of the bar between jaws. */
function onFlats({ parameters: { stock } }: HeadDesign): string {
  if (stock.shape === 'round') return 'round bar in a V-block or soft jaws'
  if (cornersBeside(stock)) {
    return 'hexagon with its corners in V-jaws: plain jaws would meet it on corners'
  }
  return 'the two flats beside the slot between the jaws'
}

function inChuck({ parameters: { stock } }: HeadDesign): string {
  if (stock.shape === 'hexagon') return 'hexagon in the three-jaw chuck, soft strips under the jaws'
  return stock.shape === 'square'
    ? 'square bar in the four-jaw chuck, indicated on its flats'
    : 'round bar in the chuck, indicated'
}

/**
 * How the blank is held for the skew cut. The cut runs across the jaws or along them: flats square to the slot stand between jaws that are
 * swivelled, flats beside the slot between square jaws, and then the blank itself is tipped.
 */
function inSaw({ parameters: { stock } }: HeadDesign): string {
  if (stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point') {
    return 'The two flats beside the slot between the jaws of the saw, jaws square, the blank tipped by the face angle until the scribed line stands along the blade'
  }
  const between =
    stock.shape === 'round'
      ? 'The round in V-jaws of the saw, the bit side towards a jaw'
      : 'The flats square to the slot between the jaws of the saw'
  return `${between}, the vise swivelled by the face angle until the scribed line lies along the blade`
}

const makers: Readonly<Record<string, (design: HeadDesign, operations: readonly Operation[]) => Made>> = {
  saw: () => plain('At the saw', 'The bar in the vise of the saw, square to the blade', 'The sawn end of the bar'),
  'first-end': (design) =>
    isBoredInMill(design)
      ? {
          ...plain('First end up', `Standing in the vise: ${onFlats(design)}`, 'Any: the end is only cleaned up'),
          figures: upright(design, 'first-end'),
          notes: [uprightStands(design, 'first-end')],
        }
      : {
          ...plain('First end in the lathe', `Bar end out: ${inChuck(design)}`, 'Any: the end is only cleaned up'),
          figures: [inJawsOfChuck(design, 'first-end')],
        },
  mounting,
  balance: (design) => ({
    ...plain(
      'Mounting face up, in the mill',
      `Standing on the far end, on parallels: ${onFlats(design)}`,
      `Zero on the bore axis (indicate the bore), Z on the mounting face. ${mountingAxes}`,
    ),
    frame: mountingFrame,
    notes: ['Mark the bit side on the head before it is clamped: X + points to it.'],
  }),
  wedge: (design) => plain('At the saw, on the skew', inSaw(design), 'The scribed line'),
  tilted,
  laid,
  arbor: () => ({
    ...plain(
      'Arbor in the lathe',
      'Between centres, or in the collet with the tailstock',
      'Its own axis; lengths from the seat of the shoulder',
    ),
  }),
  joining: (design) => ({
    ...plain(
      'Joining',
      isShrunk(design)
        ? 'The arbor upright in soft jaws, spigot up; the head, mounting face down, comes from above'
        : isJoinedFirst(design) || design.parameters.fit.kind === 'threaded' || design.parameters.face.angle === 0
          ? 'The head on its square end, mounting face up'
          : 'The head in a cup bored to its angled face, mounting face up and level',
      'Seat of the shoulder on the mounting face',
    ),
  }),
  pinning: (design) => ({
    ...plain(
      'For the catch pin',
      `Shank in a V-block along the table, ${design.parameters.stock.shape === 'round' ? 'the marked side' : 'a flat beside the slot'} up and level`,
      'X on the shank axis, Y from the mounting face, Z on the upper flat',
    ),
  }),
  bench: () => plain('At the bench', 'In the hand, or between soft jaws', 'Surface plate'),
  spindle: (design) => ({
    ...plain(
      'In the spindle of the mill',
      'The shank in the spindle, as it will run; drawbar tight',
      'The spindle axis',
    ),
    ...(design.parameters.making['spigot-turned-in'] === 'mill-spindle' && {
      notes: [
        'The turning tool stands upright in the vise, its edge to the middle of the spindle in Y; X makes the diameter.',
      ],
    }),
  }),
}

const mountingAxes = 'X + to the bit side, Y + to the left of it seen from above, Z counts down into the metal.'

/** Slot and step are set from the middle between the jaws, that is from the flats: what the bore is off, they are off. */
const restsOnMiddle = 'place of the slot, rake and balance rest on the bore standing there.'

function trueNote(design: HeadDesign): string {
  const { shape } = design.parameters.stock
  const read = shape === 'round' ? 'read at both ends' : 'opposite flats, read at their middles, alike'
  const mend = shape === 'hexagon' ? '; a shim under a jaw of the chuck mends what it is off' : ''
  return `Run the bar true within ${offMiddle(design.units)} by an indicator, ${read}${mend}: ${restsOnMiddle}`
}

function mounting(design: HeadDesign, operations: readonly Operation[]): Made {
  const deepest = Math.max(0, ...operations.map((o) => o.tool?.reachNeeded ?? 0))
  const figures = [figure('reach', 'reach that the deepest tool needs', deepest)]
  if (!isBoredInMill(design)) {
    return {
      ...plain(
        'Mounting end in the lathe',
        `Turned round: ${inChuck(design)}, the faced end against the chuck or a stop`,
        'Mounting face, Z counts into the metal; the axis of the lathe is datum B from now on',
      ),
      frame: mountingFrame,
      figures: [inJawsOfChuck(design, 'mounting'), ...figures],
      notes: [trueNote(design)],
    }
  }
  return {
    ...plain(
      'Mounting face up, in the mill',
      `Standing on the faced end: ${onFlats(design)}`,
      `Zero midway between the flats, both ways, Z on the mounting face. ${mountingAxes}`,
    ),
    frame: mountingFrame,
    figures: [...upright(design, 'mounting'), ...figures],
    notes: [
      uprightStands(design, 'mounting'),
      `Find the middle within ${offMiddle(design.units)}: ${restsOnMiddle}`,
      'Do not move the table between drilling and boring: the bore is datum B.',
    ],
  }
}

const inJawsOfChuck = (design: HeadDesign, id: UprightId): SetUpFigure =>
  figure('held', 'length in the jaws of the chuck', heldInChuck(design, id))

function upright(design: HeadDesign, id: UprightId): SetUpFigure[] {
  const set = uprightSetUp(design, id)
  const { vise } = design.parameters.machine
  return [
    figure('jaw-height', 'bed of the vise to the top of the jaws', vise['jaw-height']),
    figure('opening', 'opening of the jaws', set.opening, { value: vise['jaw-opening'], is: 'most' }),
    figure('stick-up', 'upper end above the jaws, before it is faced', set.stickUp),
    figure('grip', 'bar held below the jaw tops', set.grip, { value: set.gripWanted, is: 'least' }),
    figure('under', 'lower end above the bed', set.under),
  ]
}

const uprightStands = (design: HeadDesign, id: UprightId): string =>
  `${uprightStandsOn(uprightSetUp(design, id), (value) => formatLength(value, design.units))}.`

function tilted(design: HeadDesign): Made {
  const set = tiltedSetUp(design)
  const { layout: l, units } = design
  const size = (value: number) => formatLength(value, units)
  const onShank = set.heldBy === 'shank'
  const up = set.tilt > 0 ? 'angled face up, the bit side low' : 'far end up, the bit side towards X +'
  const names = { face: 'the face', slot: 'the slot', step: 'the step' } as const
  return {
    title: set.tilt > 0 ? 'At the tilt: face, slot and step' : 'Level: face, slot and step',
    tilt: set.tilt,
    held: onShank
      ? `By the shank of the arbor in a V-block between the jaws, ${up}`
      : `${capital(onFlats(design))}, ${up}`,
    datum: `O: bore axis at the finished face; Y midway between ${onShank ? 'the sides of the head' : 'the jaws'}, X ${size(l.corner)} along the face from its outer ${outerPlace(design)} on the bit side, Z on the finished face. X + down the slope to the bit side, Y + to its right seen from above, Z counts down into the metal.`,
    frame: faceFrame(l.faceAngle, l.depthOnAxis),
    figures: [
      ...(set.tilt > 0 ? [{ id: 'tilt', label: 'tilt', amount: { kind: 'angle', value: set.tilt } } as const] : []),
      figure('jaw-height', 'bed of the vise to the top of the jaws', set.jawHeight),
      figure('opening', 'opening of the jaws', set.opening, {
        value: design.parameters.machine.vise['jaw-opening'],
        is: 'most',
      }),
      ...set.cuts.map((cut) =>
        figure(`needed-${cut.id}`, `face above the jaws that ${names[cut.id]} needs`, cut.needed),
      ),
      figure('stick-up', 'finished face above the jaws', set.stickUp, { value: set.least, is: 'least' }),
      figure('clear', 'deepest cut above the jaws', set.stickUp - set.deepest),
      figure('grip', onShank ? 'shank held' : 'flat held below the jaw tops', set.grip, {
        value: set.gripWanted,
        is: 'least',
      }),
      figure('lowest', `${lowPlace(set)} below the finished face`, set.lowest),
      figure('under', `${lowPlace(set)} above the bed`, set.under, { value: set.underNeeded, is: 'least' }),
    ],
    notes: tiltNotes(design),
  }
}

function laid(design: HeadDesign): Made {
  const set = laidSetUp(design)
  const size = (value: number) => formatLength(value, design.units)
  return {
    title: 'Laid down: screw holes',
    tilt: 0,
    held: laidHold(design),
    datum: `X on the bore axis, midway between the two ${outermost(design)} of the bar; Y on the mounting face; Z on the step wall. X + to the bit side, Y + away from the mounting face, Z counts down into the metal.`,
    frame: laidFrame(design.layout),
    figures: [
      ...(isJoinedFirst(design) ? [] : inJaws(design)),
      figure('beside', 'metal beside the holes, above the drilled face', set.besideHoles),
      figure('reach', 'reach that the drill needs', set.drillReach),
      figure('tap-reach', 'reach that the tap needs', set.tapReach),
    ],
    notes: [
      ...(isJoinedFirst(design) ? [] : [`${laidStandsOn(design, size)}.`]),
      ...laidSetting(design),
      `Chuck and holder stay above the metal beside the holes: the drill stands at least ${size(set.drillReach)}, the tap ${size(set.tapReach)} out of them.`,
    ],
  }
}

function inJaws(design: HeadDesign): SetUpFigure[] {
  const set = laidSetUp(design)
  return [
    figure('opening', 'opening of the jaws', set.opening, {
      value: design.parameters.machine.vise['jaw-opening'],
      is: 'most',
    }),
    figure('under', 'under the flat that it lies on', set.under),
    figure('stick-up', 'drilled face above the jaws', set.stickUp),
    figure('grip', 'height held', set.grip),
  ]
}

import { toNanometre } from '../../mechanics/fit/limits.ts'
import type { Dimension, Tolerance } from '../../part/dimension.ts'
import { boreToSlot } from './bore-to-slot.ts'
import { barZone, type Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'
import { cornersBeside } from './section.ts'

const minute = Math.PI / 180 / 60
const general: Tolerance = { kind: 'general' }
const reference: Tolerance = { kind: 'reference' }
const within = (lower: number, upper: number): Tolerance => ({ kind: 'limits', lower, upper })

/** Lower and upper deviation of limits from nominal, mm, without binary dust. */
export const deviations = (nominal: number, smallest: number, largest: number): [number, number] => [
  toNanometre(smallest - nominal),
  toNanometre(largest - nominal),
]

/** Code of the zone that the bore is made to, where its limits come from one. */
const boreCode = ({ fit }: Parameters): string | undefined =>
  fit.kind === 'matched' ? fit['bore-zone'] : fit.kind === 'iso-286' ? fit.code.split('/')[0]!.trim() : undefined

/** A thread as a drawing writes it: a left hand is told, a right hand goes without saying. */
export const handedThread = (name: string, hand: 'right' | 'left'): string => (hand === 'left' ? `${name} LH` : name)

/**
 * Named sizes of the head with this family's own tolerances; the rest is left to ISO 2768-1 medium. Sizes that no tool
 * reaches (depth on the axis, slot ahead of centre) stand beside ones that can be measured.
 */
export function bodyDimensions(p: Parameters, l: Layout): Dimension[] {
  const out: Dimension[] = []
  const add = (
    id: string,
    label: string,
    kind: Dimension['kind'],
    value: number,
    tolerance: Tolerance,
    extra: { measurable?: boolean; thread?: string; fitCode?: string } = {},
  ) => {
    const feature = id.slice(0, id.indexOf('.'))
    out.push({ id, label, kind, value, tolerance, feature, measurable: tolerance.kind !== 'reference', ...extra })
  }
  const rise = (l.across / 2) * Math.tan(l.faceAngle)
  const round = p.stock.shape === 'round'
  const asDrawn = l.barLimits && {
    tolerance: within(...deviations(p.stock.size, l.barLimits.smallest, l.barLimits.largest)),
    extra: { fitCode: barZone },
  }
  const [across, kind] = round ? (['bar diameter', 'diameter'] as const) : (['across flats', 'length'] as const)
  add('stock.size', across, kind, p.stock.size, asDrawn?.tolerance ?? general, asDrawn?.extra)

  add('face.angle', 'face angle', 'angle', l.faceAngle, within(-15 * minute, 15 * minute))
  add('face.depth-on-axis', 'mounting face to angled face on the axis', 'length', l.depthOnAxis, reference)
  add('face.long-side', 'height on the bit side', 'length', l.depthOnAxis + rise, general)
  add('face.short-side', 'height opposite the bit', 'length', l.depthOnAxis - rise, reference)

  // The slot is milled to the bit as measured.
  add('slot.width', 'slot width', 'length', l.slot.width, within(0.02 - p.slot.clearance, 0.06 - p.slot.clearance))
  add('slot.depth', 'slot depth', 'length', l.slot.depth, within(-0.1, 0.1))
  // Where corners stand beside the slot there is no face to measure from: the axis itself is the datum.
  const corners = cornersBeside(p.stock)
  const ahead = p.slot['ahead-of-centre']
  add('slot.ahead', 'leading wall ahead of centre', 'length', ahead, corners ? within(-0.1, 0.1) : reference)
  if (!corners) {
    const side = p.stock.size / 2 - ahead
    add('slot.from-flat', round ? 'outside to leading wall' : 'flat to leading wall', 'length', side, within(-0.1, 0.1))
  }
  if (l.slot.end) {
    add('slot.beyond-axis', 'slot end beyond the axis', 'length', -l.slot.end.x, general)
    add('slot.end-radius', 'slot end radius', 'radius', l.slot.end.radius, general)
  }

  add('step.wall', 'wall between slot and step', 'length', p.step['wall-thickness'], general)
  add('step.depth', 'step depth', 'length', l.step.depth, general)

  const { thread, xs, height } = l.screws
  xs.forEach((x, i) => {
    const id = `screw-hole-${i + 1}`
    // Not from the one before: in a row of holes the tolerances would add up.
    const at = i === 0 ? 'first screw from the tilted origin' : `screw ${i + 1} from the first`
    add(`${id}.x`, at, 'length', i === 0 ? x : i * l.screws.spacing, general)
    if (i > 0) return
    add(`${id}.height`, 'screw axis above the angled face', 'length', height, general)
    add(`${id}.thread`, `thread, ${xs.length} off`, 'thread', thread.majorDiameter, general, { thread: thread.name })
    add(`${id}.tap-drill`, 'tap drill', 'diameter', thread.tapDrill, general)
  })

  if (l.spigotThread && p.fit.kind === 'threaded') {
    const thread = handedThread(l.spigotThread.name, p.fit.hand)
    add('bore.diameter', 'tapped bore', 'thread', p.bore.diameter, general, { thread })
    add('bore.tap-drill', 'tap drill of the bore', 'diameter', l.spigotThread.tapDrill, general)
  } else if (l.fit) {
    const { smallest, largest } = l.fit.bore
    const code = boreCode(p)
    const limits = within(...deviations(p.bore.diameter, smallest, largest))
    add('bore.diameter', 'bore', 'diameter', p.bore.diameter, limits, code === undefined ? {} : { fitCode: code })
  }
  if (p.bore.kind === 'blind') {
    add('bore.depth', 'bore depth, full diameter', 'length', p.bore.depth, general)
    if (p.bore.bottom === 'drill-point') {
      add('bore.point-angle', 'drill point', 'angle', p.bore['point-angle'], reference)
    }
    if (p.bore.vent === 'hole') add('vent.diameter', 'vent hole', 'diameter', p.bore['vent-size'], general)
  }
  const toSlot = boreToSlot(p, l)
  if (toSlot) add('bore.wall-to-slot', 'metal between bore and slot floor', 'length', toSlot.wall, reference)
  const toOutside = (p.stock.size - p.bore.diameter) / 2
  if (toOutside > 0) add('bore.wall-to-outside', 'metal between bore and outside', 'length', toOutside, reference)
  if (p.bore.chamfer > 0) add('bore.chamfer', 'bore chamfer, 45°', 'length', p.bore.chamfer, general)
  return out
}

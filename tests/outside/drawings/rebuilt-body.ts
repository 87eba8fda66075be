import type { Figures } from '../brep/raw-figures.ts'
import { threads } from '../brep/raw-tables.ts'
import type { DxfDimensionRead } from '../dxf-dimensions.ts'
import { type DrawnSize, drawnSize } from './drawn-size.ts'

/** What a machinist sees in the views and reads in the notes, and no number: what kind of head it is. */
export interface SeenKind {
  readonly shape: Figures['shape']
  readonly pointed: boolean
  readonly hand: number
  readonly stepLeads: boolean
  /** Whether the leading wall stands ahead of the axis; the figure beside it has no sign. */
  readonly slotAhead: boolean
  readonly vent: Figures['bore']['vent']
}

type Body = Omit<Figures, 'bit' | 'arbor'>

/** A size that is missing, left over or at odds with the others. */
export class SizeFault extends Error {}

/**
 * The head as the dimensions of its drawing alone give it, and every bracketed figure checked against the rest. Throws
 * where a size is missing, is left over, or contradicts another by more than the rounding of what is written.
 */
export function rebuiltBody(dimensions: readonly DxfDimensionRead[], seen: SeenKind, unit: 'mm' | 'in'): Body {
  const sizes = new Map<string, DrawnSize>(dimensions.map((d) => [d.name, drawnSize(d.text, unit)]))
  const used = new Set<string>()
  const maybe = (id: string) => {
    used.add(id)
    return sizes.get(id)
  }
  const size = (id: string): DrawnSize => {
    const found = maybe(id)
    if (!found) throw new SizeFault(`${id} is not dimensioned`)
    return found
  }
  const value = (id: string) => size(id).value
  // The last digit that is written, and what it may add up to where several figures meet.
  const rounding = unit === 'mm' ? 0.0021 : 0.0055
  const agree = (id: string, expected: number, within = rounding) => {
    const { value: found } = size(id)
    if (!(Math.abs(found - expected) < within)) throw new SizeFault(`${id} says ${found}, the other sizes ${expected}`)
  }

  const { shape, pointed, hand } = seen
  const bar = value('stock.size')
  const across = pointed ? (bar * 2) / Math.sqrt(3) : bar
  // A level face needs no angle.
  const angle = maybe('face.angle')?.value ?? 0
  const slope = (angle * Math.PI) / 180
  const rise = (across / 2) * Math.tan(slope)
  const depth = value('face.long-side') - rise
  agree('face.depth-on-axis', depth, 0.01)
  agree('face.short-side', depth - rise, 0.02)
  const width = value('slot.width')
  const sign = seen.slotAhead ? 1 : -1
  let ahead = sign * Math.abs(value('slot.ahead'))
  // What stands in brackets is not machined to: something else must place the slot then.
  if (size('slot.ahead').reference) {
    ahead = bar / 2 - value('slot.from-flat')
    agree('slot.ahead', sign * ahead)
  }
  const end = maybe('slot.beyond-axis')
  const thread = size('screw-hole-1.thread')
  const { count } = thread
  if (thread.thread === undefined || !threads[thread.thread]) throw new SizeFault('no thread that the drill chart has')
  const tap = value('screw-hole-1.tap-drill')
  if (size('screw-hole-1.tap-drill').count !== count) throw new SizeFault('as many tap drills as threads')
  const first = value('screw-hole-1.x')
  const spacings = Array.from({ length: count - 1 }, (_, i) => value(`screw-hole-${i + 2}.x`))
  const spacing = spacings[0] ?? 0
  spacings.forEach((_, i) => {
    agree(`screw-hole-${i + 2}.x`, (i + 1) * spacing)
  })
  const boreSize = size('bore.diameter')
  const boreDiameter = boreSize.thread === undefined ? boreSize.value : Number(boreSize.thread.slice(1).split('x')[0])
  if (boreSize.thread !== undefined) value('bore.tap-drill')
  const corner = across / 2 / Math.cos(slope)
  agree('bore.wall-to-outside', (bar - boreDiameter) / 2)
  // Metal under a blind bore, where the slot lies over the axis: from the far edge of its bottom or the point of the drill.
  const bottom = maybe('bore.depth')?.value
  if (bottom !== undefined && ahead >= 0 && ahead <= width) {
    const drilled = maybe('bore.point-angle')?.value
    const vent = seen.vent === 'hole' ? value('vent.diameter') / 2 : 0
    const radius = boreDiameter / 2
    const point = drilled === undefined ? 0 : (radius - vent) / Math.tan((drilled * Math.PI) / 360)
    const places = [[radius, bottom] as const, [vent, bottom + point] as const].map(([x, z]) => ({
      wall: (depth - z) * Math.cos(slope) - x * Math.sin(slope) - value('slot.depth'),
      beyond: x * Math.cos(slope) + (depth - z) * Math.sin(slope),
    }))
    const [near] = places.sort((a, b) => a.wall - b.wall)
    if (near!.wall > 0 && (end === undefined || end.value >= near!.beyond)) agree('bore.wall-to-slot', near!.wall, 0.02)
  }
  const made: Body = {
    hand,
    shape,
    pointed,
    size: bar,
    across,
    // Whatever the face leaves of it.
    blank: depth + rise + 1,
    angle,
    slope,
    depth,
    corner,
    slot: {
      ahead,
      width,
      depth: value('slot.depth'),
      stop: end && { beyond: end.value, cutter: 2 * value('slot.end-radius') },
    },
    step: { wall: value('step.wall'), depth: value('step.depth'), leading: seen.stepLeads },
    screws: {
      major: threads[thread.thread]!.major,
      tap,
      count,
      spacing,
      first: corner - first,
      height: value('screw-hole-1.height'),
      length: Number.NaN,
    },
    bore: {
      radius: boreDiameter / 2,
      chamfer: maybe('bore.chamfer')?.value ?? 0,
      depth: maybe('bore.depth')?.value,
      pointAngle: maybe('bore.point-angle')?.value,
      vent: seen.vent,
      ventSize: seen.vent === 'hole' ? value('vent.diameter') : 0,
    },
  }
  for (const id of sizes.keys()) if (!used.has(id)) throw new SizeFault(`${id} is dimensioned and means nothing`)
  return made
}

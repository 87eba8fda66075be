import { degrees, mm } from './raw-quantity.ts'
import type { RawLength, RawSet } from './raw-set.ts'
import { screwLengths, threads } from './raw-tables.ts'

/** A parameter set in mm and degrees, with the defaults of the parameter file's documentation filled in. */
export type Figures = ReturnType<typeof figuresOf>

export function figuresOf(set: RawSet) {
  const read = (raw: RawLength) => mm(raw, set.units)
  /** A default, in inch files the one that is said for them. */
  const or = (raw: RawLength | undefined, millimetres: number, inches?: number) =>
    raw !== undefined ? read(raw) : set.units === 'in' && inches !== undefined ? inches * 25.4 : millimetres
  const size = read(set.stock.size)
  const pointed = set.stock.shape === 'hexagon' && set.stock['slot-runs'] !== 'flat-to-flat'
  const across = pointed ? (size * 2) / Math.sqrt(3) : size
  const angle = degrees(set.face.angle)
  const slope = (angle * Math.PI) / 180
  const depth = read(set.face['depth-on-axis'])
  const facing = or(set.settings?.facing, 1, 0.04)
  const bitWidth = read(set.bit.width)
  const clearance = or(set.slot.clearance, 0.04, 0.0015)
  const wall = read(set.step['wall-thickness'])
  const thread = threads[set.screws.thread]
  if (thread === undefined) throw new Error(`no thread ${set.screws.thread}`)
  const { facets, 'ground-off': groundOff } = set.bit
  const off = [groundOff?.leading, groundOff?.end, groundOff?.underside]
  return {
    /** −1 clockwise, +1 anticlockwise, seen from above: the point on +X moves towards hand·Y. */
    hand: set.rotation === 'clockwise' ? -1 : 1,
    shape: set.stock.shape,
    pointed,
    size,
    /** Across the stock along X. */
    across,
    /** From the faced mounting face to the lower end of the blank. */
    blank: or(set.stock.length, depth + (across / 2) * Math.tan(slope) + 1 + 2 * facing) - 2 * facing,
    /** Degrees. */
    angle,
    slope,
    depth,
    /** Where the face meets the outside on the bit side, along x of the face. */
    corner: across / 2 / Math.cos(slope),
    bit: {
      width: bitWidth,
      height: read(set.bit.height),
      length: read(set.bit.length),
      overhang: set.bit.overhang === undefined ? undefined : read(set.bit.overhang),
      swing: set.bit.swing === undefined ? undefined : read(set.bit.swing),
      offLeading: or(set.bit['ground-off']?.leading, 0),
      offEnd: or(set.bit['ground-off']?.end, 0),
      offUnderside: or(set.bit['ground-off']?.underside, 0),
      /** Whether the grinder takes anything off. */
      ground: off.some((length) => length !== undefined && read(length) > 0) || facets !== undefined,
      /** Degrees. */
      facets: {
        rakeAlong: degrees(facets?.['rake-along'] ?? '0 deg'),
        rakeAcross: degrees(facets?.['rake-across'] ?? '0 deg'),
        endEdge: degrees(facets?.['end-edge-angle'] ?? '0 deg'),
        endRelief: degrees(facets?.['end-relief'] ?? '0 deg'),
        workSideEdge: degrees(facets?.['work-side-edge-angle'] ?? '0 deg'),
        workSideRelief: degrees(facets?.['work-side-relief'] ?? '0 deg'),
      },
      /** How far in from the tip the facets run. */
      groundLength: or(facets?.length, 0.75 * bitWidth),
    },
    slot: {
      ahead: read(set.slot['ahead-of-centre']),
      width: bitWidth + clearance,
      depth: read(set.slot.depth),
      stop:
        set.slot.runs === 'through'
          ? undefined
          : { beyond: read(set.slot['beyond-axis']!), cutter: or(set.slot['cutter-diameter'], bitWidth + clearance) },
    },
    step: { wall, depth: read(set.step.depth), leading: set.step.side !== 'trailing' },
    screws: {
      ...thread,
      count: set.screws.count,
      spacing: or(set.screws.spacing, 2.5 * thread.major),
      first: read(set.screws['first-from-corner']),
      height: read(set.screws.height),
      length: or(set.screws.length, screwLengths(set.screws.thread).find((l) => l >= wall) ?? Number.NaN),
    },
    bore: {
      radius: read(set.bore.diameter) / 2,
      chamfer: or(set.bore.chamfer, 1, 0.04),
      /** Undefined: through. */
      depth: set.bore.depth === undefined ? undefined : read(set.bore.depth),
      pointAngle: set.bore.bottom === 'drill-point' ? degrees(set.bore['point-angle'] ?? '118 deg') : undefined,
      vent: set.bore.vent ?? 'none',
      ventSize: or(set.bore['vent-size'], 2, 5 / 64),
    },
    arbor: {
      spigot: read(set.arbor['spigot-length']),
      leadIn: or(set.arbor['lead-in'], 1, 0.04),
      hole: or(set.arbor['bore-through'], 0) / 2,
      shank: set.arbor.shank,
      shoulderRadius: or(set.arbor['shoulder-diameter'], 0) / 2,
      shoulder: or(set.arbor['shoulder-thickness'], 0),
      above: or(set.arbor['length-above'], 0),
    },
  }
}

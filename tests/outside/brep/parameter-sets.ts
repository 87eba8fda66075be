import { readFileSync } from 'node:fs'
import { stringify } from 'yaml'
import type { RawSet } from './raw-set.ts'
import { seededRandom } from './seeded-random.ts'

export interface NamedSet {
  readonly name: string
  readonly text: string
}

const bars = [
  { shape: 'hexagon', 'slot-runs': 'point-to-point' },
  { shape: 'hexagon', 'slot-runs': 'flat-to-flat' },
  { shape: 'square' },
  { shape: 'round' },
] as const
const bores = ['flat', 'drill-point', 'through', 'flat into the slot', 'drill-point into the slot'] as const
const vents = ['none', 'hole', 'flat'] as const
const slots = ['through', 'stopped', 'through', 'stopped with round corners'] as const
const arbors = ['straight-20', 'straight', 'morse-2', 'r8', 'straight with a hole', '7-24-30', 'straight-1'] as const
const at = <T>(list: readonly T[], i: number): T => list[i % list.length]!

function drawSet(i: number): RawSet {
  const random = seededRandom(1000 + i)
  const between = (low: number, high: number) => low + (high - low) * random()
  const inches = i % 9 === 5
  const round = (v: number) => (inches ? Math.round((v / 25.4) * 1e4) * 25.4e-4 : Math.round(v * 100) / 100)
  const drawn = (low: number, high: number) => round(between(low, high))
  const written = (v: number) => (inches ? Math.round((v / 25.4) * 1e4) / 1e4 : Math.round(v * 100) / 100)

  // Kinds.
  const bar = at(bars, i)
  const hand = Math.floor(i / 4) % 2 === 0 ? 'clockwise' : 'anticlockwise'
  const slotKind = at(slots, Math.floor(i / 2) + Math.floor(i / 8))
  const leading = i % 5 !== 3
  const boreKind = at(bores, i + Math.floor(i / 20))
  const vent = at(vents, i + Math.floor(i / 3))
  const arborKind = at(arbors, i)
  const angle = (i * 7) % 11 === 0 ? 0 : (i * 7) % 11 === 1 ? 30 : Math.round(between(1, 29) * 4) / 4

  // Bar, bit and slot.
  const slope = (angle * Math.PI) / 180
  const size = drawn(40, 70)
  const pointed = i % 4 === 0
  const across = pointed ? (size * 2) / Math.sqrt(3) : size
  const reachInY = i % 4 === 1 ? size / Math.sqrt(3) : size / 2
  const width = round(size * between(0.15, 0.22))
  const height = i % 3 === 0 ? round(width * between(0.8, 1.4)) : width
  const clearance = i % 4 === 2 ? undefined : drawn(0.02, 0.15)
  const aheadOfCentre = drawn(-0.4 * width, 0.7 * width)
  const depth = round(height - between(0.2, 0.15 * height))
  const room = leading ? reachInY - aheadOfCentre - 1.5 : reachInY + aheadOfCentre - width - 1.7
  const wall = round(Math.max(3, room * between(0.5, 0.85)))
  const stepDepth = round(depth * between(0.8, 1.3))

  // Bore, and a head long enough for it.
  const radius = round((size / 2) * between(0.28, 0.4))
  const gap = boreKind.endsWith('slot') ? -between(0.6, 2.5) : between(1.5, 5)
  const point = boreKind.startsWith('drill') ? radius / Math.tan((59 * Math.PI) / 180) : 0
  const uses = Math.max(
    (depth + gap + radius * Math.sin(slope)) / Math.cos(slope),
    point + (depth + gap) / Math.cos(slope),
  )
  const shortSide = (across / 2) * Math.tan(slope) + depth + between(6, 16)
  const head = round(Math.max(shortSide, uses + between(6, 14)))
  const boreDepth = round(head - uses)

  // Screws along the wall, which a hexagon or a round bar makes shorter away from the middle.
  const wanted = 1 + (i % 6)
  const thread = inches
    ? '1/4-28'
    : depth < 7.5 || (wanted === 6 && wall < 20)
      ? 'M4'
      : depth < 9.5
        ? 'M5'
        : depth < 12.5
          ? 'M6'
          : 'M8'
  const major = { M4: 4, M5: 5, M6: 6, M8: 8, '1/4-28': 6.35 }[thread]
  const outer = (leading ? aheadOfCentre : width - aheadOfCentre) + wall
  const wallHalf = halfLengthAt(i % 4, size, Math.max(Math.abs(outer), Math.abs(outer - wall))) / Math.cos(slope)
  const first = round(across / 2 / Math.cos(slope) - wallHalf + major * between(0.8, 1.2))
  const beyond = drawn(0.1 * across, 0.3 * across)
  const cutter = slotKind === 'stopped with round corners' ? round(width * between(0.4, 0.8)) : undefined
  const runTo = slotKind === 'through' ? -wallHalf + 0.7 * major : Math.max(-wallHalf + 0.7 * major, -beyond + width)
  const spacing = wanted > 2 ? round(major * between(1.25, 1.6)) : undefined
  const fit = Math.floor((wallHalf - major - runTo) / (spacing ?? 2.5 * major)) + 1
  const count = Math.max(1, Math.min(wanted, fit))

  const spigot = round(boreKind === 'through' ? head * 0.4 : boreDepth - between(0.5, 2))
  return {
    family: 'fly-cutter-head',
    title: `${i}: ${pointed ? 'pointed ' : ''}${bar.shape}, ${angle}°, slot ${slotKind}, bore ${boreKind}`,
    units: inches ? 'in' : 'mm',
    rotation: hand,
    stock: {
      ...bar,
      size: written(size),
      ...(i % 7 === 3 ? { length: written(head + (across / 2) * Math.tan(slope) + 6) } : {}),
      // Too short: the low corner of the face does not clean up.
      ...(i === 20 ? { length: written(head + (across / 4) * Math.tan(slope)) } : {}),
      material: 'steel-12l14',
    },
    face: {
      angle: angle % 1 === 0.5 ? `${Math.floor(angle)} deg 30 min` : `${angle} deg`,
      'depth-on-axis': written(head),
    },
    bit: {
      width: written(width),
      height: written(height),
      length: written(size * between(0.9, 1.4)),
      ...(i % 2 === 0
        ? { overhang: written(size * between(0.3, 0.7)) }
        : { swing: written(across + 2 * size * between(0.3, 0.7)) }),
    },
    slot: {
      ...(slotKind === 'through'
        ? { runs: 'through' }
        : {
            runs: 'stopped',
            'beyond-axis': written(beyond),
            ...(cutter === undefined ? {} : { 'cutter-diameter': written(cutter) }),
          }),
      'ahead-of-centre': written(aheadOfCentre),
      depth: written(depth),
      ...(clearance === undefined ? {} : { clearance: written(clearance) }),
    },
    step: {
      'wall-thickness': written(wall),
      depth: written(stepDepth),
      ...(leading ? {} : { side: 'trailing' }),
    },
    screws: {
      thread,
      count,
      ...(spacing === undefined ? {} : { spacing: written(spacing) }),
      'first-from-corner': written(first),
      height: written(depth * between(0.42, 0.6)),
    },
    bore: {
      diameter: written(2 * radius),
      ...(i % 6 === 1 ? { chamfer: written(between(0.3, 2)) } : i % 6 === 4 ? { chamfer: 0 } : {}),
      ...(boreKind === 'through'
        ? { kind: 'through' }
        : {
            kind: 'blind',
            depth: written(boreDepth),
            bottom: point > 0 ? 'drill-point' : 'flat',
            vent,
            ...(vent === 'none' || i % 2 === 0 ? {} : { 'vent-size': written(between(0.8, 3)) }),
          }),
    },
    arbor: {
      material: 'steel-1045',
      'spigot-length': written(spigot),
      ...(i % 4 === 1 ? { 'lead-in': written(between(0.3, 1.5)) } : i % 8 === 6 ? { 'lead-in': 0 } : {}),
      ...(i % 6 === 2 || arborKind === 'straight with a hole' ? { 'bore-through': written(between(3, 7)) } : {}),
      ...(arborKind.startsWith('straight') && !/\d/.test(arborKind)
        ? { kind: 'straight', 'length-above': written(between(30, 60)) }
        : {
            kind: 'shank',
            shank: arborKind,
            'shoulder-diameter': written(Math.max(2 * radius + 6, between(33, 44))),
            'shoulder-thickness': written(between(3, 10)),
          }),
    },
    work: { material: 'aluminium', width: written(60), 'depth-of-cut': written(0.4), 'feed-per-turn': written(0.12) },
    machine: {
      speeds: [95, 180, 270, 430, 620, 940, 1400, 2200],
      power: '1.1 kW',
      reverse: true,
      'largest-swing': written(400),
      drawbar: true,
      vise: { 'jaw-height': written(34), 'jaw-opening': written(105) },
    },
  }
}

/** Half the length of the bar's section along X at a distance from the middle. */
function halfLengthAt(bar: number, size: number, y: number): number {
  if (bar === 0) return size / Math.sqrt(3) - y / Math.sqrt(3)
  if (bar === 1) return Math.min(size / 2, size - Math.sqrt(3) * y)
  if (bar === 2) return size / 2
  return Math.sqrt(Math.max(0, (size / 2) ** 2 - y ** 2))
}

export const setCount = 48

/**
 * Parameter sets that cover every kind of head. Kinds go round in cycles of different lengths, so that they meet in
 * many combinations; sizes are drawn within what leaves one solid body with its walls. Always the same sets.
 */
export const parameterSets: readonly NamedSet[] = Array.from({ length: setCount }, (_, i) => {
  const set = drawSet(i)
  return { name: set.title, text: stringify(set) }
})

/** What a user starts from; their bits are ground. */
export const templates: readonly NamedSet[] = ['parameters.yaml', 'parameters-inch.yaml'].map((name) => ({
  name,
  text: readFileSync(new URL(`../../../templates/fly-cutter-head/${name}`, import.meta.url), 'utf8'),
}))

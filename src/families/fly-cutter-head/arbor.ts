import { type Cell, cellOf, rod } from '../../geometry/cell.ts'
import { coneThrough, cylinder, plane, type Surface } from '../../geometry/surface.ts'
import type { Vec3 } from '../../geometry/vector.ts'
import type { Dimension } from '../../part/dimension.ts'
import type { Feature } from '../../part/feature.ts'
import type { Part } from '../../part/part.ts'
import { deviations, handedThread } from './body-dimensions.ts'
import { bodyFrame } from './frames.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** What goes into the bore and up into the spindle, in the body frame. The spigot is modelled at the bore's nominal. */
export function arborOf(p: Parameters, l: Layout): Part {
  const dimensions = arborDimensions(p, l)
  const own = (id: string) => dimensions.filter((d) => d.feature === id)
  const stock: Feature[] = [
    {
      id: 'spigot',
      label: 'spigot',
      role: 'spigot',
      cells: [spigotCell(p)],
      frame: bodyFrame,
      opensInto: [],
      governedBy: [],
      dimensions: own('spigot'),
    },
  ]
  if (p.arbor.kind === 'shank') {
    const thickness = p.arbor['shoulder-thickness']
    const names = { wall: 'shoulder', start: 'seat', end: 'shoulder top' }
    stock.push({
      id: 'shoulder',
      label: 'shoulder',
      role: 'shoulder',
      cells: [rod(names, [0, 0, 0], up, thickness, p.arbor['shoulder-diameter'] / 2)],
      frame: bodyFrame,
      opensInto: [],
      governedBy: [],
      dimensions: own('shoulder'),
    })
    stock.push({
      id: 'shank',
      label: `${l.shank!.name} shank`,
      role: 'shank',
      cells: shankCells(l, thickness),
      frame: bodyFrame,
      opensInto: [],
      governedBy: [],
      dimensions: own('shank'),
    })
  }
  const cuts: Feature[] = []
  if (p.bore.kind === 'blind' && p.bore.vent === 'flat') {
    const at = p.bore.diameter / 2 - p.bore['vent-size']
    cuts.push({
      id: 'vent-flat',
      label: 'flat to let the air out',
      role: 'vent',
      cells: [cellOf(plane('vent flat', [at, 0, 0], [-1, 0, 0]), plane('seat', [0, 0, 0], up))],
      frame: bodyFrame,
      opensInto: ['outside'],
      governedBy: [],
      dimensions: own('vent-flat'),
    })
  }
  const hollow = p.arbor['bore-through']
  if (hollow !== undefined) {
    cuts.push({
      id: 'arbor-bore',
      label: 'hole through the arbor',
      role: 'vent',
      cells: [cellOf(cylinder('arbor hole', [0, 0, 0], up, hollow / 2))],
      frame: bodyFrame,
      opensInto: ['seat', 'spigot end', 'shank end', 'shoulder top', 'shank step', 'vent-flat', 'lead-in'],
      governedBy: [],
      dimensions: own('arbor-bore'),
    })
  }
  return { id: 'arbor', label: 'Arbor', material: p.arbor.material, stock, cuts }
}

const up: Vec3 = [0, 0, 1]
const down: Vec3 = [0, 0, -1]

function spigotCell(p: Parameters): Cell {
  const r = p.bore.diameter / 2
  const end = -p.arbor['spigot-length']
  const top = p.arbor.kind === 'straight' ? p.arbor['length-above'] : 0
  const lead = p.arbor['lead-in']
  const surfaces: Surface[] = [
    cylinder('spigot', [0, 0, 0], up, r),
    plane('spigot end', [0, 0, end], down),
    plane(p.arbor.kind === 'straight' ? 'shank end' : 'seat', [0, 0, top], up),
  ]
  if (lead > 0) surfaces.push(coneThrough('lead-in', [0, 0, end], r - lead, [0, 0, end + lead], r))
  return cellOf(...surfaces)
}

function shankCells(l: Layout, from: number): Cell[] {
  let z = from
  return l.shank!.profile.map((piece, i, all) => {
    const [start, end]: [Vec3, Vec3] = [
      [0, 0, z],
      [0, 0, z + piece.length],
    ]
    z += piece.length
    const endName = i === all.length - 1 ? 'shank end' : 'shank step'
    if (Math.abs(piece.from - piece.to) < 1e-9) {
      return rod({ wall: 'shank', start: 'shank step', end: endName }, start, up, piece.length, piece.from / 2)
    }
    return cellOf(
      coneThrough('shank taper', start, piece.from / 2, end, piece.to / 2),
      plane('shank step', start, down),
      plane(endName, end, up),
    )
  })
}

function arborDimensions(p: Parameters, l: Layout): Dimension[] {
  const general = { kind: 'general' } as const
  const out: Dimension[] = [
    spigotDiameter(p, l),
    {
      id: 'spigot.length',
      label: 'spigot length',
      kind: 'length',
      value: p.arbor['spigot-length'],
      tolerance: general,
      feature: 'spigot',
      measurable: true,
    },
  ]
  const plain = (id: string, label: string, kind: Dimension['kind'], value: number) => {
    out.push({ id, label, kind, value, tolerance: general, feature: id.slice(0, id.indexOf('.')), measurable: true })
  }
  if (p.arbor['lead-in'] > 0) plain('spigot.lead-in', 'lead-in chamfer, 45°', 'length', p.arbor['lead-in'])
  if (p.arbor.kind === 'shank') {
    plain('shoulder.diameter', 'shoulder', 'diameter', p.arbor['shoulder-diameter'])
    plain('shoulder.thickness', 'shoulder thickness', 'length', p.arbor['shoulder-thickness'])
    out.push(...shankDimensions(l))
  } else plain('spigot.length-above', 'length above the mounting face', 'length', p.arbor['length-above'])
  if (p.bore.kind === 'blind' && p.bore.vent === 'flat') {
    plain('vent-flat.depth', 'vent flat depth', 'length', p.bore['vent-size'])
  }
  if (p.arbor['bore-through'] !== undefined)
    plain('arbor-bore.diameter', 'hole through', 'diameter', p.arbor['bore-through'])
  return out
}

/** Nominal is the bore's; the limits are those of the fit. A matched spigot is turned to the bore as measured. */
function spigotDiameter(p: Parameters, l: Layout): Dimension {
  const value = p.bore.diameter
  const common = { id: 'spigot.diameter', value, feature: 'spigot', measurable: true } as const
  if (p.fit.kind === 'threaded' && l.spigotThread) {
    const thread = handedThread(l.spigotThread.name, p.fit.hand)
    return { ...common, label: 'threaded spigot', kind: 'thread', tolerance: { kind: 'general' }, thread }
  }
  const { spigot, kind } = l.fit!
  const [lower, upper] = deviations(value, spigot.smallest, spigot.largest)
  const label = kind === 'matched' ? 'spigot, for a bore of nominal size: turn to the bore as measured' : 'spigot'
  // Of a hole and a shaft code the shaft's is the spigot's.
  const fitCode = p.fit.kind === 'iso-286' ? p.fit.code.split('/')[1]?.trim() : undefined
  const tolerance = { kind: 'limits', lower, upper } as const
  return { ...common, label, kind: 'diameter', tolerance, ...(fitCode !== undefined && { fitCode }) }
}

/** Sizes of the shank as the table of shanks has it: a straight one is turned to limits, a taper is made to its standard. */
function shankDimensions(l: Layout): Dimension[] {
  const { profile, kind, tolerance: fitCode } = l.shank!
  const reference = { kind: 'reference' } as const
  const size = (id: string, label: string, sort: Dimension['kind'], value: number): Dimension => ({
    id: `shank.${id}`,
    label,
    kind: sort,
    value,
    tolerance: kind === 'straight' ? { kind: 'general' } : reference,
    feature: 'shank',
    measurable: kind === 'straight',
  })
  return profile.flatMap((piece, i): Dimension[] => {
    const which = i === 0 ? '' : `-${i + 1}`
    const isTaper = Math.abs(piece.from - piece.to) > 1e-9
    const long = size(`length${which}`, isTaper ? 'length of the taper' : 'length of the shank', 'length', piece.length)
    if (isTaper) {
      const next = profile[i + 1]
      const goesOver = next !== undefined && Math.abs(next.from - piece.to) < 1e-9
      return [
        size(`gauge-diameter${which}`, 'taper, large end', 'diameter', piece.from),
        // Where a cylinder carries on from it, its diameter says it.
        ...(goesOver ? [] : [size(`small-diameter${which}`, 'taper, small end', 'diameter', piece.to)]),
        long,
      ]
    }
    const across = size(`diameter${which}`, 'shank', 'diameter', piece.from)
    if (kind !== 'straight') return [across, long]
    const limits = l.shankLimits
    const [lower, upper] = limits ? deviations(piece.from, limits.smallest, limits.largest) : [-usualShank, 0]
    return [
      { ...across, tolerance: { kind: 'limits', lower, upper }, ...(limits && fitCode !== undefined && { fitCode }) },
      long,
    ]
  })
}

/** How far a straight shank without a zone of its own may be under its size, mm: half a thou; common practice, no source. */
const usualShank = 0.0127

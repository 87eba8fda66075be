import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import type { Parameters } from '../../src/families/fly-cutter-head/parameters/parameters.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { loadTables } from '../../src/package/load-tables.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems))
export const tables = loaded.value

export const templateText = (name: 'parameters' | 'parameters-inch'): string =>
  readFileSync(new URL(`../../templates/fly-cutter-head/${name}.yaml`, import.meta.url), 'utf8')

/** The head of a template, with whatever is to be different in its text. */
export function headFrom(name: 'parameters' | 'parameters-inch', ...changes: [string | RegExp, string][]): HeadDesign {
  let text = templateText(name)
  for (const [from, to] of changes) {
    const changed = text.replace(from, to)
    if (changed === text) throw new Error(`nothing to change: ${from}`)
    text = changed
  }
  const read = readDesign(flyCutterHead, text, name, tables)
  if (!read.ok) throw new Error(JSON.stringify(read.problems, undefined, 1))
  return read.value.design
}

const base = headFrom('parameters').parameters
const { facets: _, ...squareBit } = base.bit
const number = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((n) => n / 1000)

/**
 * Parameter sets over the whole width of the family, sizes in proportion to the bar so that most are heads and not
 * scrap; many have findings, some are broken through.
 */
export const randomParameters: fc.Arbitrary<Parameters> = fc
  .record({
    rotation: fc.constantFrom('clockwise' as const, 'anticlockwise' as const),
    shape: fc.constantFrom('hexagon' as const, 'round' as const, 'square' as const),
    runs: fc.constantFrom('point-to-point' as const, 'flat-to-flat' as const),
    size: number(24, 110),
    angle: fc.oneof(fc.constant(0), number(0, 30)),
    depth: number(0.7, 1.1),
    bitWidth: number(0.1, 0.3),
    bitHeight: number(0.1, 0.3),
    bitLength: number(0.8, 2),
    overhang: number(0.1, 1),
    ground: fc.boolean(),
    ahead: number(-0.12, 0.12),
    slotDepth: number(0.7, 1.1),
    stopped: fc.boolean(),
    cutter: number(0.4, 1),
    beyond: number(-0.1, 0.3),
    wall: number(0.1, 0.25),
    stepDepth: number(0.8, 1.4),
    side: fc.constantFrom('leading' as const, 'trailing' as const),
    thread: fc.constantFrom('M4', 'M5', 'M6', 'M8'),
    count: fc.integer({ min: 1, max: 6 }),
    first: number(0.05, 0.4),
    height: number(0.2, 0.8),
    bore: number(0.25, 0.6),
    boreDepth: number(0.3, 0.8),
    kind: fc.constantFrom('flat', 'drill-point', 'through'),
    vent: fc.constantFrom('none' as const, 'hole' as const, 'flat' as const),
    chamfer: fc.constantFrom(0, 0.5, 1),
    arbor: fc.constantFrom('straight', 'morse-2', 'r8', '7-24-30', 'straight-16'),
    hollow: fc.boolean(),
  })
  .map((v): Parameters => {
    const h = v.depth * v.size
    const width = v.bitWidth * v.size
    const height = v.bitHeight * v.size
    const diameter = v.bore * v.size
    const common = { diameter, chamfer: v.chamfer }
    const through = { material: base.arbor.material, 'lead-in': v.chamfer }
    const spigot = { ...through, 'spigot-length': Math.max(0.25 * h, v.chamfer + 0.5) }
    return {
      ...base,
      rotation: v.rotation,
      stock: { shape: v.shape, size: v.size, 'slot-runs': v.runs, material: base.stock.material },
      face: { angle: (v.angle * Math.PI) / 180, 'depth-on-axis': h },
      bit: {
        ...squareBit,
        width,
        height,
        length: v.bitLength * v.size,
        overhang: v.overhang * v.size,
        'ground-off': { leading: v.ground ? 0.1 * width : 0, end: 0, underside: v.ground ? 0.05 * height : 0 },
        ...(v.ground && {
          facets: {
            'rake-along': 0.2,
            'rake-across': 0.05,
            'end-edge-angle': 0.1,
            'end-relief': 0.2,
            'work-side-edge-angle': 0.05,
            'work-side-relief': 0.15,
          },
        }),
      },
      slot: {
        'ahead-of-centre': v.ahead * v.size,
        depth: v.slotDepth * height,
        clearance: 0.04,
        ...(v.stopped
          ? { runs: 'stopped', 'beyond-axis': v.beyond * v.size, 'cutter-diameter': v.cutter * width }
          : { runs: 'through' }),
      },
      step: { 'wall-thickness': v.wall * v.size, depth: v.stepDepth * v.slotDepth * height, side: v.side },
      screws: {
        ...base.screws,
        thread: v.thread,
        count: v.count,
        spacing: 0.2 * v.size,
        'first-from-corner': v.first * v.size,
        height: v.height * v.slotDepth * height,
      },
      bore:
        v.kind === 'through'
          ? { ...common, kind: 'through' }
          : {
              ...common,
              kind: 'blind',
              depth: v.boreDepth * h,
              bottom: v.kind as 'flat' | 'drill-point',
              'point-angle': (118 * Math.PI) / 180,
              vent: v.vent,
              'vent-size': 1.5,
            },
      arbor:
        v.arbor === 'straight'
          ? { ...spigot, kind: 'straight', 'length-above': 40, ...(v.hollow && { 'bore-through': 0.3 * diameter }) }
          : {
              ...spigot,
              kind: 'shank',
              shank: v.arbor,
              'shoulder-diameter': 1.3 * diameter + 2 * v.chamfer,
              'shoulder-thickness': 5,
            },
    }
  })

/** How a shop wants its sheets: drawn apart from the head, so that neither changes when the other gets a new kind. */
const randomSheets = fc.record({
  units: fc.constantFrom('mm' as const, 'in' as const),
  drawing: fc.record({
    sheet: fc.constantFrom('A4' as const, 'A3' as const, 'letter' as const, 'tabloid' as const),
    projection: fc.constantFrom('first-angle' as const, 'third-angle' as const),
    'shown-in': fc.constantFrom('file-units' as const, 'mm' as const, 'in' as const, 'both' as const, 'both' as const),
  }),
})

/**
 * Runs `check` on that many random heads, in units and on sheets at random; a failure names the parameters in short. The
 * same heads every time, other ones for another seed.
 */
export function forRandomHeads(numRuns: number, check: (design: HeadDesign) => void, seed = 20261125): void {
  const heads = fc.sample(
    randomParameters.map((p) => HeadDesign.from(p, tables)).filter((r) => r.ok),
    { numRuns, seed },
  )
  const sheets = fc.sample(randomSheets, { numRuns, seed })
  heads.forEach((head, i) => {
    if (!head.ok) return
    const asked = HeadDesign.from({ ...head.value.parameters, ...sheets[i] }, tables)
    if (!asked.ok) throw new Error(JSON.stringify(asked.problems))
    try {
      check(asked.value)
    } catch (error) {
      const { units, drawing, stock, face, bit, slot, step, screws, bore, arbor, rotation } = asked.value.parameters
      const set = JSON.stringify({ units, drawing, rotation, stock, face, bit, slot, step, screws, bore, arbor })
      throw new Error(`${(error as Error).message}\n${set}`, { cause: error })
    }
  })
}

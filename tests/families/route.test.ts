import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { composeSheets } from '../../src/drawing/plan/compose.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { balanceOf } from '../../src/families/fly-cutter-head/engineering/balance.ts'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { headMeasuring } from '../../src/families/fly-cutter-head/making/measuring.ts'
import { headRoute } from '../../src/families/fly-cutter-head/making/route.ts'
import { headSetUps } from '../../src/families/fly-cutter-head/making/set-ups.ts'
import { tiltedSetUp } from '../../src/families/fly-cutter-head/making/tilted-set-up.ts'
import type { Parameters } from '../../src/families/fly-cutter-head/parameters/parameters.ts'
import { orderSheet } from '../../src/families/fly-cutter-head/sheets/order-sheet.ts'
import { setUpSheet } from '../../src/families/fly-cutter-head/sheets/set-up-sheet.ts'
import { sizeFrom } from '../../src/figures/measuring.ts'
import { pointFrom, pointIn } from '../../src/geometry/frame.ts'
import { isInside } from '../../src/geometry/solid.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import type { Operation } from '../../src/route/operation.ts'
import { setUpCsv } from '../../src/route/set-up-csv.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { headFrom, randomParameters, tables } from './random-heads.ts'
import { sheetFactsOf } from './sheet-facts.ts'

const options = fc.record({
  join: fc.constantFrom('after-face' as const, 'before-tilt' as const),
  'bored-in': fc.constantFrom('lathe' as const, 'mill' as const),
  'spigot-turned-in': fc.constantFrom('lathe' as const, 'mill-spindle' as const),
  'tool-material': fc.constantFrom('hss' as const, 'carbide' as const),
  assembly: fc.constantFrom('press' as const, 'heat' as const),
  heavy: fc.boolean(),
  drawer: fc.boolean(),
})

/** Random heads made every way that the parameters have. The same ones every time. */
function heads(count: number): HeadDesign[] {
  const drawn = fc.sample(fc.tuple(randomParameters, options), { numRuns: 2 * count, seed: 20261125 })
  return drawn
    .flatMap(([p, { assembly, heavy, drawer, ...making }]) => {
      const made = {
        ...p,
        making: { ...p.making, ...making },
        fit: p.fit.kind === 'threaded' ? p.fit : { ...p.fit, assembly },
        shop: drawer ? p.shop : { ...p.shop, cutters: [], parallels: [], 'gauge-blocks': [] },
      } as Parameters
      const built = HeadDesign.from(made, tables)
      if (!built.ok || !heavy) return built.ok ? [built.value] : []
      // A spindle that will not stand the last tenth of it: something is to be drilled out.
      const running = { ...p.settings.running, 'unbalance-force': 0.9 * balanceOf(built.value).force }
      const drilled = HeadDesign.from({ ...made, settings: { ...p.settings, running } }, tables)
      return drilled.ok ? [drilled.value] : []
    })
    .slice(0, count)
}

const many = heads(Number(process.env.HEADS ?? 160))
const ids = (route: readonly Operation[]) => route.map((o) => o.id)

describe('the route of a head', () => {
  it('does each step after what it needs, whatever the head and however it is made', () => {
    expect(many.length).toBeGreaterThanOrEqual(40)
    for (const design of many) {
      const route = ids(headRoute(design))
      const at = (id: string) => route.indexOf(id)
      const inOrder = (...steps: string[]) => {
        const places = steps.filter((id) => at(id) >= 0).map(at)
        expect(places, steps.join(', ')).toEqual(places.toSorted((a, b) => a - b))
      }
      for (const o of headRoute(design)) for (const need of o.needs) inOrder(need, o.id)
      // A square seat is wanted for boring; sawing or milling the face takes it away.
      inOrder('face-far-end', 'face-mounting', 'bore-drill', 'bore-chamfer', 'bore-size', 'vent', 'saw-wedge', 'face')
      inOrder('bore-size', 'balance-drill', 'saw-wedge', 'face')
      inOrder('measure-bit', 'slot-walls')
      inOrder('face', 'slot-rough', 'slot-walls', 'step', 'spot', 'drill', 'tap', 'deburr', 'inspect-head')
      // The arbor is turned to a bore that is there to be measured.
      inOrder('bore-size', 'spigot-turn', 'vent-flat', 'join', 'catch', 'true-up')
      inOrder('true-up', 'set-bit', 'dry-run', 'first-run')
      inOrder('grind-bit', 'set-bit')
      expect(route.at(-1)).toBe('first-run')
    }
  })

  it('joins where the parameters say: on the square end before the tilt, or when nothing more is clamped on the flats', () => {
    for (const design of many) {
      const route = ids(headRoute(design))
      if (design.parameters.making.join === 'before-tilt') {
        expect(route.indexOf('join')).toBeLessThan(route.indexOf('tilt'))
        const wedge = route.indexOf('saw-wedge')
        if (wedge >= 0) expect(route.indexOf('join')).toBeLessThan(wedge)
      } else {
        for (const id of ['step', 'tap', 'deburr', 'inspect-head']) {
          expect(route.indexOf(id)).toBeLessThan(route.indexOf('join'))
        }
        // With the shank in, no drill gets near the mounting face.
        const balance = route.indexOf('balance-drill')
        if (balance >= 0) expect(balance).toBeLessThan(route.indexOf('join'))
      }
    }
    expect(many.some((d) => ids(headRoute(d)).includes('balance-drill'))).toBe(true)
  })

  it('cuts face, slot and step one after the other in one clamping, before the tilt is lost', () => {
    for (const design of many) {
      const route = headRoute(design)
      const first = route.findIndex((o) => o.setUp === 'tilted')
      const tilted = route.filter((o) => o.setUp === 'tilted')
      expect(ids(route.slice(first, first + tilted.length))).toEqual(ids(tilted))
      expect(ids(tilted)).toEqual(['tilt', 'face', 'slot-rough', 'slot-walls', 'step'])
    }
  })

  it('bores in the clamping that faces the mounting face', () => {
    for (const design of many) {
      for (const o of headRoute(design)) {
        if (/^(face-mounting|bore-|vent$)/.test(o.id)) expect(o.setUp).toBe('mounting')
      }
    }
  })

  it('has a set-up for every step, measures what there is, and names no place without a frame', () => {
    for (const design of many.slice(0, 80)) {
      const setUps = headSetUps(design)
      const known = new Set(headMeasuring(design).map((m) => `${m.part} ${m.dimension.id}`))
      for (const o of headRoute(design)) {
        const own = setUps.filter((s) => s.id === o.setUp)
        expect(own).toHaveLength(1)
        if (o.places.length > 0 && o.setUp !== 'pinning') expect(own[0]!.frame).toBeDefined()
        for (const m of o.measure) expect(known).toContain(`${m.part} ${m.dimension}`)
        for (const { x, y, z } of o.places) {
          for (const value of [x, y, z]) if (value !== undefined) expect(Number.isFinite(value)).toBe(true)
        }
        for (const figure of [o.depth, o.speed?.turns, o.speed?.surface, o.tool?.diameter]) {
          if (figure !== undefined) expect(figure).toBeGreaterThan(0)
        }
      }
      // Every size of the head that has a tolerance is looked at before it is used.
      const wanted = headMeasuring(design).filter(
        (m) => m.part === 'body' && m.dimension.tolerance.kind !== 'reference',
      )
      const inspected = headRoute(design).find((o) => o.id === 'inspect-head')!
      expect(inspected.measure.map((m) => m.dimension)).toEqual(wanted.map((m) => m.dimension.id))
    }
  })

  it('runs the mill only at speeds that its spindle has, no faster than the table unless even the slowest is', () => {
    for (const design of many.slice(0, 80)) {
      const { speeds } = design.parameters.machine
      if (!Array.isArray(speeds)) continue
      for (const o of headRoute(design)) {
        if (!o.speed || o.speed.atMost) continue
        expect(speeds.some((s) => Math.abs(s - o.speed!.turns) < 1e-9)).toBe(true)
        // 120 ft/min is the high end for high-speed steel in mild steel, 600 for carbide.
        if (o.speed.turns > Math.min(...speeds)) expect(o.speed.surface).toBeLessThan((600 * 304.8) / 60 + 1e-6)
      }
    }
  })
})

describe('the places that the readout shows', () => {
  const place = (design: HeadDesign, id: string, name: string) => {
    const o = headRoute(design).find((one) => one.id === id)!
    const found = o.places.find((p) => p.name === name)
    if (!found) throw new Error(`no ${name} in ${o.places.map((p) => p.name).join(', ')}`)
    return found
  }

  it('are where the part model has walls and holes, by way of its own solid', () => {
    for (const design of many.slice(0, 120)) {
      const cuts = design.part('body').cuts
      const slot = { stock: cuts.find((f) => f.id === 'slot')!.cells, cuts: [] }
      const step = { stock: cuts.find((f) => f.id === 'step')!.cells, cuts: [] }
      const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
      const { hand } = design.layout
      // On the bit side of a stopped end, in the middle of the depth.
      const at = (y: number, z: number): Vec3 => pointFrom(face, [design.layout.corner, y, z])
      const middle = design.layout.slot.depth / 2
      for (const [name, into] of [
        ['leading wall', -hand],
        ['trailing wall', hand],
      ] as const) {
        const y = place(design, 'slot-walls', name).y!
        expect(isInside(slot, at(y + into * 1e-4, middle))).toBe(true)
        expect(isInside(slot, at(y - into * 1e-4, middle))).toBe(false)
      }
      const floor = place(design, 'slot-walls', 'floor, middle, start')
      expect(isInside(slot, at(floor.y!, floor.z! - 1e-4))).toBe(true)
      expect(isInside(slot, at(floor.y!, floor.z! + 1e-4))).toBe(false)
      const wall = place(design, 'step', 'step wall')
      const towards = design.layout.step.towards
      expect(isInside(step, at(wall.y! + towards * 1e-4, wall.z! - 1e-4))).toBe(true)
      expect(isInside(step, at(wall.y! - towards * 1e-4, wall.z! - 1e-4))).toBe(false)
      expect(isInside(step, at(wall.y! + towards * 1e-4, wall.z! + 1e-4))).toBe(false)
    }
  })

  it('lead a cutter along the walls of the slot and never into them, whatever its size', () => {
    for (const design of many) {
      const walls = headRoute(design).find((o) => o.id === 'slot-walls')!
      const r = walls.tool!.diameter! / 2
      const { slot } = design.layout
      const [low, high] = [slot.leading, slot.trailing].toSorted((a, b) => a - b) as [number, number]
      for (const { name, y, z } of walls.places.filter((p) => p.x !== undefined)) {
        expect(y! - r).toBeGreaterThan(low - 1e-9)
        expect(y! + r).toBeLessThan(high + 1e-9)
        expect(z).toBe(slot.depth)
        if (name.startsWith('leading')) expect(Math.abs(y! - slot.leading)).toBeCloseTo(r, 9)
        if (name.startsWith('trailing')) expect(Math.abs(y! - slot.trailing)).toBeCloseTo(r, 9)
      }
      for (const { y, z } of headRoute(design).find((o) => o.id === 'slot-rough')!.places) {
        expect(y! - r).toBeGreaterThan(low - 1e-9)
        expect(y! + r).toBeLessThan(high + 1e-9)
        expect(z).toBeLessThan(slot.depth + 1e-9)
      }
    }
  })

  it('start and end a through cut with the cutter clear of the metal', () => {
    for (const design of many.slice(0, 100)) {
      const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
      const solid = solidOf({ ...design.part('body'), cuts: design.part('body').cuts.filter((f) => f.id === 'face') })
      for (const id of ['slot-walls', 'step']) {
        const o = headRoute(design).find((one) => one.id === id)!
        const r = o.tool!.diameter! / 2
        for (const p of o.places) {
          if (p.x === undefined || (design.layout.slot.end && id === 'slot-walls' && p.name.endsWith('end'))) continue
          for (let k = 0; k < 12; k++) {
            const angle = (k * Math.PI) / 6
            for (const z of [1e-3, p.z!]) {
              const rim: Vec3 = [p.x + r * Math.cos(angle), p.y! + r * Math.sin(angle), z]
              expect(isInside(solid, pointFrom(face, rim))).toBe(false)
            }
          }
        }
      }
    }
  })

  it('drill each screw hole on the axis that the part model gives it', () => {
    for (const design of many.slice(0, 120)) {
      const frame = headSetUps(design).find((s) => s.id === 'laid')!.frame!
      const holes = design.part('body').cuts.filter((f) => f.role === 'clamp-screw')
      const drill = headRoute(design).find((o) => o.id === 'drill')!
      expect(drill.places).toHaveLength(holes.length)
      holes.forEach((hole, i) => {
        const wall = hole.cells[0]!.surfaces.find((s) => s.kind === 'cylinder')!
        if (wall.kind !== 'cylinder') throw new Error('no drilled hole')
        const [x, y] = pointIn(frame, wall.point)
        expect(drill.places[i]!.x).toBeCloseTo(x, 9)
        expect(drill.places[i]!.y).toBeCloseTo(y, 9)
        // Down into the metal, along the axis.
        const [ax, ay, az] = pointIn({ ...frame, origin: [0, 0, 0] }, wall.axis)
        expect([Math.abs(ax), Math.abs(ay), Math.abs(az)].map((v) => Number(v.toFixed(9)))).toEqual([0, 0, 1])
      })
    }
  })

  it('are written for the demo as worked by hand, in millimetres and inches', () => {
    const design = headFrom('parameters')
    const text = setUpCsv(headRoute(design), headSetUps(design), 'a1b2c3d4')
    expect(text.endsWith('\r\n')).toBe(true)
    const { data, errors, meta } = Papa.parse<Record<string, string>>(text.trimEnd(), { header: true })
    expect(errors).toEqual([])
    expect(meta.fields).toHaveLength(11)
    const row = (operation: string, name: string) =>
      data.find((r) => r.operation!.includes(operation) && r.place === name)!
    // Leading wall 2.4 ahead of the axis, clockwise: −Y. Cutter of 8 in a slot of 10.04: 2.4 − 4 from it.
    expect(row('Finish the slot', 'leading wall')).toMatchObject({ 'Y mm': '-2.400', 'Y in': '-0.0945' })
    expect(row('Finish the slot', 'leading wall, cutter, start')).toMatchObject({
      'Y mm': '1.600',
      'Y in': '0.0630',
      'Z mm': '9.500',
    })
    // 2.4 + 9 of wall; the step lies beyond it.
    expect(row('Mill the step', 'step wall')).toMatchObject({ 'Y mm': '-11.400', 'Z mm': '10.500' })
    // 26.758 − 14.5 = 12.258 along the face, 6 above it: 12.258·cos 7° + 6·sin 7° and 41 + 12.258·sin 7° − 6·cos 7°.
    expect(row('Drill for the thread', 'screw 1')).toMatchObject({
      'X mm': '12.897',
      'Y mm': '36.539',
      'X in': '0.5078',
    })
    // Every set-up says once where its zero is; every line carries the mark.
    const zeros = data.filter((r) => r['zero and axes'] !== '')
    expect(new Set(zeros.map((r) => r['set-up'])).size).toBe(zeros.length)
    expect(zeros.map((r) => r['set-up'])).toEqual([...new Set(data.map((r) => r['set-up']))])
    expect(new Set(data.map((r) => r.revision))).toEqual(new Set(['a1b2c3d4']))
  })

  it('take a cutter out of the shop’s list: the largest that leaves stock on both walls, and far enough out', () => {
    const tool = (id: string, ...changes: [string, string][]) =>
      headRoute(headFrom('parameters', ...changes)).find((o) => o.id === id)!.tool!
    expect(tool('slot-rough')).toMatchObject({ name: 'end mill ⌀8 mm', diameter: 8, reach: 22 })
    // Too short for a slot 9.5 deep and its clearance: the smaller one does it.
    expect(tool('slot-rough', ['{ diameter: 8, reach: 22 }', '{ diameter: 8, reach: 10 }']).diameter).toBe(6)
    // 11.6 of step: the narrowest that covers it.
    expect(tool('step')).toMatchObject({ diameter: 12, reach: 28 })
    expect(tool('drill')).toMatchObject({ name: 'drill ⌀5 mm', reach: 52 })
  })

  it('need a reach over the metal beside the screw holes, wall and drill point, as worked by hand', () => {
    // Half of 46 less 11.4 stands beside them: 11.6; wall 9, point 2.5·cot 59° = 1.502, 0.5 to break through, clearance 1.
    const drill = headRoute(headFrom('parameters')).find((o) => o.id === 'drill')!
    expect(drill.tool!.reachNeeded).toBeCloseTo(23.602, 3)
    expect(drill.depth).toBeCloseTo(11.002, 3)
    expect(drill.places[0]!.z).toBe(drill.depth)
  })

  it('take a bore with a drilled bottom down to the cone of the part model, whatever drill it is drilled with', () => {
    let seen = 0
    for (const design of many) {
      const { bore } = design.parameters
      const drill = headRoute(design).find((o) => o.id === 'bore-drill')!
      if (bore.kind !== 'blind' || bore.bottom !== 'drill-point') continue
      seen++
      const cuts = { stock: design.part('body').cuts.find((f) => f.id === 'bore')!.cells, cuts: [] }
      const point = drill.tool!.diameter! / 2 / Math.tan(bore['point-angle'] / 2)
      // The edge of the drill, where its cone begins, and its tip both lie on the cone of the bore.
      for (const [x, z] of [
        [drill.tool!.diameter! / 2, drill.depth!],
        [0, drill.depth! + point],
      ] as const) {
        expect(isInside(cuts, [Math.max(0, x - 1e-4), 0, -z + 1e-4])).toBe(true)
        expect(isInside(cuts, [x, 0, -z - 1e-4])).toBe(false)
      }
      expect(drill.tool!.reachNeeded).toBeCloseTo(drill.depth! + point, 9)
    }
    expect(seen).toBeGreaterThan(10)
  })

  it('drill 27/32 in deeper than 0.85 by what a bore of 7/8 is wider, and a part so made measures within its limits', () => {
    const design = headFrom('parameters-inch')
    const drill = headRoute(design).find((o) => o.id === 'bore-drill')!
    // (22.225 − 21.431)/2·cot 59° = 0.2385; the rod of 1/4 in then stops where it should.
    expect(drill.depth).toBeCloseTo(21.59 + 0.2385, 3)
    const way = headMeasuring(design).find(({ dimension }) => dimension.id === 'bore.depth')!
    const stops = drill.depth! + (drill.tool!.diameter! - 6.35) / 2 / Math.tan((59 * Math.PI) / 180)
    expect(way.how).toContain('pin of 0.25 in')
    expect(sizeFrom(way, stops)).toBeCloseTo(21.59, 6)
  })

  it('take the tap on until its lead is out of the wall: 9 and 4 threads of 1 mm, 6.04 short of the far wall', () => {
    const tap = headRoute(headFrom('parameters')).find((o) => o.id === 'tap')!
    expect(tap.depth).toBeCloseTo(13, 9)
    expect(tap.places.map(({ z }) => z)).toEqual([tap.depth, tap.depth])
    // 11.6 beside the holes, 13, clearance 1.
    expect(tap.tool!.reachNeeded).toBeCloseTo(25.6, 9)
    expect(tap.steps.join(' ')).toContain(
      'second (plug) tap until its lead of about 4 threads, 4 mm, is out of the wall, Z to the tip: it then stands 6.04 mm short',
    )
  })

  it('never drive drill or tap into the far wall of the slot while it is wider than the point is long', () => {
    for (const design of many) {
      const { slot, step, screws } = design.layout
      const wall = Math.abs(step.wall - screws.seat)
      for (const id of ['drill', 'tap']) {
        const { depth } = headRoute(design).find((o) => o.id === id)!
        if (slot.width > 1 && screws.thread.tapDrill < 3 * slot.width) expect(depth! - wall).toBeLessThan(slot.width)
        expect(depth! - wall).toBeGreaterThan(0)
      }
    }
  })
})

describe('the tilted set-up of a head that is joined first', () => {
  it('is drawn, with the whole order of work, for heads of every kind', () => {
    const [style, font] = [styleOf(), drawingFont()]
    for (const design of many.filter((d) => d.parameters.making.join === 'before-tilt').slice(0, 12)) {
      const plan = setUpSheet(design, style)
      const order = orderSheet(design)
      const made = composeSheets([plan, order], 'A4', sheetFactsOf(design), style, font)
      expect(made.ok).toBe(true)
      const listed = order.blocks.flatMap((b) => (b.kind === 'table' ? b.rows : []))
      // Rows without a number name the set-up of those below.
      expect(listed.filter((row) => row[0] !== '').map((row) => row[1])).toEqual(headRoute(design).map((o) => o.title))
    }
  })

  it('stands on its shank, the mounting face clear of the jaws, as worked by hand', () => {
    const set = tiltedSetUp(headFrom('parameters', ['join: after-face', 'join: before-tilt']))
    const [sin, cos] = [Math.sin((7 * Math.PI) / 180), Math.cos((7 * Math.PI) / 180)]
    // Straight shank of 20, 60 long, on a shoulder 6 thick and 32 across.
    expect(set.heldBy).toBe('shank')
    expect(set.lowest).toBeCloseTo((41 + 66) * cos + 10 * sin, 9)
    // The shoulder's edge lies lower than the mounting face's: 47·cos 7° + 16·sin 7°, and 1 of clearance.
    expect(set.least).toBeCloseTo(47 * cos + 16 * sin + 1, 9)
    expect(set.under).toBe(0)
    expect(set.stickUp).toBeCloseTo(set.lowest - 34, 9)
    expect(set.grip).toBeCloseTo(107 * cos - 10 * sin - set.stickUp, 9)
  })
})

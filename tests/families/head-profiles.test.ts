import { describe, expect, it } from 'vitest'
import { profileLayer } from '../../src/drawing/profile-layer.ts'
import { endsOf, type Vec2 } from '../../src/edges/entity.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { headProfiles } from '../../src/families/fly-cutter-head/profiles.ts'
import { pointFrom } from '../../src/geometry/frame.ts'
import { isInside } from '../../src/geometry/solid.ts'
import { along, cross, dot } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { isClosed, type Profile } from '../../src/profiles/profile.ts'
import { areaOf } from '../profiles/outline-area.ts'
import { forRandomHeads, headFrom } from './random-heads.ts'

type Change = [string | RegExp, string]
const demo = (...changes: Change[]) => headFrom('parameters', ...changes)
const round: Change[] = [
  ['shape: hexagon', 'shape: round'],
  [/ {2}slot-runs.*\n/, ''],
]
const other: Change = ['rotation: clockwise', 'rotation: anticlockwise']
const stopped: Change = ['  runs: through', '  runs: stopped\n  beyond-axis: 8\n  cutter-diameter: 6']

const named = (design: HeadDesign) =>
  new Map(headProfiles(design).flatMap((s) => s.profiles.map((p) => [p.name, p] as const)))
const profile = (design: HeadDesign, name: string): Profile => named(design).get(name)!
const layers = (design: HeadDesign) =>
  headProfiles(design).map((s) => s.profiles.map((p) => profileLayer(p, design.units)))
const corners = (p: Profile): Vec2[] => p.outlines.flat().flatMap((e) => endsOf(e))
const extent = (p: Profile, axis: 0 | 1) => {
  const values = corners(p).map((c) => c[axis])
  return [Math.min(...values), Math.max(...values)]
}
const degree = Math.PI / 180

describe('profiles of a head', () => {
  it('are all its features, set-up by set-up, depth in the layer names', () => {
    expect(layers(demo())).toEqual([
      ['STOCK_THROUGH', 'BORE_DEPTH_24MM', 'BORE-CHAMFER_DEPTH_1MM_45DEG', 'VENT_THROUGH'],
      ['FACE_DEPTH_0MM_BLANK-ABOVE_7.207MM', 'SLOT_DEPTH_9.5MM', 'STEP_DEPTH_10.5MM'],
      ['SCREW-HOLE_M6_TAPDRILL_DEPTH_9MM_THROUGH-WALL'],
    ])
    expect(layers(headFrom('parameters-inch'))).toEqual([
      ['STOCK_THROUGH', 'BORE_DEPTH_0.85IN_POINT-118DEG', 'BORE-CHAMFER_DEPTH_0.04IN_45DEG'],
      ['FACE_DEPTH_0IN_BLANK-ABOVE_0.3121IN', 'SLOT_DEPTH_0.36IN', 'STEP_DEPTH_0.4IN'],
      ['SCREW-HOLE_0.25-28_TAPDRILL_DEPTH_0.3125IN_THROUGH-WALL'],
    ])
  })

  it('of a bore through say so', () => {
    const design = demo(
      [/ {2}kind: blind\n/, '  kind: through\n'],
      [/ {2}depth: 24\n {2}bottom: flat\n {2}vent: hole\n/, ''],
    )
    expect(layers(design)[0]).toEqual(['STOCK_THROUGH', 'BORE_THROUGH', 'BORE-CHAMFER_DEPTH_1MM_45DEG'])
  })

  it('have the blank and the angled face as lines, of the area that its size across flats gives', () => {
    // A hexagon of 46 mm across flats: 46²·√3/2; the face is longer by 1/cos 7°.
    const hexagon = (46 * 46 * Math.sqrt(3)) / 2
    expect(areaOf(profile(demo(), 'stock').outlines[0]!)).toBeCloseTo(hexagon, 9)
    const face = profile(demo(), 'face')
    expect(areaOf(face.outlines[0]!)).toBeCloseTo(hexagon / Math.cos(7 * degree), 9)
    expect(face.outlines.map((o) => o.map((e) => e.kind))).toEqual([Array(6).fill('line')])
    const square = headFrom('parameters-inch')
    expect(areaOf(profile(square, 'stock').outlines[0]!)).toBeCloseTo((1.75 * 25.4) ** 2, 9)
  })

  it('have the angled face of a round bar as arcs, within 0.005 mm of the ellipse', () => {
    const design = demo(...round, ['angle: 7 deg', 'angle: 20 deg'])
    const [outline] = profile(design, 'face').outlines
    expect(new Set(outline!.map((e) => e.kind))).toEqual(new Set(['arc']))
    const ellipse = (Math.PI * 23 * 23) / Math.cos(20 * degree)
    expect(Math.abs(areaOf(outline!) - ellipse)).toBeLessThan(0.005 * 2 * Math.PI * 24.5)
    expect(extent(profile(design, 'face'), 0)).toEqual([
      expect.closeTo(-23 / Math.cos(20 * degree), 9),
      expect.closeTo(23 / Math.cos(20 * degree), 9),
    ])
  })

  it('have holes at their drilled size', () => {
    const area = (name: string) => areaOf(profile(demo(), name).outlines[0]!)
    expect(area('bore')).toBeCloseTo(100 * Math.PI, 9)
    expect(area('bore chamfer')).toBeCloseTo(121 * Math.PI, 6)
    expect(area('vent')).toBeCloseTo(Math.PI, 9)
    expect(area('screw-hole')).toBeCloseTo(2.5 * 2.5 * Math.PI, 9)
    expect(profile(demo(), 'screw-hole').outlines).toHaveLength(2)
  })

  it('have slot and step run out past the metal by the width of the slot and less than a step more', () => {
    for (const [design, grid] of [
      [demo(), 1],
      [headFrom('parameters-inch'), 25.4 / 16],
      [demo(other, ['angle: 7 deg', 'angle: 25 deg']), 1],
    ] as const) {
      const { across, faceAngle: a, slot: seat, step: ledge } = design.layout
      for (const [name, depth] of [
        ['slot', seat.depth],
        ['step', ledge.depth],
      ] as const) {
        // The bar leans away from the bit side as the cut goes deeper.
        const reach = across / 2 / Math.cos(a)
        const [low, high] = extent(profile(design, name), 0) as [number, number]
        const past = [high - reach, -low - reach - depth * Math.tan(a)]
        for (const value of past) {
          expect(value).toBeGreaterThan(seat.width - 1e-2 * grid)
          expect(value).toBeLessThan(seat.width + grid)
        }
        for (const end of [low, high]) expect(Math.abs(end / grid - Math.round(end / grid))).toBeLessThan(1e-9)
        const [near, far] = extent(profile(design, name), 1) as [number, number]
        if (name === 'slot') expect(far - near).toBeCloseTo(seat.width, 9)
        expect(areaOf(profile(design, name).outlines[0]!)).toBeCloseTo((high - low) * (far - near), 6)
      }
    }
  })

  it('end a stopped slot in the arcs that its cutter leaves', () => {
    const slot = profile(demo(stopped), 'slot')
    const arcs = slot.outlines[0]!.filter((e) => e.kind === 'arc')
    expect(arcs.map((e) => e.radius)).toEqual([3, 3])
    expect(slot.outlines[0]).toHaveLength(6)
    const [low, high] = extent(slot, 0) as [number, number]
    const width = demo().layout.slot.width
    expect(low).toBeCloseTo(-8, 9)
    expect(areaOf(slot.outlines[0]!)).toBeCloseTo((high - low) * width - (4 - Math.PI) * 4.5, 6)
    const asWide = profile(demo(['  runs: through', '  runs: stopped\n  beyond-axis: 8']), 'slot')
    expect(asWide.outlines[0]!.filter((e) => e.kind === 'arc').map((e) => e.radius)).toEqual([
      expect.closeTo(width / 2, 9),
    ])
  })

  it('lie in right-handed planes with the cutter above them and metal below', () => {
    forRandomHeads(12, (design) => {
      const stock = { ...solidOf(design.part('body')), cuts: [] }
      for (const { plane } of headProfiles(design).slice(0, 2)) {
        expect(dot(cross(plane.x, plane.y), plane.z)).toBeCloseTo(1, 12)
        expect(plane.x[0]).toBeGreaterThan(0)
        expect(isInside(stock, along(plane.origin, plane.z, -0.5))).toBe(true)
      }
    })
    for (const design of [demo(), demo(other), demo(['side: leading', 'side: trailing'])]) {
      const [, , laid] = headProfiles(design)
      const { origin, x, y, z } = laid!.plane
      expect(dot(cross(x, y), z)).toBe(1)
      // Above the wall there is the void of the step, below it metal, at every screw.
      const whole = solidOf(design.part('body'))
      const screws = laid!.profiles[0]!.outlines.map(([e]) => (e!.kind === 'circle' ? e!.centre : [0, 0]))
      for (const [u, v] of screws as [number, number][]) {
        const beside = pointFrom({ origin, x, y, z }, [u + 3, v, 0])
        expect([isInside(whole, along(beside, z, 1)), isInside(whole, along(beside, z, -1))]).toEqual([false, true])
      }
    }
  })

  it('have the leading wall at +y of the tilted face for a clockwise tool, at −y for the other hand', () => {
    // 2.4 mm ahead of centre; the step is on the leading side, 9 mm of wall beyond.
    expect(extent(profile(demo(), 'slot'), 1)[1]).toBeCloseTo(2.4, 9)
    expect(extent(profile(demo(), 'step'), 1)[0]).toBeCloseTo(11.4, 9)
    expect(extent(profile(demo(other), 'slot'), 1)[0]).toBeCloseTo(-2.4, 9)
    expect(extent(profile(demo(other), 'step'), 1)[1]).toBeCloseTo(-11.4, 9)
    const [, tilted] = headProfiles(demo())
    expect(tilted!.zero).toContain('the bit cuts towards +Y')
    expect(headProfiles(demo(other))[1]!.zero).toContain('the bit cuts towards -Y')
    expect(headProfiles(demo())[0]!.zero).toContain('the bit cuts towards -Y')
  })

  it('of a mirrored head are the same, mirrored', () => {
    const [a, b] = [demo(), demo(other)]
    for (const name of ['stock', 'bore', 'face', 'slot', 'step']) {
      const sorted = (p: Profile, way: 1 | -1) =>
        corners(p)
          .map(([x, y]) => [x, way * y].map((v) => (Math.round(v * 1e6) / 1e6 || 0).toFixed(6)).join(' '))
          .toSorted()
      expect(sorted(profile(a, name), 1), name).toEqual(sorted(profile(b, name), -1))
    }
  })

  it('have the screw holes where the readout finds them from datums A and B', () => {
    const { layout: l } = demo()
    const [sin, cos] = [Math.sin(7 * degree), Math.cos(7 * degree)]
    const holes = profile(demo(), 'screw-hole').outlines.map(([e]) => (e!.kind === 'circle' ? e!.centre : undefined))
    expect(holes).toEqual(
      l.screws.xs.map((x) => [
        expect.closeTo(x * cos + 6 * sin, 9),
        // Clockwise, screws on the leading side: the head lies at −y.
        expect.closeTo(-41 - x * sin + 6 * cos, 9),
      ]),
    )
    const mirrored = profile(demo(other), 'screw-hole').outlines.map(([e]) =>
      e!.kind === 'circle' ? e!.centre : [0, 0],
    )
    expect(mirrored.map(([x, y]) => [x, -y!])).toEqual(holes.map((h) => h!.map((v) => expect.closeTo(v, 9))))
    expect(headProfiles(demo(other))[2]!.zero).toContain('the head lies at +Y')
  })

  it('have a bore that is tapped at its tap drill, and its chamfer beyond the thread', () => {
    const design = demo(
      [/ {2}kind: matched.*\n {2}assembly: heat\n {2}catch: pin/, '  kind: threaded\n  thread: M20\n  hand: left'],
      ['bottom: flat', 'bottom: drill-point'],
    )
    const tapDrill = design.tables.threads.find((t) => t.name === 'M20')!.tapDrill
    const bore = profile(design, 'bore')
    expect(profileLayer(bore, 'mm')).toBe('BORE_M20-LH_TAPDRILL_DEPTH_24MM_POINT-118DEG')
    expect(bore.outlines).toEqual([[{ kind: 'circle', centre: [0, 0], radius: tapDrill / 2 }]])
    expect(areaOf(profile(design, 'bore chamfer').outlines[0]!)).toBeCloseTo(121 * Math.PI, 6)
  })

  it('of any head are closed, of their own layer each, and the same every time', () => {
    forRandomHeads(30, (design) => {
      const setUps = headProfiles(design)
      const all = setUps.flatMap((s) => s.profiles)
      for (const p of all) for (const outline of p.outlines) expect(isClosed(outline), p.name).toBe(true)
      expect(new Set(all.map((p) => profileLayer(p, 'mm'))).size).toBe(all.length)
      expect(all.map((p) => p.name)).toEqual(expect.arrayContaining(['stock', 'bore', 'face', 'slot', 'step']))
      expect(headProfiles(design)).toEqual(setUps)
    })
  })
})

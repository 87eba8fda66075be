import { makeBox, makeCylinder } from 'replicad'
import { describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { chirality } from './chirality.ts'
import { chordTolerance } from './library-head.ts'
import { exactly, finely } from './measure.ts'
import { parameterSets } from './parameter-sets.ts'
import { rawHead } from './raw-head.ts'
import { degrees, mm } from './raw-quantity.ts'
import type { RawSet } from './raw-set.ts'
import { straysBetween } from './skin-contract.ts'
import { apart, mirroredInY, withManifolds } from './triangles.ts'

/** A square head so plain that its volume can be worked out by hand: level face, one screw, nothing at the bore. */
const plain: RawSet = {
  ...(parse(parameterSets[2]!.text) as RawSet),
  rotation: 'anticlockwise',
  units: 'mm',
  stock: { shape: 'square', size: 40, material: 'steel-1018' },
  face: { angle: '0 deg', 'depth-on-axis': 50 },
  bit: { width: 8, height: 8, length: 40, overhang: 10 },
  slot: { runs: 'through', 'ahead-of-centre': 2, depth: 7, clearance: 0 },
  step: { 'wall-thickness': 8, depth: 9 },
  screws: { thread: 'M6', count: 1, 'first-from-corner': 10, height: 4 },
  bore: { kind: 'blind', diameter: 16, depth: 20, bottom: 'flat', vent: 'none', chamfer: 0 },
}
const head = (set: RawSet) => rawHead(stringify(set))
const bodyOf = (change: Partial<RawSet>) => exactly(head({ ...plain, ...change }).body())

/** 40 × 40 × 50, less slot 40 × 8 × 7, step 40 × 10 × 9, tap drill 5 × 8, bore 16 × 20. */
const byHand = 80_000 - 2240 - 3600 - 50 * Math.PI - 1280 * Math.PI

describe('the judge against hand calculation', () => {
  it('measures a box and a cylinder exactly', () => {
    const box = exactly(makeBox([0, 0, 0], [2, 3, 4]))
    expect(box.volume).toBeCloseTo(24, 9)
    box.centroid.forEach((v, i) => {
      expect(v).toBeCloseTo([1, 1.5, 2][i]!, 9)
    })
    expect(exactly(makeCylinder(3, 10)).volume).toBeCloseTo(90 * Math.PI, 8)
  })

  it('builds the plain head', () => {
    const { volume, centroid, solids } = bodyOf({})
    expect(solids).toBe(1)
    expect(volume).toBeCloseTo(byHand, 6)
    // First moments: about Y the slot lies at −2, the step at +15, the screw at +6; about X only the screw, at 20 − 10;
    // the bar at −25, slot −46.5, step −45.5, screw −46, bore −10.
    const moments = [
      -50 * Math.PI * 10,
      -(2240 * -2) - 3600 * 15 - 50 * Math.PI * 6,
      80_000 * -25 - 2240 * -46.5 - 3600 * -45.5 - 50 * Math.PI * -46 - 1280 * Math.PI * -10,
    ]
    centroid.forEach((v, i) => {
      expect(v).toBeCloseTo(moments[i]! / byHand, 9)
    })
  })

  it('builds mouth chamfer, drill point and vent hole', () => {
    const bore = {
      kind: 'blind',
      diameter: 16,
      depth: 20,
      chamfer: 1,
      bottom: 'drill-point',
      'point-angle': '90 deg',
    } as const
    // A frustum from 9 to 8 less its cylinder; a cone of radius and height 8; the vent from its end (8 less its own
    // tip of height 1) to the slot's floor at 43.
    const chamfer = (Math.PI / 3) * (81 + 72 + 64) - 64 * Math.PI
    const point = (512 * Math.PI) / 3
    const vent = Math.PI * (43 - 28) + (Math.PI * 2) / 3
    expect(bodyOf({ bore: { ...bore, vent: 'none' } }).volume).toBeCloseTo(byHand - chamfer - point, 6)
    expect(bodyOf({ bore: { ...bore, vent: 'hole', 'vent-size': 2 } }).volume).toBeCloseTo(
      byHand - chamfer - point - vent,
      6,
    )
  })

  it('tilts the face about the axis without changing the bar that is left', () => {
    const bare = {
      face: { angle: '20 deg', 'depth-on-axis': 50 },
      slot: { runs: 'through', 'ahead-of-centre': 2, depth: 1e-3, clearance: 0 },
      step: { 'wall-thickness': 30, depth: 9 },
      screws: { thread: 'M6', count: 1, 'first-from-corner': -20, height: 4, length: 30 },
    } as const
    const { volume, centroid } = bodyOf(bare)
    const expected = 80_000 - 1280 * Math.PI
    expect(volume).toBeCloseTo(expected - (0.008 * 40) / Math.cos(Math.PI / 9), 2)
    // The longer side is that of +X: ∫ x · x tan a over a 40 mm square is 40⁴/12 · tan a.
    expect(centroid[0]).toBeCloseTo(((40 ** 4 / 12) * Math.tan(Math.PI / 9)) / expected, 3)
  })

  it('ends a stopped slot round, or with the corners its cutter leaves', () => {
    const stopped = { runs: 'stopped', 'ahead-of-centre': 2, depth: 7, clearance: 0, 'beyond-axis': 5 } as const
    const left = 7 * 8 * (20 - 5)
    expect(bodyOf({ slot: stopped }).volume).toBeCloseTo(byHand + left + 7 * (32 - 8 * Math.PI), 6)
    expect(bodyOf({ slot: { ...stopped, 'cutter-diameter': 4 } }).volume).toBeCloseTo(
      byHand + left + 7 * 2 * (4 - Math.PI),
      6,
    )
  })

  it('knows the three bars', () => {
    const stocked = (stock: Partial<RawSet['stock']>) => {
      const { figures } = head({ ...plain, stock: { ...plain.stock, ...stock } })
      return figures.across
    }
    expect(stocked({ shape: 'hexagon', size: 30 })).toBeCloseTo(34.641016, 6)
    expect(stocked({ shape: 'hexagon', size: 30, 'slot-runs': 'flat-to-flat' })).toBe(30)
    expect(stocked({ shape: 'round', size: 30 })).toBe(30)
    const gone = { step: { 'wall-thickness': 30, depth: 9 }, screws: { ...plain.screws, 'first-from-corner': -20 } }
    const bore = 1280 * Math.PI
    expect(bodyOf({ ...gone, stock: { ...plain.stock, shape: 'round' } }).volume).toBeCloseTo(
      // The slot from −6 to +2 across a disc of radius 20.
      20_000 * Math.PI - bore - 7 * (chordArea(20, 2) - chordArea(20, -6)),
      5,
    )
  })

  it('grinds the bit', () => {
    const bit = { ...plain.bit, 'ground-off': { leading: 1, end: 0.5 } }
    // In from the tip by three quarters of the width, 1 mm of 8 is off; and half a millimetre off the end.
    const off = 8 * (6 * 1 + 8 * 0.5)
    expect(exactly(head({ ...plain, bit }).bit()).volume).toBeCloseTo(8 * 8 * 40 - off, 6)
    // Two triangles seen from below: the rake falls away over 4 mm, the end over the 7 mm behind its edge.
    const facets = { 'rake-along': '30 deg', 'end-relief': '10 deg', length: 4 }
    const [rake, end] = [(16 * tan(30)) / 2, (49 * tan(10)) / 2]
    for (const rotation of ['clockwise', 'anticlockwise'] as const) {
      const { volume } = exactly(head({ ...plain, rotation, bit: { ...bit, facets } }).bit())
      expect(volume).toBeCloseTo(8 * 8 * 40 - 8 * (4 * 1 + 8 * 0.5 + rake + end), 6)
    }
    // The same two facets seen from ahead: the rake falls away upwards over 8 mm, the underside over 7 mm behind its edge,
    // which rises inwards by nothing.
    const upright = { 'rake-across': '20 deg', 'work-side-relief': '5 deg', length: 4 }
    const across = (64 * tan(20)) / 2 + (49 * tan(5)) / 2
    expect(exactly(head({ ...plain, bit: { ...bit, facets: upright } }).bit()).volume).toBeCloseTo(
      8 * 8 * 40 - (4 * 8 * 1 + 64 * 0.5 + 4 * across),
      6,
    )
  })

  it('sets the bit to its overhang or its swing', () => {
    const { volume, centroid } = exactly(head(plain).bit())
    expect(volume).toBeCloseTo(8 * 8 * 40, 6)
    ;[30 - 20, 2 - 4, -50 + 7 - 4].forEach((v, i) => {
      expect(centroid[i]).toBeCloseTo(v, 9)
    })
    const swing = 2 * Math.hypot(30, 2)
    const { overhang: _, ...bit } = plain.bit
    expect(head({ ...plain, bit: { ...bit, swing } }).tip().x).toBeCloseTo(30, 9)
    expect(head({ ...plain, face: { angle: '30 deg', 'depth-on-axis': 50 } }).tip().radius).toBeCloseTo(
      // x = 20/cos 30° + 10 along the slope, the tip 1 mm proud of the face.
      Math.hypot(20 + 10 * Math.cos(Math.PI / 6) - 0.5, 2),
      9,
    )
  })

  it('turns a shank and its spigot, and takes the flat off the spigot only', () => {
    const arbor = {
      kind: 'shank',
      shank: 'straight-20',
      material: 'steel-1045',
      'spigot-length': 18,
      'lead-in': 0,
      'shoulder-diameter': 30,
      'shoulder-thickness': 5,
    } as const
    const whole = Math.PI * (64 * 18 + 225 * 5 + 100 * 60)
    expect(exactly(head({ ...plain, arbor }).arbor()).volume).toBeCloseTo(whole, 6)
    const flat = { ...plain.bore, vent: 'flat', 'vent-size': 3 } as const
    const segment = 64 * Math.acos(5 / 8) - 5 * Math.sqrt(64 - 25)
    expect(exactly(head({ ...plain, arbor, bore: flat }).arbor()).volume).toBeCloseTo(whole - 18 * segment, 6)
    expect(exactly(head({ ...plain, arbor: { ...arbor, 'bore-through': 6 } }).arbor()).volume).toBeCloseTo(
      whole - Math.PI * 9 * 83,
      6,
    )
  })

  it('reads lengths and angles', () => {
    const lengths = ['1-3/4', '7/8 in', '15 thou', '0.36', '1-1/2 in', '12.5 mm', '-0.4'] as const
    expect(lengths.map((l) => mm(l, 'in'))).toEqual(
      [44.45, 22.225, 0.381, 9.144, 38.1, 12.5, -10.16].map((v) => expect.closeTo(v, 9)),
    )
    expect(degrees('9 deg 30 min')).toBe(9.5)
    expect(() => mm('three', 'mm')).toThrow('no length')
  })
})

describe('the parameter sets', () => {
  const sets = parameterSets.map(({ text }) => parse(text) as RawSet)
  const kinds = (of: (set: RawSet) => unknown) => [...new Set(sets.map((set) => String(of(set))))].toSorted()

  it('hold every kind of head', () => {
    expect(sets.length).toBeGreaterThanOrEqual(40)
    expect(kinds((s) => `${s.stock.shape} ${s.stock['slot-runs'] ?? ''} ${s.rotation}`)).toHaveLength(8)
    expect(kinds((s) => `${s.stock.shape} ${s.step.side ?? 'leading'}`)).toHaveLength(6)
    expect(kinds((s) => `${s.slot.runs} ${s.slot['cutter-diameter'] !== undefined}`)).toHaveLength(3)
    expect(kinds((s) => `${s.bore.bottom} ${s.bore.vent}`)).toHaveLength(7)
    expect(kinds((s) => s.screws.count)).toEqual(['1', '2', '3', '4', '5', '6'])
    expect(kinds((s) => s.arbor.shank)).toHaveLength(6)
    expect(kinds((s) => s.units)).toEqual(['in', 'mm'])
    expect(kinds((s) => Math.sign(Number(s.slot['ahead-of-centre'])))).toEqual(['-1', '1'])
    const angles = sets.map((s) => degrees(s.face.angle))
    expect([Math.min(...angles), Math.max(...angles)]).toEqual([0, 30])
  })
})

describe('the judge sees', () => {
  const set = parameterSets[17]!
  const fine = finely(rawHead(set.text).body())

  it('a mirrored hand, by volume and by chirality', () => {
    const mirrored = mirroredInY(fine)
    expect(chirality(mirrored)).toBeCloseTo(-chirality(fine), 12)
    expect(Math.abs(chirality(fine))).toBeGreaterThan(1e-4)
    expect(withManifolds([fine, mirrored], (one, other) => apart(one!, other!))).toBeGreaterThan(0.5)
  })

  it('a body that is its own mirror image', () => {
    expect(chirality(finely(makeBox([0, 0, 0], [2, 3, 4]).cut(makeCylinder(0.5, 9, [0.7, 1.5, -1]))))).toBeCloseTo(0, 9)
  })

  it('a turn or a move of a body, but not in its chirality', () => {
    const moved = finely(rawHead(set.text).body().rotate(30, [1, 2, 3], [1, 1, 0]).translate([5, -60, 7]))
    expect(chirality(moved)).toBeCloseTo(chirality(fine), 5)
    expect(withManifolds([fine, moved], (one, other) => apart(one!, other!))).toBeGreaterThan(1)
  })

  it('a screw hole that is 0.1 mm out of place, by the skin alone', () => {
    const right = parse(set.text) as RawSet
    const screws = { ...right.screws, 'first-from-corner': Number(right.screws['first-from-corner']) + 0.1 }
    const wrong = head({ ...right, screws }).body()
    const mesh = finely(wrong)
    expect(withManifolds([mesh, fine], (one, other) => apart(one!, other!))).toBeLessThan(chordTolerance)
    expect(straysBetween(mesh, fine, rawHead(set.text).body()).made).toBeCloseTo(0.1, 2)
  })
})

/** Area of a disc of radius r on the low side of a chord at y. */
function chordArea(r: number, y: number): number {
  return r * r * (Math.PI / 2 + Math.asin(y / r)) + y * Math.sqrt(r * r - y * y)
}

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180)

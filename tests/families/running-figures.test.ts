import { describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { balanceFigures } from '../../src/families/fly-cutter-head/figures/balance.ts'
import { clampingFigures } from '../../src/families/fly-cutter-head/figures/clamping.ts'
import { cuttingFigures } from '../../src/families/fly-cutter-head/figures/cutting.ts'
import { finishFigures } from '../../src/families/fly-cutter-head/figures/finish.ts'
import { speedFigures } from '../../src/families/fly-cutter-head/figures/speed.ts'
import { figuresOf } from '../../src/figures/figure.ts'
import { headFrom } from './random-heads.ts'

const figures = [...cuttingFigures, ...clampingFigures, ...finishFigures, ...balanceFigures, ...speedFigures]
const all = (design: HeadDesign) => new Map(figuresOf(figures, design).map((f) => [f.id, f]))

/** The template’s head with the bit square as bought, so that its angles in use follow from its place alone. */
const design = headFrom(
  'parameters',
  [/ {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/, ''],
  ['leading: 0.6', 'leading: 0'],
  ['depth-of-cut: 0.4', 'depth-of-cut: 0.4\n  roughness-wanted: 1.6 um\n  flatness-wanted: 0.01'],
  ['power: 1.1 kW', 'power: 1.1 kW\n  tram: { along: 0.02, across: -0.01, span: 200 }'],
  ['work:\n', 'settings:\n  running: { proof-run: 1800 rpm }\nwork:\n'],
)
const shown = all(design)
const value = (id: string) => shown.get(id)!.value
const limit = (id: string) => shown.get(id)!.limit

const deg = Math.PI / 180
const rpm = Math.PI / 30
const [sin7, cos7, tan7] = [Math.sin(7 * deg), Math.cos(7 * deg), Math.tan(7 * deg)]
/** Corner of a hexagon of 46 at 46/√3; the tip 27 further along the face and 0.5 below it, 2.4 ahead of the axis. */
const corner = 46 / Math.sqrt(3) / cos7
const tipX = corner + 27
const R = Math.hypot(tipX * cos7 - 0.5 * sin7, 2.4)
const speed = 430 * rpm

/** Nose 0.8, depth 0.4: an arc of 60°. Aluminium: kc1.1 800 MPa, m 0.25 (turning-tool catalogue, table of work materials). */
const [depth, feed, nose] = [0.4, 0.12, 0.8]
const edge = nose * Math.acos(1 - depth / nose)
const chip = (depth * feed) / edge
/** End edge square to the face at 7°, seen across the motion, which stands asin(e/R) off the bit: tan κ = cos 7°/(sin 7°·cos lead). */
const lead = Math.asin(2.4 / R)
const kappa = Math.atan2(cos7, sin7 * Math.cos(lead))
/** tan γo = tan γp·cos κ + tan γf·sin κ (ISO 3002-1) with γp = 0, γf = −asin(e/R). */
const rake = Math.atan(Math.tan(-lead) * Math.sin(kappa))
const factor = 1.2 * 1.3 * (1 - 0.015 * (rake / deg - 6))
const force = factor * 800 * chip ** -0.25 * depth * feed
/** Thrust square to the chord of the edge in cut, which stands at 30° to the cut surface. */
const [radial, axial] = [0.5 * force * Math.sin(30 * deg), 0.5 * force * Math.cos(30 * deg)]

/** Relative, nine digits. */
const expectFigure = (id: string, expected: number) => expect(value(id) / expected, id).toBeCloseTo(1, 9)

describe('the cut of the template with a square bit, worked out by hand', () => {
  it('has the nearest speed of the spindle not above the table’s 500 ft/min: 1000·v/(π·D)', () => {
    expectFigure('speed.wanted-low', (250 * 304.8) / 60 / R)
    expectFigure('speed.wanted-high', (500 * 304.8) / 60 / R)
    expect(value('speed.wanted-high') / rpm).toBeCloseTo((1000 * 152.4) / (Math.PI * 2 * R), 6)
    expect(value('speed.advised') / rpm).toBeCloseTo(430, 9)
    expectFigure('speed.cutting', speed * R)
    expectFigure('speed.largest-swing', (1000 * 152.4) / (Math.PI * 95))
  })
  it('has the force of Kienzle’s formula with the rake in use, and torque and power that follow', () => {
    expectFigure('cut.edge', edge)
    expectFigure('cut.chip', chip)
    expectFigure('cut.factor', factor)
    expectFigure('cut.force', force)
    expectFigure('cut.specific', force / (depth * feed))
    expectFigure('cut.force-radial', radial)
    expectFigure('cut.force-axial', axial)
    expectFigure('cut.torque', force * R)
    expectFigure('cut.power-peak', (force * speed * R) / 1000)
    expectFigure('cut.motor-peak', (force * speed * R) / 1000 / 0.8)
    expect(limit('cut.motor-peak')).toEqual({ value: 1100, is: 'most' })
  })
  it('has the mean power of the arc, bounded by the thinnest chip that the formula holds for', () => {
    // Mean chip h·(92/R)/arc = 0.0475 mm lies below 0.05: the force of that chip, all along the arc.
    const arc = 2 * Math.asin(46 / R)
    expect((chip * 92) / R / arc).toBeLessThan(0.05)
    const bound = factor * 800 * 0.05 ** 0.75 * edge
    expectFigure('cut.share-of-turn', arc / (2 * Math.PI))
    expectFigure('cut.power-mean', (((bound * arc) / (2 * Math.PI)) * speed * R) / 1000)
    expectFigure('cut.motor-mean', value('cut.power-mean') / 0.8)
  })
  it('travels from where the tip stands clear to where it has left the work', () => {
    expectFigure('feed.table', 0.12 * 430)
    expectFigure('cut.approach', R + 2)
    expectFigure('cut.overrun', -Math.sqrt(R ** 2 - 46 ** 2))
    expectFigure('cut.travel', 140 + 2 * (R + 2))
    expectFigure('cut.minutes', (140 + 2 * (R + 2)) / (0.12 * 430))
    expect(value('cut.passes')).toBe(1)
    expectFigure('cut.one-pass-swing', 1.1 * 92)
  })
})

describe('the clamping of the same bit, worked out by hand', () => {
  /** Trailing wall 2.4 − 10.04 = −7.64 from the mid-plane: it ends |y|/√3 inside the corner, at the floor 9.5·tan 7° deeper. */
  const wallEnd = (46 - 7.64) / Math.sqrt(3) / cos7
  const outer = wallEnd - 9.5 * tan7
  const out = tipX - outer
  it('has M6 set screws of 7.2 N·m with T/(0.2·d), 35 % less and 25 % more', () => {
    expect(value('clamp.torque')).toBe(7200)
    expectFigure('clamp.screw-force', 7200 / (0.2 * 6))
    expectFigure('clamp.screw-least', 3900)
    expectFigure('clamp.screw-most', 7500)
  })
  it('has a bit that bends as a cantilever: 6·F·L/(b·h²), F·L³/(3·E·I)', () => {
    expectFigure('clamp.overhang', out)
    expectFigure('clamp.grip', outer + wallEnd)
    expectFigure('clamp.grip-ratio', (outer + wallEnd) / out)
    expectFigure('clamp.stress', (6 * (force + axial) * out) / 1000)
    const stiffness = (3 * 190e3 * 10 ** 4) / 12
    expectFigure('clamp.deflection', (Math.hypot(force, axial) * out ** 3) / stiffness)
  })
  it('has screws that hold it against prying about the end of its wall, and by friction every way', () => {
    const levers = [outer - (corner - 14.5), outer - (corner - 38.5)]
    expectFigure('clamp.prying', (3900 * (levers[0]! + levers[1]!)) / (force * out))
    expectFigure('clamp.prying-one-loose', (3900 * levers[0]!) / (force * out))
    // The wall in full, the screw points half: 0.12·1.5 of two screws.
    expectFigure('clamp.friction', 0.12 * 1.5 * 2 * 3900)
    expectFigure('clamp.hold-inward', 1404 / (radial * cos7 + axial * sin7))
    expectFigure('clamp.hold-out-of-slot', 1404 / (radial * sin7))
    // A box of 10 × 10 × 78 of 8160 kg/m³, its middle 39 behind the tip and 4.5 above the face.
    const mass = 7800 * 8160e-9
    const middle = (tipX - 39) * cos7 + 4.5 * sin7
    expectFigure('clamp.bit-mass-radius', middle)
    const thrown = (mass * middle * speed ** 2) / 1000
    expectFigure('clamp.hold-outward', 1404 / (thrown * cos7))
  })
  it('has a wall 9 thick that stands 3.5 above the screws, and 8 turns of thread in it', () => {
    // 45° from each screw: 3 + 3.5 to either side, 26 of wall.
    const stress = (6 * 2 * 7500 * 3.5) / (26 * 81)
    expectFigure('clamp.wall-stress', stress)
    expectFigure('clamp.wall-factor', (60 * 6.894757293168361) / stress)
    expectFigure('clamp.thread', 8)
    // The body’s thread shears at the major diameter, 7/8 of the pitch thick; 70 ksi/√3.
    const strips = (8 * Math.PI * 6 * 0.875 * 70 * 6.894757293168361) / Math.sqrt(3)
    expectFigure('clamp.thread-factor', strips / 7500)
  })
})

describe('the finish it leaves, worked out by hand', () => {
  it('has feed marks of r − √(r² − f²/4), up to a feed of 2·r·sin κr′', () => {
    const height = nose - Math.sqrt(nose ** 2 - feed ** 2 / 4)
    expectFigure('finish.rt', height)
    // Ra/Rt tends to 0.2566 for a small feed: M. P. Groover’s formulas, from memory; 0.2566·Rt is method.md §6.
    expect(value('finish.ra') / height).toBeCloseTo(0.2566, 3)
    expect(limit('finish.ra')).toEqual({ value: 0.0016, is: 'most' })
    // The underside runs along the bit: tan κr′ = tan 7°/cos lead.
    expectFigure('finish.nose-feed', 2 * nose * Math.sin(Math.atan(tan7 / Math.cos(lead))))
    expect(value('finish.feed-for-ra')).toBeGreaterThan(feed)
  })
  it('has the hollow and the slope of a spindle that leans 0.02 and 0.01 on 200', () => {
    const sag = R - Math.sqrt(R ** 2 - 46 ** 2)
    expectFigure('finish.dish', Math.sin(Math.atan(0.02 / 200)) * sag)
    expectFigure('finish.slope', 92 * (0.01 / 200))
    expect(value('finish.step')).toBe(0)
    expectFigure('finish.lean', Math.asin(0.01 / sag))
  })
})

describe('balance and speeds of the same head', () => {
  it('has the unbalance of its parts as they are measured one by one', () => {
    const moment = [0, 0]
    let mass = 0
    for (const { part } of design.scene.parts) {
      const { centroid } = design.volume(part.id)
      mass += design.mass(part.id)
      moment[0]! += design.mass(part.id) * centroid[0]
      moment[1]! += design.mass(part.id) * centroid[1]
    }
    const amount = Math.hypot(...moment)
    expect(value('balance.unbalance') / (1000 * amount)).toBeCloseTo(1, 7)
    expect(value('balance.eccentricity') / (amount / mass)).toBeCloseTo(1, 7)
    expect(value('balance.heavy-side')).toBeCloseTo(Math.atan2(moment[1]!, moment[0]!), 7)
    // F = U·ω², G = e·ω (ISO 21940-11).
    expect(value('balance.force') / ((amount * speed ** 2) / 1000)).toBeCloseTo(1, 7)
    expect(value('balance.grade') / ((amount / mass) * speed)).toBeCloseTo(1, 7)
  })
  it('must never turn faster than 0.8 of the lowest limit, each of which is shown', () => {
    expectFigure('speed.limit.spindle-maximum', 2200 * rpm)
    expectFigure('speed.limit.tip-speed', 25000 / R)
    expectFigure('speed.limit.proof-run', 0.6 * 1800 * rpm)
    expectFigure('speed.limit.unbalance-force', Math.sqrt(25 / value('balance.force')) * speed)
    // Held three times over, across the bit’s own pull: m·x·ω²·cos 7° = 1404/3.
    const mass = 7800 * 8160e-9
    const middle = value('clamp.bit-mass-radius')
    expectFigure('speed.limit.bit-hold', Math.sqrt((1000 * 1404) / 3 / (mass * middle * cos7)))
    expectFigure('speed.never-exceed', 0.8 * 0.6 * 1800 * rpm)
    expect(value('balance.force-fastest') / value('balance.force')).toBeCloseTo((864 / 430) ** 2, 9)
  })
})

describe('a set that leaves things out', () => {
  const plain = all(headFrom('parameters', ['material: aluminium', 'material: plastic'], ['  length: 140\n', '']))
  it('has no figures for what is not known: no force of plastic, no tram, no proof run, no length', () => {
    for (const id of [
      'cut.force',
      'cut.torque',
      'clamp.stress',
      'clamp.prying',
      'finish.dish',
      'finish.lean',
      'speed.limit.proof-run',
      'cut.travel',
    ]) {
      expect(plain.has(id), id).toBe(false)
    }
    for (const id of [
      'speed.advised',
      'clamp.screw-force',
      'clamp.hold-outward',
      'finish.ra',
      'balance.force',
      'speed.never-exceed',
    ]) {
      expect(plain.has(id), id).toBe(true)
    }
  })
})

describe('the head in inches', () => {
  const inch = all(headFrom('parameters-inch'))
  it('is advised 100 ft/min for grey iron: 12·v/(π·D) = 98.6 rev/min at a swing of 3-7/8 in', () => {
    expect(inch.get('speed.advised')!.value / rpm).toBeCloseTo((12 * 100) / (Math.PI * 3.875), 6)
  })
  it('tightens 1/4-28 set screws with 87 in·lbf: 87/(0.2·0.25) = 1740 lbf', () => {
    expect(inch.get('clamp.screw-force')!.value / 4.4482216152605).toBeCloseTo(1740, 6)
  })
})

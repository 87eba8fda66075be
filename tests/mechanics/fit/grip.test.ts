import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demandOf, jamTorque } from '../../../src/mechanics/fit/demand.ts'
import {
  axialGrip,
  type Contact,
  gapeFactor,
  gapePressure,
  gripOf,
  lengthNeeded,
  pressureNeeded,
  slipFactor,
  slipForce,
} from '../../../src/mechanics/fit/grip.ts'
import { effectiveInterference, smoothingLoss } from '../../../src/mechanics/fit/smoothing.ts'

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const contacts = fc.record({
  pressure: positive(0.1, 300),
  diameter: positive(6, 100),
  length: positive(2, 100),
  friction: positive(0.02, 0.5),
})
const loads = fc.record({ torque: positive(0, 2e5), axial: positive(0, 2e4), bending: positive(0, 2e5) })

describe('grip', () => {
  it('adds up from friction on every patch of the joint', () => {
    const contact: Contact = { pressure: 61, diameter: 23, length: 19, friction: 0.11 }
    const [around, along] = [720, 50]
    let force = 0
    let torque = 0
    for (let patch = 0; patch < around * along; patch++) {
      const area = ((Math.PI * 23) / around) * (19 / along)
      force += 0.11 * 61 * area
      torque += 0.11 * 61 * area * 11.5
    }
    expect(gripOf(contact).axial / force).toBeCloseTo(1, 9)
    expect(gripOf(contact).torque / torque).toBeCloseTo(1, 9)
  })

  it('grows with pressure, length and friction alike', () => {
    fc.assert(
      fc.property(contacts, positive(1.01, 3), (contact, times) => {
        for (const key of ['pressure', 'length', 'friction'] as const) {
          const more = gripOf({ ...contact, [key]: contact[key] * times })
          expect(more.axial / gripOf(contact).axial).toBeCloseTo(times, 9)
          expect(more.torque / gripOf(contact).torque).toBeCloseTo(times, 9)
        }
      }),
    )
  })

  it('torque and axial force share it: neither alone nor together more than the circle of friction', () => {
    fc.assert(
      fc.property(contacts, fc.double({ min: 0, max: Math.PI / 2, noNaN: true }), (contact, angle) => {
        const { axial, torque } = gripOf(contact)
        const load = { torque: torque * Math.cos(angle), axial: axial * Math.sin(angle) }
        expect(slipFactor(contact, load)).toBeCloseTo(1, 9)
      }),
    )
    expect(slipForce({ torque: 300, axial: 40 }, 20)).toBeCloseTo(50, 12)
  })

  it('bending opens the joint where the pressure it takes away along a line reaches what is there', () => {
    // Pressure falls and grows evenly along the length: its moment, added up slice by slice, is the bending moment.
    const [diameter, length, moment] = [25, 21, 30_000]
    const edge = gapePressure(moment, diameter, length)
    let sum = 0
    const slices = 1000
    for (let slice = 0; slice < slices; slice++) {
      const z = ((slice + 0.5) / slices - 0.5) * length
      sum += edge * (z / (length / 2)) * z * diameter * (length / slices)
    }
    expect(sum / moment).toBeCloseTo(1, 5)
    expect(gapeFactor({ pressure: 2 * edge, diameter, length, friction: 0.1 }, moment)).toBeCloseTo(2, 12)
    expect(gripOf({ pressure: edge, diameter, length, friction: 0.1 }).bending).toBeCloseTo(moment, 6)
  })

  it('nothing asked is no factor', () => {
    const contact: Contact = { pressure: 50, diameter: 25, length: 20, friction: 0.1 }
    expect(slipFactor(contact, { torque: 0, axial: 0 })).toBeUndefined()
    expect(gapeFactor(contact, 0)).toBeUndefined()
  })

  it('the pressure and the length that are needed are just enough', () => {
    fc.assert(
      fc.property(contacts, loads, positive(1, 4), (contact, load, safety) => {
        fc.pre(load.torque + load.axial > 1)
        for (const enough of [
          { ...contact, pressure: pressureNeeded(contact, load, safety) },
          { ...contact, length: lengthNeeded(contact, load, safety) },
        ]) {
          const slip = slipFactor(enough, load) ?? Number.POSITIVE_INFINITY
          const gape = gapeFactor(enough, load.bending) ?? Number.POSITIVE_INFINITY
          expect(slip).toBeGreaterThanOrEqual(safety * (1 - 1e-9))
          expect(gape).toBeGreaterThanOrEqual(1 - 1e-9)
          expect(Math.min(slip / safety, gape)).toBeCloseTo(1, 9)
        }
      }),
    )
  })

  it('is nothing without pressure', () => {
    expect(axialGrip({ pressure: 0, diameter: 25, length: 20, friction: 0.15 })).toBe(0)
  })
})

describe('demand on the joint', () => {
  it('is twice the tooth’s peak or one and a half times the jam torque, whichever is more', () => {
    // 750 W at 20 rad/s: 37.5 N·m.
    expect(jamTorque(750, 20)).toBeCloseTo(37_500, 9)
    const slow = demandOf({ toothTorque: 20_000, power: 750, speed: 20 })
    expect(slow).toEqual({ ok: true, value: { fromCut: 40_000, fromJam: 56_250, torque: 56_250, governs: 'jam' } })
    const fast = demandOf({ toothTorque: 20_000, power: 750, speed: 60 })
    expect(fast.ok && [fast.value.torque, fast.value.governs]).toEqual([40_000, 'cut'])
  })

  it('power is torque times speed', () => {
    fc.assert(
      fc.property(positive(50, 5000), positive(1, 400), (power, speed) => {
        expect((jamTorque(power, speed) / 1000) * speed).toBeCloseTo(power, 6)
      }),
    )
  })

  it.each([
    ['a spindle that stands still', { speed: 0 }, 'speed'],
    ['no motor', { power: 0 }, 'power'],
    ['a cut that drives the tool', { toothTorque: -1 }, 'toothTorque'],
    ['less than the cut itself', { cutFactor: 0.5 }, 'cutFactor'],
    ['less than the jam itself', { jamFactor: 0 }, 'jamFactor'],
  ])('refuses %s', (_name, change, path) => {
    const demand = demandOf({ toothTorque: 20_000, power: 750, speed: 20, ...change })
    expect(demand.ok ? [] : demand.problems.map((p) => [p.where.path, p.code])).toEqual([[path, 'out-of-range']])
  })

  it('throws where no file could have said so', () => {
    expect(() => jamTorque(750, 0)).toThrow(RangeError)
    expect(() => demandOf({ toothTorque: Number.NaN, power: 1, speed: 1 })).toThrow(RangeError)
  })
})

describe('smoothing', () => {
  it('takes all of a small interference and never more', () => {
    expect(effectiveInterference(0.014, 0.01008)).toBeCloseTo(0.00392, 12)
    expect(effectiveInterference(0.005, 0.01008)).toBe(0)
    expect(effectiveInterference(-0.02, 0.01008)).toBe(0)
    expect(() => smoothingLoss(-0.001, 0.001, 0.8)).toThrow(RangeError)
    expect(() => smoothingLoss(0.001, 0.001, Number.NaN)).toThrow(RangeError)
  })
})

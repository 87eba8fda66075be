import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cylinderStress,
  greatestPrincipal,
  hubStress,
  shaftStress,
  vonMises,
} from '../../../src/mechanics/fit/joint-stress.ts'
import {
  type Elastic,
  interferenceFor,
  type JointShape,
  type PressJoint,
  pressJoint,
  pressureFrom,
} from '../../../src/mechanics/fit/press-joint.ts'
import { speedLosing, spinLoss } from '../../../src/mechanics/fit/spin-loss.ts'

const steel: Elastic = { youngsModulus: 200_000, poissonRatio: 0.29 }
const iron: Elastic = { youngsModulus: 100_000, poissonRatio: 0.211 }
const aluminium: Elastic = { youngsModulus: 69_000, poissonRatio: 0.33 }

function jointOf(shape: JointShape): PressJoint {
  const joint = pressJoint(shape)
  if (!joint.ok) throw new Error(JSON.stringify(joint.problems))
  return joint.value
}

/** Radial stress and displacement at one radius. */
type State = readonly [radial: number, displacement: number]

/**
 * Second road: equilibrium dσ_r/dr = (σ_θ − σ_r)/r − ρω²r and strain du/dr = (σ_r − ν·σ_θ)/E with σ_θ = E·u/r + ν·σ_r,
 * stepped outwards by Runge and Kutta's fourth-order rule. `load` is ρω² in MPa/mm².
 */
function integrate({ youngsModulus: E, poissonRatio: nu }: Elastic, from: number, to: number, start: State, load = 0) {
  const slope = (r: number, [radial, u]: State): State => {
    const hoop = (E * u) / r + nu * radial
    return [(hoop - radial) / r - load * r, (radial - nu * hoop) / E]
  }
  const steps = 4000
  const h = (to - from) / steps
  let state = start
  const add = (a: State, b: State, times: number): State => [a[0] + times * b[0], a[1] + times * b[1]]
  for (let step = 0; step < steps; step++) {
    const r = from + step * h
    const k1 = slope(r, state)
    const k2 = slope(r + h / 2, add(state, k1, h / 2))
    const k3 = slope(r + h / 2, add(state, k2, h / 2))
    const k4 = slope(r + h, add(state, k3, h))
    state = [0, 1].map(
      (at) => state[at]! + (h / 6) * (k1[at]! + 2 * k2[at]! + 2 * k3[at]! + k4[at]!),
    ) as unknown as State
  }
  return { state, hoop: (E * state[1]) / to + nu * state[0] }
}

/** Displacement and hoop stress at the inside of a ring that is pressed there with `pressure` and free outside. */
function ringFromInside(material: Elastic, inner: number, outer: number, pressure: number, load = 0) {
  // Linear in the unknown displacement: two shots give the one that ends free of stress.
  const end = (u: number) => integrate(material, inner, outer, [-pressure, u], load).state[0]
  const u = -end(0) / (end(1) - end(0))
  const outside = integrate(material, inner, outer, [-pressure, u], load)
  return { displacement: u, hoop: (material.youngsModulus * u) / inner - material.poissonRatio * pressure, outside }
}

/** Displacement and hoop stress at the outside of a ring that is free inside and pressed outside. */
function ringFromOutside(material: Elastic, inner: number, outer: number, pressure: number, load = 0) {
  const end = (u: number) => integrate(material, inner, outer, [0, u], load).state[0]
  const u = (-pressure - end(0)) / (end(1) - end(0))
  const outside = integrate(material, inner, outer, [0, u], load)
  return { displacement: outside.state[1], hoop: outside.hoop, boreHoop: (material.youngsModulus * u) / inner }
}

describe('thick cylinders against a stepwise integration of equilibrium and strain', () => {
  it.each([
    ['steel on hollow steel', 25, 46, 8, steel, steel],
    ['grey iron on hollow steel', 30, 48, 12, iron, steel],
    ['aluminium on thin steel tube', 40, 100, 34, aluminium, steel],
    ['thin aluminium on steel', 22.2, 26, 6, aluminium, steel],
  ])('%s', (_name, diameter, hubOutside, shaftBore, hub, shaft) => {
    const joint = jointOf({ diameter, hubOutside, shaftBore, hub, shaft })
    const pressure = 80
    const outer = ringFromInside(hub, diameter / 2, hubOutside / 2, pressure)
    const inner = ringFromOutside(shaft, shaftBore / 2, diameter / 2, pressure)
    const interference = 2 * (outer.displacement - inner.displacement)
    expect(pressureFrom(joint, interference) / pressure).toBeCloseTo(1, 8)
    expect(hubStress(joint, pressure).hoop / outer.hoop).toBeCloseTo(1, 8)
    expect(hubStress(joint, pressure, hubOutside).hoop / outer.outside.hoop).toBeCloseTo(1, 8)
    expect(shaftStress(joint, pressure).hoop / inner.hoop).toBeCloseTo(1, 8)
    expect(shaftStress(joint, pressure, shaftBore).hoop / inner.boreHoop).toBeCloseTo(1, 8)
  })

  it('a solid shaft is what a hole that shrinks to nothing leads to, in pressure and not in stress', () => {
    const of = (shaftBore: number) => jointOf({ diameter: 25, hubOutside: 46, shaftBore, hub: steel, shaft: steel })
    expect(pressureFrom(of(1e-4), 0.03) / pressureFrom(of(0), 0.03)).toBeCloseTo(1, 8)
    // The smallest hole doubles the stress at the axis.
    expect(shaftStress(of(1e-4), 100, 1e-4).hoop).toBeCloseTo(-200, 3)
    expect(shaftStress(of(0), 100, 0)).toEqual({ radial: -100, hoop: -100 })
  })

  it('turning takes as much interference away as two free rings grow apart', () => {
    const joint = jointOf({ diameter: 30, hubOutside: 70, shaftBore: 10, hub: aluminium, shaft: steel })
    const speed = 900
    const densities = { hub: 2700, shaft: 7850 }
    const load = (density: number) => density * 1e-12 * speed ** 2
    const hub = ringFromInside(aluminium, 15, 35, 0, load(densities.hub))
    const shaft = ringFromOutside(steel, 5, 15, 0, load(densities.shaft))
    const lost = 2 * (hub.displacement - shaft.displacement)
    expect(spinLoss(joint, densities, speed) / lost).toBeCloseTo(1, 7)
    expect(speedLosing(lost, joint, densities)! / speed).toBeCloseTo(1, 7)
  })

  it('a solid disc cut at the joint and put together without interference pulls apart by the disc’s own radial stress', () => {
    // Theory of elasticity: σ_r = (3+ν)/8·ρω²(b² − r²) in a turning solid disc.
    const joint = jointOf({ diameter: 30, hubOutside: 90, shaftBore: 0, hub: steel, shaft: steel })
    const speed = 2000
    const radial = ((3 + steel.poissonRatio) / 8) * 7850e-12 * speed ** 2 * (45 ** 2 - 15 ** 2)
    const lost = spinLoss(joint, { hub: 7850, shaft: 7850 }, speed)
    expect(lost / interferenceFor(joint, radial)).toBeCloseTo(1, 9)
  })

  it('at the speeds of a fly cutter turning takes next to nothing away', () => {
    const joint = jointOf({ diameter: 25, hubOutside: 46, shaftBore: 0, hub: steel, shaft: steel })
    const at2000 = (2000 / 60) * 2 * Math.PI
    expect(spinLoss(joint, { hub: 7850, shaft: 7850 }, at2000)).toBeLessThan(0.00002)
  })

  it('a shaft that grows more than its hub loses nothing by turning', () => {
    const heavy: Elastic = { youngsModulus: 1000, poissonRatio: 0.3 }
    const joint = jointOf({ diameter: 30, hubOutside: 32, shaftBore: 0, hub: steel, shaft: heavy })
    expect(speedLosing(0.01, joint, { hub: 7850, shaft: 20_000 })).toBeUndefined()
  })
})

const shapes = fc
  .record({
    diameter: fc.double({ min: 6, max: 120, noNaN: true }),
    ratio: fc.double({ min: 1.05, max: 6, noNaN: true }),
    hollow: fc.double({ min: 0, max: 0.95, noNaN: true }),
    hub: fc.constantFrom(steel, iron, aluminium),
    shaft: fc.constantFrom(steel, iron, aluminium),
  })
  .map(({ diameter, ratio, hollow, hub, shaft }) =>
    jointOf({ diameter, hubOutside: diameter * ratio, shaftBore: diameter * hollow, hub, shaft }),
  )
const interferences = fc.double({ min: 0.001, max: 0.2, noNaN: true })

describe('laws of a press joint', () => {
  it('pressure and interference give each other back', () => {
    fc.assert(
      fc.property(shapes, interferences, (joint, interference) => {
        expect(interferenceFor(joint, pressureFrom(joint, interference)) / interference).toBeCloseTo(1, 12)
      }),
    )
  })

  it('no interference and clearance give no pressure', () => {
    fc.assert(
      fc.property(shapes, interferences, (joint, interference) => {
        expect(pressureFrom(joint, -interference)).toBe(0)
        expect(pressureFrom(joint, 0)).toBe(0)
      }),
    )
  })

  it('metal on either side of a pressed surface balances: the hoop forces of a half ring carry its pressure', () => {
    fc.assert(
      fc.property(shapes, (joint) => {
        // ∫σ_θ dr over the wall is p·d/2, by Simpson's rule in 400 pieces.
        const [from, to] = [joint.diameter / 2, joint.hubOutside / 2]
        const h = (to - from) / 400
        let sum = 0
        for (let at = 0; at <= 400; at++) {
          const weight = at === 0 || at === 400 ? 1 : at % 2 === 1 ? 4 : 2
          const here = Math.min(joint.hubOutside, 2 * (from + at * h))
          sum += weight * hubStress(joint, 100, here).hoop
        }
        expect(((sum * h) / 3 / (100 * from)) * 1).toBeCloseTo(1, 5)
      }),
    )
  })

  it('surfaces carry what presses on them and nothing where nothing does', () => {
    fc.assert(
      fc.property(shapes, fc.double({ min: 1, max: 500, noNaN: true }), (joint, pressure) => {
        expect(hubStress(joint, pressure).radial).toBeCloseTo(-pressure, 6)
        expect(hubStress(joint, pressure, joint.hubOutside).radial).toBeCloseTo(0, 6)
        expect(shaftStress(joint, pressure).radial).toBeCloseTo(-pressure, 6)
      }),
    )
  })

  it('a thicker hub and a stiffer shaft press harder, a hollow shaft less', () => {
    fc.assert(
      fc.property(shapes, interferences, (joint, interference) => {
        const pressure = pressureFrom(joint, interference)
        const thicker = jointOf({ ...joint, hubOutside: joint.hubOutside * 1.1 })
        const hollower = jointOf({ ...joint, shaftBore: joint.shaftBore + (joint.diameter - joint.shaftBore) / 4 })
        expect(pressureFrom(thicker, interference)).toBeGreaterThan(pressure)
        expect(pressureFrom(hollower, interference)).toBeLessThan(pressure)
      }),
    )
  })

  it('von Mises of equal all-round pressure is that pressure, and of pure shear √3 times the shear', () => {
    expect(vonMises({ radial: -50, hoop: -50 })).toBeCloseTo(50, 12)
    expect(vonMises({ radial: -50, hoop: 50 })).toBeCloseTo(50 * Math.sqrt(3), 12)
    expect(greatestPrincipal({ radial: -50, hoop: 20 })).toBe(50)
    expect(greatestPrincipal({ radial: -50, hoop: 80 })).toBe(80)
  })
})

describe('a joint that cannot be', () => {
  const good: JointShape = { diameter: 25, hubOutside: 46, shaftBore: 0, hub: steel, shaft: steel }
  it.each([
    ['a hub no wider than its bore', { hubOutside: 25 }, 'hubOutside', 'contradiction'],
    ['a hub narrower than its bore', { hubOutside: 20 }, 'hubOutside', 'contradiction'],
    ['a shaft hollow to its outside', { shaftBore: 25 }, 'shaftBore', 'contradiction'],
    ['a shaft hollow beyond its outside', { shaftBore: 30 }, 'shaftBore', 'contradiction'],
    ['a hole of less than nothing', { shaftBore: -1 }, 'shaftBore', 'out-of-range'],
    ['no diameter', { diameter: 0 }, 'diameter', 'out-of-range'],
    ["Poisson's ratio 0.7", { hub: { ...steel, poissonRatio: 0.7 } }, 'hub.poissonRatio', 'out-of-range'],
    ["Poisson's ratio −0.1", { shaft: { ...steel, poissonRatio: -0.1 } }, 'shaft.poissonRatio', 'out-of-range'],
    ['no stiffness', { shaft: { ...steel, youngsModulus: 0 } }, 'shaft.youngsModulus', 'out-of-range'],
  ])('%s is refused as a problem', (_name, change, path, code) => {
    const joint = pressJoint({ ...good, ...change })
    expect(joint.ok ? [] : joint.problems.map((problem) => [problem.where.path, problem.code])).toEqual([[path, code]])
  })

  it('says all at once', () => {
    const joint = pressJoint({ ...good, hubOutside: 20, shaftBore: 30, hub: { youngsModulus: -1, poissonRatio: 0.5 } })
    expect(joint.ok ? 0 : joint.problems.length).toBe(4)
  })

  it('throws on what no file can hold and on places outside the metal', () => {
    expect(() => pressJoint({ ...good, diameter: Number.NaN })).toThrow(RangeError)
    expect(() => pressJoint({ ...good, hubOutside: Number.POSITIVE_INFINITY })).toThrow(RangeError)
    const joint = jointOf(good)
    expect(() => hubStress(joint, 10, 24)).toThrow(RangeError)
    expect(() => shaftStress(joint, 10, 26)).toThrow(RangeError)
    expect(() => interferenceFor(joint, -1)).toThrow(RangeError)
    expect(() => cylinderStress({ inner: 0, outer: 10 }, { inside: 1, outside: 0 }, 5)).toThrow(RangeError)
    expect(() => spinLoss(joint, { hub: -1, shaft: 1 }, 1)).toThrow(RangeError)
  })
})

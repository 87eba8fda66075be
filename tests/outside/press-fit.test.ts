import { describe, expect, it } from 'vitest'
import { givenFit } from '../../src/mechanics/fit/given-fit.ts'
import { axialGrip, gripOf, slipForce } from '../../src/mechanics/fit/grip.ts'
import { hubStress, shaftStress, vonMises } from '../../src/mechanics/fit/joint-stress.ts'
import { interferenceFor, type JointShape, pressJoint, pressureFrom } from '../../src/mechanics/fit/press-joint.ts'
import { smoothingLoss } from '../../src/mechanics/fit/smoothing.ts'
import { headFrom } from '../families/random-heads.ts'

// Calculations have no units of their own: inches with psi and lbf go through as well as mm with MPa and N.

/** Most of these books give radial interference; ours is on the diameter. */
const onDiameter = (radial: number) => 2 * radial

/** Steel of the solutions to Mechanical Engineering Design 8th ed.: E in psi. */
const steelPsi = { youngsModulus: 30e6, poissonRatio: 0.292 }

const jointOf = (shape: JointShape) => {
  const joint = pressJoint(shape)
  if (!joint.ok) throw new Error(JSON.stringify(joint.problems))
  return joint.value
}

const solid = (radius: number, outer: number, hub: JointShape['hub'], shaft = hub) =>
  jointOf({ diameter: 2 * radius, hubOutside: 2 * outer, shaftBore: 0, hub, shaft })

const expectWithin = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1), `${found} against ${published}`).toBeLessThanOrEqual(share)

describe('Mechanical Engineering Design 8th ed., solutions (chapters 3 and 5)', () => {
  it('3-68: a solid steel shaft 0.001 in over on the radius presses a steel hub of twice its size with 22 500 psi', () => {
    const joint = solid(0.5, 1, steelPsi)
    const pressure = pressureFrom(joint, onDiameter(0.001))
    expectWithin(pressure, 22_500, 1e-3)
    expectWithin(hubStress(joint, pressure).hoop, 37_500, 1e-3)
    expectWithin(shaftStress(joint, pressure).hoop, -22_500, 1e-3)
  })

  it('3-69: the same shaft presses a hub of grey iron with 13 064 psi', () => {
    const joint = solid(0.5, 1, { youngsModulus: 14.5e6, poissonRatio: 0.211 }, steelPsi)
    const pressure = pressureFrom(joint, onDiameter(0.001))
    expectWithin(pressure, 13_064, 1e-3)
    expectWithin(hubStress(joint, pressure).hoop, 21_770, 1e-3)
    expectWithin(shaftStress(joint, pressure).hoop, -13_064, 1e-3)
  })

  it('3-70: 33 750 psi at the most interference (11 250 at the least: own figure)', () => {
    const joint = solid(0.5, 1, steelPsi)
    expectWithin(pressureFrom(joint, onDiameter(0.0015)), 33_750, 1e-3)
    expectWithin(pressureFrom(joint, onDiameter(0.0005)), 11_250, 1e-3)
  })

  // Hub outside and E are inferred: they reproduce both printed answers of each problem.
  it.each([
    ['3-64 (40H7/s6)', 40.043, 40.059, 0.009, 0.0295, 34.9, 114.5],
    ['3-66 (40H7/u6)', 40.06, 40.076, 0.0175, 0.038, 67.9, 147.5],
  ])(
    '%s: pressures at both ends',
    (_problem, smallest, largest, leastRadial, mostRadial, leastPressure, mostPressure) => {
      const fit = givenFit({
        nominal: 40,
        bore: { smallest: 40, largest: 40.025 },
        spigot: { smallest, largest },
      })
      if (!fit.ok) throw new Error('no fit')
      const { least, most } = fit.value.interference
      expect(least).toBeCloseTo(onDiameter(leastRadial), 9)
      expect(most).toBeCloseTo(onDiameter(mostRadial), 9)
      const joint = solid(20, 40, { youngsModulus: 207_000, poissonRatio: 0.292 })
      expectWithin(pressureFrom(joint, least), leastPressure, 2e-3)
      expectWithin(pressureFrom(joint, most), mostPressure, 2e-3)
    },
  )

  it('3-65: 5250 to 17 250 psi in an inch joint (hub outside inferred)', () => {
    const fit = givenFit({
      nominal: 1.5,
      bore: { smallest: 1.5, largest: 1.501 },
      spigot: { smallest: 1.5017, largest: 1.5023 },
    })
    if (!fit.ok) throw new Error('no fit')
    expect(fit.value.interference.most).toBeCloseTo(onDiameter(0.00115), 9)
    expect(fit.value.interference.least).toBeCloseTo(onDiameter(0.00035), 9)
    const joint = solid(0.75, 1.5, steelPsi)
    expectWithin(pressureFrom(joint, fit.value.interference.most), 17_250, 1e-3)
    expectWithin(pressureFrom(joint, fit.value.interference.least), 5250, 1e-3)
  })

  it('5-34(b): 4167 psi, hoop 10 830 psi and von Mises 13 410 psi in the bore of the hub', () => {
    const joint = solid(1, 1.5, steelPsi)
    const pressure = pressureFrom(joint, onDiameter(0.0005))
    expectWithin(pressure, 4167, 1e-3)
    expectWithin(hubStress(joint, pressure).hoop, 10_830, 1e-3)
    expectWithin(vonMises(hubStress(joint, pressure)), 13_410, 1e-3)
  })
})

describe("Marks' Calculations for Machine Design (2005), chapter 3", () => {
  it('example 6 in inches: about 2100 psi (the book rounds 1 − 0.44)', () => {
    expectWithin(pressureFrom(solid(2, 3, steelPsi), onDiameter(0.0005)), 2100, 1e-2)
  })

  it('example 6 in SI: 12.6 MPa', () => {
    const joint = solid(50, 80, { youngsModulus: 207_000, poissonRatio: 0.292 })
    expectWithin(pressureFrom(joint, onDiameter(0.01)), 12.6, 5e-3)
  })

  it('example 7: limits of an aluminium joint leave 0.0005 to 0.021 mm on the radius', () => {
    const fit = givenFit({
      nominal: 40,
      bore: { smallest: 40, largest: 40.025 },
      spigot: { smallest: 40.026, largest: 40.042 },
    })
    if (!fit.ok) throw new Error('no fit')
    expect(fit.value.interference).toEqual({ least: onDiameter(0.0005), most: onDiameter(0.021) })
    // Own figures, R 40 and ro 80: the book's radius of 4 cm is the bore's diameter, so its pressures are not used.
    const joint = solid(40, 80, { youngsModulus: 77_000, poissonRatio: 0.33 })
    expectWithin(pressureFrom(joint, onDiameter(0.021)), 15.16, 1e-3)
    expectWithin(pressureFrom(joint, onDiameter(0.0005)), 0.361, 1e-3)
  })
})

describe('compound tubes', () => {
  const tube = { youngsModulus: 200_000, poissonRatio: 0.3 }

  it('Advanced Strength and Applied Elasticity, example 8.3 p.243 (and Strength of Materials, 8.8.17 p.350): 12.3 MPa', () => {
    const joint = jointOf({ diameter: 400, hubOutside: 500, shaftBore: 300, hub: tube, shaft: tube })
    const pressure = pressureFrom(joint, onDiameter(0.1))
    expectWithin(pressure, 12.3, 2e-3)
    expectWithin(hubStress(joint, pressure).hoop, 56.03, 2e-3)
    expectWithin(hubStress(joint, pressure, 500).hoop, 43.73, 2e-3)
    expectWithin(shaftStress(joint, pressure, 300).hoop, -56.23, 2e-3)
    expectWithin(shaftStress(joint, pressure, 400).hoop, -43.93, 2e-3)
  })

  it('Strength of Materials, example 8.8.16 p.348: 0.189 mm on the radius for 30 N/mm² in tubes of 200/250/300 mm', () => {
    const joint = jointOf({ diameter: 250, hubOutside: 300, shaftBore: 200, hub: tube, shaft: tube })
    expectWithin(interferenceFor(joint, 30), onDiameter(0.189), 5e-3)
  })
})

describe('grip of a joint', () => {
  it('course notes on machine design, problem 8.1: 1.2 MN at 75 mm radius asks for 4.8 MN at friction 0.25', () => {
    const force = slipForce({ torque: 1_200_000 * 75, axial: 0 }, 150)
    expectWithin(force, 1_200_000, 1e-9)
    const area = Math.PI * 150 * 75
    expectWithin(area, 35_343, 1e-4)
    // Pressure by own division.
    const pressure = 4_800_000 / area
    expectWithin(pressure, 135.8, 1e-3)
    expectWithin(axialGrip({ pressure, diameter: 150, length: 75, friction: 0.25 }), force, 1e-9)
  })

  it('22 500 psi on 1 in diameter and length at friction 0.12: 8482.3 lbf and 4241.2 lbf·in (own figures)', () => {
    const grip = gripOf({ pressure: 22_500, diameter: 1, length: 1, friction: 0.12 })
    expectWithin(grip.axial, 8482.3, 1e-3)
    expectWithin(grip.torque, 4241.2, 1e-3)
  })

  it('a live-steam builder’s note of 1985: an axle of 3/4 in with 0.0005 in takes about 3000 lb to press', () => {
    // The note gives no length, hub or friction: a wheel an axle's diameter to one and a half long, at most 0.15.
    const joint = solid(0.375, 0.75, steelPsi)
    const pressure = pressureFrom(joint, 0.0005)
    const force = (length: number) => axialGrip({ pressure, diameter: 0.75, length, friction: 0.15 })
    expect(force(0.75)).toBeLessThan(3000)
    expect(force(0.75)).toBeGreaterThan(1500)
    expect(force(1.125)).toBeGreaterThan(2500)
    expect(force(1.125)).toBeLessThan(4500)
  })
})

describe('smoothing', () => {
  // Own figures; the factors are those of two editions of DIN 7190 (second-hand).
  it.each([
    [0.8, 0.01304],
    [0.4, 0.00652],
  ])('Rz 6.3 and 10 µm at factor %d', (factor, lost) => {
    expectWithin(smoothingLoss(0.0063, 0.01, factor), lost, 1e-9)
  })
})

describe('friction of the settings', () => {
  const { fit } = headFrom('parameters').parameters.settings

  it('shrunk: a hub heated to 300 °C in an electric furnace, 0.15 (DIN 7190-1, sec. 5.3, second-hand)', () => {
    expect(fit['friction-shrunk']).toBe(0.15)
    // The row above it, degreased, has 0.20, and both rows of oil-pressure joints between 0.12 and 0.18.
    expect(fit['friction-shrunk']).toBeLessThan(0.2)
  })

  it('pressed: dry and slipping, 0.08 (DIN 7190-1, sec. 5.2, from memory)', () => {
    expect(fit['friction-pressed']).toBe(0.08)
    // Lubricated 0.07, loosening 0.11: what a press has to overcome is more than any of them.
    expect(fit['friction-pressing']).toBeGreaterThan(0.11)
  })
})

describe('old shop books', () => {
  it('a steel crank pin of 9 in takes 15·D + 15 = 150 tons to press (*Applied Science for Metal Workers*, forced fits)', () => {
    expect(15 * 9 + 15).toBe(150)
    // The book gives 0.001 to 0.002 in per inch, but no hub, length or friction: a web twice the pin and as long as the pin is
    // thick, from slipping at our low friction at the least to pressing at our high one at the most. Order only.
    const joint = solid(4.5, 9, steelPsi)
    const tons = (perInch: number, friction: number) =>
      axialGrip({ pressure: pressureFrom(joint, 9 * perInch), diameter: 9, length: 9, friction }) / 2000
    expect(tons(0.001, 0.08)).toBeLessThan(150)
    expect(tons(0.002, 0.15)).toBeGreaterThan(150)
    expectWithin(tons(0.0015, 0.08), 150, 0.2)
  })

  it('a shrink fit held 3.66 times a pressed one along the axis and 3.2 times in torsion (*Turning and Boring*, F. D. Jones)', () => {
    const { fit } = headFrom('parameters').parameters.settings
    const held = (friction: number) => gripOf({ pressure: 10_000, diameter: 1, length: 1, friction })
    const [shrunk, pressed] = [held(fit['friction-shrunk']), held(fit['friction-pressed'])]
    const axial = shrunk.axial / pressed.axial
    const torsion = shrunk.torque / pressed.torque
    // Friction is all that tells our two apart, so that both come out the same: 0.15/0.08, half to six tenths of the book's,
    // whose joints must have had 0.26 to 0.29 by our pressed one. DIN's highest is 0.20: we keep to that side.
    expect(axial).toBeCloseTo(1.875, 12)
    expect(torsion).toBeCloseTo(1.875, 12)
    expectWithin(axial / 3.66, 0.51, 0.01)
    expectWithin(torsion / 3.2, 0.59, 0.01)
    expect(0.08 * 3.2).toBeGreaterThan(0.2)
  })
})

import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { InputFaults } from './input-faults.ts'

/** What an elastic material does under load. */
export interface Elastic {
  /** MPa */
  readonly youngsModulus: number
  /** 0 to below 0.5. */
  readonly poissonRatio: number
}

/** Two thick cylinders, one in the other; diameters in mm. */
export interface JointShape {
  /** Of the joint: bore of the hub, outside of the shaft. */
  readonly diameter: number
  /** Of a head that is not round, the largest circle about the bore's axis that lies in its section. */
  readonly hubOutside: number
  /** Hole along the shaft; 0 for a solid one. */
  readonly shaftBore: number
  readonly hub: Elastic
  readonly shaft: Elastic
}

/** A shape that was found possible, and how it answers to interference. */
export interface PressJoint extends JointShape {
  /** Interference on the diameter per pressure in the joint, mm/MPa. */
  readonly compliance: number
}

/**
 * A joint of thick elastic cylinders (Lamé's equations, plane stress, both parts equally long). Problems: a hub no wider
 * than its bore, a shaft hollow to its outside, a modulus or Poisson's ratio that no material has. RangeError for NaN or
 * infinity.
 */
export function pressJoint(shape: JointShape): Result<PressJoint> {
  const { diameter, hubOutside, shaftBore, hub, shaft } = shape
  const faults = new InputFaults()
  if (faults.keeps('diameter', diameter, 'length', { above: 0 })) {
    if (faults.keeps('hubOutside', hubOutside, 'length', { above: 0 }) && hubOutside <= diameter) {
      const found = formatLength(hubOutside, 'mm')
      faults.add('hubOutside', 'contradiction', found, `above the bore, ${formatLength(diameter, 'mm')}`)
    }
    if (faults.keeps('shaftBore', shaftBore, 'length', { min: 0 }) && shaftBore >= diameter) {
      const found = formatLength(shaftBore, 'mm')
      faults.add('shaftBore', 'contradiction', found, `below the shaft's outside, ${formatLength(diameter, 'mm')}`)
    }
  }
  for (const [path, material] of [
    ['hub', hub],
    ['shaft', shaft],
  ] as const) {
    faults.keeps(`${path}.youngsModulus`, material.youngsModulus, 'pressure', { above: 0 })
    faults.keeps(`${path}.poissonRatio`, material.poissonRatio, 'ratio', { min: 0, below: 0.5 })
  }
  return faults.result(() => ({ ...shape, compliance: complianceOf(shape) }))
}

/** Pressure in the joint, MPa, from interference on the diameter, mm; 0 where there is none. */
export function pressureFrom(joint: PressJoint, interference: number): number {
  return Math.max(0, interference) / joint.compliance
}

/** Interference on the diameter, mm, that gives a pressure of 0 MPa or more. RangeError below that. */
export function interferenceFor(joint: PressJoint, pressure: number): number {
  if (!(pressure >= 0)) throw new RangeError(`pressure in a joint: ${pressure}`)
  return pressure * joint.compliance
}

/** δ/p = d·[((D²+d²)/(D²−d²) + ν_h)/E_h + ((d²+d_i²)/(d²−d_i²) − ν_s)/E_s]; Lamé, as in textbooks of machine design. */
function complianceOf({ diameter: d, hubOutside, shaftBore, hub, shaft }: JointShape): number {
  const ofHub = ((hubOutside ** 2 + d ** 2) / (hubOutside ** 2 - d ** 2) + hub.poissonRatio) / hub.youngsModulus
  const ofShaft = ((d ** 2 + shaftBore ** 2) / (d ** 2 - shaftBore ** 2) - shaft.poissonRatio) / shaft.youngsModulus
  return d * (ofHub + ofShaft)
}

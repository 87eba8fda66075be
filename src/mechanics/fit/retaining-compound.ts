import type { Result } from '../../input/problem.ts'
import { InputFaults } from './input-faults.ts'
import type { InterferenceSpan } from './limits.ts'
import { type Holding, sizeCondition } from './way-to-hold.ts'

/** A joint filled with a retaining compound. Lengths mm. */
export interface CompoundInput {
  readonly diameter: number
  /** Length that is wetted. */
  readonly length: number
  /** Of the fit, clearance negative. */
  readonly interference: InterferenceSpan
  /** Whether the joint is put together hot. */
  readonly heated: boolean
  /** Warmest that the joint gets at work, °C. */
  readonly serviceTemperature: number
  readonly settings?: CompoundSettings
}

/** Figures of the compound and of its use. */
export interface CompoundSettings {
  /** What is counted on in shear, MPa. */
  readonly shearStrength: number
  /** Clearance on the diameter that it fills and cures in, mm. */
  readonly clearance: { readonly least: number; readonly most: number }
  /** Warmest at work, °C. */
  readonly warmest: number
}

/**
 * Usual figures, from memory: strong compounds are sold with some 25 MPa on clean steel pins and collars (test of ISO
 * 10123); 10 is counted on, for blows, age and a shop's cleaning. Rule of thumb: take the maker's own figures.
 */
export const usualCompound: CompoundSettings = {
  shearStrength: 10,
  clearance: { least: 0.02, most: 0.1 },
  warmest: 120,
}

/**
 * Grip of a retaining compound: shear strength over the wetted surface, axial τ·π·d·L, torque that times d/2. Problems: a
 * size or strength that is not above 0, clearance limits that are swapped.
 */
export function retainingCompound(input: CompoundInput): Result<Holding> {
  const { diameter, length, interference, heated, serviceTemperature, settings = usualCompound } = input
  const { shearStrength, clearance, warmest } = settings
  const faults = new InputFaults()
  faults.keeps('diameter', diameter, 'length', { above: 0 })
  faults.keeps('length', length, 'length', { above: 0 })
  faults.keeps('settings.shearStrength', shearStrength, 'pressure', { above: 0 })
  faults.keeps('settings.clearance.least', clearance.least, 'length', { min: 0, max: clearance.most })
  faults.keeps('serviceTemperature', serviceTemperature, 'temperature', { above: -273.15 })
  const rule = 'rule of thumb, from memory'
  return faults.result(() => {
    const axial = shearStrength * Math.PI * diameter * length
    return {
      way: 'retaining-compound',
      axial,
      torque: (axial * diameter) / 2,
      weakest: 'shear of the compound',
      catchesHead: false,
      conditions: [
        sizeCondition(
          {
            id: 'no-interference',
            level: 'stop',
            says: 'An interference fit wipes the compound off: it needs a clearance fit.',
            source: rule,
          },
          { kind: 'length', found: interference.most, most: 0 },
        ),
        sizeCondition(
          { id: 'least-clearance', level: 'stop', says: 'The gap must be wide enough to be filled.', source: rule },
          { kind: 'length', found: -interference.most, least: clearance.least },
        ),
        sizeCondition(
          { id: 'most-clearance', level: 'stop', says: 'The compound does not cure in a wide gap.', source: rule },
          { kind: 'length', found: -interference.least, most: clearance.most },
        ),
        {
          id: 'not-heated',
          met: !heated,
          level: 'stop',
          says: 'Put together cold: heat burns the compound off and gives fumes.',
          source: rule,
        },
        sizeCondition(
          { id: 'service-temperature', level: 'caution', says: 'It loses strength when it gets warm.', source: rule },
          { kind: 'temperature', found: serviceTemperature, most: warmest },
        ),
      ],
      cautions: [
        'Clean and degrease both surfaces; chlorinated cleaner must be gone before anything is heated.',
        'Leave it the maker’s curing time before the first cut.',
        'It comes apart hot, with fumes: air the room.',
      ],
    }
  })
}

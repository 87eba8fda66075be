import type { Result } from '../../input/problem.ts'
import type { SizeStep } from '../../tables/size-step.ts'
import { shearOverYield, strengthOf, weakestOf } from './bearing-strength.ts'
import { InputFaults } from './input-faults.ts'
import { sizeStep } from './size-step-of.ts'
import { type Holding, sizeCondition } from './way-to-hold.ts'
import type { Strength } from './yield-onset.ts'

/** A parallel key for a range of shaft diameters; lengths mm. */
export interface KeySize extends SizeStep {
  readonly width: number
  readonly height: number
  /** Depth of the keyway in the shaft, and in the hub. */
  readonly inShaft: number
  readonly inHub: number
}

/** Keys of ISO 773 / DIN 6885-1 up to 75 mm, from memory. */
export const parallelKeys: readonly KeySize[] = [
  { over: 6, upTo: 8, width: 2, height: 2, inShaft: 1.2, inHub: 1 },
  { over: 8, upTo: 10, width: 3, height: 3, inShaft: 1.8, inHub: 1.4 },
  { over: 10, upTo: 12, width: 4, height: 4, inShaft: 2.5, inHub: 1.8 },
  { over: 12, upTo: 17, width: 5, height: 5, inShaft: 3, inHub: 2.3 },
  { over: 17, upTo: 22, width: 6, height: 6, inShaft: 3.5, inHub: 2.8 },
  { over: 22, upTo: 30, width: 8, height: 7, inShaft: 4, inHub: 3.3 },
  { over: 30, upTo: 38, width: 10, height: 8, inShaft: 5, inHub: 3.3 },
  { over: 38, upTo: 44, width: 12, height: 8, inShaft: 5, inHub: 3.3 },
  { over: 44, upTo: 50, width: 14, height: 9, inShaft: 5.5, inHub: 3.8 },
  { over: 50, upTo: 58, width: 16, height: 10, inShaft: 6, inHub: 4.3 },
  { over: 58, upTo: 65, width: 18, height: 11, inShaft: 7, inHub: 4.4 },
  { over: 65, upTo: 75, width: 20, height: 12, inShaft: 7.5, inHub: 4.9 },
]

/** A square key, mm: sunk half into the shaft, half into the hub. */
const square = (over: number, upTo: number, side: number): KeySize => ({
  over: over * 25.4,
  upTo: upTo * 25.4,
  width: side * 25.4,
  height: side * 25.4,
  inShaft: side * 12.7,
  inHub: side * 12.7,
})

/** Square keys of ASME B17.1 up to 2 3/4 in, from memory. */
export const squareInchKeys: readonly KeySize[] = [
  square(5 / 16, 7 / 16, 3 / 32),
  square(7 / 16, 9 / 16, 1 / 8),
  square(9 / 16, 7 / 8, 3 / 16),
  square(7 / 8, 5 / 4, 1 / 4),
  square(5 / 4, 11 / 8, 5 / 16),
  square(11 / 8, 7 / 4, 3 / 8),
  square(7 / 4, 9 / 4, 1 / 2),
  square(9 / 4, 11 / 4, 5 / 8),
]

/** A head keyed to its arbor. Lengths mm. */
export interface KeyedInput {
  readonly diameter: number
  /** Of a head that is not round, its inscribed circle. */
  readonly hubOutside: number
  /** Hole along the arbor; 0 for a solid one. */
  readonly arborBore: number
  readonly keyLength: number
  /** Keys that the shop buys. */
  readonly keys: readonly KeySize[]
  /** Round ends carry nothing. */
  readonly ends: 'round' | 'square'
  readonly key: Strength
  readonly hub: Strength
  readonly arbor: Strength
  /** Whether something else keeps the head on the arbor. */
  readonly axiallyHeld: boolean
}

/** The key of a table for a diameter, mm; a problem outside the table. */
export function keyFor(diameter: number, keys: readonly KeySize[]): Result<KeySize> {
  const found = sizeStep(keys, diameter, 'diameter')
  if (found.ok) return found
  return {
    ok: false,
    problems: found.problems.map((problem) => ({ ...problem, remedy: 'hold it another way' })),
  }
}

/**
 * Torque at which a parallel key gives, at yield and without safety: pressure on its flank in hub or arbor, or shear on its
 * width (yield/√3), each at half the diameter. Textbook formulas. It holds nothing along the axis. Problems: a diameter
 * without a key, a key shorter than its own round ends, a hub that the keyway cuts through, no published strength.
 */
export function keyed(input: KeyedInput): Result<Holding & { readonly size: KeySize }> {
  const { diameter: d, hubOutside, arborBore, keyLength, ends } = input
  const size = keyFor(d, input.keys)
  if (!size.ok) return size
  const { width, height, inShaft, inHub } = size.value
  const faults = new InputFaults()
  const bearing = ends === 'round' ? keyLength - width : keyLength
  const hubWall = (hubOutside - d) / 2 - inHub
  const arborWall = (d - arborBore) / 2 - inShaft
  faults.keeps('keyLength', keyLength, 'length', { above: ends === 'round' ? width : 0 })
  faults.keeps('hubOutside', hubOutside, 'length', { above: d + 2 * inHub })
  faults.keeps('arborBore', arborBore, 'length', { min: 0, below: d - 2 * inShaft })
  const onKey = strengthOf(faults, 'key', input.key)
  const onHub = Math.min(onKey, strengthOf(faults, 'hub', input.hub))
  const onArbor = Math.min(onKey, strengthOf(faults, 'arbor', input.arbor))
  return faults.result(() => {
    const torque = weakestOf({
      'pressure in the hub': (onHub * (height - inShaft) * bearing * d) / 2,
      'pressure in the arbor': (onArbor * inShaft * bearing * d) / 2,
      'shear of the key': (shearOverYield * onKey * width * bearing * d) / 2,
    })
    const rule = 'rule of thumb'
    return {
      way: 'keyed',
      axial: 0,
      torque: torque.value,
      weakest: torque.name,
      catchesHead: false,
      size: size.value,
      conditions: [
        {
          id: 'axially-held',
          met: input.axiallyHeld,
          level: 'stop',
          says: 'A key turns the head and does not keep it on: add screw and washer or a fit that holds.',
          source: 'follows from the shape',
        },
        sizeCondition(
          { id: 'hub-wall', level: 'caution', says: 'Metal over the keyway: half the key’s height.', source: rule },
          { kind: 'length', found: hubWall, least: height / 2 },
        ),
        sizeCondition(
          { id: 'arbor-wall', level: 'caution', says: 'Metal under the keyway: half the key’s height.', source: rule },
          { kind: 'length', found: arborWall, least: height / 2 },
        ),
      ],
      cautions: [
        'A key that fits loosely is hammered out by interrupted cutting: fit it tight in the arbor.',
        'Keyway corners start cracks: leave them round.',
        'One key unbalances the head a little.',
      ],
    }
  })
}

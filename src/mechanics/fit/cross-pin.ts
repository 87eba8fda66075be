import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { shearOverYield, strengthOf, weakestOf } from './bearing-strength.ts'
import { InputFaults } from './input-faults.ts'
import { type Holding, sizeCondition } from './way-to-hold.ts'
import type { Strength } from './yield-onset.ts'

/** A pin square through hub and spigot, across the axis. Lengths mm. */
export interface CrossPinInput {
  /** Of the spigot. */
  readonly diameter: number
  /** Hub outside where the pin goes through; of a head that is not round, its inscribed circle. */
  readonly hubOutside: number
  /** Hole along the spigot; 0 for a solid one. */
  readonly spigotBore: number
  readonly pinDiameter: number
  /** Pin's axis to the end of the spigot. */
  readonly fromSpigotEnd: number
  /** Whether something keeps the pin in: staked, screwed, a spring pin in a stepped hole. */
  readonly secured: boolean
  readonly pin: Strength
  readonly hub: Strength
  readonly spigot: Strength
}

/**
 * Load at which a cross pin gives, at yield and without safety: the pin in double shear (yield/√3 on two sections), or
 * pressure on the spigot (rising evenly from the axis: p·a·(d³ − d_i³)/(6d) is its torque) or on the hub's walls.
 * Textbook formulas for cross pins, from memory. Problems: sizes that do not fit into each other, no published strength.
 */
export function crossPin(input: CrossPinInput): Result<Holding> {
  const { diameter: d, hubOutside, spigotBore, pinDiameter: a, fromSpigotEnd, secured } = input
  const faults = new InputFaults()
  faults.keeps('diameter', d, 'length', { above: 0 })
  if (faults.keeps('pinDiameter', a, 'length', { above: 0 }) && a >= d) {
    faults.add('pinDiameter', 'contradiction', formatLength(a, 'mm'), `below the spigot, ${formatLength(d, 'mm')}`)
  }
  if (faults.keeps('hubOutside', hubOutside, 'length', { above: 0 }) && hubOutside <= d) {
    const allowed = `above the spigot, ${formatLength(d, 'mm')}`
    faults.add('hubOutside', 'contradiction', formatLength(hubOutside, 'mm'), allowed)
  }
  if (faults.keeps('spigotBore', spigotBore, 'length', { min: 0 }) && spigotBore >= d) {
    const allowed = `below the spigot, ${formatLength(d, 'mm')}`
    faults.add('spigotBore', 'contradiction', formatLength(spigotBore, 'mm'), allowed)
  }
  faults.keeps('fromSpigotEnd', fromSpigotEnd, 'length', { above: 0 })
  const shear = shearOverYield * strengthOf(faults, 'pin', input.pin)
  const onHub = strengthOf(faults, 'hub', input.hub)
  const onSpigot = strengthOf(faults, 'spigot', input.spigot)
  const rule = 'rule of thumb, from memory'
  return faults.result(() => {
    const wall = (hubOutside - d) / 2
    const section = (Math.PI / 4) * a ** 2
    const torque = weakestOf({
      'shear of the pin': shear * section * d,
      'pressure on the spigot': (onSpigot * a * (d ** 3 - spigotBore ** 3)) / (6 * d),
      'pressure on the hub': onHub * a * wall * (d + wall),
    })
    const axial = weakestOf({
      'shear of the pin': 2 * shear * section,
      'pressure on the spigot': onSpigot * a * (d - spigotBore),
      'pressure on the hub': 2 * onHub * a * wall,
    })
    return {
      way: 'cross-pin',
      axial: axial.value,
      torque: torque.value,
      weakest: torque.name,
      catchesHead: true,
      conditions: [
        {
          id: 'secured',
          met: secured,
          level: 'stop',
          says: 'A turning head throws a pin out: stake it, screw it in, or stop its hole.',
          source: 'common practice, no source',
        },
        sizeCondition(
          { id: 'pin-to-spigot', level: 'caution', says: 'A thicker pin weakens the spigot more.', source: rule },
          { kind: 'ratio', found: a / d, most: 0.3 },
        ),
        sizeCondition(
          {
            id: 'from-spigot-end',
            level: 'caution',
            says: 'The spigot needs metal beyond the pin: 1.5 pin diameters from its axis.',
            source: rule,
          },
          { kind: 'length', found: fromSpigotEnd, least: 1.5 * a },
        ),
      ],
      cautions: [
        'Drill and ream hub and spigot together, after they are joined.',
        'Its hole takes away from the length that a press or shrink joint holds by.',
      ],
    }
  })
}

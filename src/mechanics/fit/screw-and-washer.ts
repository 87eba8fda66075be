import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { strengthOf, weakestOf } from './bearing-strength.ts'
import { InputFaults } from './input-faults.ts'
import { type Holding, sizeCondition } from './way-to-hold.ts'
import type { Strength } from './yield-onset.ts'

/** A screw into the end of the spigot, with a washer under its head that laps the edge of the bore. Lengths mm. */
export interface ScrewAndWasherInput {
  /** Bore where the washer lies, its chamfer counted in. */
  readonly mouth: number
  readonly washerOutside: number
  /** Of the circle round the bore that no slot or step cuts into, 0 or more: the washer's seat. */
  readonly wholeCircle: number
  /** Stress area, mm², and major diameter of the screw's thread. */
  readonly stressArea: number
  readonly majorDiameter: number
  /** Thread in the spigot, and how much of it in diameters its material wants: 1 steel, 2 aluminium. */
  readonly engagement: number
  readonly engagementWanted: number
  /** Proof stress of the screw, MPa. */
  readonly proofStress: number
  readonly hub: Strength
  /** How far the spigot ends short of the face that the washer lies on; negative: it stands proud. */
  readonly spigotShortBy: number
  /** Whether the bore goes through, so that a washer can lie on the far side. */
  readonly throughBore: boolean
  readonly locked: boolean
}

/**
 * Force along the axis, N, at which screw or hub gives: proof stress on the stress area (ISO 898-1 terms), or the washer's
 * ring sinking into the hub. It carries no torque: friction under a washer is not counted on. Problems: a washer that falls
 * through the bore, sizes or stresses not above 0, no published strength.
 */
export function screwAndWasher(input: ScrewAndWasherInput): Result<Holding> {
  const { mouth, washerOutside, wholeCircle, stressArea, majorDiameter, engagement, engagementWanted, proofStress } =
    input
  const faults = new InputFaults()
  faults.keeps('mouth', mouth, 'length', { above: 0 })
  if (faults.keeps('washerOutside', washerOutside, 'length', { above: 0 }) && washerOutside <= mouth) {
    const allowed = `above the mouth of the bore, ${formatLength(mouth, 'mm')}`
    faults.add('washerOutside', 'contradiction', formatLength(washerOutside, 'mm'), allowed)
  }
  faults.keeps('wholeCircle', wholeCircle, 'length', { min: 0 })
  faults.keeps('stressArea', stressArea, 'ratio', { above: 0 })
  faults.keeps('majorDiameter', majorDiameter, 'length', { above: 0 })
  faults.keeps('engagement', engagement, 'length', { min: 0 })
  faults.keeps('engagementWanted', engagementWanted, 'ratio', { above: 0 })
  faults.keeps('proofStress', proofStress, 'pressure', { above: 0 })
  const onHub = strengthOf(faults, 'hub', input.hub)
  return faults.result(() => {
    // A thread that is too short strips before the screw breaks; by how much goes with its length.
    const held = Math.min(1, engagement / (engagementWanted * majorDiameter))
    const axial = weakestOf({
      'the screw': proofStress * stressArea * held,
      'pressure on the hub': onHub * (Math.PI / 4) * (washerOutside ** 2 - mouth ** 2),
    })
    return {
      way: 'screw-and-washer',
      axial: axial.value,
      torque: 0,
      weakest: axial.name,
      catchesHead: true,
      conditions: [
        {
          id: 'through-bore',
          met: input.throughBore,
          level: 'stop',
          says: 'Screw and washer need a bore that goes through.',
          source: 'follows from the shape',
        },
        sizeCondition(
          {
            id: 'washer-room',
            level: 'stop',
            says: 'Slot or step cuts into the ring that the washer lies on: it has no seat there, and would stand in the way of the bit.',
            source: 'follows from the shape',
          },
          { kind: 'length', found: wholeCircle, least: washerOutside },
        ),
        {
          id: 'clamps-head',
          met: input.spigotShortBy > 0,
          level: 'stop',
          says: 'The spigot must end short of the washer, or the screw clamps the spigot and not the head.',
          measure: { kind: 'length', found: input.spigotShortBy, least: 0 },
          source: 'follows from the shape',
        },
        sizeCondition(
          {
            id: 'engagement',
            level: 'caution',
            says: 'The thread in the spigot is too short for its material.',
            source: 'shop rule, from memory',
          },
          { kind: 'length', found: engagement, least: engagementWanted * majorDiameter },
        ),
        {
          id: 'locked',
          met: input.locked,
          level: 'caution',
          says: 'Interrupted cutting shakes a screw loose: lock it.',
          source: 'common practice, no source',
        },
      ],
      cautions: [
        'It keeps the head on; it does not turn it. Torque is left to the fit, a pin or a key.',
        'Screw head and washer turn with the tool: they belong to the lowest point over the work.',
      ],
    }
  })
}

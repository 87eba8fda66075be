import type { Result } from '../../input/problem.ts'
import { shearOverYield, strengthOf, weakestOf } from './bearing-strength.ts'
import { InputFaults } from './input-faults.ts'
import { type Holding, sizeCondition } from './way-to-hold.ts'
import type { Strength } from './yield-onset.ts'

/** A head screwed on to the arbor against a shoulder. Lengths mm. */
export interface ThreadedArborInput {
  readonly hand: 'right' | 'left'
  /** Seen from the spindle looking down at the work. */
  readonly rotation: 'clockwise' | 'anticlockwise'
  /** Whether the spindle is also run the other way, or braked hard. */
  readonly reversedOrBraked: boolean
  readonly majorDiameter: number
  readonly pitch: number
  readonly pitchDiameter: number
  /** mm² */
  readonly stressArea: number
  /** Thread in the head, and how much of it in diameters the head's material wants. */
  readonly engagement: number
  readonly engagementWanted: number
  readonly againstShoulder: boolean
  /** K in T = K·d·F: torque over diameter and force of the thread. */
  readonly torqueFactor: number
  /** Torque it was tightened with, N·mm. */
  readonly tightened: number
  readonly arbor: Strength
  readonly hub: Strength
}

/**
 * Load at which a threaded head gives, at yield and without safety. Axial: the core in tension, or the threads sheared off
 * over half the pitch cylinder. Torque: what tightens it to that force, T = K·d·F. `loosens`: torque, N·mm, that turns it
 * off again, T·(K·d − P/π)/(K·d), as a screw's slope helps one way and hinders the other. Problems: sizes or factors not
 * above 0, a thread so steep that it turns off by itself, no published strength.
 */
export function threadedArbor(input: ThreadedArborInput): Result<Holding & { readonly loosens: number }> {
  const { majorDiameter: d, pitch, pitchDiameter, stressArea, engagement, torqueFactor, tightened } = input
  const faults = new InputFaults()
  faults.keeps('majorDiameter', d, 'length', { above: 0 })
  faults.keeps('pitch', pitch, 'length', { above: 0 })
  faults.keeps('pitchDiameter', pitchDiameter, 'length', { above: 0, below: d })
  faults.keeps('stressArea', stressArea, 'ratio', { above: 0 })
  faults.keeps('engagement', engagement, 'length', { above: 0 })
  faults.keeps('engagementWanted', input.engagementWanted, 'ratio', { above: 0 })
  faults.keeps('tightened', tightened, 'torque', { min: 0 })
  faults.keeps('torqueFactor', torqueFactor, 'ratio', { above: pitch / Math.PI / d, max: 1 })
  const arbor = strengthOf(faults, 'arbor', input.arbor)
  const hub = strengthOf(faults, 'hub', input.hub)
  const tightens = (input.hand === 'right') === (input.rotation === 'clockwise')
  return faults.result(() => {
    const axial = weakestOf({
      'the core of the thread': arbor * stressArea,
      'the threads': (shearOverYield * Math.min(arbor, hub) * Math.PI * pitchDiameter * engagement) / 2,
    })
    const loosens = (tightened * (torqueFactor * d - pitch / Math.PI)) / (torqueFactor * d)
    return {
      way: 'threaded',
      axial: axial.value,
      torque: tightens ? torqueFactor * d * axial.value : loosens,
      weakest: tightens ? axial.name : 'the thread turning off',
      loosens,
      // Held as long as it is not turned off; a thread that has come loose catches nothing.
      catchesHead: false,
      conditions: [
        {
          id: 'hand',
          met: tightens,
          level: 'stop',
          says:
            input.hand === 'right'
              ? 'A right-hand thread unscrews on a tool that turns anticlockwise.'
              : 'A left-hand thread unscrews on a tool that turns clockwise.',
          source: 'follows from the hand of the thread',
        },
        {
          id: 'shoulder',
          met: input.againstShoulder,
          level: 'stop',
          says: 'Without a shoulder the cut screws the head on until something breaks, and it does not run true.',
          source: 'common practice, no source',
        },
        {
          id: 'reversed-or-braked',
          met: !input.reversedOrBraked,
          level: 'caution',
          says: 'Reversing or braking hard unscrews the head: let it run down.',
          source: 'common practice, no source',
        },
        sizeCondition(
          {
            id: 'engagement',
            level: 'caution',
            says: 'The thread in the head is too short for its material.',
            source: 'shop rule, from memory',
          },
          { kind: 'length', found: engagement, least: input.engagementWanted * d },
        ),
      ],
      cautions: ['It tightens under the cut and may be hard to take off.'],
    }
  })
}

import type { Result } from '../../input/problem.ts'
import { InputFaults } from './input-faults.ts'
import type { Condition, Holding } from './way-to-hold.ts'

/** How a material takes a weld. */
export type Weldability = 'good' | 'preheat' | 'not'

/** Materials of the seed table, from memory. A material that is not here is unknown. */
export const weldabilities: Readonly<Record<string, Weldability>> = {
  'steel-1018': 'good',
  'steel-structural': 'good',
  'steel-1045': 'preheat',
  'steel-4140-prehard': 'preheat',
  /** Lead and sulphur make the weld crack hot, and the lead fumes. */
  'steel-12l14': 'not',
  /** Not to steel, and it loses its temper. */
  'aluminium-6061': 'not',
  'grey-iron': 'not',
  hss: 'not',
  'alloy-steel': 'not',
}

/** A fillet weld round the arbor at the mouth of the bore. Lengths mm. */
export interface WeldInput {
  readonly diameter: number
  /** Leg of the fillet. */
  readonly leg: number
  /** Share of the circumference that is welded, above 0 up to 1. */
  readonly share: number
  /** Shear stress that is allowed on the throat, MPa; left out: `usualWeldStress`. */
  readonly allowedStress?: number
  /** Undefined: not known. */
  readonly hub: Weldability | undefined
  readonly arbor: Weldability | undefined
}

/** MPa on the throat of a fillet that is struck at every turn; rule of thumb, from memory. */
export const usualWeldStress = 60

/**
 * What a fillet weld carries: allowed stress on the throat, leg/√2, all round: axial τ·π·d·share·throat, torque that times
 * d/2. The last resort. Textbook throat method. Problems: sizes or stress not above 0, a share above 1.
 */
export function weld(input: WeldInput): Result<Holding> {
  const { diameter, leg, share, allowedStress = usualWeldStress } = input
  const faults = new InputFaults()
  faults.keeps('diameter', diameter, 'length', { above: 0 })
  faults.keeps('leg', leg, 'length', { above: 0 })
  faults.keeps('share', share, 'ratio', { above: 0, max: 1 })
  faults.keeps('allowedStress', allowedStress, 'pressure', { above: 0 })
  return faults.result(() => {
    const axial = allowedStress * Math.PI * diameter * share * (leg / Math.SQRT2)
    return {
      way: 'weld',
      axial,
      torque: (axial * diameter) / 2,
      weakest: 'the throat of the weld',
      catchesHead: true,
      conditions: [...takesWeld('hub', 'head', input.hub), ...takesWeld('arbor', 'arbor', input.arbor)],
      cautions: [
        'The last resort: it cannot be undone, it pulls out of true and softens what was heat treated.',
        'Never in the spindle, never with the current through its bearings, never with bit and screws fitted.',
        'Chlorinated cleaner near an arc makes phosgene; compounds and plating fume.',
        'Check run-out afterwards.',
      ],
    }
  })
}

function takesWeld(id: string, part: string, weldability: Weldability | undefined): Condition[] {
  const source = 'from memory'
  return [
    {
      id: `${id}-takes-weld`,
      met: weldability === 'good' || weldability === 'preheat',
      level: weldability === undefined ? 'caution' : 'stop',
      says:
        weldability === undefined
          ? `Whether the material of the ${part} takes a weld is not known.`
          : `The material of the ${part} does not take this weld.`,
      source,
    },
    {
      id: `${id}-preheat`,
      met: weldability !== 'preheat',
      level: 'caution',
      says: `The material of the ${part} hardens and cracks beside the weld unless it is warmed before and cooled slowly.`,
      source,
    },
  ]
}

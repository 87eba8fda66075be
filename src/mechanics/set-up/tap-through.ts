import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

/** Threads at the tip of a hand tap that do not cut full: of a second or plug tap 3 to 5, of a bottoming tap 1 to 2 (from memory). */
export const tapLeads = { plug: 4, bottoming: 1.5 } as const

export interface TapThroughInput {
  /** mm, above 0. */
  readonly pitch: number
  /** Metal to go through, mm, above 0. */
  readonly thickness: number
  /** Free height below the far side of the metal, mm, 0 or more. */
  readonly below: number
  /** What of it must stay free below the tip, mm, 0 or more. */
  readonly kept: number
}

export interface TapThrough {
  /** The one that finishes the thread in the room there is. */
  readonly tap: keyof typeof tapLeads
  /** Length of its lead, mm. */
  readonly lead: number
  /** Depth of the tip below the near side, mm. */
  readonly tipDepth: number
  /** Left below the tip, mm. */
  readonly clear: number
  /** How much of the lead stays in the metal, mm: threads there are not full. 0 where there is room. */
  readonly unfinished: number
}

/**
 * A thread tapped through: only when the whole lead is out on the far side is the last thread full. A plug tap where there is room for its
 * lead, otherwise a bottoming one, as deep as it may go. Problems: figures outside their ranges.
 */
export function tapThrough({ pitch, thickness, below, kept }: TapThroughInput): Result<TapThrough> {
  const faults = new InputFaults()
  faults.keeps('pitch', pitch, 'length', { above: 0 })
  faults.keeps('thickness', thickness, 'length', { above: 0 })
  faults.keeps('below', below, 'length', { min: 0 })
  faults.keeps('kept', kept, 'length', { min: 0 })
  return faults.result(() => {
    const room = Math.max(0, below - kept)
    const tap = tapLeads.plug * pitch <= room ? 'plug' : 'bottoming'
    const lead = tapLeads[tap] * pitch
    const out = Math.min(lead, room)
    return { tap, lead, tipDepth: thickness + out, clear: below - out, unfinished: lead - out }
  })
}

import type { Result } from '../../input/problem.ts'
import type { Range } from '../../tables/range.ts'
import type { WorkMaterialRow } from '../../tables/work-materials.ts'

/** What the cutting edge is made of. */
export type BitKind = 'hss' | 'carbide'

/**
 * Range of cutting speed for a bit in a work material, mm/s, as the table of work materials has it. It is about tool
 * life and no safety limit. Problem: the table has no speed for that pair.
 */
export function cuttingSpeedRange(
  work: Pick<WorkMaterialRow, 'name' | 'hssSpeed' | 'carbideSpeed'>,
  bit: BitKind,
): Result<Range> {
  const range = bit === 'hss' ? work.hssSpeed : work.carbideSpeed
  if (range !== undefined) return { ok: true, value: range }
  return {
    ok: false,
    problems: [
      {
        code: 'not-in-table',
        where: { file: '', path: 'work' },
        found: `no cutting speed of a carbide edge in ${work.name}`,
        allowed: 'a work material with a published speed, or a cutting speed of your own',
        remedy: 'give the cutting speed',
      },
    ],
  }
}

/** Spindle speed, rad/s, at which a point on the diameter (mm, above 0) runs at the cutting speed (mm/s): ω = 2v/D. */
export const spindleSpeedFor = (cuttingSpeed: number, diameter: number): number => (2 * cuttingSpeed) / diameter

/** Speed, mm/s, of a point on the diameter (mm) at the spindle speed (rad/s): v = ω·D/2. */
export const cuttingSpeedAt = (spindleSpeed: number, diameter: number): number => (spindleSpeed * diameter) / 2

import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/** A drilled hole: diameter, mm, above 0, and point angle, rad, above 0 and up to π (flat). */
export interface Drilled {
  readonly diameter: number
  readonly pointAngle: number
}

/** How far the tip of a drill is ahead of its full diameter, mm: (d/2)·cot(φ/2). Problems: a drill outside its ranges. */
export function pointLength(drill: Drilled): Result<number> {
  return drillFaults(drill).result(() => (drill.diameter / 2) * cotHalf(drill.pointAngle))
}

/**
 * Depth of the full diameter, mm, from a depth rod with a flat end that stops in the cone where the cone is as wide as the rod: reading − (d − rod)/2·cot(φ/2).
 * A rod as thick as the hole stops at the full diameter itself. Slopes: reading 1, diameter −cot(φ/2)/2, rod cot(φ/2)/2, point angle (d − rod)/(4·sin²(φ/2)).
 * Problems: a drill outside its ranges, a rod that is not above 0 or thicker than the hole, a reading that is not above 0.
 */
export function fullDepthFromRod(
  drill: Drilled & { readonly reading: number; readonly rod: number },
): Result<Measured<'reading' | 'diameter' | 'rod' | 'pointAngle'>> {
  const { diameter, pointAngle, reading, rod } = drill
  const faults = drillFaults(drill)
  faults.keeps('reading', reading, 'length', { above: 0 })
  faults.keeps('rod', rod, 'length', { above: 0, max: diameter })
  return faults.result(() => {
    const cot = cotHalf(pointAngle)
    return {
      size: reading - ((diameter - rod) / 2) * cot,
      slopes: {
        reading: 1,
        diameter: -cot / 2,
        rod: cot / 2,
        pointAngle: ((diameter - rod) / 4) * (1 + cot * cot),
      },
    }
  })
}

/** cot(φ/2), 0 for a flat end and not the rounding of it. */
const cotHalf = (angle: number): number => Math.tan((Math.PI - angle) / 2)

function drillFaults({ diameter, pointAngle }: Drilled): InputFaults {
  const faults = new InputFaults()
  faults.keeps('diameter', diameter, 'length', { above: 0 })
  faults.keeps('pointAngle', pointAngle, 'angle', { above: 0, max: Math.PI })
  return faults
}

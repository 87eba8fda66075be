import type { Result } from '../../input/problem.ts'
import { leastEngagement, pitchDiameter, stressArea, type ThreadSize } from '../../tables/thread-geometry.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface ThreadEngagementInput {
  readonly thread: ThreadSize
  /** Hole before tapping, mm, above 0 and below the major diameter. */
  readonly tapDrill: number
  /** Wall that is tapped, mm, above 0. */
  readonly wallThickness: number
  /** Of the set screw, mm, above 0; it stands with its point at the slot. */
  readonly screwLength: number
  /** What countersinks and the bevels of the screw take off the engaged length, mm, at least 0. */
  readonly incomplete: number
  /** Force on the screw, N (count on the most), at least 0. */
  readonly screwForce: number
  /** Tensile strength of the body and of the screw, MPa, above 0; undefined where none was published. */
  readonly bodyStrength: number | undefined
  readonly screwStrength: number | undefined
  /** Shear strength over tensile strength, above 0, at most 1. */
  readonly shearRatio: number
  /** Wanted engagement in major diameters, above 0. */
  readonly wantedDiameters: number
}

export interface ThreadEngagement {
  /** Engaged thread, mm, and the same in major diameters. */
  readonly engagement: number
  readonly diameters: number
  /** Least engagement wanted, mm, and the wall that gives it with a screw long enough. */
  readonly least: number
  readonly leastWall: number
  /** Area sheared when the thread of the body or that of the screw strips, mm². */
  readonly bodyShearArea: number
  readonly screwShearArea: number
  /** Force at which that happens, N; undefined without a strength. */
  readonly bodyStripsAt: number | undefined
  readonly screwStripsAt: number | undefined
  /** Lower of the known two over the screw's force; undefined where neither or no force is known. */
  readonly factor: number | undefined
  /** Stress in the core of the screw on its stress area (ISO 898-1, ASME B1.1), MPa. */
  readonly screwStress: number
}

/**
 * Rules of thumb: shear strength from tensile strength by the distortion-energy hypothesis, 1/√3; engagement in
 * diameters stands in materials.json.
 */
export const threadEngagementRules = { shearRatio: 1 / Math.sqrt(3) } as const

/** Half a pitch at each end is bevelled off: rule of thumb, common practice without a source. Pitch in mm. */
export const usualIncomplete = (pitch: number): number => pitch

/**
 * How much thread holds a set screw in its wall and at what force it strips. Areas follow from the basic 60° profile
 * (ISO 68-1): the body's thread shears at the major diameter, where it is P/2 + (d − d2)/√3 = 7/8·P thick; the screw's
 * at the hole it stands in, P/2 + (d2 − drill)/√3 thick, 3/4·P at the basic minor diameter. (The same areas as in
 * ASME B1.1 and VDI 2230, with basic sizes: from memory.)
 *
 * Problems: a figure outside the ranges of the input.
 */
export function threadEngagement(input: ThreadEngagementInput): Result<ThreadEngagement> {
  const { thread, tapDrill, wallThickness, screwLength, incomplete, screwForce, bodyStrength, screwStrength } = input
  const { majorDiameter: d, pitch } = thread
  const problems = outOfRange([
    ['thread.majorDiameter', 'length', d, { above: 0 }],
    // A coarser pitch leaves no core.
    ['thread.pitch', 'length', pitch, { above: 0, below: d / (1.25 * (Math.sqrt(3) / 2)) }],
    ['tapDrill', 'length', tapDrill, { above: 0, below: d }],
    ['wallThickness', 'length', wallThickness, { above: 0 }],
    ['screwLength', 'length', screwLength, { above: 0 }],
    ['incomplete', 'length', incomplete, { min: 0 }],
    ['screwForce', 'force', screwForce, { min: 0 }],
    ['shearRatio', 'ratio', input.shearRatio, { above: 0, max: 1 }],
    ['wantedDiameters', 'ratio', input.wantedDiameters, { above: 0 }],
    ...(bodyStrength === undefined ? [] : [['bodyStrength', 'pressure', bodyStrength, { above: 0 }] as const]),
    ...(screwStrength === undefined ? [] : [['screwStrength', 'pressure', screwStrength, { above: 0 }] as const]),
  ])
  if (problems.length > 0) return { ok: false, problems }

  const engagement = Math.max(0, Math.min(wallThickness, screwLength) - incomplete)
  const least = leastEngagement(thread, input.wantedDiameters)
  const pitchDiameterOf = pitchDiameter(thread)
  const turns = engagement / pitch
  const sheared = (diameter: number, from: number, to: number) =>
    turns * Math.PI * diameter * (pitch / 2 + (from - to) / Math.sqrt(3))
  const bodyShearArea = sheared(d, d, pitchDiameterOf)
  const screwShearArea = sheared(tapDrill, pitchDiameterOf, tapDrill)
  const stripsAt = (area: number, strength: number | undefined) =>
    strength === undefined ? undefined : area * strength * input.shearRatio
  const bodyStripsAt = stripsAt(bodyShearArea, bodyStrength)
  const screwStripsAt = stripsAt(screwShearArea, screwStrength)
  const lowest = Math.min(bodyStripsAt ?? Infinity, screwStripsAt ?? Infinity)
  return {
    ok: true,
    value: {
      engagement,
      diameters: engagement / d,
      least,
      leastWall: least + incomplete,
      bodyShearArea,
      screwShearArea,
      bodyStripsAt,
      screwStripsAt,
      factor: Number.isFinite(lowest) && screwForce > 0 ? lowest / screwForce : undefined,
      screwStress: screwForce / stressArea(thread),
    },
  }
}

/**
 * Basic geometry of 60 degree threads from major diameter and pitch alone.
 * Sources: ISO 724 (metric) and ASME B1.1 (unified) share the basic profile; the stress areas differ because
 * ISO 898-1 takes the rounded root and ASME B1.1 the flat one.
 */

/** What the formulas need of a thread; lengths in mm. */
export interface ThreadSize {
  readonly system: 'metric' | 'inch'
  readonly majorDiameter: number
  readonly pitch: number
}

const sqrt3 = Math.sqrt(3)

/** Height of the sharp triangle over pitch: H = P √3 / 2 (ISO 68-1, ASME B1.1). */
const sharpHeight = sqrt3 / 2

/** Pitch diameter d2 = d − 3/4 H = d − 0.649519 P, mm (ISO 724, ASME B1.1). */
export function pitchDiameter(thread: ThreadSize): number {
  return thread.majorDiameter - 0.75 * sharpHeight * thread.pitch
}

/** Basic minor diameter of the nut thread D1 = d − 5/4 H = d − 1.082532 P, mm (ISO 724, ASME B1.1). */
export function minorDiameter(thread: ThreadSize): number {
  return thread.majorDiameter - 1.25 * sharpHeight * thread.pitch
}

/**
 * Tensile stress area, mm²: π/4 (d − 0.9382 P)² for metric threads (ISO 898-1), π/4 (d − 0.9743 P)² for unified
 * threads (ASME B1.1).
 */
export function stressArea(thread: ThreadSize): number {
  const root = thread.system === 'metric' ? 0.9382 : 0.9743
  return (Math.PI / 4) * (thread.majorDiameter - root * thread.pitch) ** 2
}

/**
 * Depth of thread that a hole of `drill` mm leaves, in percent of the full external depth 3/4 √3 P = 1.299038 P on the
 * diameter (the trade's percent of thread: 100 at d − 1.299038 P, 0 at the major diameter). Negative for a larger hole.
 */
export function percentThread(thread: ThreadSize, drill: number): number {
  return (100 * (thread.majorDiameter - drill)) / (1.5 * sharpHeight * thread.pitch)
}

/** Hole, mm, that leaves `percent` of the full thread; the inverse of `percentThread`. */
export function drillForPercent(thread: ThreadSize, percent: number): number {
  return thread.majorDiameter - (percent / 100) * 1.5 * sharpHeight * thread.pitch
}

/**
 * Least length of engaged thread, mm, for a hole tapped into a material that asks for `diameters` times the major
 * diameter (1 for steel, 1.5 for cast iron, 2 for aluminium: shop rule, from memory; the figure stands in
 * materials.json).
 */
export function leastEngagement(thread: ThreadSize, diameters: number): number {
  return diameters * thread.majorDiameter
}

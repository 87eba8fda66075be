/** Temperatures of head and arbor while they work, °C. */
export interface ServiceTemperatures {
  readonly hub: number
  readonly shaft: number
}

/** Linear thermal expansion of head and arbor, 1/K. */
export interface Expansions {
  readonly hub: number
  readonly shaft: number
}

/** Temperature at which sizes are defined, °C (ISO 1). */
export const referenceTemperature = 20

/**
 * How much interference changes, mm on the diameter, negative where it is lost, when head and arbor work at other
 * temperatures than 20 °C: d·[α_s·(T_s − 20) − α_h·(T_h − 20)]. A warm head on a cold arbor loses, and so does an
 * aluminium head on a steel arbor when both are warm. Diameter mm.
 */
export function interferenceChange(diameter: number, expansions: Expansions, at: ServiceTemperatures): number {
  const rise = { hub: at.hub - referenceTemperature, shaft: at.shaft - referenceTemperature }
  return diameter * (expansions.shaft * rise.shaft - expansions.hub * rise.hub)
}

/** How much warmer than its arbor, K, the head may get before `spare` mm of interference are lost; arbor at 20 °C. */
export function warmthLosing(spare: number, diameter: number, hubExpansion: number): number {
  return Math.max(0, spare) / (diameter * hubExpansion)
}

/**
 * Temperature of head and arbor together, °C, at which `spare` mm of interference are lost because they expand
 * differently; undefined where the head expands no more than the arbor, so that warmth loses nothing.
 */
export function temperatureLosing(spare: number, diameter: number, expansions: Expansions): number | undefined {
  const difference = expansions.hub - expansions.shaft
  return difference > 0 ? referenceTemperature + Math.max(0, spare) / (diameter * difference) : undefined
}

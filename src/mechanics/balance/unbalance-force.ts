/**
 * What an unbalance does at speed. Unbalance U in kg·mm (one kg·mm is 1000 g·mm), speed ω in rad/s, force in N. The
 * force turns with the spindle: F = U·ω², 1 kg·mm·rad²/s² being a thousandth of a newton.
 */
export const unbalanceForce = (unbalance: number, speed: number): number => (unbalance * speed ** 2) / 1000

/** Speed, rad/s, at which an unbalance (kg·mm, at least 0) gives a force (N, at least 0); undefined where it is 0. */
export const speedForForce = (unbalance: number, force: number): number | undefined =>
  unbalance > 0 ? Math.sqrt((1000 * force) / unbalance) : undefined

/** Unbalance, kg·mm, that gives a force (N) at a speed (rad/s, above 0). */
export const unbalanceForForce = (force: number, speed: number): number => (1000 * force) / speed ** 2

/** g·mm, as the trade and ISO 21940-11 write unbalance, from kg·mm. */
export const inGramMillimetres = (unbalance: number): number => 1000 * unbalance

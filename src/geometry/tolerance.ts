/**
 * The only place with an epsilon. Lengths in mm.
 *
 * `coincident`: two surfaces nearer than this are one surface; far below anything a shop can measure, far above
 * rounding (1e-13 at 100 mm). `touching`: a solved distance below this means the bodies touch or overlap.
 */
export const coincident = 1e-6
export const touching = 1e-5

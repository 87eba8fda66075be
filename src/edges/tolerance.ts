import { coincident } from '../geometry/tolerance.ts'

/**
 * What counts as the same place in the line work, mm and rad; all far below what a pen or a cutter can show.
 *
 * `through`: a surface this near to a point runs through it. `probe`: how far off an edge its neighbourhood is looked
 * at; beyond `through`, and above rounding even in a sector of `sameWay`. `parallel`: sine below which two directions
 * are one. `sameWay`: faces that meet an edge at less than this are tangent.
 */
export const through = coincident
export const probe = 2e-6
export const parallel = 1e-9
export const sameWay = 1e-4

/** Farther than this from the part nothing is drawn, mm. */
export const far = 1e4

/** How near a fitted arc lies to the curve it stands for, mm; the rest of the 0.005 mm is for the places between samples. */
export const fitted = 0.004

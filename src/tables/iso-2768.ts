/** A step of the general tolerances: sizes up to `upTo` mm may deviate by plus or minus `deviation` mm. */
export interface GeneralStep {
  readonly upTo: number
  readonly deviation: number
}

/** Linear sizes, class m (medium), from 0.5 mm (ISO 2768-1:1989, table 1, from memory). */
export const generalLengths: readonly GeneralStep[] = [
  { upTo: 6, deviation: 0.1 },
  { upTo: 30, deviation: 0.2 },
  { upTo: 120, deviation: 0.3 },
  { upTo: 400, deviation: 0.5 },
  { upTo: 1000, deviation: 0.8 },
]

/** Radii and chamfer heights, class m (table 2, from memory). */
export const generalEdges: readonly GeneralStep[] = [
  { upTo: 3, deviation: 0.2 },
  { upTo: 6, deviation: 0.5 },
  { upTo: Infinity, deviation: 1 },
]

/** Angles by the length of their shorter side, class m; the deviation in rad (table 3, from memory). */
export const generalAngles: readonly GeneralStep[] = [
  { upTo: 10, deviation: Math.PI / 180 },
  { upTo: 50, deviation: Math.PI / 360 },
  { upTo: 120, deviation: Math.PI / 540 },
  { upTo: 400, deviation: Math.PI / 1080 },
  { upTo: Infinity, deviation: Math.PI / 2160 },
]

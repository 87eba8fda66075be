/** A body that takes on heat all through, from air and walls about it. */
export interface HeatedBody {
  /** kg, above 0. */
  readonly mass: number
  /** J/(kg·K), above 0. */
  readonly specificHeat: number
  /** mm², above 0. */
  readonly area: number
  /** What air and walls give to it, W/(m²·K), above 0. */
  readonly film: number
}

/**
 * Mean specific heat between 20 and 300 °C, J/(kg·K), from memory: good to a tenth. Time goes with it.
 */
export const specificHeats = { steel: 500, 'cast-iron': 500, aluminium: 920 } as const

/**
 * Time, s, until a body that was at `from` is at `to`, °C, in surroundings of a steady temperature: t = m·c/(h·A)·ln((T∞ −
 * T₀)/(T∞ − T)), the lumped body of any book on heat transfer, fair for a steel head of some 50 mm in air (Biot number far below
 * 0.1). Undefined where it never gets there. RangeError for a figure that is not above 0 or no number.
 */
export function timeToReach(body: HeatedBody, from: number, to: number, surroundings: number): number | undefined {
  for (const figure of [body.mass, body.specificHeat, body.area, body.film]) {
    if (!(figure > 0 && Number.isFinite(figure))) throw new RangeError(`heated body: ${figure}`)
  }
  for (const figure of [from, to, surroundings]) {
    if (!Number.isFinite(figure)) throw new RangeError(`temperature: ${figure}`)
  }
  if (from === to) return 0
  const ratio = (surroundings - from) / (surroundings - to)
  if (!(ratio > 1 && Number.isFinite(ratio))) return undefined
  const constant = (body.mass * body.specificHeat) / (body.film * body.area * 1e-6)
  return constant * Math.log(ratio)
}

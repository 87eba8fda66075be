/** A stretch along the bore's axis, mm below the mounting face. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** Something that takes away from the joint over a stretch: a slot, a step, a chamfer, a vent. */
export interface Interruption extends Stretch {
  /** Share of the circumference that is lost there, 0 to 1; left out: all of it, as where the hub is cut into. */
  readonly share?: number
}

/** What is left of a joint. */
export interface JointLength {
  /** Length that counts, mm: each whole stretch by the share of its circumference that touches. */
  readonly effective: number
  /** Stretches in which something touches, ascending, joined where they meet. */
  readonly stretches: readonly Stretch[]
}

/**
 * Length of a joint that slot, step, chamfers and vents leave whole. Where interruptions overlap their shares add up to
 * no more than 1, which is safe. RangeError for stretches that run backwards, shares outside 0 to 1, NaN or infinity.
 */
export function jointLength(engaged: Stretch, interruptions: readonly Interruption[]): JointLength {
  for (const { from, to } of [engaged, ...interruptions]) {
    if (!(Number.isFinite(from) && Number.isFinite(to) && from <= to)) throw new RangeError(`stretch ${from} to ${to}`)
  }
  for (const { share = 1 } of interruptions) {
    if (!(share >= 0 && share <= 1)) throw new RangeError(`share of a circumference: ${share}`)
  }
  const ends = [engaged.from, engaged.to, ...interruptions.flatMap(({ from, to }) => [from, to])]
    .filter((at) => at >= engaged.from && at <= engaged.to)
    .toSorted((a, b) => a - b)
  let effective = 0
  const stretches: Stretch[] = []
  for (const [which, to] of ends.entries()) {
    const from = ends[which - 1]
    if (from === undefined || to === from) continue
    const lost = interruptions
      .filter((cut) => cut.from <= from && cut.to >= to)
      .reduce((sum, { share = 1 }) => sum + share, 0)
    if (lost >= 1) continue
    effective += (to - from) * (1 - lost)
    const last = stretches.at(-1)
    if (last?.to === from) stretches[stretches.length - 1] = { from: last.from, to }
    else stretches.push({ from, to })
  }
  return { effective, stretches }
}

/**
 * Share of a spigot's circumference, 0 to 1, that a flat of some depth takes (mm, 0 up to the diameter). RangeError
 * outside that.
 */
export function flatShare(diameter: number, depth: number): number {
  if (!(diameter > 0 && depth >= 0 && depth <= diameter)) throw new RangeError(`flat ${depth} deep on ${diameter}`)
  return Math.acos(1 - (2 * depth) / diameter) / Math.PI
}

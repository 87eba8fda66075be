import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import type { Units } from '../../quantity/kind.ts'
import { InputFaults } from '../fit/input-faults.ts'

export interface ParallelsWanted {
  /** Heights of the shop's pairs, mm, above 0; each pair once unless it stands twice. */
  readonly heights: readonly number[]
  /** Lowest and highest that will do, mm; `least` up to 0 needs none. */
  readonly least: number
  readonly most: number
  /** Whether one pair may stand on another. */
  readonly stacked: boolean
  /** How lengths are written in a problem. */
  readonly units: Units
}

/** The pairs to use, the highest first; none where the work may stand on the bed. */
export interface ParallelsChosen {
  readonly pairs: readonly number[]
  readonly height: number
}

/** A sum that is right to a picometre is right. */
const dust = 1e-9

/**
 * Parallels for a height: none where none are needed, else the lowest single pair that will do, else the lowest two. Low, because work sits
 * firmer the less it stands on. Problems (`not-in-table`): none that will do, with the nearest below and above; (`contradiction`): a highest below the
 * lowest. Throws RangeError on heights that are not above 0.
 */
export function chooseParallels({ heights, least, most, stacked, units }: ParallelsWanted): Result<ParallelsChosen> {
  if (heights.some((h) => !(h > 0)) || Number.isNaN(least) || Number.isNaN(most)) {
    throw new RangeError('parallels are above 0')
  }
  const faults = new InputFaults()
  const write = (height: number) => formatLength(height, units)
  if (most < least - dust || most < -dust) {
    faults.add(
      'most',
      'contradiction',
      `at least ${write(least)} and at most ${write(most)}`,
      'a range of heights',
      'longer work, lower jaws, or a shallower cut',
    )
    return { ok: false, problems: faults.problems }
  }
  if (least <= dust) return { ok: true, value: { pairs: [], height: 0 } }
  const singles = heights.map((h) => ({ pairs: [h], height: h }))
  const doubles = stacked
    ? heights.flatMap((a, i) =>
        heights.slice(i + 1).map((b) => ({ pairs: [Math.max(a, b), Math.min(a, b)], height: a + b })),
      )
    : []
  const lowest = (some: readonly ParallelsChosen[]) => some.toSorted((a, b) => a.height - b.height)[0]
  const fits = ({ height }: ParallelsChosen) => height >= least - dust && height <= most + dust
  const chosen = lowest(singles.filter(fits)) ?? lowest(doubles.filter(fits))
  if (chosen !== undefined) return { ok: true, value: chosen }
  const all = [...singles, ...doubles].map((c) => c.height)
  const below = Math.max(-Infinity, ...all.filter((h) => h < least))
  const above = Math.min(Infinity, ...all.filter((h) => h > most))
  const near = [below, above].filter(Number.isFinite).map(write)
  faults.add(
    'heights',
    'not-in-table',
    near.length === 0 ? 'no parallels' : `nearest ${near.join(' and ')}`,
    `${write(least)} to ${write(most)}`,
    `pack the work ${write(least)} above the bed`,
  )
  return { ok: false, problems: faults.problems }
}

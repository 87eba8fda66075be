import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface PryingInput {
  /** Force of each screw, N (count on the least), and its place along the bit, x in the face frame, mm. */
  readonly screws: readonly { readonly force: number; readonly x: number }[]
  /** Side that the screws push from. */
  readonly side: 'leading' | 'trailing'
  /** The wall that they push the bit against: its two ends, x in the face frame, mm. */
  readonly wall: { readonly outer: number; readonly inner: number }
  /** x of the tip in the face frame, mm. */
  readonly tipX: number
  /** Main cutting force, N, at least 0. */
  readonly cuttingForce: number
  /** Wanted factor, above 0. */
  readonly wanted: number
}

export interface Prying {
  /** x of the edge that the bit would turn about. */
  readonly edge: number
  /** Moment of all screws about it, N·mm; a screw beyond the edge counts against the others. */
  readonly moment: number
  readonly momentBestMissing: number
  /** Moment of the cutting force about it, N·mm. */
  readonly load: number
  /** Moment over load; undefined where there is no cutting force. */
  readonly factor: number | undefined
  readonly factorBestMissing: number | undefined
  /** Place in the list of the screw that does most; undefined for no screw. */
  readonly best: number | undefined
  /** Cutting force at which the wanted factor is just kept with all screws, N, never below 0. */
  readonly largestForce: number
}

/** Rule of thumb, common practice without a source. */
export const pryingRules = { wanted: 3 } as const

/**
 * Whether the cutting force pries the bit out: equilibrium of the bit at the moment when it leaves its wall.
 *
 * Screws on the leading side push towards the trailing wall, as the cutting force at the tip does: the bit turns about
 * the *outer* end of that wall, the screws hold with Σ F·(outer − x) against F_c·(tip − outer). Screws on the trailing
 * side are pushed back by the cutting force: the bit leaves the leading wall from outside in and turns about that
 * wall's *inner* end, so that Σ F·(x − inner) stands against F_c·(tip − inner). The radial force is left out: it acts
 * inwards on the leading side, which closes the first joint and has no lever on the second. With the best screw missing, the one of the largest moment is left out.
 *
 * Problems: a negative force, a wall of no length, a tip that does not stand out beyond the wall.
 */
export function prying(input: PryingInput): Result<Prying> {
  const { screws, side, wall, tipX, cuttingForce, wanted } = input
  const problems = outOfRange([
    ...screws.flatMap(
      ({ force, x }, at) =>
        [
          [`screws.${at}.force`, 'force', force, { min: 0 }],
          [`screws.${at}.x`, 'length', x, {}],
        ] as const,
    ),
    ['wall.inner', 'length', wall.inner, {}],
    ['wall.outer', 'length', wall.outer, {}],
    ['tipX', 'length', tipX, {}],
    ['cuttingForce', 'force', cuttingForce, { min: 0 }],
    ['wanted', 'ratio', wanted, { above: 0 }],
  ])
  const order = (path: string, found: number, beyond: string, than: number) => {
    if (found > than) return
    const allowed = `beyond the ${beyond}, ${formatLength(than, 'mm')}`
    problems.push({
      code: 'contradiction',
      where: { file: '', path },
      found: formatLength(found, 'mm'),
      allowed,
    })
  }
  order('wall.outer', wall.outer, 'inner end of the wall', wall.inner)
  order('tipX', tipX, 'outer end of the wall', wall.outer)
  if (problems.length > 0) return { ok: false, problems }

  const edge = side === 'leading' ? wall.outer : wall.inner
  const moments = screws.map(({ force, x }) => force * (side === 'leading' ? edge - x : x - edge))
  const moment = moments.reduce((sum, one) => sum + one, 0)
  const most = Math.max(...moments)
  const best = moments.length === 0 ? undefined : moments.indexOf(most)
  const momentBestMissing = moments.reduce((sum, one, at) => (at === best ? sum : sum + one), 0)
  const lever = tipX - edge
  const load = cuttingForce * lever
  const over = (of: number) => (load > 0 ? of / load : undefined)
  return {
    ok: true,
    value: {
      edge,
      moment,
      momentBestMissing,
      load,
      factor: over(moment),
      factorBestMissing: over(momentBestMissing),
      best,
      largestForce: Math.max(0, moment / (wanted * lever)),
    },
  }
}

import type { SetResult } from './set-result.ts'
import { isFree, type Sweep } from './sweep.ts'

/** A sweep for programs: everything that its tables and pictures show. */
export function sweepJson({ axes, figures, own, sets, stops, ...head }: Sweep): object {
  const byId = (values: readonly (number | null)[]) =>
    Object.fromEntries(figures.map(({ id }, at) => [id, values[at] ?? null]))
  const result = ({ level, stops, problems, figures, limits }: SetResult) => ({
    level,
    stops,
    ...(problems.length > 0 && { problems }),
    figures: byId(figures),
    limits: byId(limits),
  })
  return {
    ...head,
    vary: axes.map(({ path, kind, unit, says, points, own }) => ({
      path,
      kind,
      unit,
      says,
      inFile: own?.shown ?? null,
      values: points.map(({ shown }) => shown),
    })),
    figures,
    withoutStops: sets.filter(isFree).length,
    stops,
    inFile: result(own),
    sets: sets.map((set) => ({
      values: Object.fromEntries(axes.map(({ path }, at) => [path, set.at[at]!.shown])),
      ...result(set),
    })),
  }
}

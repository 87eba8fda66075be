import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { Figure } from '../figures/figure.ts'
import type { Problem, Result } from '../input/problem.ts'
import type { Units } from '../quantity/kind.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import { type Axis, type AxisPoint, mostSets } from './axis.ts'
import { readAxis } from './read-axis.ts'
import { type SetChange, type SetResult, setResult, stopsOf } from './set-result.ts'
import { varyProblem } from './written-vary.ts'

/** A figure of a sweep, as tables and pictures name it. */
export interface SweptFigure {
  readonly id: string
  readonly label: string
  readonly unit: string
  readonly limitIs?: 'least' | 'most'
}

/** One set: the point on each parameter's axis, and what comes of it. */
export interface SweptSet extends SetResult {
  readonly at: readonly AxisPoint[]
}

/** A stop that occurs somewhere in the sweep. */
export interface SweptStop {
  readonly id: string
  /** As it reads in the first of its sets. */
  readonly text: string
  readonly sets: number
}

/** A sweep worked out. */
export interface Sweep {
  readonly title: string
  readonly family: string
  /** Mark of the file that was swept. */
  readonly revision: string
  readonly units: Units
  /** One or two. */
  readonly axes: readonly Axis[]
  readonly figures: readonly SweptFigure[]
  /** The file as it stands. */
  readonly own: SetResult
  /** Every value of the first parameter, and for each all of the second. */
  readonly sets: readonly SweptSet[]
  readonly stops: readonly SweptStop[]
}

/** Reads all `--vary` of a command line for this design. */
export function readAxes(written: readonly string[], { family, design }: Read): Result<Axis[]> {
  if (written.length === 0 || written.length > 2) {
    const found = written.length === 0 ? 'no --vary' : `${written.length} times --vary`
    const remedy = written.length === 0 ? 'add --vary PATH=FROM..TO:STEPS' : 'sweep two at a time'
    return { ok: false, problems: [varyProblem({ found, allowed: 'one or two parameters to vary', remedy })] }
  }
  const read = written.map((text) => readAxis(text, family, design))
  const problems: Problem[] = read.flatMap((axis) => (axis.ok ? [] : axis.problems))
  const axes = read.flatMap((axis) => (axis.ok ? [axis.value] : []))
  const [first, second] = axes
  if (first !== undefined && first.path === second?.path) {
    problems.push(varyProblem({ path: first.path, found: 'the same parameter twice', allowed: 'two that differ' }))
  }
  const sets = axes.reduce((product, { points }) => product * points.length, 1)
  if (problems.length === 0 && sets > mostSets) {
    const allowed = `at most ${mostSets} sets: some twenty seconds on two cores, and as much as a spreadsheet bears`
    problems.push(varyProblem({ found: `${sets} sets`, allowed, remedy: 'write fewer steps' }))
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: axes }
}

type Read = ReadDesign<CommonParameters, Design>

/** Number of sets of a sweep. */
export const countSets = (axes: readonly Pick<Axis, 'points'>[]): number =>
  axes.reduce((product, { points }) => product * points.length, 1)

/** The points of set number `index`, the last parameter turning fastest. */
export function pointsAt(axes: readonly Pick<Axis, 'points'>[], index: number): AxisPoint[] {
  const points: AxisPoint[] = []
  let rest = index
  for (const axis of axes.toReversed()) {
    points.unshift(axis.points[rest % axis.points.length]!)
    rest = Math.floor(rest / axis.points.length)
  }
  return points
}

/** What stands otherwise than in the file in set number `index`. */
export const changeAt = (axes: readonly Pick<Axis, 'path' | 'points'>[], index: number): SetChange =>
  pointsAt(axes, index).map(({ value }, at) => ({ path: axes[at]!.path, value }))

/** Puts a sweep together from the results of its sets, in their order. */
export function sweepOf(
  { family, design }: Read,
  revision: string,
  axes: readonly Axis[],
  figures: readonly Figure<Design>[],
  results: readonly SetResult[],
): Sweep {
  const { parameters, tables, units } = design
  const ids = [...new Set(results.flatMap(({ stops }) => stops))]
  return {
    title: parameters.title,
    family: family.name,
    revision,
    units,
    axes,
    figures: figures.map(({ id, label, kind, limit, limitIs = 'most' }) => ({
      id,
      label,
      unit: kind === 'count' ? '' : unitSymbol(kind, units),
      ...(limit && { limitIs }),
    })),
    own: setResult(family, parameters, tables, [], figures),
    sets: results.map((result, index) => ({ ...result, at: pointsAt(axes, index) })),
    stops: ids.map((id) => {
      const first = results.findIndex(({ stops }) => stops.includes(id))
      const finding = stopsOf(family, parameters, tables, changeAt(axes, first)).find((f) => f.id === id)
      return { id, text: finding?.text ?? '', sets: results.filter(({ stops }) => stops.includes(id)).length }
    }),
  }
}

/** True for a set that can be built and that nothing stops. */
export const isFree = ({ level }: Pick<SetResult, 'level'>): boolean => level !== 'stop' && level !== 'impossible'

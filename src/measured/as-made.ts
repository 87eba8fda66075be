import type { Finding, FindingLever } from '../checks/finding.ts'
import { remedyFor } from '../checks/remedy.ts'
import { findingsOf } from '../checks/rule.ts'
import type { CommonParameters, Design, Family } from '../families/family.ts'
import { remedied, variantsOf } from '../families/variants.ts'
import { type FigureValue, figuresOf } from '../figures/figure.ts'
import { sizeFrom } from '../figures/measuring.ts'
import { outsideLimits } from '../input/outside-limits.ts'
import type { Problem, Result } from '../input/problem.ts'
import { capital } from '../quantity/capital.ts'
import { formatQuantity } from '../quantity/format-quantity.ts'
import { type AskedLine, askedLines } from './inspection-sheet.ts'
import { type MeasuredValue, sizeName } from './measured-value.ts'
import type { Repair } from './repair.ts'

/** One measured size beside what was asked for, mm or rad. */
export interface MadeLine {
  readonly asked: AskedLine
  /** What the tool showed, and the size that it means. */
  readonly reading: number
  readonly size: number
  readonly verdict: 'good' | 'too large' | 'too small' | 'no limits'
  /** By how much it lies beyond its limit, above 0. */
  readonly beyond?: number
}

/** A figure that came out otherwise than designed. */
export interface ChangedFigure {
  readonly designed: FigureValue | undefined
  readonly made: FigureValue | undefined
}

/** What a tool as it was made is worth. */
export interface AsMade<D> {
  readonly design: D
  readonly lines: readonly MadeLine[]
  /** Sizes that were asked for and not measured: they keep their nominal size and tolerance. */
  readonly unmeasured: readonly AskedLine[]
  readonly changed: readonly ChangedFigure[]
  readonly findings: {
    readonly new: readonly Finding[]
    readonly gone: readonly Finding[]
    readonly stay: readonly Finding[]
  }
  readonly repairs: readonly Repair[]
}

/** A figure has changed when it differs by more than this share of itself. */
const worthTelling = 1e-3

/** Works everything out again with what was measured. Problems: values with which nothing can be built, where they stand. */
export function asMade<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  designed: D,
  values: readonly MeasuredValue[],
): Result<AsMade<D>> {
  const asked = askedLines(family.measuring(designed))
  const lines: MadeLine[] = []
  const impossible: Problem[] = []
  const sizes = new Map<string, number>()
  const found = new Map(
    values.map((v) => {
      const line = asked.find((a) => sizeName(a) === sizeName(v))
      if (!line) throw new RangeError(`${sizeName(v)} was not asked for`)
      return [sizeName(v), { part: v.part, size: sizeFrom(line.measuring, v.value) }]
    }),
  )
  // Part by part: a spigot is turned to the bore that was measured, a slot milled to the bit, and judged by the limits that follow.
  for (const part of new Set(asked.map((a) => a.part))) {
    const others = [...found].flatMap(([name, { part: of, size }]) => (of === part ? [] : [[name, size] as const]))
    const fitted = soundlyMade(family, designed, new Map(others))
    const now = fitted.ok ? askedLines(family.measuring(fitted.value)) : asked
    for (const { id, value, where } of values.filter((v) => v.part === part)) {
      const named = (a: AskedLine) => a.part === part && a.id === id
      const line = now.find(named) ?? asked.find(named)!
      const judged = judgedLine(line, value)
      const allowed = noSuchSize(judged)
      if (allowed === undefined) lines.push(judged)
      else {
        const found = `${formatQuantity(line.kind, judged.size, designed.units)} for ${line.label}`
        impossible.push({ code: 'out-of-range', where: { ...where, path: sizeName(line) }, found, allowed })
      }
    }
    for (const l of lines) sizes.set(sizeName(l.asked), l.size)
  }
  if (impossible.length > 0) return { ok: false, problems: impossible }
  const made = soundlyMade(family, designed, sizes)
  if (!made.ok) {
    const alone = (line: MadeLine) => soundlyMade(family, designed, new Map([[sizeName(line.asked), line.size]]))
    return { ok: false, problems: made.problems.map((p) => placed(p, values, lines, alone)) }
  }
  const design = made.value
  const [before, after] = [figuresOf(family.figures, designed), figuresOf(family.figures, design)]
  const ids = [...new Set([...before, ...after].map((f) => f.id))]
  const changed = ids
    .map((id) => ({ designed: before.find((f) => f.id === id), made: after.find((f) => f.id === id) }))
    .filter(
      ({ designed: a, made: b }) =>
        !a || !b || Math.abs(b.value - a.value) > worthTelling * Math.max(Math.abs(a.value), 1e-9),
    )
  const rules = family.rules.filter((rule) => rule.beforeMaking !== true)
  const [old, now] = [findingsOf(rules, designed), findingsOf(rules, design)]
  const has = (list: readonly Finding[], f: Finding) => list.some((o) => o.id === f.id && o.level === f.level)
  return {
    ok: true,
    value: {
      design,
      lines,
      unmeasured: asked.filter((a) => a.measuring.dimension.kind !== 'thread' && !sizes.has(sizeName(a))),
      changed,
      findings: {
        new: now.filter((f) => !has(old, f)),
        gone: old.filter((f) => !has(now, f)),
        stay: now.filter((f) => has(old, f)),
      },
      repairs: repairsOf(family, designed, design, now, sizes, lines),
    },
  }
}

/**
 * What can still be done: what the family knows, after a change of what is not made yet; where stops stay that neither
 * clears, the part has to be made again.
 */
function repairsOf<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  designed: D,
  made: D,
  findings: readonly Finding[],
  sizes: ReadonlyMap<string, number>,
  lines: readonly MadeLine[],
): readonly Repair[] {
  const [asItIs, ...rest] = family.repairs(made, designed, lines)
  const change = changeOf(family, made, findings, family.stillOpen(sizes))
  const known = [...(asItIs ? [asItIs] : []), ...(change ? [change] : []), ...rest]
  return known.some((r) => r.would === 'do') ? known : [...known, makeAgain]
}

/** Where nothing else would do. */
const makeAgain: Repair = {
  id: 'make-again',
  title: 'Make the part again',
  would: 'do',
  says: 'Nothing above mends all that is wrong. Scrap the part, so that nobody runs it, and make a new one.',
  cautions: [],
}

/** Everything that a lever moves. */
const pathsOf = (lever: FindingLever): readonly string[] => [
  lever.path,
  ...('turn' in lever ? (lever.with ?? []) : (lever.bringing ?? []).map(({ path }) => path)),
]

/** A change of parameters that are still free, one for each stop that one clears; undefined where none does. */
function changeOf<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  made: D,
  findings: readonly Finding[],
  open: (path: string) => boolean,
): Repair | undefined {
  const stops = findings.filter((f) => f.level === 'stop')
  const variants = variantsOf(family, made)
  const ids = stops.map((f) => f.id)
  const cleared = stops.flatMap((finding) => {
    const levers = finding.levers.filter((lever) => pathsOf(lever).every(open))
    const remedy = levers.length > 0 ? remedyFor({ ...finding, levers }, variants, ids) : undefined
    return remedy ? [{ finding, remedy }] : []
  })
  if (cleared.length === 0) return undefined
  // Each clears its own; only together do they show what is left.
  let built: Result<D> = { ok: true, value: made }
  for (const { remedy } of cleared) if (built.ok) built = remedied(family, built.value, remedy)
  const left = built.ok ? findingsOf(family.rules, built.value).filter((f) => f.level === 'stop') : stops
  const changes = [...new Map(cleared.map(({ remedy }) => [remedy.path, remedy.text])).values()]
  return {
    id: 'change',
    title: 'Change what is not made yet',
    would: left.length === 0 ? 'do' : 'mend a part of it',
    says: `${capital(changes.join('; '))}. That clears: ${cleared.map(({ finding }) => finding.text).join(' ')}`,
    cautions: left.length > 0 ? [`What stays: ${left.map((f) => f.text).join(' ')}`] : [],
  }
}

/** Within limits to a hundredth of a micrometre: what a sheet rounds to must not make scrap. */
const slack = 1e-5

function judgedLine(asked: AskedLine, reading: number): MadeLine {
  const { from, to, measuring } = asked
  const size = sizeFrom(measuring, reading)
  if (from === undefined || to === undefined) return { asked, reading, size, verdict: 'no limits' }
  const beyond = Math.max(reading - to, from - reading)
  if (beyond <= slack) return { asked, reading, size, verdict: 'good' }
  const isMore = reading > to === (measuring.reading?.scale ?? 1) > 0
  return { asked, reading, size, verdict: isMore ? 'too large' : 'too small', beyond }
}

/** Sizes below this may come out as nothing: a chamfer or a radius that was forgotten. mm */
const mayBeNothing = 2

/** What a size would have to be, mm or rad, where no part can have it as it is; undefined where one can. */
function noSuchSize({ asked: { measuring, kind }, size }: MadeLine): string | undefined {
  const nominal = measuring.dimension.value
  if (kind === 'angle') {
    const most = nominal < Math.PI / 2 ? Math.PI / 2 : Math.PI
    return Math.abs(size) < most ? undefined : `less than ${formatQuantity('angle', most, 'mm')}`
  }
  if (nominal >= mayBeNothing && size <= 0) return 'more than nothing'
  return nominal > 0 && size < 0 ? 'nothing or more' : undefined
}

/** The tool as made, where every parameter that a size means is one that a file could give. */
function soundlyMade<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  designed: D,
  sizes: ReadonlyMap<string, number>,
): Result<D> {
  const made = family.asMade(designed, sizes)
  if (!made.ok) return made
  const { units, parameters } = made.value
  const problems = outsideLimits(family.schema(units), parameters, units)
  return problems.length > 0 ? { ok: false, problems } : made
}

/**
 * A problem about a measured size stands where that was written; one about a parameter stands at the value that makes it
 * by itself, or at the first where several do so together.
 */
function placed(
  problem: Problem,
  values: readonly MeasuredValue[],
  lines: readonly MadeLine[],
  alone: (line: MadeLine) => Result<unknown>,
): Problem {
  const { path } = problem.where
  const makesIt = (line: MadeLine) => {
    const made = alone(line)
    return !made.ok && made.problems.some(({ where }) => where.path === path)
  }
  const named = values.find((v) => sizeName(v) === path)
  const culprit = named ? undefined : lines.find(makesIt)?.asked
  const value = named ?? values.find((v) => culprit && sizeName(v) === sizeName(culprit)) ?? values[0]!
  return { ...problem, where: { ...value.where, ...(path !== undefined && { path }) } }
}

import type { z } from 'zod'
import type { CommonParameters, Design, Family } from '../families/family.ts'
import { type FieldMeta, fieldMeta, type IssueProblem, isQuantityKind } from '../input/field-meta.ts'
import { nearest } from '../input/nearest.ts'
import { readParameter } from '../input/parameter-path.ts'
import type { Problem, Result } from '../input/problem.ts'
import { schemaAt, unwrap } from '../input/schema-tree.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { steady } from '../report/steady.ts'
import { type Axis, type AxisPoint, isScale, mostPoints } from './axis.ts'
import { alternativeWith, parameterPaths } from './parameter-paths.ts'
import { plainNumber } from './steady-number.ts'
import { varyForms, varyProblem, type WrittenVary, writtenVary } from './written-vary.ts'

/**
 * Reads what stands behind one `--vary` for this design. Values are read as the file would read them: a bare number in
 * the file's unit, `12.5 mm`, `1/2 in`, `8 deg`. STEPS is the number of values, both ends included; between the ends they
 * are evenly spaced in the file's unit and rounded to nine digits, so that each can be written into a file as it stands.
 */
export function readAxis<P extends CommonParameters, D extends Design>(
  written: string,
  family: Family<P, D>,
  design: D,
): Result<Axis> {
  const vary = writtenVary(written)
  if (!vary.ok) return vary
  const { path } = vary.value
  const filled = family.filledIn(design)
  const schema = family.schema(design.units)
  const fault = pathProblem(path, schema, filled)
  if (fault !== undefined) return { ok: false, problems: [fault] }
  const leaf = unwrap(schemaAt(schema, path.split('.'), filled)!) as z.ZodType
  const meta = fieldMeta(leaf)!
  const kind = meta.kind as Axis['kind']
  const field = { path, leaf, kind, units: design.units }
  const read = vary.value.form === 'range' ? rangePoints(vary.value, field) : listPoints(vary.value, field)
  if (!read.ok) return read
  const points = read.value
  const double = points.find((p, at) => points.findIndex((q) => q.shown === p.shown) !== at)
  if (double !== undefined) {
    const isRange = vary.value.form === 'range'
    const found = isRange ? `steps finer than nine digits can tell apart` : `${double.shown} twice`
    const remedy = isRange ? 'write fewer steps' : 'write each value once'
    return refused({ path, found, allowed: 'values that differ', remedy })
  }
  const value = readParameter(filled, path)
  const own = typeof value === 'object' || value === undefined ? undefined : pointOf(value as AxisPoint['value'], field)
  return {
    ok: true,
    value: { path, says: meta.description, kind, unit: meta.unit, points, ...(own !== undefined && { own }) },
  }
}

interface Field {
  readonly path: string
  readonly leaf: z.ZodType
  readonly kind: Axis['kind']
  readonly units: Units
}

const refused = (problem: Parameters<typeof varyProblem>[0]): Result<never> => ({
  ok: false,
  problems: [varyProblem(problem)],
})

/** Of these a file has one, and everything else in it is read by it. */
const fixed = ['family', 'units']

function pathProblem(path: string, schema: z.ZodType, value: unknown): Problem | undefined {
  const paths = parameterPaths(schema, value)
  const kind = paths.get(path)
  const values = [...paths].filter(([name, k]) => k === 'value' && !fixed.includes(name)).map(([name]) => name)
  const within = values.filter((name) => name.startsWith(`${path}.`))
  const oneOf = within.length > 0 ? `one value: ${within.slice(0, 12).join(', ')}` : 'a parameter with one value'
  if (kind === 'section') return varyProblem({ code: 'wrong-kind', path, found: 'a section', allowed: oneOf })
  if (kind === 'list') return varyProblem({ code: 'wrong-kind', path, found: 'a list', allowed: oneOf })
  if (kind === 'decides' || fixed.includes(path)) {
    const found = 'a parameter that decides which others there are, or how they are read'
    const remedy = 'make a file for each, and sweep those'
    return varyProblem({ code: 'wrong-kind', path, found, allowed: 'a parameter that stands alone', remedy })
  }
  return kind === 'value' ? undefined : unknownPath(path, values, schema, value)
}

function unknownPath(path: string, values: readonly string[], schema: z.ZodType, value: unknown): Problem {
  const steps = path.split('.')
  const section = steps.slice(0, -1)
  const alternative = alternativeWith(schemaAt(schema, section, value) ?? schema, steps.at(-1)!)
  const inSection = values.filter((name) => section.length > 0 && name.startsWith(`${section.join('.')}.`))
  const sameEnd = values.filter((name) => name.split('.').at(-1) === path)
  const near = nearest(path, values)
  const remedy =
    alternative !== undefined
      ? `it goes with ${section.join('.')}.${alternative}`
      : near !== undefined
        ? `did you mean ${near}?`
        : sameEnd.length > 0
          ? `did you mean ${sameEnd.slice(0, 6).join(', or ')}?`
          : undefined
  const allowed =
    inSection.length > 0
      ? inSection.join(', ')
      : 'the path of a parameter, such as slot.depth: make or check with --json lists them all'
  return varyProblem({ code: 'unknown-key', path, found: path, allowed, ...(remedy !== undefined && { remedy }) })
}

function listPoints({ items, text, path }: WrittenVary & { form: 'list' }, field: Field): Result<AxisPoint[]> {
  // A decimal comma is a habit of half the world, and `9,5` would pass as two values without a word.
  if (isScale(field) && field.kind !== 'count' && /^[+-]?\d+,\d+$/.test(text)) {
    const remedy = `write ${text.replace(',', '.')} for a decimal, and ${text.replace(',', '..')}:2 for two values`
    return refused({ path, found: text, allowed: varyForms, remedy })
  }
  if (items.length > mostPoints) {
    return refused({ path, found: `${items.length} values`, allowed: `at most ${mostPoints} values` })
  }
  const read = items.map((item) => readPoint(item, field))
  const isRange = items.length === 1 && isScale(field) && text.includes(':')
  const remedy = { remedy: `a range is written ${path}=FROM..TO:STEPS, with two dots` }
  const problems = read.flatMap((r) => (r.ok ? [] : r.problems.map((p) => (isRange ? { ...p, ...remedy } : p))))
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, value: read.flatMap((r) => (r.ok ? [r.value] : [])) }
}

function rangePoints(
  { path, from, to, steps, text }: WrittenVary & { form: 'range' },
  field: Field,
): Result<AxisPoint[]> {
  if (!isScale(field)) {
    const remedy = `write ${path}=A,B with the values themselves`
    return refused({ code: 'wrong-kind', path, found: text, allowed: 'values with commas between them', remedy })
  }
  const ends = [from, to].map((end) => readPoint(end, field))
  const problems = ends.flatMap((r) => (r.ok ? [] : r.problems))
  if (problems.length > 0) return { ok: false, problems }
  const [low, high] = ends.map((r) => (r.ok ? (r.value.shown as number) : 0)) as [number, number]
  const count = /^\d{1,9}$/.test(steps) ? Number(steps) : undefined
  if (count === undefined || count < 1 || count > mostPoints) {
    const step = Number(steps)
    const between = !Number.isInteger(step) && step > 0 ? Math.round(Math.abs(high - low) / step) + 1 : 0
    const remedy =
      between >= 2 && between <= mostPoints
        ? `it is the number of values, not what lies between them: ${path}=${from}..${to}:${between}`
        : `it is the number of values, both ends included: ${path}=${from}..${to}:5`
    const allowed = `a whole number from 1 to ${mostPoints} for STEPS`
    return refused({ path, found: `${steps} steps`, allowed, remedy })
  }
  if (low === high && count > 1) {
    const remedy = `write ${path}=${from}..${to}:1, or another end`
    return refused({ path, found: `${count} steps from ${from} to ${to}`, allowed: 'two ends that differ', remedy })
  }
  if (low !== high && count === 1) {
    const remedy = `write ${path}=${from}..${to}:2`
    return refused({ path, found: `1 step from ${from} to ${to}`, allowed: 'two values at least, one an end', remedy })
  }
  const numbers = Array.from({ length: count }, (_, at) =>
    count === 1 ? low : steady(low + ((high - low) * at) / (count - 1)),
  )
  if (field.kind === 'count' && numbers.some((n) => !Number.isInteger(n))) {
    const found = `${numbers.slice(0, 4).map(plainNumber).join(', ')}${count > 4 ? ' …' : ''}`
    const remedy = `write ${path}=${from}..${to}:${Math.abs(high - low) + 1}`
    return refused({ code: 'wrong-kind', path, found, allowed: 'whole numbers', remedy })
  }
  const read = numbers.map((n) => readPoint(n, field))
  const bad = read.find((r) => !r.ok)
  return bad !== undefined && !bad.ok ? bad : { ok: true, value: read.flatMap((r) => (r.ok ? [r.value] : [])) }
}

/** One value as the file would read it. A quantity is read again as it is shown, so that a file with that number is the same. */
function readPoint(written: string | number, field: Field): Result<AxisPoint> {
  const { leaf, kind, path } = field
  const parsed = leaf.safeParse(inFile(written, kind))
  if (!parsed.success) {
    const issue = parsed.error.issues[0]
    const problem = (issue?.code === 'custom' ? issue.params?.problem : undefined) as IssueProblem | undefined
    const { code = 'wrong-kind', allowed = 'a value of this parameter', remedy } = problem ?? {}
    return refused({ code, path, found: String(written), allowed, ...(remedy !== undefined && { remedy }) })
  }
  const point = pointOf(parsed.data as AxisPoint['value'], field)
  return typeof written === 'number' || typeof point.shown === 'string' || kind === 'count'
    ? { ok: true, value: point }
    : readPoint(point.shown, field)
}

/** A word of the command line as the YAML reader would have given it. */
function inFile(written: string | number, kind: FieldMeta['kind']): unknown {
  if (kind === 'count' && /^[+-]?\d+(\.\d+)?$/.test(String(written))) return Number(written)
  if (kind === 'flag' && /^(true|false)$/.test(String(written))) return written === 'true'
  return written
}

function pointOf(value: AxisPoint['value'], { kind, units }: Field): AxisPoint {
  if (typeof value !== 'number') return { value, shown: String(value) }
  return { value, shown: steady(isQuantityKind(kind) ? toUnit(kind, value, units) : value) }
}

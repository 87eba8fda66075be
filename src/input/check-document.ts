import type { z } from 'zod'
import { descriptionOf, type IssueProblem } from './field-meta.ts'
import { nearest } from './nearest.ts'
import { byPosition } from './print-problem.ts'
import type { Problem, Result } from './problem.ts'
import type { DocumentPath, ReadDocument } from './read-document.ts'
import { own, resolve, schemaAt, shapeOf, unwrap } from './schema-tree.ts'

/**
 * Checks a document against a schema and gives the value in internal units, or every problem with its place, in the
 * order in which they stand in the file. Problems of our own fields are taken as they are; those of zod's plain
 * schemas are put into the same shape; 50 at most. `file` is only named.
 */
export function checkDocument<Schema extends z.ZodType>(
  document: ReadDocument,
  file: string,
  schema: Schema,
): Result<z.output<Schema>> {
  const result = schema.safeParse(document.raw)
  if (result.success) return { ok: true, value: result.data }
  const context = { document, file, schema }
  const problems = result.error.issues.slice(0, 20 * mostProblems).flatMap((issue) => problemsOf(issue, [], context))
  return { ok: false, problems: problems.sort(byPosition).slice(0, mostProblems) }
}

/** More than this helps nobody, and a file made to be hostile could have a hundred thousand. */
const mostProblems = 50

interface Context {
  readonly document: ReadDocument
  readonly file: string
  readonly schema: z.ZodType
}

function problemsOf(issue: z.core.$ZodIssue, above: DocumentPath, context: Context): Problem[] {
  const path = [...above, ...issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))]
  const one = (problem: IssueProblem, at: DocumentPath = path) => [placed(problem, at, context)]
  const written = context.document.has(path)
  switch (issue.code) {
    case 'custom': {
      const problem: IssueProblem | undefined = issue.params?.problem
      return one(problem ?? { code: 'contradiction', allowed: issue.message })
    }
    case 'unrecognized_keys':
      return issue.keys.slice(0, mostProblems).flatMap((key) => one(unknownKey(key, path, context), [...path, key]))
    case 'invalid_type':
      return one(
        written ? wrongKind(issue.expected, path, context) : missing(expectation(issue.expected), path, context),
      )
    case 'invalid_value':
      return one(written ? unknownChoice(issue.values, path, context) : missing(issue.values.join(', '), path, context))
    case 'invalid_union': {
      if (issue.errors.length > 0) {
        const best = issue.errors.reduce((a, b) => (misfit(b) < misfit(a) ? b : a))
        return best.flatMap((inner) => problemsOf(inner, path, context))
      }
      const options = ('options' in issue ? issue.options : undefined) ?? []
      return one(written ? unknownChoice(options, path, context) : missing(options.join(', '), path, context))
    }
    case 'too_small':
    case 'too_big':
      return one({ code: 'out-of-range', ...sized(issue, path, context) })
    case 'invalid_key':
    case 'invalid_element':
      return issue.issues.flatMap((inner) => problemsOf(inner, path, context))
    case 'not_multiple_of':
      return one({ code: 'out-of-range', allowed: `a multiple of ${issue.divisor}` })
    case 'invalid_format':
      return one({ code: 'wrong-kind', allowed: issue.pattern ?? issue.format })
  }
}

/** Puts a problem in its place: at an unknown key the key, at a missing one the section it belongs in, else the value. */
function placed(problem: IssueProblem, path: DocumentPath, { document, file }: Context): Problem {
  const of = problem.code === 'unknown-key' ? 'key' : 'value'
  const written = problem.found ?? document.writtenAt(path)
  const found = problem.isRepeat ? `${written} twice` : written
  const where = { file, ...document.locate(path, of), ...(path.length === 0 ? {} : { path: path.join('.') }) }
  const { code, allowed, remedy } = problem
  return { code, where, found, allowed, ...(remedy === undefined ? {} : { remedy }) }
}

function unknownKey(key: string, section: DocumentPath, { document, schema }: Context): IssueProblem {
  const at = schemaAt(schema, section, document.raw)
  const shape = at === undefined ? undefined : shapeOf(resolve(at, valueAt(document.raw, section)))
  const known = Object.keys(shape ?? {})
  const free = known.filter((name) => !document.has([...section, name]))
  const meant = nearest(key, free) ?? nearest(key, known)
  const elsewhere = meant === undefined ? sectionWith(key, schema, document.raw) : undefined
  const remedy =
    meant !== undefined ? `did you mean ${meant}?` : elsewhere !== undefined ? `it belongs ${elsewhere}` : undefined
  return {
    code: 'unknown-key',
    found: key,
    allowed: known.length === 0 ? 'no key' : known.join(', '),
    ...(remedy === undefined ? {} : { remedy }),
  }
}

/** The section that has a key of this name, where a key went into the wrong one: a slip of indentation. */
function sectionWith(key: string, schema: z.ZodType, raw: unknown): string | undefined {
  const sections: [string, z.core.$ZodType, unknown][] = [['', schema, raw]]
  for (const [path, here, value] of sections) {
    const shape = shapeOf(resolve(here, value))
    if (shape === undefined) continue
    if (Object.hasOwn(shape, key)) return path === '' ? 'at the top level of the file' : `in ${path}`
    for (const [name, inner] of Object.entries(shape)) {
      if (path.split('.').length > 8) break
      sections.push([path === '' ? name : `${path}.${name}`, inner, own(value, name)])
    }
  }
  return undefined
}

function wrongKind(expected: string, path: DocumentPath, { document, schema }: Context): IssueProblem {
  const empty = document.writtenAt(path) === 'nothing'
  const at = schemaAt(schema, path, document.raw)
  const mayMiss = at !== undefined && at !== unwrap(at)
  const remedy = empty && mayMiss ? { remedy: 'write a value, or leave the key out' } : {}
  return { code: 'wrong-kind', allowed: expectation(expected), ...remedy }
}

function missing(allowed: string, path: DocumentPath, { document, schema }: Context): IssueProblem {
  const at = schemaAt(schema, path, document.raw)
  const says = at === undefined ? undefined : (descriptionOf(at) ?? descriptionOf(unwrap(at)))
  const remedy = says === undefined ? {} : { remedy: `add it: ${says}` }
  return { code: 'missing-key', found: 'nothing', allowed, ...remedy }
}

function unknownChoice(values: readonly unknown[], path: DocumentPath, { document }: Context): IssueProblem {
  const names = values.map(String)
  const value = valueAt(document.raw, path)
  const meant = typeof value === 'string' ? nearest(value, names) : undefined
  const remedy = meant === undefined ? {} : { remedy: `write ${meant}` }
  return { code: 'unknown-choice', allowed: names.join(', '), ...remedy }
}

function sized(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  path: DocumentPath,
  { document }: Context,
): { allowed: string; found?: string } {
  const limit = issue.code === 'too_small' ? issue.minimum : issue.maximum
  const strict = issue.inclusive === false
  const words = issue.code === 'too_small' ? (strict ? 'more than' : 'at least') : strict ? 'less than' : 'at most'
  const one = issue.origin === 'array' ? ' item' : issue.origin === 'string' ? ' character' : ''
  const noun = one === '' || Number(limit) === 1 ? one : `${one}s`
  const value = valueAt(document.raw, path)
  const found = Array.isArray(value) ? { found: `${value.length} items` } : {}
  return { allowed: `${issue.exact === true ? 'exactly' : words} ${limit}${noun}`, ...found }
}

/** Of a union's branches, the one with the shallowest quarrel over kind is the furthest off. */
function misfit(issues: readonly z.core.$ZodIssue[]): number {
  const offKind = issues.some((issue) => issue.path.length === 0 && issue.code === 'invalid_type')
  return issues.length + (offKind ? 1000 : 0)
}

const kindWords: Readonly<Record<string, string>> = {
  object: 'a section: keys with values, indented',
  record: 'a section: keys with values, indented',
  array: 'a list, such as [a, b]',
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

function expectation(expected: string): string {
  return own(kindWords, expected) ?? expected
}

function valueAt(raw: unknown, path: DocumentPath): unknown {
  return path.reduce<unknown>((value, step) => own(value, step), raw)
}

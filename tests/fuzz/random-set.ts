import { readFileSync } from 'node:fs'
import { parse, stringify } from 'yaml'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { toJsonSchema } from '../../src/input/json-schema.ts'
import { seededRandom } from '../outside/brep/seeded-random.ts'

type Json = Record<string, unknown>
interface Schema {
  readonly type?: string | readonly string[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly oneOf?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
  readonly enum?: readonly string[]
  readonly const?: string
  readonly items?: Schema
  readonly minItems?: number
  readonly maxItems?: number
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly exclusiveMaximum?: number
  readonly default?: unknown
}

const rows = (file: string): readonly { name?: string; threads?: readonly string[] }[] =>
  JSON.parse(readFileSync(new URL(`../../seeds/${file}.json`, import.meta.url), 'utf8')).rows

/** Names that the tables have, by the last key of a path; anything else is a name that no table has. */
const names: Readonly<Record<string, readonly string[]>> = {
  'screws.thread': rows('set-screws').flatMap((r) => r.threads ?? []),
  'fit.thread': rows('threads').map((r) => r.name!),
  shank: rows('shanks').map((r) => r.name!),
  'stock.material': rows('materials').map((r) => r.name!),
  'arbor.material': rows('materials').map((r) => r.name!),
  'bit.material': rows('materials').map((r) => r.name!),
  'work.material': rows('work-materials').map((r) => r.name!),
  'bore-zone': ['H6', 'H7', 'H8', 'G7', 'N7'],
  code: ['H7/s6', 'H7/p6', 'H7/k6', 'H8/u8'],
  class: ['FN1', 'FN2', 'LN3', 'FN5'],
}

/** Boxed sets, by name. */
const boxes = ['gauge-blocks', 'angle-blocks', 'gauge-pins'].flatMap((file) => rows(file).map((r) => r.name!))

const template = (name: string) =>
  parse(readFileSync(new URL(`../../templates/fly-cutter-head/${name}.yaml`, import.meta.url), 'utf8')) as Json
const bases = { mm: template('parameters'), in: template('parameters-inch') } as const
const schemas = {
  mm: toJsonSchema(flyCutterHead.schema('mm'), '') as unknown as Schema,
  in: toJsonSchema(flyCutterHead.schema('in'), '') as unknown as Schema,
}

interface Leaf {
  readonly path: readonly string[]
  readonly schema: Schema
}

/** Every value of the branch that a set has taken, whether written or left out. */
function leavesOf(schema: Schema, value: unknown, path: readonly string[] = []): Leaf[] {
  const branch = branchOf(schema, value)
  if (!branch.properties) return [{ path, schema: branch }]
  return Object.entries(branch.properties).flatMap(([key, inner]) =>
    leavesOf(inner, (value as Json)?.[key], [...path, key]),
  )
}

/** The branch of a choice that a value has taken: the one whose fixed words it has. */
function branchOf(schema: Schema, value: unknown): Schema {
  const choices = schema.oneOf ?? schema.anyOf
  if (!choices) return schema
  const fits = (s: Schema) =>
    s.items
      ? Array.isArray(value)
      : Object.entries(s.properties ?? {}).every(([k, p]) => p.const === undefined || (value as Json)?.[k] === p.const)
  return choices.find(fits) ?? choices[0]!
}

/**
 * A parameter set near a template, by number: some of its values anywhere in their legal range, at its very ends, or a little off
 * what the template has; other branches of choices; names from the tables; and the coincidences that geometry dislikes.
 * The same seed and number give the same text.
 */
export function randomSet(seed: number, number: number): string {
  const random = seededRandom(seed * 100_003 + number)
  const below = (n: number) => Math.floor(random() * n)
  const pick = <T>(list: readonly T[]): T => list[below(list.length)]!
  const units = number % 5 === 4 ? 'in' : 'mm'
  const set = structuredClone(bases[units])
  const schema = schemas[units]
  if (random() < 0.6) rescale(set, 0.5 + 1.6 * random())
  // Other branches first, so that their values can be changed too.
  for (const [key, inner] of Object.entries(schema.properties!)) {
    if (inner.oneOf && random() < 0.35) switchBranch(set, key, pick(inner.oneOf), random)
  }
  const leaves = leavesOf(schema, set).filter(
    ({ path }) => !['family', 'units', 'title', 'drawing-number'].includes(path[0]!),
  )
  const changes = 1 + below(7)
  for (let i = 0; i < changes; i++) {
    const leaf = pick(leaves)
    write(set, leaf.path, valueFor(leaf, read(set, leaf.path), random))
  }
  if (random() < 0.4) pick(coincidences)(set, random)
  return stringify(set)
}

/** All lengths of the tool in proportion. */
function rescale(set: Json, by: number): void {
  for (const part of ['stock', 'face', 'bit', 'slot', 'step', 'screws', 'bore', 'arbor']) {
    const section = set[part] as Json
    for (const [key, value] of Object.entries(section)) {
      if (typeof value === 'number' && !['count', 'angle'].includes(key)) section[key] = rounded(value * by)
    }
  }
}

function switchBranch(set: Json, key: string, branch: Schema, random: () => number): void {
  const now = (set[key] ?? {}) as Json
  const made: Json = {}
  for (const [name, schema] of Object.entries(branch.properties ?? {})) {
    if (schema.const !== undefined) made[name] = schema.const
    else if (name in now) made[name] = now[name]
    else if (branch.required?.includes(name) && !('default' in schema)) {
      made[name] = valueFor({ path: [key, name], schema }, guess(set, key, name), random)
    }
  }
  set[key] = made
}

/** A likely value for what the template has not. */
function guess(set: Json, key: string, name: string): unknown {
  const bore = Number((set.bore as Json).diameter)
  if (key === 'fit' && name.startsWith('bore')) return bore
  if (key === 'fit' && name.startsWith('spigot')) return bore * 1.0015
  return Number((set.stock as Json).size) / 4
}

function valueFor({ path, schema }: Leaf, now: unknown, random: () => number): unknown {
  const below = (n: number) => Math.floor(random() * n)
  const name = path.at(-1)!
  const listed = names[path.slice(-2).join('.')] ?? names[name]
  if (name === 'measuring-sets') return [0, 1, 2].slice(0, below(4)).map(() => boxes[below(boxes.length)]!)
  if (listed) return random() < 0.97 ? listed[below(listed.length)] : 'no-such-name'
  if (schema.const !== undefined) return schema.const
  if (schema.enum) return schema.enum[below(schema.enum.length)]
  if (schema.type === 'boolean') return random() < 0.5
  if (schema.items) {
    const count = (schema.minItems ?? 0) + below(4)
    const items = Array.from({ length: count }, () => valueFor({ path, schema: schema.items! }, undefined, random))
    return name === 'speeds' ? items.toSorted((a, b) => Number(a) - Number(b)) : items
  }
  const isInteger = schema.type === 'integer'
  const low = schema.minimum ?? schema.exclusiveMinimum ?? 0
  const high = schema.maximum ?? schema.exclusiveMaximum ?? 100
  const near = typeof now === 'number' ? now : (low + high) / 20
  const kind = random()
  if (isInteger) return low + below(high - low + 1)
  if (kind < 0.55) return within(near * (0.6 + 0.8 * random()), low, high, schema)
  if (kind < 0.65) return within(near + (random() - 0.5) * 2e-6, low, high, schema)
  if (kind < 0.8) return within(low + (high - low) * random() ** 3, low, high, schema)
  if (kind < 0.9) return schema.minimum ?? low + (high - low) * 1e-6
  if (kind < 0.95) return schema.maximum ?? high - (high - low) * 1e-6
  return within(low + (high - low) * random(), low, high, schema)
}

function within(value: number, low: number, high: number, schema: Schema): number {
  const inside = Math.min(high, Math.max(low, value))
  const open =
    (schema.exclusiveMinimum !== undefined && inside <= low) ||
    (schema.exclusiveMaximum !== undefined && inside >= high)
  return open ? (low + high) / 2 : rounded(inside)
}

const rounded = (value: number): number => Number(value.toPrecision(9))
const number = (set: Json, section: string, key: string) => Number((set[section] as Json)[key])
const put = (set: Json, section: string, key: string, value: unknown) => {
  ;(set[section] as Json)[key] = typeof value === 'number' ? rounded(value) : value
}

/** Coincidences of shape: tangent, coplanar, level, as wide as; each may be missed by 1e-7. */
const coincidences: readonly ((set: Json, random: () => number) => void)[] = [
  (s) => put(s, 'face', 'angle', 0),
  (s) => put(s, 'face', 'angle', 30),
  (s, r) => put(s, 'step', 'depth', number(s, 'slot', 'depth') + off(r)),
  (s, r) => put(s, 'screws', 'spacing', 6 + off(r)),
  (s, r) => put(s, 'bit', 'width', number(s, 'stock', 'size') - number(s, 'stock', 'size') * 0.001 * r()),
  (s, r) => put(s, 'slot', 'ahead-of-centre', off(r)),
  (s, r) => put(s, 'slot', 'ahead-of-centre', number(s, 'bit', 'width') / 2 + off(r)),
  (s, r) => {
    put(s, 'face', 'angle', 0)
    put(s, 'bore', 'depth', number(s, 'face', 'depth-on-axis') - number(s, 'slot', 'depth') + off(r))
  },
  (s, r) => put(s, 'bore', 'diameter', number(s, 'bit', 'width') + off(r)),
  (s) => put(s, 'bore', 'chamfer', 0),
  (s, r) => put(s, 'screws', 'height', number(s, 'slot', 'depth') / 2 + off(r)),
  (s, r) => put(s, 'screws', 'height', 2.5 + off(r)),
  (s, r) => put(s, 'arbor', 'spigot-length', number(s, 'bore', 'depth') + off(r)),
  (s) => put(s, 'slot', 'clearance', 0),
]

const off = (random: () => number): number => [0, 1e-7, -1e-7, 1e-6, -1e-5][Math.floor(random() * 5)]!

function read(set: Json, path: readonly string[]): unknown {
  return path.reduce<unknown>((at, key) => (at as Json | undefined)?.[key], set)
}

function write(set: Json, path: readonly string[], value: unknown): void {
  let at = set
  for (const key of path.slice(0, -1)) {
    at[key] = typeof at[key] === 'object' && at[key] !== null && !Array.isArray(at[key]) ? at[key] : {}
    at = at[key] as Json
  }
  at[path.at(-1)!] = value
}

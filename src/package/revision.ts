import { createHash } from 'node:crypto'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'

/**
 * Short mark of a parameter set: eight hexadecimal digits of the SHA-256 of every value in it, given or filled in.
 * Comments, the order of keys and the unit a length was written in do not change it; any value does. Numbers count to
 * twelve significant digits.
 */
export function revisionOf({ rows }: Pick<ReadDesign<CommonParameters, Design>, 'rows'>): string {
  const values = rows.map(({ path, value }) => [path, value] as const).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
  const text = JSON.stringify(values, (_, v) => (typeof v === 'number' ? Number(v.toPrecision(12)) : v))
  return createHash('sha256').update(text).digest('hex').slice(0, 8)
}

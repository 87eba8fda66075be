import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readPlainJson } from '../../src/tables/plain-json.ts'
import { readTables } from '../../src/tables/read-tables.ts'
import { tableNames } from '../../src/tables/table-name.ts'
import { problemsOf, shippedText, textsWith } from './shipped-texts.ts'

it('reads what JSON writes, whatever the white space', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.constantFrom(0, 1, 2, '\t'), (value, space) => {
      const text = JSON.stringify(value, null, space)
      expect(readPlainJson(text)).toEqual(JSON.parse(text))
    }),
  )
})

it.each([
  ['a repeated key', '{"a": 1, "a": 2}'],
  ['a repeated key after a section', '{"a": {"b": 1}, "a": {"b": 1}}'],
  ['a number that is not in its shortest form', '[1.50]'],
  ['a comment', '{"a": 1} # one'],
  ['no JSON', 'a: 1'],
  ['nothing', ''],
])('leaves %s to be read with positions', (_, text) => {
  expect(readPlainJson(text)).toBeUndefined()
})

it('every shipped table is written plainly, so that a start is quick', () => {
  for (const name of tableNames) expect(readPlainJson(shippedText(name)), name).toBeDefined()
})

it('both ways give the same rows', () => {
  const slow = Object.fromEntries(tableNames.map((name) => [name, `${shippedText(name)}# read with positions\n`]))
  const result = readTables(textsWith(slow))
  expect(result.ok).toBe(true)
  expect(result).toEqual(readTables(textsWith({})))
})

it('a repeated key in a table is found', () => {
  const text = shippedText('shanks').replace('"kind": "r8",', '"kind": "r8", "kind": "r8",')
  expect(problemsOf({ shanks: text })).toMatchObject([{ code: 'duplicate-key', where: { file: 'shanks.json' } }])
})

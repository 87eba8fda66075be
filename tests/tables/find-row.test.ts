import { expect, it } from 'vitest'
import { findRow } from '../../src/tables/find-row.ts'
import { rowForSize } from '../../src/tables/size-step.ts'

const rows = [{ name: 'morse-2' }, { name: 'r8' }]

it('finds a row by its name, exactly', () => {
  expect(findRow(rows, 'r8')).toEqual({ ok: true, row: rows[1] })
})

it('names the nearest and all others where there is none', () => {
  expect(findRow(rows, 'Morse 2')).toEqual({ ok: false, nearest: 'morse-2', names: ['morse-2', 'r8'] })
  expect(findRow(rows, 'collet')).toEqual({ ok: false, nearest: undefined, names: ['morse-2', 'r8'] })
  expect(findRow([], 'toString')).toEqual({ ok: false, nearest: undefined, names: [] })
})

it('a size on the limit of two steps belongs to the lower one (ISO 286-1: over, up to and including)', () => {
  const steps = [
    { over: 18, upTo: 30 },
    { over: 30, upTo: 50 },
  ]
  expect(rowForSize(steps, 30)).toBe(steps[0])
  expect(rowForSize(steps, 30.01)).toBe(steps[1])
  expect(rowForSize(steps, 18)).toBeUndefined()
  expect(rowForSize(steps, 50.001)).toBeUndefined()
})

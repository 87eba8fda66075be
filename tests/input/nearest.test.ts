import { describe, expect, it } from 'vitest'
import { nearest } from '../../src/input/nearest.ts'

const names = ['count', 'size', 'slot-width', 'slot-depth', 'overhang', 'd1']

describe('the nearest name', () => {
  it.each([
    ['cuont', 'count'],
    ['Count', 'count'],
    ['counts', 'count'],
    ['slotWidth', 'slot-width'],
    ['slot_depth', 'slot-depth'],
    ['slot width', 'slot-width'],
    ['sise', 'size'],
    ['overhnag', 'overhang'],
    ['D1', 'd1'],
  ])('of %s is %s', (written, expected) => {
    expect(nearest(written, names)).toBe(expected)
  })

  it.each(['', 'tilt', 'x', 'd2', 'something-else', '-', 'a'.repeat(10_000), '__proto__', 'constructor'])(
    'of %j is none',
    (written) => expect(nearest(written, names)).toBeUndefined(),
  )

  it('is none where there are no names', () => {
    expect(nearest('count', [])).toBeUndefined()
  })
})

import { expect, it } from 'vitest'
import { readParameter, withParameter } from '../../src/input/parameter-path.ts'

const value = Object.freeze({
  swing: 60,
  screws: Object.freeze({ count: 3, size: 'M5' }),
  bits: Object.freeze([Object.freeze({ width: 8 }), Object.freeze({ width: 6 })]),
})

it('a parameter is read by its dotted path', () => {
  expect(readParameter(value, 'screws.count')).toBe(3)
  expect(readParameter(value, 'bits.1.width')).toBe(6)
  for (const path of ['tilt', 'screws.tilt', 'swing.x', 'bits.2.width', 'constructor', '__proto__', 'bits.map']) {
    expect(readParameter(value, path)).toBeUndefined()
  }
})

it('a changed copy leaves the original alone and shares the rest', () => {
  const changed = withParameter(value, 'screws.count', 4)
  expect(changed).toEqual({ ...value, screws: { count: 4, size: 'M5' } })
  expect(value.screws.count).toBe(3)
  expect(changed.bits).toBe(value.bits)
  expect(readParameter(withParameter(value, 'bits.0.width', 9), 'bits.0.width')).toBe(9)
})

it('a section that is missing is made', () => {
  expect(withParameter(value, 'edge.break', 0.3)).toMatchObject({ edge: { break: 0.3 } })
})

it('a path through a plain value or beyond a list is refused', () => {
  for (const path of ['swing.x', 'bits.2.width', 'bits.x', 'bits.-1']) {
    expect(() => withParameter(value, path, 1)).toThrow(RangeError)
  }
})

it('no path changes a prototype', () => {
  withParameter({}, '__proto__.polluted', true)
  expect(({} as Record<string, unknown>).polluted).toBeUndefined()
})

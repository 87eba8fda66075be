import { describe, expect, it } from 'vitest'
import { lifeGainFromRelief } from '../../../src/mechanics/angles/relief-and-wear.ts'
import { deg } from './any-bit.ts'

describe('relief and how long an edge lasts', () => {
  it('the same relief gains nothing, less relief loses', () => {
    expect(lifeGainFromRelief(8 * deg, 8 * deg)).toBe(0)
    expect(lifeGainFromRelief(8 * deg, 4 * deg)).toBeLessThan(-0.4)
  })

  it('no relief at all is the caller’s mistake', () => {
    expect(() => lifeGainFromRelief(0, 5 * deg)).toThrow(RangeError)
    expect(() => lifeGainFromRelief(5 * deg, Math.PI / 2)).toThrow(RangeError)
  })
})

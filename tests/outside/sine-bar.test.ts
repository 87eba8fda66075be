import { describe, expect, it } from 'vitest'
import { sineBarAngle, sineBarHeight } from '../../src/mechanics/measuring/gauge-stack.ts'

const deg = Math.PI / 180

describe('a 5 in sine bar', () => {
  it.each([
    [27, 2.27, 'a maker’s page on sine bars'],
    [34 + 25 / 60, 2.826, '*Handbook of Machining and Metalworking Calculations*, ch. 4'],
    [18, 1.545, 'a web page on sine bars'],
  ])('stands at %s° on %s in (%s)', (angle, height) => {
    expect(sineBarHeight(5, angle * deg)).toBeCloseTo(height, 3)
  })

  it.each([
    [30, 0.001323],
    [60, 0.002292],
  ])('is off at %s° by %s° where the stack is off by a tenth of a thou: ds/(L·cos θ) (own figures)', (angle, off) => {
    const height = sineBarHeight(5, angle * deg)
    const found = (sineBarAngle(5, height + 0.0001) - sineBarAngle(5, height)) / deg
    expect(Math.abs(found / off - 1)).toBeLessThan(1e-3)
  })
})

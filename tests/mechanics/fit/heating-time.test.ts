import { describe, expect, it } from 'vitest'
import { specificHeats, timeToReach } from '../../../src/mechanics/fit/heating-time.ts'

const body = { mass: 0.5, specificHeat: 500, area: 10_000, film: 20 }

describe('the time to heat a head through', () => {
  it('is as worked by hand', () => {
    // 0.5·500/(20·0.01) = 1250 s; ln(280/30) = 2.2336 from 20 to 270 °C in an oven at 300.
    expect(timeToReach(body, 20, 270, 300)).toBeCloseTo(1250 * Math.log(280 / 30), 9)
    expect(timeToReach(body, 20, 270, 300)! / 60).toBeCloseTo(46.53, 2)
  })

  it('agrees with a march in small steps of time', () => {
    let [temperature, time] = [20, 0]
    const step = 0.05
    while (temperature < 200) {
      temperature += ((300 - temperature) * body.film * body.area * 1e-6 * step) / (body.mass * body.specificHeat)
      time += step
    }
    expect(timeToReach(body, 20, 200, 300)! / time).toBeCloseTo(1, 3)
  })

  it('goes with mass and specific heat, and cools by the same law', () => {
    const base = timeToReach(body, 20, 200, 300)!
    expect(timeToReach({ ...body, mass: 1 }, 20, 200, 300)).toBeCloseTo(2 * base, 9)
    expect(timeToReach({ ...body, specificHeat: specificHeats.aluminium }, 20, 200, 300)).toBeCloseTo(1.84 * base, 9)
    expect(timeToReach(body, 300, 120, 20)).toBeCloseTo(1250 * Math.log(280 / 100), 9)
  })

  it('is none where the oven is not as warm, and nothing where it is there already', () => {
    expect(timeToReach(body, 20, 300, 300)).toBeUndefined()
    expect(timeToReach(body, 20, 320, 300)).toBeUndefined()
    expect(timeToReach(body, 200, 200, 300)).toBe(0)
  })

  it('is refused for a body of nothing', () => {
    expect(() => timeToReach({ ...body, mass: 0 }, 20, 200, 300)).toThrow(RangeError)
    expect(() => timeToReach(body, 20, Number.NaN, 300)).toThrow(RangeError)
  })
})

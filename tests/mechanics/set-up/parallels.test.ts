import { describe, expect, it } from 'vitest'
import { chooseParallels } from '../../../src/mechanics/set-up/parallels.ts'
import { faults, good } from '../measuring/slope-check.ts'

const wanted = { heights: [20, 14, 8, 32, 26], least: 11, most: 18, stacked: true, units: 'mm' } as const

describe('parallels', () => {
  it('are the lowest pair that will do, on both sides of each limit', () => {
    expect(good(chooseParallels(wanted))).toEqual({ pairs: [14], height: 14 })
    expect(good(chooseParallels({ ...wanted, least: 14, most: 14 })).pairs).toEqual([14])
    expect(good(chooseParallels({ ...wanted, least: 14.01, most: 20 })).pairs).toEqual([20])
    expect(good(chooseParallels({ ...wanted, least: 8, most: 40 })).pairs).toEqual([8])
  })

  it('are stacked only where no single pair will do, and only where that is wanted', () => {
    expect(good(chooseParallels({ ...wanted, least: 33, most: 36 }))).toEqual({ pairs: [20, 14], height: 34 })
    expect(faults(chooseParallels({ ...wanted, least: 33, most: 36, stacked: false }))).toEqual([
      'not-in-table heights',
    ])
    // One pair of 8 is not two.
    expect(faults(chooseParallels({ ...wanted, heights: [8], least: 15, most: 17 }))).toEqual(['not-in-table heights'])
    expect(good(chooseParallels({ ...wanted, heights: [8, 8], least: 15, most: 17 })).height).toBe(16)
  })

  it('are not needed where the work may stand on the bed', () => {
    expect(good(chooseParallels({ ...wanted, least: 0 }))).toEqual({ pairs: [], height: 0 })
    expect(good(chooseParallels({ ...wanted, least: -3, most: 0 }))).toEqual({ pairs: [], height: 0 })
  })

  it('that are not there are named by their neighbours, and what to pack', () => {
    expect(chooseParallels({ ...wanted, least: 15, most: 18, stacked: false })).toMatchObject({
      problems: [
        {
          code: 'not-in-table',
          found: expect.stringMatching(/^nearest 14.* and 20/),
          remedy: expect.stringContaining('15'),
        },
      ],
    })
    expect(chooseParallels({ ...wanted, heights: [] })).toMatchObject({ problems: [{ found: 'no parallels' }] })
  })

  it('of no height do both where the jaws are too high for the head', () => {
    expect(faults(chooseParallels({ ...wanted, least: 18, most: 17.9 }))).toEqual(['contradiction most'])
    expect(faults(chooseParallels({ ...wanted, least: 0, most: -0.1 }))).toEqual(['contradiction most'])
    expect(good(chooseParallels({ ...wanted, heights: [18], least: 18, most: 18 })).height).toBe(18)
    expect(() => chooseParallels({ ...wanted, heights: [0] })).toThrow(RangeError)
  })
})

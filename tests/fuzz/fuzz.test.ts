import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Depth, judgeSet } from './judge-set.ts'
import { randomSet } from './random-set.ts'

const corpus = new URL('corpus/', import.meta.url)

describe('parameter sets that once failed', () => {
  it.each(readdirSync(corpus).filter((name) => name.endsWith('.yaml')))('%s', async (name) => {
    expect((await judgeSet(readFileSync(new URL(name, corpus), 'utf8'), 'whole')).faults).toEqual([])
  })
})

/** One set of twenty goes through everything that is written. */
const depthOf = (i: number): Depth => (i % 20 === 9 ? 'whole' : 'check')

describe('random legal parameter sets', () => {
  // A short run with a fixed seed; `npm run fuzz` makes long ones.
  it.each([0, 1, 2, 3])(
    'have findings, remedies that clear them and a report, or are refused with words: part %i',
    async (part) => {
      let legal = 0
      for (let i = 50 * part; i < 50 * (part + 1); i++) {
        const { kind, faults } = await judgeSet(randomSet(20, i), depthOf(i))
        expect(faults, `npm run fuzz -- --seed 20 --from ${i} --count 1`).toEqual([])
        if (kind === 'legal') legal++
      }
      expect(legal).toBeGreaterThan(15)
    },
  )

  it('come out the same from the same seed', () => {
    expect([0, 1, 2].map((i) => randomSet(7, i))).toEqual([0, 1, 2].map((i) => randomSet(7, i)))
    expect(randomSet(7, 0)).not.toBe(randomSet(8, 0))
  })
})

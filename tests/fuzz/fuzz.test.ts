import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { judgeSet } from './judge-set.ts'
import { randomSet } from './random-set.ts'

const corpus = new URL('corpus/', import.meta.url)

describe('parameter sets that once failed', () => {
  it.each(readdirSync(corpus).filter((name) => name.endsWith('.yaml')))('%s', (name) => {
    expect(judgeSet(readFileSync(new URL(name, corpus), 'utf8'), 'whole').faults).toEqual([])
  })
})

describe('random legal parameter sets', () => {
  // A short run with a fixed seed; `npm run fuzz` makes long ones.
  it.each([0, 1, 2, 3])(
    'have findings, remedies that clear them and a report, or are refused with words: part %i',
    (part) => {
      let legal = 0
      for (let i = 50 * part; i < 50 * (part + 1); i++) {
        const { kind, faults } = judgeSet(randomSet(20, i), i % 10 === 9 ? 'solids' : 'check')
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

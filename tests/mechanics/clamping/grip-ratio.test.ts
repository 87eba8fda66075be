import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gripRatio, gripRatioRules } from '../../../src/mechanics/clamping/grip-ratio.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

it.each([
  [29.9, 'caution'],
  [30, 'note'],
  [44.9, 'note'],
  [45, 'none'],
] as const)('a bit held over %s and 30 out: %s', (grip, level) => {
  expect(workedOut(gripRatio({ grip, overhang: 30, ...gripRatioRules })).level).toBe(level)
})

it('the overhang that it names clears the remark once the bit is pushed in by the difference', () => {
  const length = fc.double({ min: 1, max: 100, noNaN: true })
  fc.assert(
    fc.property(length, length, (grip, overhang) => {
      const found = workedOut(gripRatio({ grip, overhang, ...gripRatioRules }))
      const pushedTo = (out: number) =>
        workedOut(gripRatio({ grip: grip + overhang - out, overhang: out, ...gripRatioRules })).ratio
      expect(pushedTo(found.overhangForNoCaution)).toBeCloseTo(1, 9)
      expect(pushedTo(found.overhangForNone)).toBeCloseTo(1.5, 9)
    }),
  )
})

it('a bit that does not stand out and levels in the wrong order are refused', () => {
  expect(problemsOf(gripRatio({ grip: 10, overhang: 0, cautionBelow: 2, noteBelow: 1 }))).toEqual([
    ['out-of-range', 'overhang'],
    ['out-of-range', 'noteBelow'],
  ])
})

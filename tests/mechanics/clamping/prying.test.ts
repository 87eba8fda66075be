import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type PryingInput, prying, pryingRules } from '../../../src/mechanics/clamping/prying.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

/** Wall from x = −25 to 20; screws 12 and 30 inside its outer end; tip 25 beyond it. */
const input: PryingInput = {
  screws: [
    { force: 5000, x: 8 },
    { force: 5000, x: -10 },
  ],
  side: 'leading',
  wall: { outer: 20, inner: -25 },
  tipX: 45,
  cuttingForce: 800,
  ...pryingRules,
}

it('screws on the leading side hold about the outer end of the trailing wall, worked by hand', () => {
  const held = workedOut(prying(input))
  // 5000·12 + 5000·30 = 210 000 N·mm against 800·25 = 20 000; without the second 60 000.
  expect(held).toMatchObject({ edge: 20, moment: 210_000, load: 20_000, factor: 10.5, best: 1 })
  expect(held.momentBestMissing).toBe(60_000)
  expect(held.factorBestMissing).toBe(3)
  expect(held.largestForce).toBe(2800)
})

it('screws on the trailing side hold about the inner end of the leading wall, worked by hand', () => {
  const held = workedOut(prying({ ...input, side: 'trailing' }))
  // 5000·33 + 5000·15 = 240 000 N·mm against 800·70 = 56 000.
  expect(held).toMatchObject({ edge: -25, moment: 240_000, load: 56_000, best: 0 })
  expect(held.factorBestMissing).toBeCloseTo(75 / 56, 12)
})

const place = fc.double({ min: -20, max: 19, noNaN: true })
const force = fc.double({ min: 100, max: 10_000, noNaN: true })
const row = fc.array(fc.record({ force, x: place }), { minLength: 1, maxLength: 5 })

it('statics: where the factor is one, the wall pushes back at its edge alone and the bit is in balance', () => {
  fc.assert(
    fc.property(row, fc.constantFrom('leading', 'trailing'), (screws, side) => {
      const job = { ...input, screws, side, wanted: 1 } as const
      const { largestForce, edge } = workedOut(prying(job))
      const pushed = screws.reduce((sum, screw) => sum + screw.force, 0)
      // Forces along y: screws one way, the wall's one reaction the other, the cutting force with the screws or against.
      const withScrews = side === 'leading' ? 1 : -1
      const reaction = pushed + withScrews * largestForce
      // Moments about the axis, a point that is no edge.
      const moment =
        screws.reduce((sum, screw) => sum + screw.force * screw.x, 0) +
        withScrews * largestForce * input.tipX -
        reaction * edge
      expect(moment / (pushed * input.tipX)).toBeCloseTo(0, 9)
    }),
  )
})

it('more cutting force or a tip further out lowers the factor, a tighter screw raises it', () => {
  fc.assert(
    fc.property(row, (screws) => {
      const job = { ...input, screws }
      const { factor } = workedOut(prying(job))
      expect(workedOut(prying({ ...job, cuttingForce: 900 })).factor!).toBeLessThan(factor!)
      expect(workedOut(prying({ ...job, tipX: 46 })).factor!).toBeLessThan(factor!)
      const tighter = screws.map((screw) => ({ ...screw, force: screw.force * 1.1 }))
      expect(workedOut(prying({ ...job, screws: tighter })).factor!).toBeGreaterThan(factor!)
      expect(workedOut(prying(job)).factorBestMissing!).toBeLessThan(factor!)
    }),
  )
})

it('a screw beyond the edge of the wall works against the others', () => {
  const beyond = workedOut(prying({ ...input, screws: [...input.screws, { force: 5000, x: 24 }] }))
  expect(beyond.moment).toBe(190_000)
})

it('a single screw holds nothing once it is missing, and no screw nothing at all', () => {
  expect(workedOut(prying({ ...input, screws: [{ force: 5000, x: 0 }] })).factorBestMissing).toBe(0)
  const none = workedOut(prying({ ...input, screws: [] }))
  expect(none).toMatchObject({ moment: 0, factor: 0, best: undefined, largestForce: 0 })
})

it('without a cutting force there is no factor', () => {
  expect(workedOut(prying({ ...input, cuttingForce: 0 })).factor).toBeUndefined()
})

it('a wall with its ends exchanged or a tip inside the head is a contradiction', () => {
  expect(problemsOf(prying({ ...input, wall: { outer: -25, inner: 20 } }))).toEqual([['contradiction', 'wall.outer']])
  expect(problemsOf(prying({ ...input, tipX: 20 }))).toEqual([['contradiction', 'tipX']])
  expect(problemsOf(prying({ ...input, screws: [{ force: -1, x: 0 }] }))).toEqual([['out-of-range', 'screws.0.force']])
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { apart2, ellipseOf, endsOf, pointOf } from '../../src/edges/entity.ts'
import { ellipseArcs } from '../../src/profiles/ellipse-arcs.ts'
import { areaOf } from './outline-area.ts'

describe('arcs for an ellipse', () => {
  it('enclose πab and are told off by symmetry: a round bar of 46 mm cut at 20°', () => {
    const long = 23 / Math.cos(Math.PI / 9)
    const arcs = ellipseArcs(ellipseOf([3, -2], [long, 0], 23 / long, 0, 2 * Math.PI))
    expect(arcs.length % 8).toBe(0)
    expect(arcs.length).toBeLessThanOrEqual(24)
    expect(Math.abs(areaOf(arcs) / (Math.PI * 23 * long) - 1)).toBeLessThan(2e-5)
  })

  it('lie within 0.005 mm of it, run on from one to the next without a corner, and end where it ends', () => {
    const any = fc.record({
      size: fc.double({ min: 1, max: 80, noNaN: true }),
      turn: fc.double({ min: 0, max: 6, noNaN: true }),
      ratio: fc.double({ min: 0.5, max: 0.9999, noNaN: true }),
      start: fc.double({ min: 0, max: 6.2, noNaN: true }),
      sweep: fc.double({ min: 0.01, max: 6.28, noNaN: true }),
    })
    fc.assert(
      fc.property(any, ({ size, turn, ratio, start, sweep }) => {
        const major = [size * Math.cos(turn), size * Math.sin(turn)] as const
        const ellipse = ellipseOf([5, 7], major, ratio, start, start + sweep)
        const arcs = ellipseArcs(ellipse)
        const [first, last] = [arcs[0]!, arcs.at(-1)!]
        expect(apart2(endsOf(first)[0], endsOf(ellipse)[0])).toBeLessThan(1e-7)
        expect(apart2(endsOf(last)[1], endsOf(ellipse)[1])).toBeLessThan(1e-7)
        arcs.slice(1).forEach((arc, i) => {
          const before = arcs[i]!
          expect(apart2(endsOf(before)[1], endsOf(arc)[0])).toBeLessThan(1e-7)
          expect(Math.abs(Math.sin((before.end - arc.start) / 2))).toBeLessThan(1e-6)
        })
        // Nearest point of the ellipse by a plain search, not by the fit's own measure.
        for (const arc of arcs) {
          for (let i = 0; i <= 6; i++) {
            const p = pointOf(arc, arc.start + ((arc.end - arc.start) * i) / 6)
            let [best, step] = [ellipse.start, 0.02]
            for (let t = ellipse.start; t <= ellipse.end; t += step) {
              if (apart2(pointOf(ellipse, t), p) < apart2(pointOf(ellipse, best), p)) best = t
            }
            for (; step > 1e-7; step /= 2) {
              for (const t of [best - step, best + step]) {
                if (apart2(pointOf(ellipse, t), p) < apart2(pointOf(ellipse, best), p)) best = t
              }
            }
            expect(apart2(pointOf(ellipse, best), p)).toBeLessThan(0.005)
          }
        }
      }),
      { numRuns: 40, seed: 7 },
    )
  })
})

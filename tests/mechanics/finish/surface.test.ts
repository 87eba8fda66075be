import fc from 'fast-check'
import { expect, it } from 'vitest'
import { cuspHeight, meanDeviation, type ToolProfile } from '../../../src/mechanics/finish/feed-marks.ts'
import { largestFeedFor, surfaceLeft } from '../../../src/mechanics/finish/surface.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const degree = Math.PI / 180
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const profiles = fc
  .record({ noseRadius: figure(0, 3), a: figure(0.5 * degree, 60 * degree), b: figure(45 * degree, 90 * degree) })
  .map(({ noseRadius, a, b }): ToolProfile => ({ noseRadius, edges: [a, b] }))

/** Second road: height of the tool over the surface, and the lowest of neighbours one feed apart, point by point. */
function sampled({ noseRadius: r, edges: [left, right] }: ToolProfile, feed: number) {
  const tool = (x: number) => {
    const [edge, out] = x < 0 ? [left, -x] : [right, x]
    if (out <= r * Math.sin(edge)) return r - Math.sqrt(r * r - out * out)
    return r - r * Math.cos(edge) + (out - r * Math.sin(edge)) * Math.tan(edge)
  }
  const points = 20_000
  const heights = Array.from({ length: points }, (_, i) => {
    const x = ((i + 0.5) / points) * feed
    return Math.min(tool(x), tool(x - feed))
  })
  const mean = heights.reduce((sum, height) => sum + height, 0) / points
  const deviation = heights.reduce((sum, height) => sum + Math.abs(height - mean), 0) / points
  return { height: Math.max(...heights), deviation }
}

it('height and mean deviation of the feed marks agree with the profile taken point by point', () => {
  fc.assert(
    fc.property(profiles, figure(0.02, 6), (profile, feed) => {
      const surface = sampled(profile, feed)
      const { height } = cuspHeight(profile, feed)
      // A point at most half a step from the cusp lies below it by that much of the steeper side.
      expect(height).toBeGreaterThanOrEqual(surface.height * (1 - 1e-9))
      expect(meanDeviation(profile, feed) / surface.deviation).toBeCloseTo(1, 3)
    }),
    { numRuns: 60 },
  )
})

it('the cusp lies on both neighbours, in every regime', () => {
  fc.assert(
    fc.property(profiles, figure(0.02, 6), ({ noseRadius: r, edges }, feed) => {
      const { height } = cuspHeight({ noseRadius: r, edges }, feed)
      const reach = edges.map((edge) =>
        height <= r * (1 - Math.cos(edge))
          ? Math.sqrt(2 * r * height - height ** 2)
          : r * Math.sin(edge) + (height - r * (1 - Math.cos(edge))) / Math.tan(edge),
      )
      expect((reach[0]! + reach[1]!) / feed).toBeCloseTo(1, 6)
    }),
  )
})

it('the regimes join without a step', () => {
  const profile: ToolProfile = { noseRadius: 0.8, edges: [10 * degree, 70 * degree] }
  const first = 2 * 0.8 * Math.sin(10 * degree)
  const noseEnd = 0.8 * (1 - Math.cos(70 * degree))
  const second = 0.8 * Math.sin(70 * degree) + 0.8 * Math.tan(5 * degree) + noseEnd / Math.tan(10 * degree)
  const around = (feed: number) => [feed * (1 - 1e-9), feed * (1 + 1e-9)].map((f) => cuspHeight(profile, f))
  const [a, b] = around(first)
  expect([a!.cusp, b!.cusp]).toEqual(['nose-nose', 'edge-nose'])
  expect(a!.height).toBeCloseTo(b!.height, 8)
  const [c, d] = around(second)
  expect([c!.cusp, d!.cusp]).toEqual(['edge-nose', 'edge-edge'])
  expect(c!.height).toBeCloseTo(d!.height, 8)
  expect(c!.height).toBeCloseTo(noseEnd, 8)
})

it('for a small feed the mean deviation is 0.2566 of the height, without a nose a quarter', () => {
  const nose: ToolProfile = { noseRadius: 2, edges: [20 * degree, 80 * degree] }
  expect(meanDeviation(nose, 0.05) / cuspHeight(nose, 0.05).height).toBeCloseTo(4 / (9 * Math.sqrt(3)), 5)
  const sharp: ToolProfile = { noseRadius: 0, edges: [20 * degree, 80 * degree] }
  expect(meanDeviation(sharp, 0.05) / cuspHeight(sharp, 0.05).height).toBeCloseTo(0.25, 12)
})

it('very fine feeds are computed by another road, which joins the first', () => {
  const nose: ToolProfile = { noseRadius: 1, edges: [20 * degree, 80 * degree] }
  // Half a feed, or the half-width at the mean line (0.577 of it), of 0.01 of the nose.
  for (const feed of [0.02, 0.02 * Math.sqrt(3)]) {
    const [finer, coarser] = [feed * (1 - 1e-6), feed * (1 + 1e-6)].map((f) => meanDeviation(nose, f) / f ** 2)
    expect(finer! / coarser!).toBeCloseTo(1, 8)
  }
})

it('marks get higher with feed, and lower with a larger nose as long as only the nose leaves them', () => {
  fc.assert(
    fc.property(profiles, figure(0.02, 6), (profile, feed) => {
      const { height, cusp } = cuspHeight(profile, feed)
      expect(cuspHeight(profile, feed * 1.05).height).toBeGreaterThan(height)
      expect(meanDeviation(profile, feed * 1.05)).toBeGreaterThan(meanDeviation(profile, feed))
      if (cusp !== 'nose-nose') return
      expect(cuspHeight({ ...profile, noseRadius: profile.noseRadius * 1.1 }, feed).height).toBeLessThan(height)
    }),
  )
})

it('it does not matter which edge stands on which side', () => {
  fc.assert(
    fc.property(profiles, figure(0.02, 6), ({ noseRadius, edges: [a, b] }, feed) => {
      const turned: ToolProfile = { noseRadius, edges: [b, a] }
      expect(cuspHeight(turned, feed)).toEqual(cuspHeight({ noseRadius, edges: [a, b] }, feed))
      expect(meanDeviation(turned, feed)).toBeCloseTo(meanDeviation({ noseRadius, edges: [a, b] }, feed), 12)
    }),
  )
})

const tool = { noseRadius: 0.8, edgeAngle: 80 * degree, workSideAngle: 10 * degree }

it('a work side that lies flat rubs: no finish is promised', () => {
  expect(workedOut(surfaceLeft({ ...tool, feed: 0.1, workSideAngle: 0 }))).toEqual({ kind: 'rubbing' })
  expect(workedOut(surfaceLeft({ ...tool, feed: 0.1, workSideAngle: 1e-5 }))).toEqual({ kind: 'rubbing' })
  expect(workedOut(largestFeedFor(0.001, { ...tool, workSideAngle: 0 }))).toBeUndefined()
})

it('a work side that falls away inwards cuts with the bit’s inner end', () => {
  expect(workedOut(surfaceLeft({ ...tool, feed: 0.1, workSideAngle: -3 * degree }))).toEqual({ kind: 'inner-end-cuts' })
  expect(workedOut(largestFeedFor(0.001, { ...tool, workSideAngle: -3 * degree }))).toBeUndefined()
})

it('an overhanging end edge leaves the marks of an upright one', () => {
  const marks = (edgeAngle: number, feed: number) => surfaceLeft({ ...tool, edgeAngle, feed })
  for (const feed of [0.1, 1, 5]) expect(marks(100 * degree, feed)).toEqual(marks(90 * degree, feed))
})

it('the largest feed for a finish leaves just that finish', () => {
  fc.assert(
    fc.property(figure(0.0001, 0.1), figure(0, 3), figure(1 * degree, 45 * degree), (wanted, noseRadius, workSide) => {
      const job = { noseRadius, edgeAngle: 80 * degree, workSideAngle: workSide }
      const feed = workedOut(largestFeedFor(wanted, job))!
      const surface = workedOut(surfaceLeft({ ...job, feed }))
      if (surface.kind !== 'feed-marks') throw new Error(surface.kind)
      expect(surface.meanDeviation / wanted).toBeCloseTo(1, 6)
    }),
  )
})

it('a feed of nothing and an edge that lies flat are refused', () => {
  expect(problemsOf(surfaceLeft({ noseRadius: -1, edgeAngle: 0, workSideAngle: Math.PI / 2, feed: 0 }))).toEqual([
    ['out-of-range', 'noseRadius'],
    ['out-of-range', 'edgeAngle'],
    ['out-of-range', 'workSideAngle'],
    ['out-of-range', 'feed'],
  ])
  expect(problemsOf(largestFeedFor(0, tool))).toEqual([['out-of-range', 'wanted']])
})

import { describe, expect, it } from 'vitest'
import { surfaceLeft } from '../../src/mechanics/finish/surface.ts'
import { tram } from '../../src/mechanics/finish/tram.ts'
import { workedOut } from '../mechanics/cutting/worked-out.ts'

const degree = Math.PI / 180
const inch = 25.4

/** Heights in µm of the marks of a round nose; the edges are those of a common turning tool. */
function marks(feed: number, noseRadius: number, workSide = 30, end = 70) {
  const surface = workedOut(
    surfaceLeft({ feed, noseRadius, edgeAngle: end * degree, workSideAngle: workSide * degree }),
  )
  if (surface.kind !== 'feed-marks') throw new Error(surface.kind)
  return { cusp: surface.cusp, height: surface.height * 1000, mean: surface.meanDeviation * 1000 }
}

/** Books write R_a = f²/(32·r), a quarter of the height, for what is exactly f²/(31.18·r): 9√3/4·8 = 31.18. */
const bookOverExact = (9 * Math.sqrt(3) * 2) / 32

describe('feed marks of a round nose', () => {
  it('0.25 a turn, nose 1.2: Ra 1.6 µm (*Fundamentals of Modern Manufacturing*, surface-finish example, from memory)', () => {
    const { mean } = marks(0.25, 1.2)
    // The example's own formula gives 1.628.
    expect(Math.abs((mean * bookOverExact) / 1.628 - 1)).toBeLessThan(0.002)
    expect(Math.abs(mean * bookOverExact - 1.6)).toBeLessThan(0.05)
  })

  it('f²/(8·r) and f²/(32·r) are met for small feeds (*Fundamentals of Machining Processes*, p. 123, and lecture notes)', () => {
    for (const [feed, r] of [
      [0.05, 0.8],
      [0.1, 2],
    ] as const) {
      const { height, mean } = marks(feed, r)
      expect(height / ((1000 * feed ** 2) / (8 * r))).toBeCloseTo(1, 3)
      expect((mean * bookOverExact) / ((1000 * feed ** 2) / (32 * r))).toBeCloseTo(1, 3)
    }
  })

  it('0.2 a turn, nose 0.8: Rt 6.2746 µm, Ra 1.60 with 31.2 (own)', () => {
    const { height, mean } = marks(0.2, 0.8)
    expect(height).toBeCloseTo(6.2746, 3)
    expect(Math.abs(mean / 1.603 - 1)).toBeLessThan(0.006)
    expect(Math.abs((mean * bookOverExact) / 1.5625 - 1)).toBeLessThan(0.006)
  })

  it('0.1 a turn, nose 3, end angle 30°: 0.417 and 0.104 µm, not the 43.13 of *A Textbook of Production Engineering* (example 14.11, p. 572)', () => {
    const [f, r, kappa] = [0.1, 3, 30 * degree]
    const { cusp, height, mean } = marks(f, r, 30, 70)
    expect(cusp).toBe('nose-nose')
    expect(height).toBeCloseTo(0.417, 3)
    expect(Math.abs(mean * bookOverExact - 0.104)).toBeLessThan(0.0005)
    // The book's 43.13 is a quarter of its long formula, which belongs to feeds above 2·r·sin κ′ = 3.0 mm.
    const [sin, cos] = [Math.sin(kappa), Math.cos(kappa)]
    const long = r * (1 - cos) + f * sin * cos - Math.sqrt(2 * f * r * sin ** 3 - f ** 2 * sin ** 4)
    expect(f).toBeLessThan(2 * r * sin)
    expect((1000 * long) / 4).toBeCloseTo(43.13, 2)
    // Where it does belong, it is what we compute.
    const [wide, narrow] = [3.2, 3]
    const there = narrow * (1 - cos) + wide * sin * cos - Math.sqrt(2 * wide * narrow * sin ** 3 - wide ** 2 * sin ** 4)
    expect(marks(wide, narrow)).toMatchObject({ cusp: 'edge-nose' })
    expect(marks(wide, narrow).height / (1000 * there)).toBeCloseTo(1, 9)
  })

  it('a tool without a nose leaves f/(cot κ + cot κ′) (standard formula of machining books)', () => {
    const { height, mean } = marks(0.2, 0, 15, 75)
    const exact = (1000 * 0.2) / (1 / Math.tan(75 * degree) + 1 / Math.tan(15 * degree))
    expect(height).toBeCloseTo(exact, 9)
    expect(mean).toBeCloseTo(exact / 4, 9)
  })
})

describe('spindle out of tram (own figures; no published example was found)', () => {
  const dish = (along: number, radius: number, width: number) =>
    workedOut(tram({ along: along * degree, across: 0, radius, width, stepOver: 0 })).dish

  it.each([
    [0.01, 0.067],
    [0.05, 0.333],
  ])('%s° over 2 in with a 3 in swing hollows %s thou', (angle, thou) => {
    expect(Math.abs((1000 * dish(angle, 1.5 * inch, 2 * inch)) / inch - thou)).toBeLessThan(0.0006)
  })

  it('0.1° over 40 mm with a 50 mm swing hollows 0.01745 mm', () => {
    expect(dish(0.1, 25, 40)).toBeCloseTo(0.01745, 5)
  })

  it('for a narrow width it is b²·sin θ/(8·R)', () => {
    expect(dish(0.1, 100, 10) / ((100 * Math.sin(0.1 * degree)) / 800)).toBeCloseTo(1, 2)
  })

  it('the saw tooth of passes side by side grows with the cutter (*Workshop Processes*, web pages of a model engineer)', () => {
    // A larger cutter takes wider passes: the step grows in step with them.
    const step = (swing: number) =>
      workedOut(tram({ along: 0, across: 0.05 * degree, radius: swing / 2, width: swing, stepOver: 0.8 * swing })).step
    expect(step(200) / step(50)).toBeCloseTo(4, 12)
    expect(step(50)).toBeCloseTo(40 * Math.tan(0.05 * degree), 12)
  })
})

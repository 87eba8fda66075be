import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutterRun } from '../../../src/mechanics/set-up/cutter-run.ts'
import { drillThrough } from '../../../src/mechanics/set-up/drill-through.ts'
import { wayToRectangle } from '../../../src/mechanics/set-up/plan-distance.ts'
import { tapThrough } from '../../../src/mechanics/set-up/tap-through.ts'
import { toolClearance } from '../../../src/mechanics/set-up/tool-clearance.ts'
import { faults, good } from '../measuring/slope-check.ts'

const deg = Math.PI / 180

describe('the run of a cutter', () => {
  const run = { from: 25, to: -25, radius: 6, gap: 2, end: 'runs-out', leanFrom: 0, leanTo: 0 } as const

  it('through 50 mm with a cutter of 12: 8 before, 8 after, 66 in all', () => {
    expect(good(cutterRun(run))).toEqual({ start: 33, stop: -33, approach: 8, cut: 50, overrun: 8, travel: 66 })
  })

  it('that stops in the metal has its front at the end and its axis a radius before it', () => {
    const stops = good(cutterRun({ ...run, to: -4, end: 'stops', leanTo: 3 }))
    expect(stops).toEqual({ start: 33, stop: 2, approach: 8, cut: 29, overrun: -6, travel: 31 })
    expect(stops.start - stops.stop).toBe(stops.travel)
  })

  it('is longer where the sides lean out at depth: 13 mm deep at 10° by 2.29 mm', () => {
    const lean = 13 * Math.tan(10 * deg)
    const leaning = good(cutterRun({ ...run, leanTo: lean }))
    expect(leaning.stop).toBeCloseTo(-33 - 2.2923, 4)
    expect(leaning.travel).toBeCloseTo(68.2923, 4)
    expect(good(cutterRun({ ...run, leanFrom: 1 })).start).toBe(34)
  })

  it('goes either way along the axis', () => {
    expect(good(cutterRun({ ...run, from: -25, to: 25 }))).toMatchObject({ start: -33, stop: 33, travel: 66 })
    expect(faults(cutterRun({ ...run, to: 25 }))).toEqual(['contradiction to'])
    expect(faults(cutterRun({ ...run, radius: 0, gap: -1 }))).toEqual(['out-of-range radius', 'out-of-range gap'])
  })
})

describe('a hole drilled through', () => {
  it('needs room for the point: 5 mm at 118° stands out 1.502 and what is to come through', () => {
    const through = good(drillThrough({ diameter: 5, pointAngle: 118 * deg, thickness: 12, beyond: 0.5, below: 2 }))
    expect(through.out).toBeCloseTo(2.00215, 5)
    expect(through.tipDepth).toBeCloseTo(14.00215, 5)
    expect(through.clear).toBeCloseTo(-0.00215, 5)
    const more = good(drillThrough({ diameter: 5, pointAngle: 118 * deg, thickness: 12, beyond: 0.49, below: 2 }))
    expect(more.clear).toBeGreaterThan(0)
    expect(faults(drillThrough({ diameter: 5, pointAngle: 0, thickness: 0, beyond: 0, below: 0 }))).toEqual([
      'out-of-range pointAngle',
      'out-of-range thickness',
    ])
  })
})

describe('a thread tapped through', () => {
  const wall = { pitch: 1, thickness: 9, below: 10, kept: 0.5 } as const

  it('is full when the lead of the tap is out: 4 threads of a plug tap, 13 mm for a wall of 9', () => {
    expect(good(tapThrough(wall))).toEqual({ tap: 'plug', lead: 4, tipDepth: 13, clear: 6, unfinished: 0 })
    expect(good(tapThrough({ ...wall, below: 4.5 })).tap).toBe('plug')
  })

  it('takes a bottoming tap where there is no room for that, and says what it leaves where even that is stopped', () => {
    expect(good(tapThrough({ ...wall, below: 4.4 }))).toEqual({
      tap: 'bottoming',
      lead: 1.5,
      tipDepth: 10.5,
      clear: expect.closeTo(2.9, 9),
      unfinished: 0,
    })
    const stopped = good(tapThrough({ ...wall, below: 1.5 }))
    expect(stopped).toEqual({ tap: 'bottoming', lead: 1.5, tipDepth: 10, clear: 0.5, unfinished: 0.5 })
    expect(good(tapThrough({ ...wall, below: 0 }))).toMatchObject({ tipDepth: 9, clear: 0, unfinished: 1.5 })
    expect(faults(tapThrough({ ...wall, pitch: 0, kept: -1 }))).toEqual(['out-of-range pitch', 'out-of-range kept'])
  })
})

describe('a straight way and a rectangle', () => {
  const box = { x: [0, 10], y: [0, 4] } as const

  it('by hand: past a corner, beside a side, through, and one that is a point', () => {
    expect(wayToRectangle([13, 8], [20, 8], box)).toBe(5)
    expect(wayToRectangle([2, 6], [8, 6], box)).toBe(2)
    expect(wayToRectangle([-5, 2], [15, 2], box)).toBe(0)
    expect(wayToRectangle([5, 7], [5, 7], box)).toBe(3)
    // Slanting past the corner (10, 4): x + y = 16 is 2/√2 from it.
    expect(wayToRectangle([6, 10], [16, 0], box)).toBeCloseTo(Math.SQRT2, 12)
  })

  it('by trying points along both', () => {
    const place = fc.double({ min: -15, max: 15, noNaN: true })
    fc.assert(
      fc.property(place, place, place, place, (ax, ay, bx, by) => {
        let best = Infinity
        const n = 400
        for (let i = 0; i <= n; i++) {
          const [x, y] = [ax + ((bx - ax) * i) / n, ay + ((by - ay) * i) / n]
          best = Math.min(best, Math.hypot(Math.max(-x, 0, x - 10), Math.max(-y, 0, y - 4)))
        }
        const exact = wayToRectangle([ax, ay], [bx, by], box)
        expect(exact).toBeLessThanOrEqual(best + 1e-12)
        expect(best - exact).toBeLessThan(Math.hypot(bx - ax, by - ay) / n + 1e-9)
      }),
      { seed: 3, numRuns: 300 },
    )
  })
})

/** Jaws of a vise, tops at 45, work of 46 mm between them along x; the tool is zeroed on a face 14 above the jaws. */
const jaws = [
  { name: 'fixed jaw', x: [-50, 50], y: [23, 43], top: 45 },
  { name: 'moving jaw', x: [-50, 50], y: [-43, -23], top: 45 },
] as const
const endMill = {
  pieces: [
    { name: 'end mill', radius: 6, above: 0 },
    { name: 'holder', radius: 20, above: 30 },
  ],
}

describe('a tool over the jaws', () => {
  it('by hand: the step is milled 13 deep along y = 20, over the jaw by 1 mm', () => {
    const way = { start: [60, 20], stop: [-60, 20], tip: 59 - 13 } as const
    const near = good(toolClearance(endMill, way, jaws))
    expect(near[0]).toEqual({ piece: 'end mill', box: 'fixed jaw', beside: -3, over: 1, clear: 1 })
    // The holder: 46 + 30 − 45 above the same jaw.
    expect(near.find((n) => n.piece === 'holder' && n.box === 'fixed jaw')).toMatchObject({ over: 31, clear: 31 })
    // The other jaw is 43 away from the axis: 37 from the cutter, and 1 up.
    expect(near.find((n) => n.piece === 'end mill' && n.box === 'moving jaw')!.clear).toBeCloseTo(Math.hypot(37, 1), 12)
  })

  it('cuts into the jaw when it goes deeper than the jaw is high, by as much as it must go up or aside', () => {
    const at = (tip: number, y: number) =>
      good(toolClearance(endMill, { start: [60, y], stop: [-60, y], tip }, jaws))[0]!
    expect(at(45, 20).clear).toBe(0)
    expect(at(44.5, 20)).toMatchObject({ piece: 'end mill', clear: -0.5 })
    expect(at(40, 20)).toMatchObject({ beside: -3, over: -5, clear: -3 })
    // Moved aside by those 3 mm it just clears.
    expect(at(40, 17).clear).toBe(0)
    expect(at(40, 16.9).clear).toBeGreaterThan(0)
  })

  it('touches with its holder when it is short: a drill beside high metal', () => {
    const drill = {
      pieces: [
        { name: 'drill', radius: 2.5, above: 0 },
        { name: 'chuck', radius: 18, above: 20 },
      ],
    }
    const wall = [{ name: 'metal beside the hole', x: [5, 40], y: [-20, 20], top: 24 }] as const
    const near = good(toolClearance(drill, { start: [0, 0], stop: [0, 0], tip: 3 }, wall))
    expect(near[0]).toEqual({ piece: 'chuck', box: 'metal beside the hole', beside: -13, over: -1, clear: -1 })
    expect(near[1]).toMatchObject({ piece: 'drill', beside: 2.5, over: -21, clear: 2.5 })
    // A millimetre longer it is level with the metal.
    const longer = { pieces: [drill.pieces[0]!, { ...drill.pieces[1]!, above: 21 }] }
    expect(good(toolClearance(longer, { start: [0, 0], stop: [0, 0], tip: 3 }, wall))[0]!.clear).toBe(0)
  })

  it('is refused with boxes turned inside out, and without anything to look at', () => {
    const way = { start: [0, 0], stop: [0, 0], tip: 0 } as const
    const wrong = [{ name: 'jaw', x: [1, 0], y: [0, 1], top: 4 }] as const
    expect(faults(toolClearance(endMill, way, wrong))).toEqual(['out-of-range jaw.x'])
    expect(() => toolClearance(endMill, way, [])).toThrow(RangeError)
    expect(() => toolClearance({ pieces: [] }, way, jaws)).toThrow(RangeError)
  })
})

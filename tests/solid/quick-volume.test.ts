import { describe, expect, it } from 'vitest'
import { box, cellOf, rod } from '../../src/geometry/cell.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import { turnedVolumeOf } from '../../src/solid/turned.ts'
import { quickVolumeOf, volumeOf } from '../../src/solid/volume.ts'

const names = { wall: 'wall', start: 'start', end: 'end' }
const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const
const up: Vec3 = [0, 0, 1]
const down: Vec3 = [0, 0, -1]

describe('the quick volume', () => {
  const block = box(sides, [-30, -25, -40], [30, 25, 0])
  it('is exact where round faces are whole', () => {
    const hole = cellOf(cylinder('hole', [10, 5, 0], up, 7), plane('bottom', [0, 0, -20], down))
    const { volume, centroid } = quickVolumeOf({ stock: [block], cuts: [hole] })
    const drilled = Math.PI * 49 * 20
    expect(volume / (60 * 50 * 40 - drilled)).toBeCloseTo(1, 12)
    expect(centroid[0]).toBeCloseTo((-drilled * 10) / volume, 10)
    expect(centroid[1]).toBeCloseTo((-drilled * 5) / volume, 10)
    expect(centroid[2]).toBeCloseTo((60 * 50 * 40 * -20 + drilled * 10) / volume, 10)
  })
  it('is near the true one where a hole breaks out of the side', () => {
    const hole = cellOf(cylinder('hole', [26, 3, 0], up, 7))
    const solid = { stock: [block], cuts: [hole] }
    const [quick, exact] = [quickVolumeOf(solid), volumeOf(solid)]
    expect(quick.volume / exact.volume).toBeCloseTo(1, 3)
    expect(Math.abs(quick.centroid[0] - exact.centroid[0])).toBeLessThan(2e-4 * 60)
  })
})

describe('the volume of a turned part', () => {
  it('of a stepped bar with a taper and a chamfer follows from the frustum formula', () => {
    const chamfered = cellOf(
      cylinder('spigot', [0, 0, 0], up, 10),
      plane('end', [0, 0, -22], down),
      plane('seat', [0, 0, 0], up),
      coneThrough('lead-in', [0, 0, -22], 9, [0, 0, -21], 10),
    )
    const taper = cellOf(
      coneThrough('taper', [0, 0, 0], 12, [0, 0, 60], 9),
      plane('seat', [0, 0, 0], down),
      plane('top', [0, 0, 60], up),
    )
    const frustum = (a: number, b: number, h: number) => ((Math.PI * h) / 3) * (a * a + a * b + b * b)
    const { volume, centroid } = turnedVolumeOf({ stock: [chamfered, taper], cuts: [] })!
    expect(volume).toBeCloseTo(Math.PI * 100 * 21 + frustum(9, 10, 1) + frustum(12, 9, 60), 8)
    expect(centroid[0]).toBe(0)
    expect(centroid[1]).toBe(0)
    const exact = volumeOf({ stock: [chamfered, taper], cuts: [] })
    expect(centroid[2]).toBeCloseTo(exact.centroid[2], 3)
  })
  it('of a tube with a flat loses the segment: area r²·acos(a/r) − a·√(r² − a²), moment 2/3·(r² − a²)^1.5', () => {
    const bar = rod(names, [0, 0, -20], up, 20, 10)
    const bore = cellOf(cylinder('bore', [0, 0, 0], up, 4))
    const flat = cellOf(plane('flat', [8, 0, 0], [-1, 0, 0]), plane('end', [0, 0, -5], up))
    const { volume, centroid } = turnedVolumeOf({ stock: [bar], cuts: [bore, flat] })!
    const area = 100 * Math.acos(0.8) - 8 * 6
    expect(volume).toBeCloseTo(Math.PI * (100 - 16) * 20 - area * 15, 8)
    expect(centroid[0] * volume).toBeCloseTo(-(2 / 3) * 36 ** 1.5 * 15, 7)
    expect(centroid[1]).toBeCloseTo(0, 12)
  })
  it('is unknown for anything else: a cross hole, a hole beside the axis, two flats in one cut, a bar that runs on', () => {
    const bar = rod(names, [0, 0, 0], up, 20, 10)
    const cross = cellOf(cylinder('cross', [0, 0, 10], [1, 0, 0], 3))
    const beside = cellOf(cylinder('beside', [2, 0, 0], up, 3))
    const twoFlats = cellOf(plane('a', [8, 0, 0], [-1, 0, 0]), plane('b', [0, 8, 0], [0, -1, 0]))
    const endless = cellOf(cylinder('endless', [0, 0, 0], up, 10))
    for (const cut of [cross, beside, twoFlats]) expect(turnedVolumeOf({ stock: [bar], cuts: [cut] })).toBeUndefined()
    expect(turnedVolumeOf({ stock: [endless], cuts: [] })).toBeUndefined()
    expect(turnedVolumeOf({ stock: [bar, box(sides, [0, 0, 0], [1, 1, 1])], cuts: [] })).toBeUndefined()
  })
})

import { describe, expect, it } from 'vitest'
import { cappedCylinder } from '../../src/geometry/capped-cylinder.ts'
import { cellDepth } from '../../src/geometry/cell.ts'
import { innerPoint } from '../../src/geometry/inner-point.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import { forRandomHeads } from '../families/random-heads.ts'

describe('a point well inside', () => {
  it('is inside what a cut of any head takes out of the bar, wherever one is found', () => {
    let found = 0
    forRandomHeads(40, (design) => {
      const body = design.part('body')
      const bar = body.stock[0]!.cells[0]!
      for (const { cells, frame } of body.cuts) {
        for (const cell of cells) {
          const surfaces = [...cell.surfaces, ...bar.surfaces]
          const p = innerPoint(surfaces, frame.origin)
          if (!p) continue
          found++
          expect(cellDepth({ surfaces }, p)).toBeGreaterThanOrEqual(0.125)
        }
      }
    })
    expect(found).toBeGreaterThan(200)
  })

  it('is not told where there is no inside', () => {
    expect(innerPoint([plane('a', [0, 0, 1], [0, 0, -1]), plane('b', [0, 0, 0], [0, 0, 1])], [0, 0, 5])).toBeUndefined()
  })
})

describe('the capped cylinder round a region', () => {
  const mouth = plane('mouth', [0, 0, 0], [0, 0, 1])
  it('of a chamfer is as wide as its wide end', () => {
    const cone = coneThrough('chamfer', [0, 0, -1], 10, [0, 0, 0], 11)
    const body = cappedCylinder([cone, mouth, plane('foot', [0, 0, -1], [0, 0, -1])])!
    expect(body.radius).toBeCloseTo(11, 12)
    expect([body.from[2], body.to[2]].sort((a, b) => a - b).map((z) => Math.round(z * 1e9) / 1e9)).toEqual([-1, 0])
  })

  it('of a drilled hole ends at its point', () => {
    const cone = coneThrough('point', [0, 0, -23], 0, [0, 0, -20], 5)
    const body = cappedCylinder([cylinder('wall', [0, 0, 0], [0, 0, -1], 5), cone, mouth])!
    expect(body.radius).toBe(5)
    expect(Math.min(body.from[2], body.to[2])).toBeCloseTo(-23, 9)
  })
})

import { describe, expect, it } from 'vitest'
import { type Cell, cellOf } from '../../src/geometry/cell.ts'
import { worldFrame } from '../../src/geometry/frame.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Feature } from '../../src/part/feature.ts'
import { cutProfiles, facingProfile } from '../../src/profiles/cut-profiles.ts'
import { outlinesOf } from '../../src/profiles/outline.ts'
import { bar, block, up } from '../edges/solids.ts'
import { areaOf } from './outline-area.ts'

const cut = (...cells: Cell[]): Feature => ({
  id: 'hole',
  label: 'hole',
  role: 'fit-bore',
  cells,
  frame: worldFrame,
  opensInto: ['outside'],
  governedBy: [],
  dimensions: [],
})
const down = [0, 0, -1] as const
const floor = (z: number) => plane('floor', [0, 0, z], down)
const mouth = (z: number) => plane('mouth', [0, 0, z], up)
const hole = (r: number) => cylinder('wall', [4, 5, 0], up, r)

describe('profiles of a cut', () => {
  it('of a counterbored hole are one for each depth', () => {
    const made = cutProfiles(cut(cellOf(hole(6), floor(-8)), cellOf(hole(3), floor(-20))), worldFrame)
    expect(made.map((p) => [p.depth, areaOf(p.outlines[0]!)])).toEqual([
      [8, expect.closeTo(36 * Math.PI, 9)],
      [20, expect.closeTo(9 * Math.PI, 9)],
    ])
  })

  it('of a drilled hole go to the full diameter and tell the point', () => {
    const r = 5
    const point = coneThrough('drill point', [4, 5, -30 - r / Math.tan(Math.PI / 3)], 0, [4, 5, -30], r)
    expect(cutProfiles(cut(cellOf(hole(r), point, mouth(0))), worldFrame)).toMatchObject([
      { depth: expect.closeTo(30, 9), notes: ['point 120deg'], outlines: [[{ kind: 'circle', radius: r }]] },
    ])
  })

  it('of a chamfer show its large circle, with its depth and slope', () => {
    const chamfer = cellOf(coneThrough('edge', [4, 5, -1.5], 6, [4, 5, 0], 7.5), mouth(0), floor(-1.5))
    expect(cutProfiles(cut(cellOf(hole(6)), chamfer), worldFrame)).toMatchObject([
      { name: 'hole', outlines: [[{ radius: 6 }]] },
      {
        name: 'edge',
        depth: 1.5,
        notes: ['45deg'],
        outlines: [[{ kind: 'circle', centre: [4, 5], radius: expect.closeTo(7.5, 9) }]],
      },
    ])
  })

  it('of a hole that begins below the plane show it all the same', () => {
    const made = cutProfiles(cut(cellOf(hole(2), mouth(-12))), worldFrame)
    expect(made).toMatchObject([{ outlines: [[{ kind: 'circle', radius: 2 }]] }])
    expect(made[0]!.depth).toBeUndefined()
  })

  it('that is open runs out past the metal, to a round number', () => {
    const open = cut(cellOf(plane('a', [0, 3, 0], [0, 1, 0]), plane('b', [0, -4, 0], [0, -1, 0]), floor(-6)))
    const blank = { cells: [block([-10.2, -8, -30], [12, 8, 0])], runOut: 5, step: 1 }
    const [slot] = cutProfiles(open, worldFrame, blank)
    const ends = slot!.outlines[0]!.flatMap((e) => (e.kind === 'line' ? [e.from, e.to] : []))
    expect([Math.min(...ends.map((p) => p[0])), Math.max(...ends.map((p) => p[0]))]).toEqual([-16, 17])
    expect(areaOf(slot!.outlines[0]!)).toBeCloseTo(33 * 7, 9)
  })

  it('that meets no metal are none', () => {
    const open = cut(cellOf(plane('a', [0, 3, 0], [0, 1, 0]), floor(-6)))
    expect(cutProfiles(open, worldFrame, { cells: [block([-9, -9, 5], [9, 9, 40])], runOut: 5, step: 1 })).toEqual([])
    const face = cut(cellOf(floor(0)))
    expect(facingProfile(face, worldFrame, { cells: [block([-9, -9, 5], [9, 9, 40])] })).toEqual([])
  })

  it.each([
    ['a hole at a slant', cellOf(cylinder('wall', [0, 0, 0], [0.1, 0, 1], 4))],
    ['a sloping floor', cellOf(hole(4), plane('floor', [0, 0, -9], [0.1, 0, -1]))],
    ['a hole that widens downwards', cellOf(coneThrough('wall', [0, 0, -9], 6, [0, 0, 0], 4), floor(-9))],
  ])('are refused for %s, which no cutter along z makes', (_, cell) => {
    expect(() => cutProfiles(cut(cell), worldFrame)).toThrow(RangeError)
  })

  it('of a face is the outline of the blank in its plane, and says what comes off', () => {
    const made = facingProfile(cut(cellOf(floor(0))), worldFrame, { cells: [bar([2, 1, -30], up, 33.5, 9)] })
    expect(made).toMatchObject([{ depth: 0, blankAbove: expect.closeTo(3.5, 8) }])
    expect(areaOf(made[0]!.outlines[0]!)).toBeCloseTo(81 * Math.PI, 9)
  })
})

describe('outlines', () => {
  it('of a body with a face in the plane are that face', () => {
    const made = outlinesOf([block([-3, -2, -9], [3, 2, 0])], worldFrame)
    expect(made.map(areaOf)).toEqual([expect.closeTo(24, 9)])
  })

  it('of a body above the plane are none', () => {
    expect(outlinesOf([block([-3, -2, 0], [3, 2, 9])], worldFrame)).toEqual([])
  })
})

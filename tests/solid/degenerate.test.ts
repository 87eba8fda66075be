import type { ManifoldToplevel } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { box, type Cell, cellOf, rod } from '../../src/geometry/cell.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { stlFaults, stlOf } from '../../src/solid/stl.ts'
import { headFrom } from '../families/random-heads.ts'
import { kernelSolid, loadKernel } from '../part/manifold-cell.ts'

const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const
const up: Vec3 = [0, 0, 1]
const block = box(sides, [-30, -25, -40], [30, 25, 0])
const hole = (x: number, y: number, r: number): Cell => cellOf(cylinder('hole', [x, y, 0], up, r))
const slot = (from: number, to: number, z: number): Cell =>
  cellOf(plane('a', [0, to, 0], [0, 1, 0]), plane('b', [0, from, 0], [0, -1, 0]), plane('floor', [0, 0, z], up))
const bore = (r: number, depth: number): Cell =>
  cellOf(cylinder('bore', [0, 0, 0], up, r), plane('bottom', [0, 0, -depth], [0, 0, -1]))
const point = (r: number, depth: number): Cell =>
  cellOf(
    cylinder('bore', [0, 0, 0], up, r),
    coneThrough('point', [0, 0, -depth - 0.6 * r], 0, [0, 0, -depth], r),
    plane('mouth', [0, 0, 0], up),
  )

/** A hair to either side of where surfaces touch, and exactly there. */
const hairs = [-1e-3, -1e-5, -1e-6, -1e-7, 0, 1e-7, 1e-6, 1e-5, 1e-3]

const sweeps: [string, (hair: number) => Cell[]][] = [
  ['two holes whose pitch is their diameter', (e) => [hole(-5, 0, 5 + e / 2), hole(5, 0, 5 + e / 2)]],
  ['a hole tangent to the side of the block', (e) => [hole(25 + e, 0, 5)]],
  ['a hole through an edge of the block', (e) => [hole(30 + e, 25, 6)]],
  ['a slot as wide as the bore it meets', (e) => [bore(8 + e, 25), slot(-8, 8, -20)]],
  ['a slot wall through the middle of the bore', (e) => [bore(8, 25), slot(e, 14, -20)]],
  ['a bore bottom on the slot floor', (e) => [bore(8, 20 + e), slot(-6, 6, -20)]],
  ['a drill point on the slot floor', (e) => [point(8, 20 - 4.8 + e), slot(-6, 6, -20)]],
  ['two slots with one floor', (e) => [slot(-12, 0, -20), slot(-3, 9, -20 + e)]],
  ['two slots side by side', (e) => [slot(-12, 0, -20), slot(e, 9, -24)]],
  ['a slot along the side of the block', (e) => [slot(-25 - e, -10, -20)]],
  ['a slot that takes all but a hair of the width', (e) => [slot(-25 + Math.abs(e), 25 - Math.abs(e), -20)]],
  ['a face at the very end of the block', (e) => [cellOf(plane('face', [0, 0, -40 + e], up))]],
  ['one cut twice', (e) => [bore(8, 25), bore(8, 25 + e)]],
  ['a cross hole as wide as the bore', (e) => [bore(8, 30), cellOf(cylinder('cross', [0, 0, -15 + e], [1, 0, 0], 8))]],
  [
    'a cross hole at the bore’s bottom edge',
    (e) => [bore(8, 20), cellOf(cylinder('cross', [0, 8 + e, -20], [1, 0, 0], 2))],
  ],
]

const stocks: [string, (hair: number) => Cell[]][] = [
  [
    'two bars end to end',
    (e) => [rod(ends, [0, 0, 0], up, 20, 9), rod(ends, [0, 0, 20 + Math.min(e, 0)], up, 20, 9 + e)],
  ],
  [
    'a shoulder as wide as its shank',
    (e) => [rod(ends, [0, 0, 0], up, 20, 9), rod(ends, [0, 0, 5], up, 6, 9 + Math.abs(e))],
  ],
  ['two blocks face to face', (e) => [block, box(sides, [30 + Math.min(e, 0), -10, -30], [50, 10, 0])]],
]
const ends = { wall: 'bar', start: 'start', end: 'end' }

let kernel: ManifoldToplevel
beforeAll(async () => {
  kernel = await loadKernel()
})

function expectSound(stock: Cell[], cuts: Cell[], what: string) {
  const mesh = meshOf({ stock, cuts }, 0.02, what)
  expect(mesh, what).toMatchObject({ ok: true })
  if (!mesh.ok) return
  expect(kernelSolid(kernel, mesh.value).status(), what).toBe('NoError')
  const stl = stlOf([mesh.value], what)
  expect(stl, what).toMatchObject({ ok: true })
  if (stl.ok) expect(stlFaults(stl.value), what).toEqual({ open: 0, degenerate: 0 })
}

describe('a mesh is closed, with surfaces a hair apart, touching and overlapping by a hair', () => {
  it.each(sweeps)('of a block with %s', (name, cuts) => {
    for (const hair of hairs) expectSound([block], cuts(hair), `${name} ${hair}`)
  })
  it.each(stocks)('of %s', (name, stock) => {
    for (const hair of hairs) expectSound(stock(hair), [], `${name} ${hair}`)
  })
})

describe('a head is closed where its sizes meet', () => {
  const heads: [string, [string | RegExp, string][]][] = [
    ['face square to the axis', [['angle: 7 deg', 'angle: 0']]],
    ['steepest face', [['angle: 7 deg', 'angle: 30 deg']]],
    [
      'bore bottom in the plane of the slot floor',
      [
        ['angle: 7 deg', 'angle: 0'],
        ['depth: 24', 'depth: 31.5'],
      ],
    ],
    ['step as deep as the slot', [['depth: 10.5', 'depth: 9.5']]],
    ['leading wall through the axis', [['ahead-of-centre: 2.4', 'ahead-of-centre: 0']]],
    ['slot mid-line through the axis', [['ahead-of-centre: 2.4', 'ahead-of-centre: 5.02']]],
    ['screw holes that touch', [['spacing: 24', 'spacing: 5']]],
    ['screw holes tangent to the slot floor', [['height: 6', 'height: 7']]],
    ['screw holes tangent to the face', [['height: 6', 'height: 2.5']]],
    ['screw holes tangent to the step floor', [['depth: 10.5', 'depth: 8.5']]],
    [
      'a bit as wide as the head',
      [
        ['width: 10', 'width: 40'],
        ['height: 10', 'height: 12'],
        ['ahead-of-centre: 2.4', 'ahead-of-centre: 20'],
        ['wall-thickness: 9', 'wall-thickness: 1'],
      ],
    ],
    [
      'a bore all but as wide as the flats',
      [
        ['diameter: 20', 'diameter: 45.999'],
        ['shoulder-diameter: 32', 'shoulder-diameter: 50'],
      ],
    ],
    [
      'six screws',
      [
        ['count: 2', 'count: 6'],
        ['spacing: 24', 'spacing: 6'],
      ],
    ],
  ]
  it.each(heads)('%s', (_, changes) => {
    const design = headFrom('parameters', ...changes)
    for (const { part } of design.scene.parts) {
      const { stock, cuts } = solidOf(part)
      expectSound([...stock], [...cuts], part.id)
    }
  })
})

import { describe, expect, it } from 'vitest'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { box, type Cell, cellFrom, cellOf } from '../../src/geometry/cell.ts'
import { worldFrame } from '../../src/geometry/frame.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import type { Feature } from '../../src/part/feature.ts'
import { Walls } from '../../src/part/wall.ts'

const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const
const up: Vec3 = [0, 0, 1]

const feature = (id: string, cells: Cell[], opensInto: string[] = []): Feature => ({
  id,
  label: id,
  role: 'vent',
  cells,
  frame: worldFrame,
  opensInto,
  governedBy: [],
  dimensions: [],
})

const wallsOf = (stock: Cell, ...cuts: Feature[]) =>
  new Walls({ id: 'block', label: 'block', material: 'steel-1018', stock: [feature('stock', [stock])], cuts })

const hole = (point: Vec3, axis: Vec3, radius: number) => cellOf(cylinder('hole', point, axis, radius))
const block = box(sides, [-20, -20, -40], [20, 20, 0])

describe('a wall', () => {
  it('is measured inside the metal: two holes that meet only outside the stock still have one', () => {
    // Two 2 mm holes through a plate 10 mm thick, meeting 8 mm above it: their bodies overlap, the metal does not know.
    const plate = box(sides, [-20, -20, -10], [20, 20, 0])
    const tilt = Math.atan(0.25)
    const a = feature('a', [hole([0, 0, 8], [Math.sin(tilt), 0, Math.cos(tilt)], 1)], ['−z', '+z'])
    const b = feature('b', [hole([0, 0, 8], [-Math.sin(tilt), 0, Math.cos(tilt)], 1)], ['−z', '+z'])
    // At the top face the axes are 2·8·0.25 = 4 mm apart and each hole is 1/cos(tilt) wide along x.
    expect(wallsOf(plate, a, b).between('a', 'b')!.distance).toBeCloseTo(4 - 2 / Math.cos(tilt), 7)
  })

  it('between a flat bore and a slot in a tilted face is (h − b)·cos a − r·sin a − d, met on the high side', () => {
    const [h, b, r, d, tilt] = [31, 14, 7, 6, (12 * Math.PI) / 180]
    const slot = cellFrom(
      faceFrame(tilt, h),
      cellOf(
        plane('leading', [0, 3, 0], [0, 1, 0]),
        plane('trailing', [0, -5, 0], [0, -1, 0]),
        plane('floor', [0, 0, d], up),
      ),
    )
    const bore = cellOf(cylinder('bore', [0, 0, 0], up, r), plane('bottom', [0, 0, -b], [0, 0, -1]))
    const wall = wallsOf(block, feature('slot', [slot]), feature('bore', [bore], ['+z'])).between('slot', 'bore')!
    expect(wall.distance).toBeCloseTo((h - b) * Math.cos(tilt) - r * Math.sin(tilt) - d, 7)
    expect(wall.to[0]).toBeCloseTo(-r, 3)
  })

  it('under a 118° drill point is (h − b − 0.601·r)·cos a − d', () => {
    const [h, b, r, d, tilt] = [33, 15, 6.5, 5, (8 * Math.PI) / 180]
    const point = r / Math.tan((59 * Math.PI) / 180)
    expect(point / r).toBeCloseTo(0.601, 3)
    const slot = cellFrom(
      faceFrame(tilt, h),
      cellOf(
        plane('leading', [0, 4, 0], [0, 1, 0]),
        plane('trailing', [0, -4, 0], [0, -1, 0]),
        plane('floor', [0, 0, d], up),
      ),
    )
    const bore = cellOf(
      cylinder('bore', [0, 0, 0], up, r),
      coneThrough('point', [0, 0, -b - point], 0, [0, 0, -b], r),
      plane('mouth', [0, 0, 0], up),
    )
    const walls = wallsOf(block, feature('slot', [slot]), feature('bore', [bore], ['+z']))
    expect(walls.between('slot', 'bore')!.distance).toBeCloseTo((h - b - point) * Math.cos(tilt) - d, 7)
    expect(walls.opening('slot', 'bore')).toBeUndefined()
  })

  it('that is broken through has an opening: the extents of what both take', () => {
    const slot = cellOf(
      plane('a', [0, 3, 0], [0, 1, 0]),
      plane('b', [0, -3, 0], [0, -1, 0]),
      plane('floor', [0, 0, -30], up),
    )
    const bore = cellOf(cylinder('bore', [0, 0, 0], up, 5), plane('bottom', [0, 0, -32], [0, 0, -1]))
    const walls = wallsOf(block, feature('slot', [slot]), feature('bore', [bore], ['+z']))
    expect(walls.between('slot', 'bore')!.distance).toBe(0)
    expect(walls.opening('slot', 'bore')!.map((x) => Math.round(x * 1e6) / 1e6)).toEqual([10, 6, 2])
  })

  it('to the outside is the least over the faces that the feature does not open into', () => {
    const bore = cellOf(cylinder('bore', [4, -9, 0], up, 5), plane('bottom', [0, 0, -32], [0, 0, -1]))
    const walls = wallsOf(block, feature('bore', [bore], ['+z']))
    expect(walls.between('bore', 'outside')!.distance).toBeCloseTo(6, 8)
  })

  it('to a round outside is the radius less the farthest corner', () => {
    const bar = cellOf(
      cylinder('bar', [0, 0, 0], up, 20),
      plane('top', [0, 0, 0], up),
      plane('end', [0, 0, -40], [0, 0, -1]),
    )
    const pocket = box(sides, [2, 3, -50], [9, 11, 5])
    const walls = wallsOf(bar, feature('pocket', [pocket], ['top', 'end']))
    expect(walls.between('pocket', 'outside')!.distance).toBeCloseTo(20 - Math.hypot(9, 11), 7)
  })

  it('is not told of a feature that takes out no metal', () => {
    const walls = wallsOf(block, feature('a', [hole([60, 0, 0], up, 2)]), feature('b', [hole([0, 0, 0], up, 2)]))
    expect(walls.cutsMetal('a')).toBe(false)
    expect(walls.between('a', 'b')).toBeUndefined()
  })

  it('thinner than a limit is found without measuring the thicker ones', () => {
    const walls = wallsOf(block, feature('a', [hole([-8, 0, 0], up, 2)]), feature('b', [hole([0, 0, 0], up, 2)]))
    expect(walls.thinnerThan('a', 'b', 3.9)).toBeUndefined()
    expect(walls.thinnerThan('a', 'b', 4.1)!.distance).toBeCloseTo(4, 7)
  })
})

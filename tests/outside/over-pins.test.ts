import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readingOf } from '../../src/figures/measuring.ts'
import { headFrom, templateText } from '../families/random-heads.ts'
import { meshKernel } from './brep/kernels.ts'
import { finely } from './brep/measure.ts'
import { rawHead } from './brep/raw-head.ts'
import { type Triangles, withManifolds } from './brep/triangles.ts'

// No published example of a head measured over pins is known to us. The second road is the B-rep head that is built from the
// words of the parameter file alone: probes are cut with it by the mesh kernel, and pins laid where the metal leaves room.

type Change = [string, string]
/** The line of the template that only a hexagon has. */
const slotRuns = /^ {2}slot-runs: .*\n/m.exec(templateText('parameters'))![0]
type Vec = readonly [number, number, number]

/** The judge's body with the angled face as z = 0, x to the bit side, z into the metal. */
function onFace(text: string): Triangles {
  const head = rawHead(text)
  const { slope, depth } = head.figures
  const { coordinates, corners } = finely(head.body())
  const [c, s] = [Math.cos(slope), Math.sin(slope)]
  const turned: number[] = []
  for (let i = 0; i < coordinates.length; i += 3) {
    const [x, y, z] = [coordinates[i]!, coordinates[i + 1]!, coordinates[i + 2]! + depth]
    turned.push(x * c - z * s, y, x * s + z * c)
  }
  return { coordinates: turned, corners }
}

/** Metal along a thin bar from corner to corner of a box, as intervals along an axis. */
function metalAlong(body: Triangles, axis: 0 | 1 | 2, low: Vec, high: Vec): [number, number][] {
  return withManifolds([body], (solid) => {
    const box = meshKernel.Manifold.cube([high[0] - low[0], high[1] - low[1], high[2] - low[2]]).translate([...low])
    const common = box.intersect(solid!)
    const pieces = common.decompose().map((piece) => {
      const { min, max } = piece.boundingBox()
      piece.delete()
      return [min[axis], max[axis]] as [number, number]
    })
    box.delete()
    common.delete()
    return pieces.sort((a, b) => a[0] - b[0])
  })
}

/** Where there is none between two stretches of metal. */
const gaps = (metal: readonly [number, number][]): [number, number][] =>
  metal.slice(1).map(([low], i) => [metal[i]![1], low])

const thin = 1e-3

describe.each([
  ['the template', []],
  [
    'the other way round, step behind',
    [
      ['rotation: clockwise', 'rotation: anticlockwise'],
      ['reverse: false', 'reverse: true'],
      ['side: leading', 'side: trailing'],
    ],
  ],
  [
    'a square bar',
    [
      ['shape: hexagon', 'shape: square'],
      [slotRuns, ''],
    ],
  ],
  ['a steep face', [['angle: 7 deg', 'angle: 15 deg']]],
] as const)('%s, measured on a solid of another kernel', (_, changes) => {
  const text = changes.reduce<string>((t, [from, to]) => t.replace(from, to), templateText('parameters'))
  const head = headFrom('parameters', ...(changes as unknown as Change[]))
  const body = onFace(text)
  const reading = (id: string) => {
    const found = flyCutterHead.measuring(head).find(({ dimension }) => dimension.id === id)!
    return readingOf(found, found.dimension.value)
  }
  const { screws, step, slot } = head.layout
  const middle = (screws.seat + step.wall) / 2
  const pin = 5
  /** Both holes where they go through the middle of the wall. */
  const holes = gaps(
    metalAlong(body, 0, [-80, middle - thin, screws.height - thin], [80, middle + thin, screws.height + thin]),
  )
    .map(([low, high]) => (low + high) / 2)
    .sort((a, b) => b - a)

  it('has in its screw holes what is read over two pins', () => {
    expect(holes).toHaveLength(2)
    expect(holes[0]! - holes[1]! + pin).toBeCloseTo(reading('screw-hole-2.x'), 2)
  })

  it('has from the furthest place of the wall at the face to the far side of a pin what is read there', () => {
    const [low, high] = [Math.min(screws.seat, step.wall), Math.max(screws.seat, step.wall)]
    const wall = metalAlong(body, 0, [-80, low + 1e-4, 1e-4], [80, high - 1e-4, 2e-3])
    const end = wall.at(-1)![1]
    expect(end - (holes[0]! - pin / 2)).toBeCloseTo(reading('screw-hole-1.x'), 2)
  })

  it('has from the face over a pin what is read there', () => {
    const x = holes[0]!
    const metal = metalAlong(body, 2, [x - thin, middle - thin, -1], [x + thin, middle + thin, screws.height + 8])
    const hole = gaps(metal).find(([low, high]) => low < screws.height && high > screws.height) ?? [
      metal[0]![1],
      metal[0]![1] + pin,
    ]
    expect((hole[0] + hole[1]) / 2 + pin / 2).toBeCloseTo(reading('screw-hole-1.height'), 2)
  })

  it('has from the flat to the far side of a pin in the slot what is read there', () => {
    const z = slot.depth / 2
    const across = metalAlong(body, 1, [-thin, -80, z - thin], [thin, 80, z + thin])
    const [gap] = gaps(across).filter(([low, high]) => Math.abs(high - low - slot.width) < 0.02)
    const wallAt = Math.abs(gap![0] - slot.leading) < Math.abs(gap![1] - slot.leading) ? gap![0] : gap![1]
    // The flat itself: the step may have taken it away here.
    const flat = (46 / 2) * Math.sign(slot.leading)
    expect(Math.abs(flat - wallAt) + 6).toBeCloseTo(reading('slot.from-flat'), 2)
  })
})

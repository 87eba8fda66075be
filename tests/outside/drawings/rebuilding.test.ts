import '../brep/kernels.ts'
import { describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../../src/families/fly-cutter-head/design.ts'
import { solidOf } from '../../../src/part/part.ts'
import { meshOf } from '../../../src/solid/mesh.ts'
import { finely } from '../brep/measure.ts'
import { rawBody } from '../brep/raw-body.ts'
import { farthestStray, straysBetween } from '../brep/skin-contract.ts'
import { apart, withManifolds } from '../brep/triangles.ts'
import { dimensionsIn } from '../dxf-dimensions.ts'
import { altered } from './altered.ts'
import { drawingsOn } from './made-drawings.ts'
import { rebuiltBody, type SeenKind, SizeFault } from './rebuilt-body.ts'

type Change = readonly [from: string | RegExp, to: string]
const sets: readonly (readonly [says: string, name: 'parameters' | 'parameters-inch', ...changes: Change[]])[] = [
  ['the metric template', 'parameters'],
  ['the inch template', 'parameters-inch'],
  [
    'a head that turns the other way',
    'parameters',
    ['rotation: clockwise', 'rotation: anticlockwise'],
    ['reverse: false', 'reverse: true'],
  ],
  ['a step behind the bit', 'parameters', ['side: leading', 'side: trailing']],
  [
    'a round bar with a stopped slot and a drilled bore',
    'parameters',
    ['shape: hexagon', 'shape: round'],
    ['  slot-runs: point-to-point    # the jaws then hold the flats beside the slot\n', ''],
    ['  runs: through\n', '  runs: stopped\n  beyond-axis: 9\n  cutter-diameter: 8\n'],
    ['  bottom: flat\n', '  bottom: drill-point\n'],
    ['  depth: 24\n', '  depth: 20\n'],
  ],
  [
    'a slot from flat to flat and a level face',
    'parameters',
    ['point-to-point', 'flat-to-flat'],
    ['angle: 7 deg', 'angle: 0 deg'],
  ],
]

const drawn = sets.map(([says, name, ...changes]) => {
  const { read, drawn } = drawingsOn(name, ...changes)
  const design = read.design as unknown as HeadDesign
  const unit = design.units
  const dimensions = dimensionsIn(String(drawn.files.get('body.dxf')))
  const { parameters: p, layout } = design
  const seen: SeenKind = {
    shape: p.stock.shape,
    pointed: p.stock.shape === 'hexagon' && p.stock['slot-runs'] === 'point-to-point',
    hand: layout.hand,
    stepLeads: p.step.side === 'leading',
    slotAhead: p.slot['ahead-of-centre'] >= 0,
    vent: p.bore.kind === 'blind' ? p.bore.vent : 'none',
  }
  return { says, design, dimensions, seen, unit }
})

/** What makes the metal, without what follows from it. */
const essentials = ({ size, angle, depth, slot, step, screws, bore }: ReturnType<typeof rebuiltBody>) =>
  [
    size,
    angle,
    depth,
    slot.ahead,
    slot.width,
    slot.depth,
    slot.stop?.beyond ?? 0,
    slot.stop?.cutter ?? 0,
    step.wall,
    step.depth,
    screws.tap,
    screws.count,
    screws.spacing,
    screws.first,
    screws.height,
    bore.radius,
    bore.chamfer,
    bore.depth ?? 0,
    bore.pointAngle ?? 0,
    bore.ventSize,
  ] as const

describe.each(drawn)('the dimensions of $says, read back from the DXF', ({ design, dimensions, seen, unit }) => {
  it('are enough to make the same head: a B-rep kernel builds it from them alone', () => {
    const rebuilt = rawBody(rebuiltBody(dimensions, seen, unit))
    const mesh = meshOf(solidOf(design.part('body')), 0.02, 'body')
    if (!mesh.ok) throw new Error('no mesh')
    const made = { coordinates: [...mesh.value.points], corners: [...mesh.value.triangles] }
    const fine = finely(rebuilt)
    const far = straysBetween(made, fine, rebuilt, 1500)
    expect(Math.max(far.made, far.exact)).toBeLessThan(farthestStray + 0.005)
    expect(withManifolds([made, fine], apart)).toBeLessThan(0.02)
  })

  it('are none too many and none too few: without any one of them, or with it changed, it is another head or none', () => {
    const right = essentials(rebuiltBody(dimensions, seen, unit))
    for (const one of dimensions) {
      const others = dimensions.filter((d) => d !== one)
      for (const changed of [others, [...others, { ...one, text: altered(one.text) }]]) {
        const found = rebuiltOrNone(changed, seen, unit)
        if (found) expect(Math.max(...found.map((v, i) => Math.abs(v - right[i]!))), one.name).toBeGreaterThan(0.02)
      }
    }
  })
})

function rebuiltOrNone(...on: Parameters<typeof rebuiltBody>): readonly number[] | undefined {
  try {
    return essentials(rebuiltBody(...on))
  } catch (error) {
    if (error instanceof SizeFault) return undefined
    throw error
  }
}

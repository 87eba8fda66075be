import '../brep/kernels.ts'
import { describe, expect, it } from 'vitest'
import { arborSheet } from '../../../src/families/fly-cutter-head/sheets/arbor-sheet.ts'
import { solidOf } from '../../../src/part/part.ts'
import { meshOf } from '../../../src/solid/mesh.ts'
import { headFrom } from '../../families/random-heads.ts'
import { exactly, finely } from '../brep/measure.ts'
import { farthestStray, straysBetween } from '../brep/skin-contract.ts'
import { apart, withManifolds } from '../brep/triangles.ts'
import { dimensionsIn } from '../dxf-dimensions.ts'
import { altered } from './altered.ts'
import { dxfOf } from './dxf-of.ts'
import { arborShape, rebuiltArbor } from './rebuilt-arbor.ts'
import { SizeFault } from './rebuilt-body.ts'
import type { WrittenSize } from './sizes-read.ts'

type Change = [from: string | RegExp, to: string]
const onShank = (name: string, shoulder: number): Change[] => [
  ['shank: straight-20', `shank: ${name}`],
  ['shoulder-diameter: 32', `shoulder-diameter: ${shoulder}`],
]
const sets: readonly (readonly [says: string, name: 'parameters' | 'parameters-inch', ...changes: Change[]])[] = [
  ['the metric template', 'parameters'],
  ['the inch template, with a flat to let the air out', 'parameters-inch'],
  ['a Morse shank', 'parameters', ...onShank('morse-2', 36)],
  [
    'an R8 shank with a hole through',
    'parameters',
    ...onShank('r8', 40),
    ['  spigot-length: 22', '  bore-through: 6\n  spigot-length: 22'],
  ],
  ['a shank of 7:24', 'parameters', ...onShank('7-24-30', 50)],
  [
    'a plain bar with a hole and a flat, and no lead-in',
    'parameters',
    [/ {2}kind: shank\n {2}shank: straight-20\n/, '  kind: straight\n  length-above: 50\n'],
    [/ {2}shoulder-diameter: 32\n {2}shoulder-thickness: 6\n/, ''],
    ['  spigot-length: 22', '  bore-through: 6\n  lead-in: 0\n  spigot-length: 22'],
    ['vent: hole', 'vent: flat'],
  ],
  ['a threaded spigot', 'parameters', [/kind: matched[^\n]*\n\s*assembly: heat/, 'kind: threaded\n  thread: M20']],
]

const drawn = sets.map(([says, name, ...changes]) => {
  const design = headFrom(name, ...changes)
  return { says, design, unit: design.units, dimensions: dimensionsIn(dxfOf(design, arborSheet(design))) }
})

describe.each(drawn)('the dimensions of $says, read back from arbor.dxf', ({ design, dimensions, unit }) => {
  it('are enough to turn the same arbor: a B-rep kernel builds it from them alone', () => {
    const rebuilt = arborShape(rebuiltArbor(dimensions, unit))
    const mesh = meshOf(solidOf(design.part('arbor')), 0.02, 'arbor')
    if (!mesh.ok) throw new Error('no mesh')
    const made = { coordinates: [...mesh.value.points], corners: [...mesh.value.triangles] }
    const fine = finely(rebuilt)
    const far = straysBetween(made, fine, rebuilt, 400)
    expect(Math.max(far.made, far.exact)).toBeLessThan(farthestStray + 0.005)
    expect(withManifolds([made, fine], apart)).toBeLessThan(0.02)
    // Sizes are written to a thousandth of a millimetre or a ten-thousandth of an inch.
    expect(Math.abs(exactly(rebuilt).volume / design.volume('arbor').volume - 1)).toBeLessThan(3e-4)
  })

  it('are none too many and none too few: without any one of them, or with it changed, it is another arbor or none', () => {
    const right = essentials(dimensions, unit)!
    expect(dimensions.length).toBeGreaterThan(4)
    for (const one of dimensions) {
      const others = dimensions.filter((d) => d !== one)
      for (const changed of [others, [...others, { ...one, text: altered(one.text) }]]) {
        const found = essentials(changed, unit)
        if (found?.length === right.length)
          expect(Math.max(...found.map((v, i) => Math.abs(v - right[i]!))), one.name).toBeGreaterThan(0.02)
      }
    }
  })
})

/** Every size that makes the metal; nothing where the dimensions make no arbor. */
function essentials(written: readonly WrittenSize[], unit: 'mm' | 'in'): readonly number[] | undefined {
  try {
    const { outline, hole, flat } = rebuiltArbor(written, unit)
    return [hole, flat, ...outline.flat()]
  } catch (error) {
    if (error instanceof SizeFault) return undefined
    throw error
  }
}

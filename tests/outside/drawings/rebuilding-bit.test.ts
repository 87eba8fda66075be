import '../brep/kernels.ts'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { styleOf } from '../../../src/drawing/style.ts'
import { bitSheet } from '../../../src/families/fly-cutter-head/sheets/bit-sheet.ts'
import { solidOf } from '../../../src/part/part.ts'
import { meshOf } from '../../../src/solid/mesh.ts'
import { headFrom, templateText } from '../../families/random-heads.ts'
import { exactly, finely } from '../brep/measure.ts'
import { rawBit } from '../brep/raw-bit.ts'
import { type Figures, figuresOf } from '../brep/raw-figures.ts'
import type { RawSet } from '../brep/raw-set.ts'
import { farthestStray, straysBetween } from '../brep/skin-contract.ts'
import { apart, withManifolds } from '../brep/triangles.ts'
import { dimensionsIn } from '../dxf-dimensions.ts'
import { altered } from './altered.ts'
import { dxfOf } from './dxf-of.ts'
import { SizeFault } from './rebuilt-body.ts'
import { SizesRead, type WrittenSize } from './sizes-read.ts'

type Change = [from: string, to: string]
const sets: readonly (readonly [says: string, name: 'parameters' | 'parameters-inch', ...changes: Change[]])[] = [
  ['the metric template', 'parameters'],
  ['the inch template', 'parameters-inch'],
  [
    'a bit of the other hand with every facet leaning, its tip ground back on all three sides',
    'parameters',
    ['rotation: clockwise', 'rotation: anticlockwise'],
    ['reverse: false', 'reverse: true'],
    ['    end-relief: 10 deg', '    end-edge-angle: 8 deg\n    work-side-edge-angle: 5 deg\n    end-relief: 10 deg'],
    ['    leading: 0.6', '    end: 0.8\n    underside: 0.5\n    leading: 0.6'],
  ],
]

/** The bit is drawn in drawings.pdf alone; its sheet, written as a DXF, holds the same sizes. */
const drawn = sets.map(([says, name, ...changes]) => {
  const design = headFrom(name, ...changes)
  const text = changes.reduce((changed, [from, to]) => changed.replace(from, to), templateText(name))
  const dimensions = dimensionsIn(dxfOf(design, bitSheet(design, styleOf())))
  return { says, design, dimensions, head: figuresOf(parse(text) as RawSet), unit: design.units }
})

describe.each(drawn)('the sizes of the bit’s sheet for $says', ({ design, dimensions, head, unit }) => {
  it('are enough to grind the same bit: a B-rep kernel builds it from them alone, set where the head holds it', () => {
    const rebuilt = rawBit({ ...head, bit: { ...head.bit, ...rebuiltBit(dimensions, unit) } })
    const mesh = meshOf(solidOf(design.part('bit')), 0.02, 'bit')
    if (!mesh.ok) throw new Error('no mesh')
    const made = { coordinates: [...mesh.value.points], corners: [...mesh.value.triangles] }
    const fine = finely(rebuilt)
    const far = straysBetween(made, fine, rebuilt, 400)
    expect(Math.max(far.made, far.exact)).toBeLessThan(farthestStray)
    expect(withManifolds([made, fine], apart)).toBeLessThan(0.005)
    expect(Math.abs(exactly(rebuilt).volume / design.volume('bit').volume - 1)).toBeLessThan(3e-4)
  })

  it('are none too many and none too few: without any one of them, or with it changed, it is another bit or none', () => {
    const right = essentials(dimensions, unit)!
    expect(dimensions.length).toBeGreaterThan(8)
    for (const one of dimensions) {
      const others = dimensions.filter((d) => d !== one)
      for (const changed of [others, [...others, { ...one, text: altered(one.text) }]]) {
        const found = essentials(changed, unit)
        if (found) expect(Math.max(...found.map((v, i) => Math.abs(v - right[i]!))), one.name).toBeGreaterThan(0.02)
      }
    }
  })
})

type RebuiltBit = Omit<Figures['bit'], 'overhang' | 'swing'> & { readonly nose: number }

/** The bit as its sizes alone give it; every facet falls away from the tip. Throws `SizeFault` as `SizesRead` does. */
function rebuiltBit(written: readonly WrittenSize[], unit: 'mm' | 'in'): RebuiltBit {
  const sizes = new SizesRead(written, unit)
  const made: RebuiltBit = {
    width: sizes.value('bit.width'),
    height: sizes.value('bit.height'),
    length: sizes.value('bit.length'),
    offLeading: sizes.valueOr0('bit.off-leading'),
    offEnd: sizes.valueOr0('bit.off-end'),
    offUnderside: sizes.valueOr0('bit.off-underside'),
    ground: true,
    groundLength: sizes.value('bit.ground-length'),
    facets: {
      rakeAlong: sizes.valueOr0('bit.rake-along'),
      rakeAcross: sizes.valueOr0('bit.rake-across'),
      endEdge: sizes.valueOr0('bit.end-edge-angle'),
      endRelief: sizes.valueOr0('bit.end-relief'),
      workSideEdge: sizes.valueOr0('bit.work-side-edge-angle'),
      workSideRelief: sizes.valueOr0('bit.work-side-relief'),
    },
    // Stoned on afterwards, no metal of the model.
    nose: sizes.valueOr0('bit.nose-radius'),
  }
  sizes.done()
  return made
}

/** Every size that makes the metal; nothing where the sizes make no bit. */
function essentials(written: readonly WrittenSize[], unit: 'mm' | 'in'): readonly number[] | undefined {
  try {
    const { ground: _, facets, ...lengths } = rebuiltBit(written, unit)
    return [...Object.values(lengths), ...Object.values(facets)]
  } catch (error) {
    if (error instanceof SizeFault) return undefined
    throw error
  }
}

import { describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { headVolumeOf } from '../../src/families/fly-cutter-head/engineering/head-volume.ts'
import { bitMassOf, massItemsOf } from '../../src/families/fly-cutter-head/engineering/mass.ts'
import { forRandomHeads, headFrom } from './random-heads.ts'

type Change = [string | RegExp, string]

/** First moment about the spindle axis that is wrong, over volume times bar size. */
function fault(design: HeadDesign): number {
  const quick = headVolumeOf(design)
  const exact = design.volume('body')
  const off = [0, 1].map((k) => quick.centroid[k]! * quick.volume - exact.centroid[k]! * exact.volume)
  return Math.hypot(...off) / (exact.volume * design.parameters.stock.size)
}

describe('volume and centroid of a head for its balance', () => {
  it.each([
    ['with a vent hole and a flat bottom', []],
    [
      'with a drill point',
      [
        ['bottom: flat', 'bottom: drill-point'],
        ['depth: 24', 'depth: 21'],
      ],
    ],
    [
      'with a drill point and a wide vent',
      [
        ['bottom: flat', 'bottom: drill-point\n  vent-size: 4'],
        ['depth: 24', 'depth: 21'],
      ],
    ],
    ['without chamfer and vent', [['vent: hole', 'vent: none\n  chamfer: 0']]],
    [
      'with screws from the other side, turning the other way',
      [
        ['side: leading', 'side: trailing'],
        ['rotation: clockwise', 'rotation: anticlockwise'],
      ],
    ],
  ] as [string, Change[]][])('are exact %s', (_, changes) => {
    const design = headFrom('parameters', ...changes)
    const [quick, exact] = [headVolumeOf(design), design.volume('body')]
    expect(quick.volume / exact.volume).toBeCloseTo(1, 8)
    for (const k of [0, 1, 2] as const) expect(quick.centroid[k]).toBeCloseTo(exact.centroid[k], 6)
  })

  it('are within 2e-4 of the bar for any head, broken through or not', () => {
    forRandomHeads(60, (design) => {
      if (design.volume('body').volume < 1) return
      expect(fault(design)).toBeLessThan(2e-4)
    })
  })
})

describe('masses of arbor, bit and set screws', () => {
  it('are those of the part model, to what its own volumes are good for', () => {
    forRandomHeads(40, (design) => {
      const [, arbor, ...others] = massItemsOf(design)
      expect(arbor!.mass / design.mass('arbor')).toBeCloseTo(1, 4)
      for (const k of [0, 1] as const) {
        expect(arbor!.centroid[k]).toBeCloseTo(design.volume('arbor').centroid[k], 3)
      }
      expect(bitMassOf(design).mass / design.mass('bit')).toBeCloseTo(1, 9)
      const screws = design.screwParts.map((p) => [p.id, design.volume(p.id).centroid] as const)
      screws.forEach(([id, centroid], i) => {
        const item = others[i + 1]!
        expect(item.mass / design.mass(id)).toBeCloseTo(1, 6)
        for (const k of [0, 1, 2] as const) expect(item.centroid[k]).toBeCloseTo(centroid[k], 6)
      })
    })
  })
})

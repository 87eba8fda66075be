import { describe, expect, it } from 'vitest'
import { facetsToGrind } from '../../../src/mechanics/angles/facets-to-grind.ts'
import { middleOf, suitableAngles } from '../../../src/mechanics/angles/wanted-angles.ts'
import type { WorkMaterialRow } from '../../../src/tables/work-materials.ts'
import { deg, faults, good, level } from './any-bit.ts'

const at = (degrees: number) => ({ low: degrees * deg, high: degrees * deg })
const softMetal: WorkMaterialRow = {
  name: 'soft-metal',
  title: 'A row for this test, figures invented so that no two are alike',
  hssSpeed: { low: 1, high: 2 },
  hssAngles: {
    sideRelief: { low: 10 * deg, high: 12 * deg },
    frontRelief: at(8),
    sideRake: { low: 14 * deg, high: 18 * deg },
    backRake: at(33),
  },
  source: 'invented for the test',
}

describe('lathe angles on a fly cutter', () => {
  it('side rake goes along the bit and back rake across it: the steep back rake does not land on the end edge', () => {
    const suitable = good(suitableAngles(softMetal))
    expect(suitable.radialRake).toEqual(softMetal.hssAngles!.sideRake)
    expect(suitable.axialRake).toEqual(softMetal.hssAngles!.backRake)
    expect(suitable.radialRelief).toEqual(softMetal.hssAngles!.sideRelief)
    expect(suitable.axialRelief).toEqual(softMetal.hssAngles!.frontRelief)
  })

  it('the middle of each range is what is ground on a level slot', () => {
    const wanted = {
      ...middleOf(good(suitableAngles(softMetal))),
      endEdge: { kind: 'as-ground', angle: 0 },
      workSideEdge: { kind: 'as-ground', angle: 0 },
    } as const
    const facets = good(facetsToGrind(wanted, level))
    expect(facets.rakeAlong).toBeCloseTo(16 * deg, 12)
    expect(facets.rakeAcross).toBeCloseTo(33 * deg, 12)
    expect(facets.endRelief).toBeCloseTo(11 * deg, 12)
    expect(facets.workSideRelief).toBeCloseTo(8 * deg, 12)
  })

  it('a material without angles in the table is a problem, not a guess', () => {
    const { hssAngles: _, ...bare } = softMetal
    expect(faults(suitableAngles(bare))).toEqual(['not-in-table hssAngles'])
  })
})

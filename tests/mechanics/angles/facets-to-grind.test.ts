import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anglesInUse } from '../../../src/mechanics/angles/angles-in-use.ts'
import { facetsToGrind, type WantedAngles } from '../../../src/mechanics/angles/facets-to-grind.ts'
import { anyFacets, anySetting, deg, degrees, faults, good, level } from './any-bit.ts'

const wanted: WantedAngles = {
  radialRake: 14 * deg,
  axialRake: 8 * deg,
  radialRelief: 11 * deg,
  axialRelief: 8 * deg,
  endEdge: { kind: 'in-use', angle: 90 * deg },
  workSideEdge: { kind: 'in-use', angle: 4 * deg },
}

describe('what to grind for the angles that are wanted', () => {
  it('angles in use of any bit give back the facets that it was ground with, to 1e-9 rad', () => {
    let worst = 0
    fc.assert(
      fc.property(anyFacets, anySetting, (facets, setting) => {
        const use = good(anglesInUse(facets, setting))
        const again = good(
          facetsToGrind(
            {
              ...use,
              endEdge: { kind: 'in-use', angle: use.cuttingEdgeAngle },
              workSideEdge: { kind: 'in-use', angle: use.minorCuttingEdgeAngle },
            },
            setting,
          ),
        )
        for (const key of Object.keys(facets) as (keyof typeof facets)[]) {
          worst = Math.max(worst, Math.abs(again[key] - facets[key]))
        }
      }),
      { numRuns: 500 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it('so they do when the two edges are left as ground', () => {
    let worst = 0
    fc.assert(
      fc.property(anyFacets, anySetting, (facets, setting) => {
        const use = good(anglesInUse(facets, setting))
        const again = good(
          facetsToGrind(
            {
              ...use,
              endEdge: { kind: 'as-ground', angle: facets.endEdgeAngle },
              workSideEdge: { kind: 'as-ground', angle: facets.workSideEdgeAngle },
            },
            setting,
          ),
        )
        for (const key of Object.keys(facets) as (keyof typeof facets)[]) {
          worst = Math.max(worst, Math.abs(again[key] - facets[key]))
        }
      }),
      { numRuns: 500 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it('wanted angles come out in use, whatever the slot, to 1e-9 rad', () => {
    const wish = fc.record({
      radialRake: degrees(-10, 25),
      axialRake: degrees(-10, 35),
      radialRelief: degrees(3, 15),
      axialRelief: degrees(3, 15),
      cuttingEdgeAngle: degrees(45, 100),
      minorCuttingEdgeAngle: degrees(0, 20),
    })
    fc.assert(
      fc.property(wish, anySetting, ({ cuttingEdgeAngle, minorCuttingEdgeAngle, ...angles }, setting) => {
        const endEdge = { kind: 'in-use', angle: cuttingEdgeAngle } as const
        const workSideEdge = { kind: 'in-use', angle: minorCuttingEdgeAngle } as const
        const facets = good(facetsToGrind({ ...angles, endEdge, workSideEdge }, setting))
        const use = good(anglesInUse(facets, setting))
        for (const key of Object.keys(angles) as (keyof typeof angles)[]) {
          expect(Math.abs(use[key] - angles[key])).toBeLessThan(1e-9)
        }
        expect(Math.abs(use.cuttingEdgeAngle - cuttingEdgeAngle)).toBeLessThan(1e-9)
        expect(Math.abs(use.minorCuttingEdgeAngle - minorCuttingEdgeAngle)).toBeLessThan(1e-9)
      }),
      { numRuns: 300 },
    )
  })

  it('on a level slot on the axis the wanted angles are the ones to grind', () => {
    const endEdge = { kind: 'as-ground', angle: 5 * deg } as const
    const workSideEdge = { kind: 'as-ground', angle: 3 * deg } as const
    const facets = good(facetsToGrind({ ...wanted, endEdge, workSideEdge }, level))
    expect(facets.rakeAlong).toBeCloseTo(14 * deg, 13)
    expect(facets.rakeAcross).toBeCloseTo(8 * deg, 13)
    expect(facets.endEdgeAngle).toBe(5 * deg)
    expect(facets.endRelief).toBeCloseTo(11 * deg, 13)
    expect(facets.workSideEdgeAngle).toBe(3 * deg)
    expect(facets.workSideRelief).toBeCloseTo(8 * deg, 13)
  })

  it('ahead of centre takes more rake and less relief than a slot on the axis', () => {
    const ahead = { ...level, ahead: 3 }
    const [more, plain] = [good(facetsToGrind(wanted, ahead)), good(facetsToGrind(wanted, level))]
    expect(more.rakeAlong).toBeGreaterThan(plain.rakeAlong)
    expect(more.endRelief).toBeLessThan(plain.endRelief)
  })
})

describe('angles that no bit can have', () => {
  const cases: [string, Partial<WantedAngles>, string[]][] = [
    ['a relief of 90°', { radialRelief: 90 * deg }, ['out-of-range radialRelief']],
    ['a rake of 95°', { axialRake: 95 * deg }, ['out-of-range axialRake']],
    ['an end edge along the feed', { endEdge: { kind: 'in-use', angle: 0 } }, ['out-of-range endEdge']],
    [
      'a work-side edge that stands upright',
      { workSideEdge: { kind: 'in-use', angle: 90 * deg } },
      ['out-of-range workSideEdge'],
    ],
    [
      'edges of 150° and 40°',
      { endEdge: { kind: 'in-use', angle: 150 * deg }, workSideEdge: { kind: 'in-use', angle: 40 * deg } },
      ['contradiction endEdge'],
    ],
    [
      '45° of rake with 45° of relief',
      { radialRake: 45 * deg, radialRelief: 45 * deg },
      ['contradiction facets.endRelief'],
    ],
    [
      '50° of axial rake with 45° of relief under the bit',
      { axialRake: 50 * deg, axialRelief: 45 * deg },
      ['contradiction facets.workSideRelief'],
    ],
  ]
  it.each(cases)('%s', (_, change, expected) => {
    expect(faults(facetsToGrind({ ...wanted, ...change }, level))).toEqual(expected)
  })

  it('everything out of range is named together', () => {
    const impossible = { ...wanted, radialRake: 2, axialRelief: -2 }
    expect(faults(facetsToGrind(impossible, level))).toEqual(['out-of-range radialRake', 'out-of-range axialRelief'])
  })

  it('85° of rake on a tip 10° ahead would turn the rake face beyond the bit', () => {
    const setting = { ...level, ahead: 60 * Math.tan(10 * deg) }
    expect(faults(facetsToGrind({ ...wanted, radialRake: 85 * deg }, setting))).toContain('contradiction radialRake')
  })

  it('an end edge that the steep face would turn round, in use or as ground', () => {
    const setting = { ...level, faceAngle: 60 * deg }
    const inUse = { ...wanted, endEdge: { kind: 'in-use', angle: 170 * deg } } as const
    expect(faults(facetsToGrind({ ...inUse, workSideEdge: { kind: 'in-use', angle: 0 } }, setting))).toContain(
      'contradiction endEdge',
    )
    const asGround = { ...wanted, endEdge: { kind: 'as-ground', angle: -40 * deg } } as const
    expect(faults(facetsToGrind(asGround, setting))).toContain('contradiction endEdge')
  })

  it('an underside that the steep face would turn round, in use or as ground', () => {
    const setting = { ...level, faceAngle: 60 * deg }
    const asGround = { ...wanted, workSideEdge: { kind: 'as-ground', angle: 40 * deg } } as const
    expect(faults(facetsToGrind(asGround, setting))).toContain('contradiction workSideEdge')
    const inUse = { ...wanted, workSideEdge: { kind: 'in-use', angle: -60 * deg } } as const
    expect(faults(facetsToGrind(inUse, setting))).toContain('contradiction workSideEdge')
  })

  it('a figure that is no number is the caller’s mistake', () => {
    expect(() => facetsToGrind({ ...wanted, radialRake: Number.NaN }, level)).toThrow(RangeError)
  })
})

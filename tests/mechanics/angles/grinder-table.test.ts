import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dot, scale, type Vec3 } from '../../../src/geometry/vector.ts'
import type { BlankSide } from '../../../src/mechanics/angles/blank-side.ts'
import { facetNormals, unground } from '../../../src/mechanics/angles/facets.ts'
import { type GrinderSetting, grinderSettings } from '../../../src/mechanics/angles/grinder-table.ts'
import { anyFacets, deg } from './any-bit.ts'

/** Which way the sides of a blank look in the face frame when it sits in the head: out along x, into the metal z. */
const inFace = (side: BlankSide, hand: -1 | 1): Vec3 => {
  if (side === 'outer end') return [1, 0, 0]
  if (side === 'inner end') return [-1, 0, 0]
  if (side === 'leading face') return [0, hand, 0]
  if (side === 'trailing face') return [0, -hand, 0]
  return side === 'work side' ? [0, 0, -1] : [0, 0, 1]
}

/**
 * A direction of the bit, in the right-handed face frame, as it looks on the grinder: x to the right of someone facing
 * the wheel, y to the wheel, z up. The bit is laid down, turned with the table's guide, then tilted with the table.
 */
function onGrinder(setting: GrinderSetting, hand: -1 | 1, v: Vec3): Vec3 {
  const forward = inFace(setting.towardsWheel, hand)
  const up = inFace(setting.up, hand)
  const right: Vec3 = [
    forward[1] * up[2] - forward[2] * up[1],
    forward[2] * up[0] - forward[0] * up[2],
    forward[0] * up[1] - forward[1] * up[0],
  ]
  const [x, y, z] = [dot(v, right), dot(v, forward), dot(v, up)]
  const [sinS, cosS] = [Math.sin(setting.swivel), Math.cos(setting.swivel)]
  const turned: Vec3 = [x * cosS - y * sinS, x * sinS + y * cosS, z]
  const [sinT, cosT] = [Math.sin(setting.tilt), Math.cos(setting.tilt)]
  return [turned[0], turned[1] * cosT - turned[2] * sinT, turned[1] * sinT + turned[2] * cosT]
}

describe('the bit on the grinder’s table', () => {
  it('turned and tilted as said, each facet stands flat against the wheel, for either hand', () => {
    fc.assert(
      fc.property(anyFacets, fc.constantFrom(-1 as const, 1 as const), (facets, hand) => {
        const settings = grinderSettings(facets, hand)
        const normals = facetNormals(facets)
        for (const facet of ['rake', 'end', 'workSide'] as const) {
          const [x, y, z] = normals[facet]
          const [right, wheel, up] = onGrinder(settings[facet], hand, [x, hand * y, -z])
          expect(right).toBeCloseTo(0, 12)
          expect(wheel).toBeCloseTo(1, 12)
          expect(up).toBeCloseTo(0, 12)
        }
      }),
    )
  })

  it('what lies down and what lies up are opposite sides, and the facet’s own side faces the wheel', () => {
    const { rake, end, workSide } = grinderSettings(unground, -1)
    for (const setting of [rake, end, workSide]) {
      expect(inFace(setting.liesOn, -1).map((c) => c + 0)).toEqual(scale(inFace(setting.up, -1), -1).map((c) => c + 0))
      expect(setting.swivel).toBeCloseTo(0, 15)
      expect(setting.tilt).toBeCloseTo(0, 15)
    }
    expect([rake.towardsWheel, end.towardsWheel, workSide.towardsWheel]).toEqual([
      'leading face',
      'outer end',
      'work side',
    ])
  })

  it('relief with a square edge is tilt alone: the wheel side of the table goes up by the relief', () => {
    const { end, workSide, rake } = grinderSettings(
      { ...unground, endRelief: 10 * deg, workSideRelief: 8 * deg, rakeAcross: 12 * deg },
      1,
    )
    expect(end.tilt).toBeCloseTo(10 * deg, 13)
    expect(workSide.tilt).toBeCloseTo(8 * deg, 13)
    expect(rake.tilt).toBeCloseTo(12 * deg, 13)
    for (const setting of [end, workSide, rake]) expect(setting.swivel).toBeCloseTo(0, 13)
  })

  it('an end edge leant back turns the bit of a clockwise tool clockwise on the table, the mirrored bit the other way', () => {
    const facets = { ...unground, endEdgeAngle: 7 * deg, workSideEdgeAngle: 3 * deg, rakeAlong: 15 * deg }
    const clockwise = grinderSettings(facets, -1)
    expect(clockwise.end.swivel).toBeCloseTo(-7 * deg, 13)
    expect(clockwise.workSide.swivel).toBeCloseTo(3 * deg, 13)
    expect(clockwise.rake.swivel).toBeCloseTo(-15 * deg, 13)
    const mirrored = grinderSettings(facets, 1)
    for (const facet of ['rake', 'end', 'workSide'] as const) {
      expect(mirrored[facet].swivel).toBeCloseTo(-clockwise[facet].swivel, 13)
      expect(mirrored[facet].tilt).toBeCloseTo(clockwise[facet].tilt, 13)
    }
  })
})

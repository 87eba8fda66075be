import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { unground } from '../../../src/mechanics/angles/facets.ts'
import { groundBit } from '../../../src/mechanics/angles/ground-bit.ts'
import { heelOf } from '../../../src/mechanics/angles/heel.ts'
import { tipOf } from '../../../src/mechanics/angles/tip-setting.ts'
import { anyBlank, anySetting, blank12, deg, degrees, faults, good, level, usualFacets } from './any-bit.ts'
import { MetalOfTheBit } from './metal-of-the-bit.ts'

const unit = () => fc.double({ min: 0, max: 1, noNaN: true })

describe('the heel behind the end edge', () => {
  it('on a level slot clears by R − √((R − w·tan α)² + w²)', () => {
    const facets = { ...unground, endRelief: 9 * deg }
    const { end } = good(heelOf(good(groundBit(blank12, facets, level)), 1))
    expect(end.clearance).toBeCloseTo(60 - Math.hypot(60 - 12 * Math.tan(9 * deg), 12), 12)
    expect(end.between).toContain('trailing face')
    expect(end.at[1]).toBeCloseTo(12, 12)
  })

  it('without relief the heel of a blank stands out of the tip’s circle', () => {
    const { end } = good(heelOf(good(groundBit(blank12, unground, level)), 1))
    expect(end.clearance).toBeCloseTo(60 - Math.hypot(60, 12), 12)
  })

  it('far enough ahead of centre a blank clears without any relief', () => {
    const { end } = good(heelOf(good(groundBit(blank12, unground, { ...level, ahead: 8 })), 1))
    expect(end.clearance).toBeCloseTo(Math.hypot(60, 8) - Math.hypot(60, 4), 12)
  })

  it('with relief under the bit the heel counts only as high up as the work reaches', () => {
    const facets = { ...unground, endRelief: 12 * deg, workSideRelief: 8 * deg }
    const bit = good(groundBit(blank12, facets, level))
    // At 0.5 mm the work meets the flank only so far back as the underside is lower than that.
    const back = 0.5 / Math.tan(8 * deg)
    const shallow = good(heelOf(bit, 0.5)).end
    expect(shallow.clearance).toBeCloseTo(60 - Math.hypot(60 - back * Math.tan(12 * deg), back), 12)
    const deep = good(heelOf(bit, 4)).end
    expect(deep.clearance).toBeCloseTo(60 - Math.hypot(60 - 12 * Math.tan(12 * deg), 12), 12)
  })

  it('an end edge that leans out on a tilted face is judged by its own circle, not by the tip’s', () => {
    const setting = { ...level, faceAngle: 10 * deg }
    const facets = { ...unground, endRelief: 12 * deg }
    const { end } = good(heelOf(good(groundBit(blank12, facets, setting)), 3))
    // The end flank takes the heel's lowest point inwards, so on the slope it lies above the cut plane.
    const inwards = 12 * Math.tan(12 * deg)
    const up = inwards * Math.sin(10 * deg)
    const { radius } = tipOf(setting)
    const own = Math.hypot(radius - inwards * Math.cos(10 * deg), 12)
    expect(end.clearance).toBeCloseTo(radius + up * Math.tan(10 * deg) - own, 12)
    expect(end.between).toContain('work-side flank')
    // At the top of the cut the end edge itself is outside the tip's circle: that is no fault of the heel.
    const top = new MetalOfTheBit(blank12, facets, setting).edgeRadius(3)
    expect(top).toBeCloseTo(radius + 3 * Math.tan(10 * deg), 12)
  })

  it('no metal within the depth of cut stands further out of its edge’s circle than the figure says', () => {
    const places = fc.array(fc.tuple(unit(), unit(), unit()), { minLength: 300, maxLength: 300 })
    fc.assert(
      fc.property(
        anyBlank,
        usualFacets,
        anySetting,
        degrees(-4, 25),
        places,
        (blank, usual, setting, endRelief, many) => {
          const facets = { ...usual, endRelief }
          const bit = groundBit(blank, facets, setting)
          const heel = bit.ok ? heelOf(bit.value, 1.5) : bit
          if (!heel.ok) return
          const metal = new MetalOfTheBit(blank, facets, setting)
          const worst = Math.min(0, heel.value.end.clearance)
          const place = metal.fromBody(heel.value.end.at)
          expect(metal.holds(place, 2e-6)).toBe(true)
          const here = metal.edgeRadius(metal.heightOf(place)) - metal.radiusOf(place)
          expect(here).toBeCloseTo(heel.value.end.clearance, 8)
          for (const [u, v, w] of many) {
            const p = metal.atHeight(
              blank.groundOffEnd - 2 * blank.width * u * u,
              setting.groundOffLeading - blank.width * v,
              1.5 * w,
            )
            if (!metal.holds(p)) continue
            expect(metal.edgeRadius(1.5 * w) - metal.radiusOf(p)).toBeGreaterThan(worst - 1e-6)
          }
        },
      ),
      { numRuns: 200 },
    )
  })

  it('is as near as a fine scan over the trailing side finds it', () => {
    let worst = 0
    fc.assert(
      fc.property(anySetting, usualFacets, fc.double({ min: 0.3, max: 3, noNaN: true }), (anySet, usual, depth) => {
        const setting = { ...anySet, groundOffLeading: 0.5 }
        const facets = { ...usual, workSideRelief: usual.workSideRelief / 40 }
        const bit = good(groundBit(blank12, facets, setting))
        const heel = heelOf(bit, depth)
        if (!heel.ok) return
        const metal = new MetalOfTheBit(blank12, facets, setting)
        const { end } = heel.value
        if (!end.between.includes('trailing face') || !end.between.includes('end flank')) return
        let least = Infinity
        const y = 0.5 - 12
        for (let i = 0; i <= 4000; i++) {
          const up = (depth * i) / 4000
          // The flank at this height: x = z·tan ε + y·tan α with z on the level plane.
          const t = Math.tan(facets.endEdgeAngle)
          const a = setting.faceAngle
          const x = (y * Math.tan(facets.endRelief) - (up / Math.cos(a)) * t) / (1 + Math.tan(a) * t)
          const p = metal.atHeight(x, y, up)
          if (!metal.holds(p, 1e-9)) continue
          least = Math.min(least, metal.edgeRadius(up) - metal.radiusOf(p))
        }
        worst = Math.max(worst, Math.abs(least - end.clearance))
      }),
      { numRuns: 60 },
    )
    expect(worst).toBeGreaterThan(0)
    expect(worst).toBeLessThan(2e-3)
  })

  it('may be tightest half way up the cut, where the two circles grow alike', () => {
    const setting = { ...level, faceAngle: -3 * deg, along: 25, height: 3.9, ahead: -4, groundOffLeading: 0.5 }
    const blank = { ...blank12, width: 7, length: 40, groundOffEnd: 0.6, groundOffWorkSide: 1.5, groundLength: 10 }
    const facets = {
      rakeAlong: 12 * deg,
      rakeAcross: 25 * deg,
      endEdgeAngle: 0.2 * deg,
      endRelief: 12 * deg,
      workSideEdgeAngle: 1.5 * deg,
      workSideRelief: 1.7 * deg,
    }
    const { end } = good(heelOf(good(groundBit(blank, facets, setting)), 3))
    const metal = new MetalOfTheBit(blank, facets, setting)
    const clearanceAt = (up: number) => {
      const y = 0.5 - 7
      const lean = Math.tan(facets.endEdgeAngle)
      const a = setting.faceAngle
      const x = (y * Math.tan(facets.endRelief) - (up / Math.cos(a)) * lean) / (1 + Math.tan(a) * lean)
      const p = metal.atHeight(x, y, up)
      return metal.holds(p, 1e-9) ? metal.edgeRadius(up) - metal.radiusOf(p) : Infinity
    }
    const scan = Array.from({ length: 30_001 }, (_, i) => clearanceAt(i / 10_000))
    expect(Math.abs(end.clearance - Math.min(...scan))).toBeLessThan(1e-9)
    expect(end.clearance).toBeLessThan(scan.find(Number.isFinite)! - 1e-3)
    expect(end.clearance).toBeLessThan(scan.at(-1)! - 1e-3)
  })

  it('the mirrored hand has the same heel, mirrored', () => {
    fc.assert(
      fc.property(anyBlank, usualFacets, anySetting, (blank, facets, setting) => {
        const both = ([-1, 1] as const).map((hand) => {
          const bit = groundBit(blank, facets, { ...setting, hand })
          return bit.ok ? heelOf(bit.value, 1) : bit
        })
        const [one, other] = both
        if (!one?.ok || !other?.ok) return expect(one?.ok).toBe(other?.ok)
        expect(other.value.end.clearance).toBeCloseTo(one.value.end.clearance, 9)
        expect(other.value.workSide.clearance).toBeCloseTo(one.value.workSide.clearance, 9)
      }),
    )
  })

  it('a depth of cut beyond the end edge is a problem that says how far it reaches', () => {
    const result = heelOf(good(groundBit(blank12, unground, level)), 12.5)
    expect(faults(result)).toEqual(['out-of-range depthOfCut'])
    expect(result.ok ? '' : result.problems[0]!.allowed).toContain('12 mm')
    expect(heelOf(good(groundBit(blank12, unground, level)), 12).ok).toBe(true)
  })

  it('a depth of cut of 0 is the caller’s mistake', () => {
    expect(() => heelOf(good(groundBit(blank12, unground, level)), 0)).toThrow(RangeError)
  })
})

describe('the heel under the bit', () => {
  it('without back relief the underside rubs, at any face angle', () => {
    for (const faceAngle of [0, 7 * deg, 12 * deg]) {
      const bit = good(groundBit(blank12, { ...unground, endRelief: 10 * deg }, { ...level, faceAngle }))
      const { workSide } = good(heelOf(bit, 1))
      // On a tilted face the end flank takes the heel further in, where the underside is higher.
      const inwards = 12 * Math.tan(10 * deg)
      expect(workSide.clearance).toBeCloseTo(inwards * Math.sin(faceAngle), 9)
    }
    const plain = good(heelOf(good(groundBit(blank12, unground, { ...level, faceAngle: 7 * deg })), 1))
    expect(plain.workSide.clearance).toBeCloseTo(0, 12)
    expect(plain.workSide.between).toContain('trailing face')
  })

  it('relief lifts the heel by w·tan α_p on a level slot', () => {
    const facets = { ...unground, workSideRelief: 8 * deg, workSideEdgeAngle: 2 * deg }
    const bit = good(groundBit({ ...blank12, groundLength: 100 }, facets, level))
    expect(good(heelOf(bit, 1)).workSide.clearance).toBeCloseTo(12 * Math.tan(8 * deg), 12)
    // Ground over 20 mm only, the untouched blank behind lies level with the tip.
    const { workSide } = good(heelOf(good(groundBit(blank12, facets, level)), 1))
    expect(workSide.clearance).toBeCloseTo(0, 12)
    expect(workSide.between).toContain('work side')
  })

  it('a short grind leaves the blank behind it below the cut plane: negative, and where', () => {
    const blank = { ...blank12, groundOffWorkSide: 2, groundLength: 8 }
    const bit = good(groundBit(blank, { ...unground, workSideRelief: 8 * deg }, { ...level, faceAngle: 7 * deg }))
    const { workSide } = good(heelOf(bit, 1))
    expect(workSide.clearance).toBeCloseTo(8 * Math.sin(7 * deg) - 2 * Math.cos(7 * deg), 12)
    expect(workSide.between).toContain('end of grinding')
  })

  it('a work-side edge that runs down inwards is itself below the cut plane', () => {
    const blank = { ...blank12, groundOffWorkSide: 3 }
    const facets = { ...unground, workSideEdgeAngle: -4 * deg, workSideRelief: 8 * deg }
    const { workSide } = good(heelOf(good(groundBit(blank, facets, level)), 1))
    expect(workSide.clearance).toBeCloseTo(-3, 9)
    const short = { ...blank, groundLength: 100 }
    const whole = good(heelOf(good(groundBit(short, facets, level)), 1)).workSide
    expect(whole.clearance).toBeCloseTo(-3, 9)
    const cut = good(heelOf(good(groundBit({ ...short, length: 20 }, facets, level)), 1)).workSide
    expect(cut.clearance).toBeCloseTo(-20 * Math.tan(4 * deg), 9)
    expect(cut.between).toContain('rake face')
  })

  it('nothing of the bit lies lower than the figure says', () => {
    const places = fc.array(fc.tuple(unit(), unit(), unit()), { minLength: 300, maxLength: 300 })
    fc.assert(
      fc.property(anyBlank, usualFacets, anySetting, places, (blank, facets, setting, many) => {
        const bit = groundBit(blank, facets, setting)
        const heel = bit.ok ? heelOf(bit.value, 1) : bit
        if (!heel.ok) return
        const metal = new MetalOfTheBit(blank, facets, setting)
        const { workSide } = heel.value
        const place = metal.fromBody(workSide.at)
        expect(metal.holds(place, 2e-6)).toBe(true)
        expect(metal.heightOf(place)).toBeCloseTo(workSide.clearance, 9)
        for (const [u, v, w] of many) {
          const p = [
            blank.groundOffEnd - blank.length * u * u,
            setting.groundOffLeading - blank.width * v,
            blank.groundOffWorkSide - blank.height * w * w,
          ] as const
          if (metal.holds(p)) expect(metal.heightOf(p)).toBeGreaterThan(Math.min(0, workSide.clearance) - 2e-6)
        }
      }),
      { numRuns: 200 },
    )
  })
})

import fc from 'fast-check'
import type { Result } from '../../../src/input/problem.ts'
import type { GroundFacets } from '../../../src/mechanics/angles/facets.ts'
import type { BitBlank } from '../../../src/mechanics/angles/ground-bit.ts'
import type { TipSetting } from '../../../src/mechanics/angles/tip-setting.ts'

export const deg = Math.PI / 180

/** In steps of a thousandth: far finer than a shop works, and no angle of 1e-8° that is neither there nor not. */
const real = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((n) => n / 1000)
export const degrees = (min: number, max: number) => real(min, max).map((angle) => angle * deg)

/** Any head that a shop would make, and some that it would not: the tip well out, the slot ahead of or behind centre. */
export const anySetting: fc.Arbitrary<TipSetting> = fc.record({
  hand: fc.constantFrom(-1 as const, 1 as const),
  faceAngle: degrees(-5, 25),
  depthOnAxis: real(20, 60),
  along: real(25, 120),
  height: real(-4, 4),
  ahead: real(-8, 8),
  groundOffLeading: real(0, 4),
})

/** Facets that leave a sound corner, with every angle on both sides of 0. */
export const anyFacets: fc.Arbitrary<GroundFacets> = fc.record({
  rakeAlong: degrees(-15, 25),
  rakeAcross: degrees(-15, 36),
  endEdgeAngle: degrees(-20, 25),
  endRelief: degrees(-4, 18),
  workSideEdgeAngle: degrees(-15, 18),
  workSideRelief: degrees(-4, 18),
})

/** Facets as they are ground in earnest: every relief and rake positive. */
export const usualFacets: fc.Arbitrary<GroundFacets> = fc.record({
  rakeAlong: degrees(0, 25),
  rakeAcross: degrees(0, 25),
  endEdgeAngle: degrees(0, 30),
  endRelief: degrees(0, 25),
  workSideEdgeAngle: degrees(0, 15),
  workSideRelief: degrees(0, 20),
})

export const anyBlank: fc.Arbitrary<BitBlank> = fc.record({
  width: real(6, 20),
  height: real(6, 20),
  length: real(40, 120),
  groundOffEnd: real(0, 3),
  groundOffWorkSide: real(0, 2),
  groundLength: real(8, 30),
})

/** A level slot on the axis, tip 60 mm out. */
export const level: TipSetting = {
  hand: -1,
  faceAngle: 0,
  depthOnAxis: 30,
  along: 60,
  height: 0,
  ahead: 0,
  groundOffLeading: 0,
}

/** A 12 mm square blank, 100 mm long, nothing off it. */
export const blank12: BitBlank = {
  width: 12,
  height: 12,
  length: 100,
  groundOffEnd: 0,
  groundOffWorkSide: 0,
  groundLength: 20,
}

export function good<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new Error(JSON.stringify(result.problems, null, 2))
}

/** Codes and paths of the problems, in order; throws where the result is good. */
export function faults<T>(result: Result<T>): string[] {
  if (result.ok) throw new Error(`no problem: ${JSON.stringify(result.value)}`)
  return result.problems.map(({ code, where }) => `${code} ${where.path}`)
}

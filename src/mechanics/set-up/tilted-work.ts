import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

/**
 * The picture of a tilted set-up, a section square to the jaws' length: the finished angled face is level and up, and everything is measured
 * down from it. The work was turned by `tilt`, so that its mounting face, below, leans by the tilt; its axis meets the finished face
 * `depthOnAxis` from the mounting face, along the axis. Across the axis the bar reaches half of `across` either way; the jaws hold two flats that
 * are parallel to this section, each `flat` long across the axis, half of it either way (0: a round or an edge). A point x across the axis on the mounting face lies
 * depthOnAxis·cos a + x·sin a below the finished face.
 */
export interface TiltedWork {
  /** mm, above 0. */
  readonly depthOnAxis: number
  /** Size of the bar in the direction of the tilt, mm, above 0. */
  readonly across: number
  /** Length of a gripped flat in that direction, mm, 0 to `across`. */
  readonly flat: number
  /** rad, 0 or more, below π/2. */
  readonly tilt: number
}

/** Heights of tilted work, mm. */
export interface TiltedHeights {
  /** Lowest place, the mounting face's edge on the low side, below the finished face. */
  readonly lowest: number
  /** Where a gripped flat ends on its shorter side, below the finished face: no jaw holds by less than down to there. */
  readonly flatEnd: number
  /** Depth of the wedge that comes off before the face is clean. */
  readonly wedge: number
}

/**
 * lowest h·cos a + (c/2)·sin a, flat's end h·cos a − (l/2)·sin a, wedge c·sin a. Problems: figures outside the ranges of `TiltedWork`.
 */
export function tiltedHeights({ depthOnAxis: h, across: c, flat, tilt }: TiltedWork): Result<TiltedHeights> {
  const faults = new InputFaults()
  faults.keeps('depthOnAxis', h, 'length', { above: 0 })
  if (faults.keeps('across', c, 'length', { above: 0 })) faults.keeps('flat', flat, 'length', { min: 0, max: c })
  faults.keeps('tilt', tilt, 'angle', { min: 0, below: Math.PI / 2 })
  return faults.result(() => ({
    lowest: h * Math.cos(tilt) + (c / 2) * Math.sin(tilt),
    flatEnd: h * Math.cos(tilt) - (flat / 2) * Math.sin(tilt),
    wedge: c * Math.sin(tilt),
  }))
}

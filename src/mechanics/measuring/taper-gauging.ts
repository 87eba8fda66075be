import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/** A cone as it was measured: half its angle, rad, and one diameter. */
export interface MeasuredTaper<Name extends string> {
  readonly halfAngle: Measured<Name>
  /** Diameter where the picture says, mm. */
  readonly diameter: Measured<Name>
}

/** Change of diameter over length: 2·tan of the half angle. An inch a foot is 1/12. */
export const taperRatio = (halfAngle: number): number => 2 * Math.tan(halfAngle)

/**
 * An outside taper standing on its small end on a plate. Two equal rollers lie on the plate against it, opposite each other, and a micrometer
 * measures over them (`low`); then both lie on equal stacks of blocks (`high`). The rollers' middles move apart with the cone: tan β = (high − low)/(2·blocks). A roller
 * of radius r on the plate has its middle r above it and r from the cone's line: R₀ + r·tan β + r/cos β from the axis. So the diameter on the plate is
 * D₀ = low − d(1 + tan β + 1/cos β). All mm.
 *
 * Problems: rollers and blocks that are not above 0, a high reading below the low one, a small end that is no cone (D₀ ≤ 0).
 */
export function taperOverRollers(input: {
  readonly roller: number
  readonly blocks: number
  readonly low: number
  readonly high: number
}): Result<MeasuredTaper<'roller' | 'blocks' | 'low' | 'high'>> {
  const { roller, blocks, low, high } = input
  const faults = new InputFaults()
  const whole = [
    faults.keeps('roller', roller, 'length', { above: 0 }),
    faults.keeps('blocks', blocks, 'length', { above: 0 }),
    faults.keeps('high', high, 'length', { min: low }),
  ].every((kept) => kept)
  const tan = (high - low) / (2 * blocks)
  const sec = Math.sqrt(1 + tan * tan)
  const over = 1 + tan + sec
  if (whole) faults.keeps('low', low, 'length', { above: roller * over })
  return faults.result(() => {
    const perTan = 1 / (1 + tan * tan)
    // d(tan + sec)/d tan = 1 + sin.
    const onDiameter = -roller * (1 + tan / sec)
    const dTan = { low: -1 / (2 * blocks), high: 1 / (2 * blocks), blocks: -tan / blocks }
    return {
      halfAngle: {
        size: Math.atan(tan),
        slopes: { roller: 0, low: perTan * dTan.low, high: perTan * dTan.high, blocks: perTan * dTan.blocks },
      },
      diameter: {
        size: low - roller * over,
        slopes: {
          roller: -over,
          low: 1 + onDiameter * dTan.low,
          high: onDiameter * dTan.high,
          blocks: onDiameter * dTan.blocks,
        },
      },
    }
  })
}

/** What a micrometer shows over two rollers of the picture of `taperOverRollers`, mm, lying `height` above the plate (0 or more). */
export function overRollers(taper: {
  readonly halfAngle: number
  /** On the plate, mm. */
  readonly diameter: number
  readonly roller: number
  readonly height: number
}): number {
  const { halfAngle, diameter, roller, height } = taper
  if (!(Math.abs(halfAngle) < Math.PI / 2 && diameter > 0 && roller > 0 && height >= 0)) {
    throw new RangeError(`rollers of ${roller} mm, ${height} mm up a taper of ${diameter} mm`)
  }
  const tan = Math.tan(halfAngle)
  return diameter + 2 * height * tan + roller * (1 + tan + 1 / Math.cos(halfAngle))
}

/**
 * An outside taper pushed into two rings, one after the other or together: bores `large` and `small` with sharp mouths, the planes of
 * the mouths `apart`. tan β = (large − small)/(2·apart); the diameter is that at the large ring's mouth. All mm.
 *
 * Problems: a small bore that is not above 0, a large one not above it, planes that are not apart.
 */
export function taperByRings({
  large,
  small,
  apart,
}: {
  readonly large: number
  readonly small: number
  readonly apart: number
}): Result<MeasuredTaper<'large' | 'small' | 'apart'>> {
  const faults = new InputFaults()
  if (faults.keeps('small', small, 'length', { above: 0 })) faults.keeps('large', large, 'length', { above: small })
  faults.keeps('apart', apart, 'length', { above: 0 })
  return faults.result(() => {
    const tan = (large - small) / (2 * apart)
    const per = 1 / (1 + tan * tan)
    return {
      halfAngle: {
        size: Math.atan(tan),
        slopes: { large: per / (2 * apart), small: -per / (2 * apart), apart: (-per * tan) / apart },
      },
      diameter: { size: large, slopes: { large: 1, small: 0, apart: 0 } },
    }
  })
}

/**
 * A tapered hole, wide end up, and two balls dropped in, the small one first by itself, then the large one. `smallTop` and `largeTop`: depth of
 * each ball's top below the mouth (negative: it stands proud). The middles lie c = top + r below the mouth, and both touch the cone: sin β = (R − r)/(c_small −
 * c_large). The diameter is that of the mouth: 2(R/cos β + c_large·tan β). All mm.
 *
 * Problems: a small ball that is not above 0, a large one not above it, depths at which no cone touches both.
 */
export function taperByBalls({
  large,
  small,
  largeTop,
  smallTop,
}: {
  readonly large: number
  readonly small: number
  readonly largeTop: number
  readonly smallTop: number
}): Result<MeasuredTaper<'large' | 'small' | 'largeTop' | 'smallTop'>> {
  const faults = new InputFaults()
  const radii = (large - small) / 2
  const apart = smallTop + small / 2 - (largeTop + large / 2)
  const whole =
    faults.keeps('small', small, 'length', { above: 0 }) && faults.keeps('large', large, 'length', { above: small })
  faults.keeps('largeTop', largeTop, 'length', {})
  if (whole) faults.keeps('smallTop', smallTop, 'length', { above: largeTop + large - small })
  return faults.result(() => {
    const sin = radii / apart
    const cos = Math.sqrt(1 - sin * sin)
    const tan = sin / cos
    const centre = largeTop + large / 2
    // d sin of each: radii and distance both change with the balls.
    const dSin = {
      large: (0.5 + sin / 2) / apart,
      small: (-0.5 - sin / 2) / apart,
      largeTop: sin / apart,
      smallTop: -sin / apart,
    }
    const per = 1 / cos
    // Mouth: 2(R/cos β + c·tan β); d/dβ = 2(R·sin β + c)/cos² β.
    const onMouth = ((2 * ((large / 2) * sin + centre)) / (cos * cos)) * per
    return {
      halfAngle: {
        size: Math.asin(sin),
        slopes: {
          large: per * dSin.large,
          small: per * dSin.small,
          largeTop: per * dSin.largeTop,
          smallTop: per * dSin.smallTop,
        },
      },
      diameter: {
        size: 2 * (large / 2 / cos + centre * tan),
        slopes: {
          large: 1 / cos + tan + onMouth * dSin.large,
          small: onMouth * dSin.small,
          largeTop: 2 * tan + onMouth * dSin.largeTop,
          smallTop: onMouth * dSin.smallTop,
        },
      },
    }
  })
}

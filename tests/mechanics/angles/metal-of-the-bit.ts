import type { Vec3 } from '../../../src/geometry/vector.ts'
import type { GroundFacets } from '../../../src/mechanics/angles/facets.ts'
import type { BitBlank } from '../../../src/mechanics/angles/ground-bit.ts'
import type { TipSetting } from '../../../src/mechanics/angles/tip-setting.ts'

/**
 * The bit a second time, from the equations of its facets as a machinist would check a point: no plane, no corner. mm.
 */
export class MetalOfTheBit {
  private readonly sin: number
  private readonly cos: number
  constructor(
    private readonly blank: BitBlank,
    private readonly facets: GroundFacets,
    private readonly setting: TipSetting,
  ) {
    this.sin = Math.sin(setting.faceAngle)
    this.cos = Math.cos(setting.faceAngle)
  }

  /** Whether a point of the bit's own frame, tip at 0, lies in the metal or within `slack` mm of it. */
  holds([x, y, z]: Vec3, slack = 0): boolean {
    const { width, height, length, groundOffEnd, groundOffWorkSide, groundLength } = this.blank
    const g = this.setting.groundOffLeading
    const inBlank =
      x <= groundOffEnd + slack &&
      x >= groundOffEnd - length - slack &&
      y <= g + slack &&
      y >= g - width - slack &&
      z <= groundOffWorkSide + slack &&
      z >= groundOffWorkSide - height - slack
    if (!inBlank || x <= -groundLength + slack) return inBlank
    const f = this.facets
    return (
      y <= x * Math.tan(f.rakeAlong) + z * Math.tan(f.rakeAcross) + slack &&
      x <= z * Math.tan(f.endEdgeAngle) + y * Math.tan(f.endRelief) + slack &&
      z <= x * Math.tan(f.workSideEdgeAngle) + y * Math.tan(f.workSideRelief) + slack
    )
  }

  /** The point at x, y of the bit's own frame that is `up` mm above the tip. */
  atHeight(x: number, y: number, up: number): Vec3 {
    return [x, y, -(up + x * this.sin) / this.cos]
  }

  heightOf([x, , z]: Vec3): number {
    return -x * this.sin - z * this.cos
  }

  radiusOf([x, y, z]: Vec3): number {
    const { along, height, ahead, groundOffLeading } = this.setting
    const out = along * this.cos + height * this.sin + x * this.cos - z * this.sin
    return Math.hypot(out, ahead - groundOffLeading + y)
  }

  /** Radius of the end edge `up` mm above the tip: the edge solved from the two equations, z given. */
  edgeRadius(up: number): number {
    const f = this.facets
    const [A, C] = [Math.tan(f.rakeAlong), Math.tan(f.rakeAcross)]
    const [T, E] = [Math.tan(f.endRelief), Math.tan(f.endEdgeAngle)]
    // x = zE + yT and y = xA + zC, per unit of z.
    const x = (E + C * T) / (1 - A * T)
    const y = x * A + C
    const z = up / (-x * this.sin - this.cos)
    return this.radiusOf([x * z, y * z, z])
  }

  /** A point of the body frame in the bit's own. */
  fromBody([X, Y, Z]: Vec3): Vec3 {
    const { along, height, ahead, groundOffLeading, depthOnAxis, hand } = this.setting
    const dx = X - (along * this.cos + height * this.sin)
    const dz = Z - (-depthOnAxis - along * this.sin + height * this.cos)
    return [dx * this.cos - dz * this.sin, hand * Y - (ahead - groundOffLeading), -dx * this.sin - dz * this.cos]
  }
}

import { directionFrom, type Frame } from '../../geometry/frame.ts'
import type { Vec3 } from '../../geometry/vector.ts'

/** How the bit sits in the head and where its tip stands. mm and rad. */
export interface TipSetting {
  /** Motion at +X of the body is along `hand`·Y: −1 clockwise, +1 anticlockwise, seen from the spindle. */
  readonly hand: -1 | 1
  /** Tilt of the angled face, down towards the bit side; between −π/2 and π/2. */
  readonly faceAngle: number
  /** Mounting face to angled face on the spindle axis. */
  readonly depthOnAxis: number
  /** x of the tip in the face frame: down the slope, from the axis outwards. */
  readonly along: number
  /** z of the tip in the face frame, into the metal: slot depth − bit height + what is ground off the underside. */
  readonly height: number
  /** The slot's leading wall ahead of the axis in the direction of motion; negative behind. */
  readonly ahead: number
  /** Ground off the leading face at the tip, ≥ 0. */
  readonly groundOffLeading: number
}

/** The tip in the body frame, with the directions that angles in use are measured in. */
export interface Tip {
  readonly point: Vec3
  /** Radius the tip runs on, mm; the swing is twice that. */
  readonly radius: number
  /** Angle of the tip ahead of the radius along +X, rad: asin((e − g)/R). */
  readonly lead: number
  /** Unit vectors at the tip: radially outward, in the direction of motion, up the spindle axis. */
  readonly outward: Vec3
  readonly motion: Vec3
  readonly up: Vec3
  /**
   * The bit's own frame at the tip: x outward along the bit, y in the direction of motion, z towards the work. It is
   * left-handed when the tool turns anticlockwise, so components are mapped, never rotated.
   */
  readonly bit: Frame
}

/**
 * The tip that follows from a setting. Throws RangeError where a figure is not finite, the face is upright, `hand` is
 * not ±1, more than nothing is added to the leading face, or the tip does not stand on the bit side of the axis.
 */
export function tipOf(setting: TipSetting): Tip {
  const { hand, faceAngle, depthOnAxis, along, height, ahead, groundOffLeading } = setting
  if (hand !== 1 && hand !== -1) throw new RangeError(`hand: ${hand} must be 1 or −1`)
  for (const value of [faceAngle, depthOnAxis, along, height, ahead, groundOffLeading]) {
    if (!Number.isFinite(value)) throw new RangeError(`tip: ${value} is not a finite number`)
  }
  if (Math.abs(faceAngle) >= Math.PI / 2) throw new RangeError(`face angle: ${faceAngle} rad stands upright`)
  if (groundOffLeading < 0) throw new RangeError(`ground off the leading face: ${groundOffLeading} mm is below 0`)
  const [sin, cos] = [Math.sin(faceAngle), Math.cos(faceAngle)]
  const out = along * cos + height * sin
  if (!(out > 0)) throw new RangeError(`tip: ${out} mm along X is not on the bit side of the axis`)
  const lead = ahead - groundOffLeading
  const radius = Math.hypot(out, lead)
  const point: Vec3 = [out, hand * lead, -depthOnAxis - along * sin + height * cos]
  const outward: Vec3 = [out / radius, (hand * lead) / radius, 0]
  return {
    point,
    radius,
    lead: Math.atan2(lead, out),
    outward,
    motion: [-hand * outward[1], hand * outward[0], 0],
    up: [0, 0, 1],
    bit: { origin: point, x: [cos, 0, -sin], y: [0, hand, 0], z: [-sin, 0, -cos] },
  }
}

/** A direction with components in the bit's own frame, in the body frame. */
export const bitDirection = (tip: Tip, v: Vec3): Vec3 => directionFrom(tip.bit, v)

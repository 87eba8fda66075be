import { type Frame, worldFrame } from '../../geometry/frame.ts'

/** Origin where the spindle axis meets the mounting face, +Z up into the spindle, +X the bit side. */
export const bodyFrame: Frame = worldFrame

/**
 * The face frame F, in the body frame: origin where the axis meets the angled face, x down the slope to the bit side,
 * z into the metal. `angle` in rad, `depth` on the axis in mm.
 */
export const faceFrame = (angle: number, depth: number): Frame => ({
  origin: [0, 0, -depth],
  x: [Math.cos(angle), 0, -Math.sin(angle)],
  y: [0, 1, 0],
  z: [Math.sin(angle), 0, Math.cos(angle)],
})

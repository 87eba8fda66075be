import type { Frame } from '../../../geometry/frame.ts'
import type { Layout } from '../layout.ts'

/**
 * Frames that the readout shows, in the body frame; z counts down into the metal in all of them, as the depth of a cut does, and
 * x to the bit side. Not all are right-handed: which way y counts is in the words of the set-up.
 */

/** Mounting face up: zero on the bore axis at the mounting face. */
export const mountingFrame: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] }

/** Laid down: zero on the bore axis at the mounting face, y away from the mounting face, z zero at the step wall. */
export const laidFrame = ({ step }: Layout): Frame => ({
  origin: [0, step.wall, 0],
  x: [1, 0, 0],
  y: [0, 0, -1],
  z: [0, -step.towards, 0],
})

import type { Frame } from '../geometry/frame.ts'
import { worldFrame } from '../geometry/frame.ts'
import type { Part } from './part.ts'

/** A part put in its place: the part's own frame, expressed in the scene. */
export interface PlacedPart {
  readonly part: Part
  readonly at: Frame
}

/** Parts in place. The scene's frame is the body frame: origin where the spindle axis meets the mounting face, +Z up
 * the axis into the spindle, +X the side to which the bit reaches. */
export interface Scene {
  readonly parts: readonly PlacedPart[]
}

export const inPlace = (part: Part): PlacedPart => ({ part, at: worldFrame })

import type { Vec3 } from '../../geometry/vector.ts'

/** Sides of the blank, as the bit sits in the head: the back lies on the slot's floor. */
export type BlankSide = 'leading face' | 'trailing face' | 'outer end' | 'inner end' | 'work side' | 'back'

/** Directions in the bit's own frame that the sides look in. */
export const sideDirection: Readonly<Record<BlankSide, Vec3>> = {
  'outer end': [1, 0, 0],
  'inner end': [-1, 0, 0],
  'leading face': [0, 1, 0],
  'trailing face': [0, -1, 0],
  'work side': [0, 0, 1],
  back: [0, 0, -1],
}

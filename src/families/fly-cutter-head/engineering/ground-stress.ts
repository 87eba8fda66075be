import type { HeadDesign } from '../design.ts'
import { groundRunOf, groundSectionOf } from './angles.ts'
import { cuttingOf } from './cutting.ts'

/**
 * Bending stress, MPa, that the main cutting force makes where the ground part of the bit begins: force times the ground
 * length over what is left of the section. Undefined where no cutting force is published or nothing is left.
 */
export function groundStressOf(design: HeadDesign): number | undefined {
  const { modulus } = groundSectionOf(design)
  const { load } = cuttingOf(design)
  return load && modulus > 0 ? (load.force.main * groundRunOf(design)) / modulus : undefined
}

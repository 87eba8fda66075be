import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { angles } from './angles.ts'
import { edges } from './angles-edge.ts'
import { grind } from './angles-grind.ts'
import { heel } from './angles-heel.ts'
import { slotSide } from './angles-slot.ts'

/** Everything that is checked about the bit's angles and how it is ground. */
export const angleRules: readonly Rule<HeadDesign>[] = [slotSide, angles, heel, edges, grind]

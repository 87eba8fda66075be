import type { Rule } from '../../../checks/rule.ts'
import { bodyClearance } from '../../../checks/rules/body-clearance.ts'
import { hand } from '../../../checks/rules/hand.ts'
import { hubWall } from '../../../checks/rules/hub-wall.ts'
import { jawHold } from '../../../checks/rules/jaw-hold.ts'
import { screwsReach } from '../../../checks/rules/screws-reach.ts'
import { spigotSeat } from '../../../checks/rules/spigot-seat.ts'
import { stockLength } from '../../../checks/rules/stock-length.ts'
import { swing } from '../../../checks/rules/swing.ts'
import { walls } from '../../../checks/rules/walls.ts'
import type { HeadDesign } from '../design.ts'
import { bitInSlot } from './bit-in-slot.ts'
import { screwPlace } from './screw-place.ts'
import { standardSizes } from './standard-sizes.ts'

/** Every check of a fly-cutter head. */
export const headRules: readonly Rule<HeadDesign>[] = [
  hand,
  swing,
  walls,
  screwsReach,
  bitInSlot,
  screwPlace,
  bodyClearance,
  stockLength,
  hubWall,
  spigotSeat,
  jawHold,
  standardSizes,
]

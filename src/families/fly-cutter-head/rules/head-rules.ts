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
import { advisedSpeed } from './advised-speed.ts'
import { angleRules } from './angle-rules.ts'
import { balance } from './balance.ts'
import { bitClamping } from './bit-clamping.ts'
import { bitInSlot } from './bit-in-slot.ts'
import { cut } from './cut.ts'
import { finish } from './finish.ts'
import { fitAssembly } from './fit-assembly.ts'
import { fitCatch } from './fit-catch.ts'
import { fitGrip } from './fit-grip.ts'
import { fitStress } from './fit-stress.ts'
import { fitThread } from './fit-thread.ts'
import { neverExceedRule } from './never-exceed.ts'
import { withScrewLevers } from './screw-levers.ts'
import { screwPlace } from './screw-place.ts'
import { screwStrength } from './screw-strength.ts'
import { setUp } from './set-up.ts'
import { shank } from './shank.ts'
import { standardSizes } from './standard-sizes.ts'

/** Every check of a fly-cutter head. */
export const headRules: readonly Rule<HeadDesign>[] = [
  hand,
  swing,
  withScrewLevers(walls),
  withScrewLevers(screwsReach),
  bitInSlot,
  screwPlace,
  bodyClearance,
  stockLength,
  hubWall,
  spigotSeat,
  jawHold,
  setUp,
  fitGrip,
  fitStress,
  fitAssembly,
  fitCatch,
  fitThread,
  shank,
  ...angleRules,
  advisedSpeed,
  cut,
  bitClamping,
  screwStrength,
  finish,
  balance,
  neverExceedRule,
  standardSizes,
]

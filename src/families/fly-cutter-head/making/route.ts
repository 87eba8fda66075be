import type { Operation } from '../../../route/operation.ts'
import { ordered } from '../../../route/order.ts'
import type { HeadDesign } from '../design.ts'
import { arborOperations } from './arbor-operations.ts'
import { balanceOperations } from './balance-operations.ts'
import { boreOperations, squareEnds } from './bore-operations.ts'
import { assemble, deburr, finishTrue, grindBit, inspectHead, measureBit, runningIn } from './finishing.ts'
import { joiningOperations } from './joining-operations.ts'
import { sawHead, sawWedge } from './sawing.ts'
import { screwOperations } from './screw-operations.ts'
import { tiltedOperations } from './tilted-operations.ts'
import { isJoinedFirst } from './tilted-set-up.ts'

/** Every step from bar to running tool, in the order in which they are done. Worked out once. */
export const headRoute = (design: HeadDesign): readonly Operation[] =>
  design.once('route', () => ordered(operationsOf(design)))

function operationsOf(design: HeadDesign): Operation[] {
  const first = isJoinedFirst(design)
  const arbor = arborOperations(design)
  const onEnd = [...boreOperations(design), ...balanceOperations(design)]
  const standing = idsOf(onEnd)
  const joining = joiningOperations(design, [
    ...standing,
    ...idsOf(arbor),
    ...(first ? [] : ['deburr', 'inspect-head']),
  ])
  const wedge = sawWedge(design).map((o) => ({ ...o, needs: [...standing, ...(first ? idsOf(joining) : [])] }))
  const beforeTilt = [...standing, ...idsOf(wedge), ...(first ? idsOf(joining) : [])]
  return [
    sawHead(design),
    ...squareEnds(design),
    ...onEnd,
    ...(first ? [...arbor, ...joining] : []),
    measureBit(design),
    ...wedge,
    ...tiltedOperations(design, beforeTilt),
    ...screwOperations(design),
    deburr(design),
    inspectHead(design),
    ...(first ? [] : [...arbor, ...joining]),
    grindBit(design),
    finishTrue(design, [...idsOf(joining), 'inspect-head']),
    assemble(design, ['true-up', 'grind-bit']),
    ...runningIn(design),
  ]
}

const idsOf = (operations: readonly Operation[]): string[] => operations.map((o) => o.id)

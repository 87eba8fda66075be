import type { BalanceSketch } from '../../../figures/pictures.ts'
import type { Drilling } from '../../../mechanics/balance/drilling.ts'
import { unbalanceForce } from '../../../mechanics/balance/unbalance-force.ts'
import type { HeadDesign } from '../design.ts'
import { balanceOf, drillingFor } from '../engineering/balance.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'
import { barOutline, levelPlane, shadow } from './planes.ts'

export function balanceSketchOf(design: HeadDesign): BalanceSketch {
  const { at, force, mostForce, aim } = balanceOf(design)
  const isNeeded = at.amount > aim
  // Where none is needed, what drilling could do all the same: it raises the speed at which the force is reached.
  const drilling = drillingFor(design, isNeeded ? aim : 0)
  const best = drilling.kind === 'plans' ? drilling.plans[0] : drilling.kind === 'cannot' ? drilling.nearest : undefined
  const plan = best && (isNeeded || best.removes > worthwhile * at.amount) ? best : undefined
  const { notAbove } = neverExceedOf(design)
  return {
    rotation: design.parameters.rotation,
    head: barOutline(design),
    bit: shadow(design.part('bit'), levelPlane(0)),
    unbalance: at.unbalance,
    heavySide: at.heavySide,
    forces: [
      { id: 'force', label: 'force at the speed of the job', force },
      { id: 'force-never-exceed', label: 'at the never-exceed speed', force: unbalanceForce(at.amount, notAbove) },
      { id: 'most-force', label: 'what the spindle may feel', force: mostForce },
    ],
    drilling: plan && {
      holes: plan.centres,
      drill: plan.drill,
      circleRadius: plan.radius,
      depth: plan.depth,
      removes: plan.removes,
      remains: plan.remains,
      does: drilling.kind === 'plans',
    },
    says: wordsOf(drilling, isNeeded, plan !== undefined),
  }
}

/** Holes that nobody has to drill are shown where they take out at least this share (rule of thumb). */
const worthwhile = 0.25

function wordsOf(drilling: Drilling, isNeeded: boolean, isDrawn: boolean): string {
  const notNeeded = 'No drilling is needed at the speed of the job'
  if (drilling.kind === 'not-needed') return `${notNeeded}.`
  if (!isNeeded) {
    return isDrawn
      ? `${notNeeded}; the holes shown would quieten it.`
      : `${notNeeded}, and there is no room for holes that bring much.`
  }
  if (drilling.kind === 'plans') return 'Drilled like this from the mounting face, the force stays within the limit.'
  return drilling.nearest === undefined
    ? 'There is no room to drill: less overhang, a shorter bit, a counter-mass or a lower speed.'
    : 'Drilling alone does not do it: the holes shown bring the most; less overhang, a shorter bit, a counter-mass or a lower speed for the rest.'
}

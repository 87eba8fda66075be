import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import { inGramMillimetres } from '../../../mechanics/balance/unbalance-force.ts'
import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { balanceOf, waysToBalance } from '../engineering/balance.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { shorterReach, slowerCut } from './cut-levers.ts'

/** Whether the spindle stands the unbalance at the speed of the job. */
export const balance: Rule<HeadDesign> = {
  id: 'balance',
  findings(design, only): readonly Finding[] {
    const { at, force, mostForce } = balanceOf(design)
    if (force <= mostForce) return []
    const { units } = design
    const show = (value: number) => written({ value, kind: 'force' }, units)
    const heavy =
      at.heavySide === undefined
        ? ''
        : `, heavy side ${formatAngle(at.heavySide, { decimals: 0 })} from the bit side towards +Y`
    const speed = written({ value: cuttingOf(design).runAt, kind: 'rotation-speed' }, units)
    return [
      {
        id: 'balance',
        level: 'caution',
        text: `The tool is ${formatNumber(inGramMillimetres(at.amount), 0)} g·mm out of balance${heavy}: at ${speed} the spindle feels ${show(force)} at every turn.${only === undefined ? ` ${whatToDo(design)}` : ''}`,
        figure: { value: force, kind: 'force' },
        limit: {
          value: mostForce,
          kind: 'force',
          reason: 'largest unbalance force that the spindle should feel (rule of thumb)',
        },
        levers: [
          ...shorterReach,
          { path: 'bit.length', turn: 'up' },
          { path: 'bit.length', turn: 'down' },
          ...slowerCut,
        ],
      },
    ]
  },
}

/** Drilling where that does it, else the other ways, each with its number. */
function whatToDo(design: HeadDesign): string {
  const { aim, speedLimit } = balanceOf(design)
  const { drilling, lessOverhang, counterMass } = waysToBalance(design, aim)
  const { units } = design
  const show = (value: number) => written(mm(value), units)
  const plan = drilling.kind === 'plans' ? drilling.plans[0] : undefined
  if (plan) {
    const centres = plan.centres.map(([x, y]) => `X ${show(x)} Y ${show(y)}`).join(', ')
    const holes = plan.holes === 1 ? 'one hole' : `${plan.holes} holes`
    return `Drill ${holes} of ${show(plan.drill)} into the mounting face, ${show(plan.depth)} deep, at ${centres}.`
  }
  const least = drilling.kind === 'cannot' ? drilling.nearest : undefined
  const cannot = least
    ? `Drilling the mounting face takes out ${formatNumber(inGramMillimetres(least.removes), 0)} g·mm at the most`
    : 'There is no room to drill the mounting face'
  const ways = [
    ...(lessOverhang.kind === 'reaches' ? [`${show(lessOverhang.less)} less overhang`] : []),
    `a counter-mass of ${written({ value: counterMass.mass, kind: 'mass' }, units)} at ${show(Math.hypot(...counterMass.centroid))} from the axis on the light side`,
    'a second bit opposite the first',
    ...(speedLimit === undefined
      ? []
      : [`no more than ${written({ value: speedLimit, kind: 'rotation-speed' }, units)}`]),
  ]
  return `${cannot}; what helps is ${ways.join(', or ')}.`
}

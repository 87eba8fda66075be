import { pointLength } from '../../../mechanics/measuring/drill-point.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { type Operation, operation } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { balanceOf, waysToBalance } from '../engineering/balance.ts'
import { certain } from '../engineering/certain.ts'
import { isBoredInMill } from './bore-operations.ts'
import { drillFeed, millSpeed } from './cutting-data.ts'
import { asTool, jobberPoint, pecking, roundTool } from './tooling.ts'

/** Holes in the mounting face on the heavy side, where the spindle would feel more than it should and they can cure it. */
export function balanceOperations(design: HeadDesign): Operation[] {
  const { force, mostForce, aim } = balanceOf(design)
  if (force <= mostForce) return []
  const { drilling } = waysToBalance(design, aim)
  const plan = drilling.kind === 'plans' ? drilling.plans[0] : undefined
  if (!plan) return []
  const size = (value: number) => formatLength(value, design.units)
  const tool = roundTool(
    design,
    'drill',
    plan.drill,
    plan.depth + certain(pointLength({ diameter: plan.drill, pointAngle: jobberPoint })),
  )
  const speed = millSpeed(design, {
    of: design.layout.materials.body,
    diameter: plan.drill,
    isDrill: true,
    feedPerTurn: drillFeed(design, plan.drill),
  })
  return [
    operation({
      id: 'balance-drill',
      title: 'Drill for balance',
      setUp: isBoredInMill(design) ? 'mounting' : 'balance',
      machine: 'mill',
      steps: [
        `${plan.holes === 1 ? 'One hole' : `${plan.holes} holes`} ⌀${size(plan.drill)}, full diameter ${size(plan.depth)} deep, on a circle of ${size(2 * plan.radius)}.`,
        ...pecking(plan.depth, plan.drill),
        'Which side is heavy follows from where slot and bit will be: mark the bit side first.',
        'Static balance only: the couple of holes at this end stays.',
      ],
      tool: asTool(design, tool),
      ...(speed && { speed }),
      depth: plan.depth,
      places: plan.centres.map(([x, y], i) => ({ name: `hole ${i + 1}`, x, y, z: plan.depth })),
      why: 'Worked out, so that it need not wait for the tool: once the arbor is in, its shank stands where the drill chuck should go, and once the face is cut the head no longer stands on its end.',
      needs: ['bore-size'],
    }),
  ]
}

import type { Finding, FindingLever } from '../../../checks/finding.ts'
import { type Rule, written } from '../../../checks/rule.ts'
import type { Reserve } from '../../../mechanics/fit/joint.ts'
import type { HeadDesign } from '../design.ts'
import { jointOfHead } from '../engineering/fit.ts'
import { looser } from './fit-levers.ts'

/** Whether head and arbor withstand the fit at its most interference, as though nothing were smoothed. */
export const fitStress: Rule<HeadDesign> = {
  id: 'fit-stress',
  findings(design) {
    const joint = jointOfHead(design)
    if (joint === undefined || joint.most.fullPressure <= 0) return []
    const { most, elastic } = joint
    const { body, arbor } = design.layout.materials
    // A ring yields from its bore outwards; at this pressure the last of the wall gives.
    const yieldsThrough =
      body.yieldStrength !== undefined &&
      most.fullPressure > body.yieldStrength * Math.log(elastic.hubOutside / elastic.diameter)
    return [
      ...failing(design, 'head', body.title, most.hub, yieldsThrough, [
        ...looser(design),
        { path: 'bore.diameter', turn: 'down' },
        { path: 'stock.size', turn: 'up' },
      ]),
      ...failing(design, 'arbor', arbor.title, most.shaft, false, [
        ...looser(design),
        { path: 'arbor.bore-through', turn: 'down' },
      ]),
    ]
  },
}

function failing(
  design: HeadDesign,
  part: 'head' | 'arbor',
  material: string,
  reserve: Reserve,
  yieldsThrough: boolean,
  levers: readonly FindingLever[],
): Finding[] {
  const { fails, stress, limit, factor } = reserve
  const show = (value: number) => written({ value, kind: 'pressure' }, design.units)
  const id = `fit-stress:${part}`
  if (fails === 'unknown' || limit === undefined) {
    const text = `No strength of ${material} is published: whether the ${part} withstands the ${show(stress)} of the tightest fit is not known.`
    return [{ id, level: 'caution', text, figure: { value: stress, kind: 'pressure' }, levers }]
  }
  if (factor === undefined || factor >= 1) return []
  const cracks = fails === 'breaks'
  const bore = part === 'head' ? 'at its bore' : 'at its thinnest'
  const what = cracks
    ? `cracks the ${part}`
    : yieldsThrough
      ? `makes the ${part} yield right through its wall: it stays stretched and holds less`
      : `makes the ${part} yield ${bore}: it presses no harder than at the onset, and does not come out as it went in`
  return [
    {
      id,
      level: cracks || yieldsThrough ? 'stop' : 'caution',
      text: `The tightest fit ${what}: ${show(stress)} in ${material}, which stands ${show(limit)}.`,
      figure: { value: stress, kind: 'pressure' },
      limit: {
        value: limit,
        kind: 'pressure',
        reason: cracks
          ? 'ultimate strength in tension, materials table'
          : 'yield strength by von Mises, materials table',
      },
      levers,
    },
  ]
}

import type { Amount } from '../../../checks/finding.ts'
import type { Figure } from '../../../figures/figure.ts'
import type { DrillPlan } from '../../../mechanics/balance/drilling.ts'
import { inGramMillimetres } from '../../../mechanics/balance/unbalance-force.ts'
import type { HeadDesign } from '../design.ts'
import { type Balance, balanceOf, drillingFor, ringToDrill, waysToBalance } from '../engineering/balance.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'

const massSource =
  'arbor and bit exact, set screws as plain cylinders, head from a skin of few flats (to 0.2 %); static only, the couple stays'
const drillSource = 'cylinder and point of each hole, times its radius; holes in the mounting face, walls respected'
const waySource = 'first moments about the spindle axis; each way for itself'

const figure = (
  id: string,
  label: string,
  kind: Amount['kind'],
  of: (balance: Balance) => number | undefined,
): Figure<HeadDesign> => ({ id, label, kind, source: massSource, of: (d) => of(balanceOf(d)) })

/** What must go so that the spindle feels no more than it should, at the speed of the job; nothing where that is kept. */
const ways = (d: HeadDesign) =>
  d.once('ways to balance', () => {
    const { force, mostForce, aim } = balanceOf(d)
    return force > mostForce ? waysToBalance(d, aim) : undefined
  })

const planned = (
  id: string,
  label: string,
  kind: Amount['kind'],
  of: (plan: DrillPlan) => number,
): Figure<HeadDesign> => ({
  id,
  label,
  kind,
  source: drillSource,
  of(d) {
    const found = ways(d)?.drilling
    return found?.kind === 'plans' ? of(found.plans[0]!) : undefined
  },
})

/** Balance of head, arbor, bit and set screws about the spindle axis, at the setting of the parameters. */
export const balanceFigures: readonly Figure<HeadDesign>[] = [
  figure('balance.unbalance', 'Unbalance, g·mm', 'ratio', (b) => inGramMillimetres(b.at.amount)),
  figure('balance.eccentricity', 'Centre of mass from the spindle axis', 'length', (b) => b.at.eccentricity),
  figure('balance.heavy-side', 'Heavy side, from the bit side towards +Y', 'angle', (b) => b.at.heavySide),
  {
    ...figure('balance.force', 'Unbalance force at the speed of the job', 'force', (b) => b.force),
    limit: (d) => balanceOf(d).mostForce,
    limitIs: 'most',
  },
  {
    ...figure('balance.force-fastest', 'Unbalance force at the never-exceed speed', 'force', () => undefined),
    of: (d) => balanceOf(d).force * (neverExceedOf(d).notAbove / balanceOf(d).runAt) ** 2,
  },
  figure(
    'balance.grade',
    'Balance quality G (ISO 21940-11) at the speed of the job, mm/s; reported, no limit',
    'ratio',
    (b) => b.grade,
  ),
  {
    id: 'balance.drilling-most',
    label: 'Most that drilling the mounting face can take out, g·mm',
    kind: 'ratio',
    source: drillSource,
    of(d) {
      const found = drillingFor(d, 0)
      if (found.kind === 'not-needed') return undefined
      const plan = found.kind === 'plans' ? found.plans[0] : found.nearest
      return inGramMillimetres(plan?.removes ?? 0)
    },
  },
  {
    id: 'balance.ring-inside',
    label: 'Ring that can be drilled on the heavy side, radius from',
    kind: 'length',
    source: 'shoulder or mouth of the bore',
    of: (d) => ringToDrill(d).innerRadius,
  },
  {
    id: 'balance.ring-outside',
    label: 'Ring that can be drilled on the heavy side, radius to',
    kind: 'length',
    source: 'largest circle inside the bar',
    of: (d) => ringToDrill(d).outerRadius,
  },
  {
    id: 'balance.ring-depth',
    label: 'Whole metal below the mounting face there',
    kind: 'length',
    source: 'least depth of angled face, slot, step, screw holes and cross pin within the spread of the holes',
    of: (d) => Math.max(0, ringToDrill(d).depth),
  },
  planned('balance.drill', 'Drill for balance', 'length', (p) => p.drill),
  planned('balance.drill-holes', 'Holes to drill in the mounting face', 'count', (p) => p.holes),
  planned('balance.drill-radius', 'Circle that they lie on, radius', 'length', (p) => p.radius),
  planned('balance.drill-depth', 'Depth of each without the point', 'length', (p) => p.depth),
  planned('balance.drill-remains', 'Unbalance that then remains, g·mm', 'ratio', (p) => inGramMillimetres(p.remains)),
  {
    id: 'balance.less-overhang',
    label: 'Less overhang that would do instead',
    kind: 'length',
    source: waySource,
    of(d) {
      const found = ways(d)?.lessOverhang
      return found?.kind === 'reaches' ? found.less : undefined
    },
  },
  {
    id: 'balance.counter-mass',
    label: 'Counter-mass that would do instead, on the outside of the bar opposite the heavy side',
    kind: 'mass',
    source: waySource,
    of: (d) => ways(d)?.counterMass.mass,
  },
]

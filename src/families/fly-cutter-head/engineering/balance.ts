import { balanceGrade } from '../../../mechanics/balance/balance-grade.ts'
import { type CounterMass, counterMass } from '../../../mechanics/balance/counter-mass.ts'
import { type Drilling, drilling } from '../../../mechanics/balance/drilling.ts'
import { type LessOverhang, lessOverhang } from '../../../mechanics/balance/less-overhang.ts'
import { type StaticBalance, staticBalance } from '../../../mechanics/balance/static-balance.ts'
import { speedForForce, unbalanceForce, unbalanceForForce } from '../../../mechanics/balance/unbalance-force.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from './certain.ts'
import { cuttingOf } from './cutting.ts'
import { joinedLength, pinDiameter } from './fit.ts'
import { bitMassOf, massItemsOf } from './mass.ts'

/** Static balance of head, arbor, bit and set screws about the spindle axis, at the bit setting of the parameters. */
export interface Balance {
  readonly at: StaticBalance
  /** Speed the job runs at, rad/s. */
  readonly runAt: number
  /** N, at that speed; what the spindle may feel of it. */
  readonly force: number
  readonly mostForce: number
  /** Speed at which it feels that, rad/s; undefined for a tool in balance. */
  readonly speedLimit: number | undefined
  /** G of ISO 21940-11 at the speed of the job, mm/s: reported, no limit. */
  readonly grade: number
  /** Unbalance, kg·mm, that gives the largest force at the speed of the job. */
  readonly aim: number
}

/** Balance of a design that holds together. */
export const balanceOf = (design: HeadDesign): Balance =>
  design.once('balance', () => {
    const at = certain(staticBalance(massItemsOf(design)))
    const { runAt } = cuttingOf(design)
    const mostForce = design.parameters.settings.running['unbalance-force']
    return {
      at,
      runAt,
      force: unbalanceForce(at.amount, runAt),
      mostForce,
      speedLimit: speedForForce(at.amount, mostForce),
      grade: balanceGrade(at.eccentricity, runAt),
      aim: unbalanceForForce(mostForce, runAt),
    }
  })

/** What can be done about an unbalance, each for itself. Static only: the couple stays. */
export interface WaysToBalance {
  readonly drilling: Drilling
  readonly lessOverhang: LessOverhang
  readonly counterMass: CounterMass
}

/** Ways to bring the unbalance down to `aim`, kg·mm. */
export function waysToBalance(design: HeadDesign, aim: number): WaysToBalance {
  const { layout } = design
  const { unbalance } = balanceOf(design).at
  const { bit, slot } = layout
  const room = slot.end ? bit.innerEnd - (slot.end.x + slot.end.radius) : Infinity
  return {
    drilling: drillingFor(design, aim),
    lessOverhang: certain(
      lessOverhang({
        unbalance,
        aim,
        bitMass: bitMassOf(design).mass,
        faceAngle: layout.faceAngle,
        most: Math.max(0, Math.min(bit.overhang, room)),
      }),
    ),
    counterMass: certain(
      counterMass({ unbalance, aim, radius: layout.inscribed / 2, density: layout.materials.body.density }),
    ),
  }
}

/** Holes in the mounting face that leave no more than `aim`, kg·mm, or as little as can be. */
export function drillingFor(design: HeadDesign, aim: number): Drilling {
  const { parameters, layout } = design
  const settings = parameters.settings.balance
  const metal = ringToDrill(design)
  if (metal.depth <= 0 || metal.innerRadius >= metal.outerRadius) return { kind: 'cannot', nearest: undefined }
  return certain(
    drilling({
      unbalance: balanceOf(design).at.unbalance,
      aim,
      density: layout.materials.body.density,
      metal,
      drills: drillsOf(design),
      pointAngle: settings['point-angle'],
      leastWall: parameters.settings.walls.other,
      mostHoles: settings['most-holes'],
      halfAngle: settings.spread,
      depthStep: settings['depth-step'],
    }),
  )
}

/** Drills for balancing, mm: those of the parameters, or what every shop has. */
export const drillsOf = ({ parameters: { settings }, units }: HeadDesign): readonly number[] =>
  settings.balance.drills ?? (units === 'in' ? inchDrills : metricDrills)

const metricDrills = [3, 4, 5, 6, 8, 10, 12]
const inchDrills = [1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2].map((inches) => inches * 25.4)

/**
 * The ring of whole metal that can be drilled from the mounting face on the heavy side, mm: from the shoulder, or the
 * mouth of the bore, out to the largest circle inside the bar, and as deep as angled face, slot, step, screw holes and a
 * cross pin leave it within the spread of the holes.
 */
export function ringToDrill(design: HeadDesign): {
  readonly innerRadius: number
  readonly outerRadius: number
  readonly depth: number
} {
  const { parameters, layout } = design
  const { arbor, bore, fit, settings } = parameters
  const mouth = bore.diameter / 2 + bore.chamfer
  const innerRadius = arbor.kind === 'shank' ? Math.max(mouth, arbor['shoulder-diameter'] / 2) : mouth
  const outerRadius = layout.inscribed / 2
  const { faceAngle: a, screws, slot, step } = layout
  const deepest = Math.max(slot.depth, step.depth, screws.height + screws.thread.tapDrill / 2)
  const heavy = balanceOf(design).at.heavySide ?? 0
  const least = leastCosine(heavy, settings.balance.spread)
  const x = least < 0 ? outerRadius * least : innerRadius * least
  const toCuts = layout.depthOnAxis - deepest / Math.cos(a) + x * Math.tan(a)
  const toPin = fit.catch === 'pin' ? joinedLength(design).middle - pinDiameter(parameters) / 2 : Infinity
  return { innerRadius, outerRadius, depth: Math.min(toCuts, toPin) }
}

/** Least cosine of an angle within `spread` of `middle`, rad, spread up to π/2. */
function leastCosine(middle: number, spread: number): number {
  const fromBack = Math.PI - Math.abs(middle)
  return fromBack <= spread ? -1 : Math.min(Math.cos(middle - spread), Math.cos(middle + spread))
}

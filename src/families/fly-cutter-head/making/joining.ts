import type { Amount } from '../../../checks/finding.ts'
import { written } from '../../../checks/rule.ts'
import { type HeatedBody, specificHeats, timeToReach } from '../../../mechanics/fit/heating-time.ts'
import type { HeadDesign } from '../design.ts'
import { heatLimit, isShrunk, jointOfHead } from '../engineering/fit.ts'

/** How the head is heated, and how long that takes and holds; °C and s. */
export interface Heating {
  /** What the head must reach, and the arbor be cooled to, where it must be. */
  readonly head: number
  readonly arbor: number | undefined
  readonly limit: number
  /** Oven or plate that does it, and about how long; undefined: it never gets there below the limit. */
  readonly oven: number
  readonly toReach: number | undefined
  /** Until it has cooled in still air to where the spigot no longer slips in. */
  readonly toSlipIn: number | undefined
}

/** An oven stands this much above what is wanted, K, so that the head gets there in a time one waits for. */
const above = 30

/** Undefined where nothing is heated. */
export function heatingOf(design: HeadDesign): Heating | undefined {
  if (!isShrunk(design)) return undefined
  const plan = jointOfHead(design)?.most.assembly
  if (plan === undefined || plan.need === 'none') return undefined
  const withCold = !plan.heat.possible && plan.both?.possible === true
  if (!plan.heat.possible && !withCold) return undefined
  const hub = withCold ? plan.both! : plan.heat
  const limit = heatLimit(design)
  const { ambient } = design.parameters.settings.fit
  const oven = Math.min(limit, hub.temperature + above)
  const body = headAsBody(design)
  // Cooled by what the clearance is worth, it no longer slips over.
  const lost = hub.rise * (plan.clearance / plan.parting)
  return {
    head: hub.temperature,
    arbor: withCold ? plan.both!.spigotTemperature : undefined,
    limit,
    oven,
    toReach: timeToReach(body, ambient, hub.temperature, oven),
    toSlipIn: timeToReach(body, hub.temperature, hub.temperature - lost, ambient),
  }
}

/** The bare head: the bar between its ends, what slot and step take away left in. */
function headAsBody(design: HeadDesign): HeatedBody {
  const { parameters: p, layout: l } = design
  const { size, shape } = p.stock
  const [section, around] =
    shape === 'round'
      ? [(Math.PI * size * size) / 4, Math.PI * size]
      : shape === 'square'
        ? [size * size, 4 * size]
        : [(Math.sqrt(3) / 2) * size * size, 2 * Math.sqrt(3) * size]
  const of = l.materials.body.workMaterial
  return {
    mass: design.mass('body'),
    specificHeat:
      of === 'aluminium'
        ? specificHeats.aluminium
        : of === 'grey-iron'
          ? specificHeats['cast-iron']
          : specificHeats.steel,
    area: around * l.depthOnAxis + 2 * section,
    film: p.settings['set-up']['film-coefficient'],
  }
}

/** Common practice, no source. */
const handling =
  'Heat-proof gloves, face covered, tongs that hold the head by its outside: try the movement cold. Nothing near that burns, no oil on bench or floor.'

/** The heating in words, times as a person waits for them. */
export function heatingSteps(design: HeadDesign): string[] {
  const heating = heatingOf(design)
  if (!heating) return []
  const show = (kind: Amount['kind'], value: number) => written({ kind, value }, design.units)
  const degrees = (value: number) => show('temperature', value)
  const { head, arbor, limit, oven, toReach, toSlipIn } = heating
  return [
    'Clean bore and spigot with a degreaser that is not chlorinated. Arbor upright, spigot up, so that the head drops to its seat by its own weight.',
    handling,
    ...(arbor === undefined ? [] : [`Cool the arbor to ${degrees(arbor)}.`]),
    `Heat the head to ${degrees(head)}, never above ${degrees(limit)}: an oven or plate at ${degrees(oven)}${toReach === undefined ? '' : `, about ${minutes(toReach)}`}. On the bench it lies on a dry fire brick, mounting face down as it will go on; measure at its side, low down, by crayon or probe.`,
    `Slip it on in one movement until it seats, and hold it there. ${toSlipIn === undefined ? '' : `In still air it stays wide enough for about ${minutes(toSlipIn)}; once it touches the arbor you have only seconds.`}`,
    `Let it cool in still air: no water, no vise. Check that a feeler of ${design.units === 'mm' ? '0.02 mm' : '0.001 in'} does not enter under the shoulder.`,
  ]
}

function minutes(seconds: number): string {
  if (seconds < 90) return `${Math.max(5, 5 * Math.round(seconds / 5))} s`
  return `${Math.round(seconds / 60)} min`
}

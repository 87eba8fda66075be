import { adviseSpeed } from '../../../mechanics/cutting/advised-speed.ts'
import { cuttingSpeedRange } from '../../../mechanics/cutting/cutting-speed.ts'
import type { RouteSpeed } from '../../../route/operation.ts'
import type { MaterialRow } from '../../../tables/materials.ts'
import type { HeadDesign } from '../design.ts'
import type { Cutter } from './tooling.ts'

/** What is cut, on which diameter, mm, how fast of what the table says, and by which feed. */
interface Cut {
  readonly of: MaterialRow
  readonly diameter: number
  /** Share of the table's speed: a reamer turns at half of it (common practice, no source). */
  readonly share?: number
  /** Drills and reamers are of high-speed steel, whatever the mills are of. */
  readonly isDrill?: boolean
  /** mm a turn; undefined: by hand. */
  readonly feedPerTurn?: number
}

/**
 * Speed in the mill: the nearest that the spindle has, not above the high end of the table for tool and material; its slowest
 * where even that is too fast. Undefined where the table has no such pair.
 */
export function millSpeed(design: HeadDesign, cut: Cut): RouteSpeed | undefined {
  const { speeds } = design.parameters.machine
  return speedOf(design, cut, speeds, false)
}

/** Speed in the mill through several materials at once: the slowest of them; of those that the table does not have nothing is known. */
export function millSpeedThrough(
  design: HeadDesign,
  materials: readonly MaterialRow[],
  cut: Omit<Cut, 'of'>,
): RouteSpeed | undefined {
  return materials
    .flatMap((of) => millSpeed(design, { ...cut, of }) ?? [])
    .reduce<RouteSpeed | undefined>((a, b) => (a && a.turns <= b.turns ? a : b), undefined)
}

/** Speed in the lathe, whose speeds are not in the parameters: the most that it should turn. */
export const latheSpeed = (design: HeadDesign, cut: Cut): RouteSpeed | undefined =>
  speedOf(design, cut, { slowest: 1e-3, fastest: 1e6 }, true)

function speedOf(
  design: HeadDesign,
  { of, diameter, share = 1, isDrill = false, feedPerTurn }: Cut,
  spindle: HeadDesign['parameters']['machine']['speeds'],
  atMost: boolean,
): RouteSpeed | undefined {
  const work = design.tables.workMaterials.find((row) => row.name === of.workMaterial)
  const table = work && cuttingSpeedRange(work, isDrill ? 'hss' : design.parameters.making['tool-material'])
  if (!table?.ok) return undefined
  const range = { low: table.value.low * share, high: table.value.high * share }
  const advice = adviseSpeed({ swing: diameter, range, spindle })
  if (!advice.ok) return undefined
  const turns = advice.value.advised?.runAt ?? (Array.isArray(spindle) ? Math.min(...spindle) : spindle.slowest)
  return {
    turns,
    atMost,
    surface: (turns * diameter) / 2,
    ...(feedPerTurn !== undefined && { feedPerTurn, ...(!atMost && { feed: (feedPerTurn * turns) / (2 * Math.PI) }) }),
  }
}

/** Feed a turn of an end or face mill, mm: the least of a share of its diameter a tooth, of the most a tooth takes and of the low end of the table. */
export function millFeed(design: HeadDesign, { diameter }: Cutter): number {
  const { making } = design.parameters
  const work = design.tables.workMaterials.find((row) => row.name === design.layout.materials.body.workMaterial)
  const byTable = work?.feedPerTooth?.low ?? Infinity
  return making.flutes * Math.min(making['feed-per-tooth'] * diameter, making['most-per-tooth'], byTable)
}

/** Feed a turn of a drill, mm. */
export const drillFeed = (design: HeadDesign, diameter: number): number =>
  design.parameters.making['drill-feed'] * diameter

import type { Problem, Result } from '../../../input/problem.ts'
import { adviseSpeed, type SpeedAdvice } from '../../../mechanics/cutting/advised-speed.ts'
import { type CuttingForce, type CuttingForceRules, cuttingForce } from '../../../mechanics/cutting/cutting-force.ts'
import { type BitKind, cuttingSpeedAt, cuttingSpeedRange } from '../../../mechanics/cutting/cutting-speed.ts'
import { tableSpeed } from '../../../mechanics/cutting/feed.ts'
import { kienzleRange } from '../../../mechanics/cutting/kienzle.ts'
import { type MeanPower, meanPower } from '../../../mechanics/cutting/mean-power.ts'
import { type OnePass, onePass } from '../../../mechanics/cutting/one-pass.ts'
import { motorPower, powerOfForce, torqueOfForce } from '../../../mechanics/cutting/spindle-load.ts'
import { type TableTravel, tableTravel } from '../../../mechanics/cutting/table-travel.ts'
import type { MaterialRow } from '../../../tables/materials.ts'
import type { Range } from '../../../tables/range.ts'
import type { HeadDesign } from '../design.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { anglesOf } from './angles.ts'
import { underPaths } from './problem-paths.ts'

/** The cut as the parameters have it, at the speed the job runs at. */
export interface Cutting {
  readonly bit: BitKind
  /** Cutting speed by bit and work material, mm/s; both ends the user's own where no table has one. */
  readonly range: Range
  readonly speed: SpeedAdvice
  /** rad/s: the advised speed, or the slowest of the spindle where even that is too fast for the edge. */
  readonly runAt: number
  /** Of the tip at it, mm/s, and of the table. */
  readonly cuttingSpeed: number
  readonly tableSpeed: number
  readonly pass: OnePass
  /** Passes taken: one where the swing covers the work, however narrowly. Width that each cuts, mm. */
  readonly passes: number
  readonly passWidth: number
  /** Undefined where no cutting force of the work material is published. */
  readonly load: CuttingLoad | undefined
  /** Undefined where the work has no length. */
  readonly travel: TableTravel | undefined
}

export interface CuttingLoad {
  readonly force: CuttingForce
  /** At the thickest chip, N·mm and W at the tip. */
  readonly peakTorque: number
  readonly peakPower: number
  /** Over whole turns, at the tip. */
  readonly mean: MeanPower
  /** What the motor gives for them, W. */
  readonly motorPeak: number
  readonly motorMean: number
}

type Worked = Result<Cutting>

/** The cut. Undefined only while a design is being looked at that `cuttingProblems` has something to say about. */
export function cuttingIfAny(design: HeadDesign): Cutting | undefined {
  const worked = workedOut(design)
  return worked.ok ? worked.value : undefined
}

/** The cut of a design that holds together. */
export function cuttingOf(design: HeadDesign): Cutting {
  const cutting = cuttingIfAny(design)
  if (!cutting) throw new RangeError('a cut that could not be worked out')
  return cutting
}

/** A chip thicker than the force was measured for, a bit without a speed in the work, a rake that no force is known for. */
export function cuttingProblems(design: HeadDesign): Problem[] {
  const worked = workedOut(design)
  return worked.ok ? [] : worked.problems
}

const workedOut = (design: HeadDesign): Worked => design.once('cutting', () => workOut(design))

/** Carbide where the material's name says so; a shop's other bits are high-speed steel or cut no faster. */
export const bitKindOf = (material: string): BitKind => (material.startsWith('carbide') ? 'carbide' : 'hss')

const degree = Math.PI / 180

export const forceRulesOf = ({ settings: { cutting } }: Parameters): CuttingForceRules => ({
  hssFactor: cutting['hss-factor'],
  wearFactor: cutting['wear-factor'],
  perRake: cutting['per-degree-of-rake'] / degree,
  tableRake: cutting['table-rake'],
  thrustShare: cutting['thrust-share'],
  chips: kienzleRange,
})

const paths = [
  ['own', 'work.cutting-speed'],
  ['spindle', 'machine.speeds'],
  ['swing', 'bit.swing'],
  ['depth', 'work.depth-of-cut'],
  ['feed', 'work.feed-per-turn'],
  ['noseRadius', 'bit.nose-radius'],
  ['edgeAngle', 'bit.facets.end-edge-angle'],
  ['rules.perRake', 'settings.cutting.per-degree-of-rake'],
  ['rake', 'bit.facets.rake-along'],
] as const

const inParameters = (problems: readonly Problem[]) => underPaths(problems, paths, 'work.material')

function workOut(design: HeadDesign): Worked {
  const { parameters, layout, swing } = design
  const { work, machine, settings } = parameters
  const bit = bitKindOf(parameters.bit.material)
  if (layout.materials.bit.workMaterial !== undefined) return { ok: false, problems: [softBit(layout.materials.bit)] }
  const range = rangeOf(design, bit)
  if (!range.ok) return { ok: false, problems: inParameters(range.problems) }
  const own = work['cutting-speed']
  const { speeds } = machine
  const speed = adviseSpeed({ swing, range: range.value, spindle: speeds, ...(own !== undefined && { own }) })
  const pass = onePass({ swing, width: work.width, overWidth: settings.swing['over-width'] })
  const force = forceOf(design, bit)
  const problems = [speed, pass, force].flatMap((found) => (found === undefined || found.ok ? [] : found.problems))
  if (!speed.ok || !pass.ok || (force !== undefined && !force.ok)) {
    return { ok: false, problems: inParameters(problems) }
  }

  const runAt = speed.value.advised?.runAt ?? (Array.isArray(speeds) ? Math.min(...speeds) : speeds.slowest)
  const cuttingSpeed = cuttingSpeedAt(runAt, swing)
  const feed = work['feed-per-turn']
  const radius = layout.bit.tipRadius
  const passes = swing >= work.width ? 1 : pass.value.passes
  const passWidth = work.width / passes
  const arc = { radius, width: passWidth, offset: 0 }
  const travel =
    work.length === undefined
      ? undefined
      : tableTravel({ ...arc, length: work.length, gap: settings.cutting.gap, tableSpeed: tableSpeed(feed, runAt) })
  const mean = force && meanPower({ ...arc, force: force.value, depth: work['depth-of-cut'], feed, speed: runAt })
  if ((travel && !travel.ok) || (mean && !mean.ok)) throw new RangeError('a pass that its own swing does not cover')
  return {
    ok: true,
    value: {
      bit,
      range: range.value,
      speed: speed.value,
      runAt,
      cuttingSpeed,
      tableSpeed: tableSpeed(feed, runAt),
      pass: pass.value,
      passes,
      passWidth,
      travel: travel?.value,
      load: force && mean && loadOf(design, force.value, mean.value, cuttingSpeed),
    },
  }
}

function loadOf(
  { parameters: { settings }, layout }: HeadDesign,
  force: CuttingForce,
  mean: MeanPower,
  cuttingSpeed: number,
): CuttingLoad {
  const motor = (power: number) => motorPower(power, settings.cutting['drive-efficiency'])
  const peakPower = powerOfForce(force.main, cuttingSpeed)
  return {
    force,
    peakTorque: torqueOfForce(force.main, layout.bit.tipRadius),
    peakPower,
    mean,
    motorPeak: motor(peakPower),
    motorMean: motor(mean.power),
  }
}

/** What a shop cuts does not cut. */
const softBit = ({ name, title }: MaterialRow): Problem => ({
  code: 'contradiction',
  where: { file: '', path: 'bit.material' },
  found: `${name}: ${title}`,
  allowed: 'a material of the materials table that a shop does not cut, such as hss',
  remedy: 'write hss',
})

/** Of the table, or the user's own speed where the table has none for this pair. */
function rangeOf({ parameters: { work }, layout }: HeadDesign, bit: BitKind): Result<Range> {
  const range = cuttingSpeedRange(layout.materials.work, bit)
  const own = work['cutting-speed']
  if (range.ok || own === undefined) return range
  return { ok: true, value: { low: own, high: own } }
}

/** Undefined where no cutting force of the work material is published. */
function forceOf(design: HeadDesign, bit: BitKind): Result<CuttingForce> | undefined {
  const { parameters, layout } = design
  if (layout.materials.work.specificForce === undefined) return undefined
  const { orthogonalRake, cuttingEdgeAngle } = anglesOf(design)
  return cuttingForce({
    work: layout.materials.work,
    bit,
    depth: parameters.work['depth-of-cut'],
    feed: parameters.work['feed-per-turn'],
    noseRadius: parameters.bit['nose-radius'],
    edgeAngle: cuttingEdgeAngle,
    rake: orthogonalRake,
    rules: forceRulesOf(parameters),
  })
}

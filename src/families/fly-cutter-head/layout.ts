import type { Vec3 } from '../../geometry/vector.ts'
import type { Problem, ProblemCode, Result } from '../../input/problem.ts'
import type { AnglesInUse } from '../../mechanics/angles/angles-in-use.ts'
import type { GroundFacets } from '../../mechanics/angles/facets.ts'
import type { BitBlank } from '../../mechanics/angles/ground-bit.ts'
import type { TipSetting } from '../../mechanics/angles/tip-setting.ts'
import type { Fit } from '../../mechanics/fit/fit.ts'
import type { Limits } from '../../mechanics/fit/limits.ts'
import { zoneLimits } from '../../mechanics/fit/zone.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { findRow } from '../../tables/find-row.ts'
import type { MaterialRow } from '../../tables/materials.ts'
import type { Tables } from '../../tables/read-tables.ts'
import type { SetScrewRow } from '../../tables/set-screws.ts'
import type { ShankRow } from '../../tables/shanks.ts'
import type { ThreadRow } from '../../tables/threads.ts'
import type { WorkMaterialRow } from '../../tables/work-materials.ts'
import { fitLimitsOf } from './engineering/fit-limits.ts'
import { grindOf } from './engineering/grind.ts'
import type { Parameters } from './parameters/parameters.ts'
import { noMeasuring, type ShopMeasuring, shopMeasuringOf } from './shop-measuring.ts'

/**
 * Every length and place that follows from a parameter set, worked out once. mm and rad. Places marked F are in the
 * face frame: origin where the spindle axis meets the angled face, x down the slope to the bit side, y as in the body
 * frame, z into the metal. Everything else is in the body frame.
 */
export interface Layout {
  /** Motion at +X is along `hand`·Y: −1 clockwise, +1 anticlockwise, seen from the spindle. */
  readonly hand: -1 | 1
  readonly faceAngle: number
  readonly depthOnAxis: number
  /** Size across the stock along X. */
  readonly across: number
  /** x in F of the outer corner: where face, outside and the plane y = 0 meet on the bit side. */
  readonly corner: number
  /** Largest circle inside the section. */
  readonly inscribed: number
  readonly stockLength: number
  /** Mounting face to the far end of the faced blank. */
  readonly prismLength: number
  readonly slot: {
    readonly width: number
    /** y of the leading and of the trailing wall. */
    readonly leading: number
    readonly trailing: number
    readonly depth: number
    /** x in F of the deepest point of a stopped slot's end, and the corner radius the cutter leaves. */
    readonly end: { readonly x: number; readonly radius: number } | undefined
  }
  readonly step: {
    /** y of the wall that the screws go through, on the step's side. */
    readonly wall: number
    /** +1: the step lies towards +Y of its wall. */
    readonly towards: -1 | 1
    readonly depth: number
  }
  readonly screws: {
    readonly thread: ThreadRow
    readonly screw: SetScrewRow
    /** x in F of every screw axis, outermost first. */
    readonly xs: readonly number[]
    /** z in F. */
    readonly height: number
    readonly spacing: number
    readonly length: number
    /** y of the slot wall that the screws come out of. */
    readonly seat: number
    readonly tighteningTorque: number | undefined
  }
  readonly bit: {
    readonly overhang: number
    readonly swing: number
    /** Tip in F and in the body frame. */
    readonly tipInFace: Vec3
    readonly tip: Vec3
    readonly tipRadius: number
    /** x in F of the blank's outer and inner end. */
    readonly outerEnd: number
    readonly innerEnd: number
    /** z in F of the blank's work side and of its back on the slot floor. */
    readonly workSide: number
    readonly back: number
    /** y of the leading and trailing face of the blank. */
    readonly leading: number
    readonly trailing: number
    readonly groundLength: number
    /** The blank and how it sits, as the mechanics of angles want them. */
    readonly blank: BitBlank
    readonly setting: TipSetting
    /** What is ground on it, given or worked out, and the angles in use that this makes. rad */
    readonly facets: GroundFacets
    readonly inUse: AnglesInUse
  }
  readonly materials: {
    readonly body: MaterialRow
    readonly arbor: MaterialRow
    readonly bit: MaterialRow
    readonly screw: MaterialRow
    readonly work: WorkMaterialRow
  }
  readonly shank: ShankRow | undefined
  /** What bright bar is drawn to, mm: h11 (EN 10278, from memory); undefined beyond the sizes of the tables. */
  readonly barLimits: Limits | undefined
  /** Limits that a straight shank is turned to, where its row names a zone; mm. */
  readonly shankLimits: Limits | undefined
  /** Limits of bore and spigot; undefined for a head that is screwed on. */
  readonly fit: Fit | undefined
  /** Thread of a head that is screwed on. */
  readonly spigotThread: ThreadRow | undefined
  /** What the shop measures with, its boxed sets and loose pieces together. */
  readonly measuring: ShopMeasuring
}

/** Works the layout out. Problems have a path but no line yet: names that no table has, contradictions. */
export function layoutOf(p: Parameters, tables: Tables): Result<Layout> {
  const problems: Problem[] = []
  const fault = (path: string, code: ProblemCode, found: string, allowed: string, remedy?: string) => {
    problems.push({ code, where: { file: '', path }, found, allowed, ...(remedy !== undefined && { remedy }) })
  }
  const look = <Row extends { readonly name: string }>(rows: readonly Row[], name: string, path: string) => {
    const found = findRow(rows, name)
    if (found.ok) return found.row
    const remedy = found.nearest === undefined ? undefined : `write ${found.nearest}`
    fault(path, 'not-in-table', name, found.names.join(', '), remedy)
    return undefined
  }

  const hand = p.rotation === 'clockwise' ? -1 : 1
  const a = p.face.angle
  const h = p.face['depth-on-axis']
  const size = p.stock.size
  const pointToPoint = p.stock.shape === 'hexagon' && p.stock['slot-runs'] === 'point-to-point'
  const across = pointToPoint ? (size * 2) / Math.sqrt(3) : size
  const corner = across / 2 / Math.cos(a)
  const facing = p.settings.facing
  // Saw lengths a person would mark out.
  const mark = p.units === 'in' ? 25.4 / 16 : 1
  const stockLength = p.stock.length ?? mark * Math.ceil((h + (across / 2) * Math.tan(a) + 2 * facing) / mark - 1e-9)

  const measuring = shopMeasuringOf(p, tables)
  if (!measuring.ok) problems.push(...measuring.problems)

  const width = p.bit.width + p.slot.clearance
  const e = p.slot['ahead-of-centre']
  const leading = hand * e
  const trailing = hand * (e - width)

  const onLeading = p.step.side === 'leading'
  const towards = (onLeading ? hand : -hand) as -1 | 1
  const seat = onLeading ? leading : trailing

  const screw = look(tables.setScrews, p.screws.thread, 'screws.thread')
  const thread = screw && look(tables.threads, p.screws.thread, 'screws.thread')
  const shank = p.arbor.kind === 'shank' ? look(tables.shanks, p.arbor.shank, 'arbor.shank') : undefined
  const body = look(tables.materials, p.stock.material, 'stock.material')
  const arbor = look(tables.materials, p.arbor.material, 'arbor.material')
  const bitMaterial = look(tables.materials, p.bit.material, 'bit.material')
  const work = look(tables.workMaterials, p.work.material, 'work.material')
  const screwMaterial = screw && look(tables.materials, screw.material, 'screws.thread')

  let end: Layout['slot']['end']
  if (p.slot.runs === 'stopped') {
    const cutter = p.slot['cutter-diameter'] ?? width
    if (cutter > width + 1e-9) {
      fault('slot.cutter-diameter', 'contradiction', 'a cutter wider than the slot', 'no wider than bit and clearance')
    }
    end = { x: -p.slot['beyond-axis'], radius: Math.min(cutter, width) / 2 }
  }

  const zTip = p.slot.depth - p.bit.height + p.bit['ground-off'].underside
  const yTip = hand * (e - p.bit['ground-off'].leading)
  const [sin, cos] = [Math.sin(a), Math.cos(a)]
  let xTip = corner + (p.bit.overhang ?? 0)
  if (p.bit.overhang !== undefined && p.bit.swing !== undefined) {
    fault('bit.swing', 'contradiction', 'overhang and swing', 'one of the two: the other follows', 'leave one out')
  } else if (p.bit.swing !== undefined) {
    const out = Math.sqrt((p.bit.swing / 2) ** 2 - yTip * yTip)
    xTip = (out - zTip * sin) / cos
    if (!(xTip > corner)) {
      fault('bit.swing', 'contradiction', 'a swing inside the head', 'a tip that stands out of the head')
      xTip = corner + 1
    }
  } else if (p.bit.overhang === undefined) {
    fault('bit.overhang', 'missing-key', 'neither overhang nor swing', 'one of the two', 'give overhang or swing')
  }
  const tip: Vec3 = [xTip * cos + zTip * sin, yTip, -h - xTip * sin + zTip * cos]
  const tipRadius = Math.hypot(tip[0], tip[1])
  for (const side of ['leading', 'end', 'underside'] as const) {
    const most = side === 'leading' ? p.bit.width : side === 'end' ? p.bit.length : p.bit.height
    if (p.bit['ground-off'][side] >= most) {
      fault(`bit.ground-off.${side}`, 'contradiction', 'all of the bit ground away', 'less than the blank')
    }
  }

  const bore = p.bore
  const fit = fitLimitsOf(p, tables)
  if (!fit.ok) problems.push(...fit.problems)
  const spigotThread = p.fit.kind === 'threaded' ? look(tables.threads, p.fit.thread, 'fit.thread') : undefined
  if (spigotThread && Math.abs(spigotThread.majorDiameter - bore.diameter) > 0.01) {
    const size = formatLength(spigotThread.majorDiameter, p.units)
    fault(
      'bore.diameter',
      'contradiction',
      `a bore of ${formatLength(bore.diameter, p.units)} for ${spigotThread.name}`,
      `the thread's major diameter, ${size}`,
      `write ${size}`,
    )
  }
  if (bore.diameter >= size) {
    fault(
      'bore.diameter',
      'contradiction',
      `a bore of ${formatLength(bore.diameter, p.units)} in a bar of ${formatLength(size, p.units)}`,
      'less than the bar across flats',
    )
  }
  const r = bore.diameter / 2
  if (bore.kind === 'blind' && bore.vent === 'hole' && bore['vent-size'] >= bore.diameter) {
    fault('bore.vent-size', 'contradiction', 'a vent as wide as the bore', 'less than the bore diameter')
  }
  if (bore.kind === 'blind' && bore.vent === 'flat' && bore['vent-size'] >= r - p.arbor['lead-in']) {
    fault('bore.vent-size', 'contradiction', 'a flat that takes half of the spigot', 'less than the bore radius')
  }
  if (p.arbor['lead-in'] >= Math.min(r, p.arbor['spigot-length'])) {
    fault('arbor.lead-in', 'contradiction', 'a chamfer that takes the whole spigot', 'less than radius and length')
  }
  if (p.arbor.kind === 'shank' && p.arbor['shoulder-diameter'] <= bore.diameter) {
    fault(
      'arbor.shoulder-diameter',
      'contradiction',
      'a shoulder no wider than the bore',
      'more than the bore diameter',
    )
  }
  const hollow = p.arbor['bore-through']
  if (hollow !== undefined) {
    const thinnest = Math.min(bore.diameter - 2 * p.arbor['lead-in'], shank?.profile.at(-1)?.to ?? Infinity)
    if (hollow >= thinnest) {
      fault('arbor.bore-through', 'contradiction', 'a hole wider than the arbor', 'less than its thinnest diameter')
    }
  }
  const speeds = p.machine.speeds
  if (!Array.isArray(speeds) && speeds.slowest >= speeds.fastest) {
    fault('machine.speeds.slowest', 'contradiction', 'a slowest speed not below the fastest', 'less than the fastest')
  }
  if (2 * facing >= stockLength) {
    fault('stock.length', 'contradiction', 'a blank that facing takes whole', 'more than both facings')
  }
  if (problems.length > 0) return { ok: false, problems }
  if (!(tip[0] > 0)) {
    fault('bit.height', 'contradiction', 'a tip that stands behind the spindle axis', 'a tip on the bit side of it')
    return { ok: false, problems }
  }
  const groundLength = p.bit.facets?.length ?? 0.75 * p.bit.width
  const blank: BitBlank = {
    width: p.bit.width,
    height: p.bit.height,
    length: p.bit.length,
    groundOffEnd: p.bit['ground-off'].end,
    groundOffWorkSide: p.bit['ground-off'].underside,
    groundLength,
  }
  const setting: TipSetting = {
    hand,
    faceAngle: a,
    depthOnAxis: h,
    along: xTip,
    height: zTip,
    ahead: e,
    groundOffLeading: p.bit['ground-off'].leading,
  }
  const grind = grindOf(p, blank, setting, work!)
  if (!grind.ok) return grind

  const spacing = p.screws.spacing ?? 2.5 * thread!.majorDiameter
  const wall = p.step['wall-thickness']
  return {
    ok: true,
    value: {
      hand,
      faceAngle: a,
      depthOnAxis: h,
      across,
      corner,
      inscribed: size,
      stockLength,
      prismLength: stockLength - 2 * facing,
      slot: { width, leading, trailing, depth: p.slot.depth, end },
      step: { wall: seat + towards * wall, towards, depth: p.step.depth },
      screws: {
        thread: thread!,
        screw: screw!,
        xs: Array.from({ length: p.screws.count }, (_, i) => corner - p.screws['first-from-corner'] - i * spacing),
        height: p.screws.height,
        spacing,
        length: p.screws.length ?? screw!.lengths.find((l) => l >= wall - 1e-9) ?? wall,
        seat,
        tighteningTorque: p.screws['tightening-torque'] ?? screw!.seatingTorque,
      },
      bit: {
        overhang: xTip - corner,
        swing: 2 * tipRadius,
        tipInFace: [xTip, yTip, zTip],
        tip,
        tipRadius,
        outerEnd: xTip + p.bit['ground-off'].end,
        innerEnd: xTip + p.bit['ground-off'].end - p.bit.length,
        workSide: p.slot.depth - p.bit.height,
        back: p.slot.depth,
        leading,
        trailing: hand * (e - p.bit.width),
        groundLength,
        blank,
        setting,
        ...grind.value,
      },
      materials: { body: body!, arbor: arbor!, bit: bitMaterial!, screw: screwMaterial!, work: work! },
      shank,
      barLimits: limitsOf(barZone, p.stock.size, tables),
      shankLimits:
        shank?.tolerance === undefined ? undefined : limitsOf(shank.tolerance, shank.profile[0]!.from, tables),
      fit: fit.ok ? fit.value : undefined,
      spigotThread,
      measuring: measuring.ok ? measuring.value : noMeasuring,
    },
  }
}

/** Zone of bright drawn bar. */
export const barZone = 'h11'

/** Limits of an outside size in a zone; undefined where the tables do not have it. */
function limitsOf(zone: string, size: number, tables: Tables): Limits | undefined {
  const found = zoneLimits(zone, 'shaft', size, tables.iso286)
  return found.ok ? found.value : undefined
}

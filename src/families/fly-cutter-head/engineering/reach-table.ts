import { staticBalance } from '../../../mechanics/balance/static-balance.ts'
import { inGramMillimetres, unbalanceForce } from '../../../mechanics/balance/unbalance-force.ts'
import { adviseSpeed } from '../../../mechanics/cutting/advised-speed.ts'
import { cuttingSpeedRange } from '../../../mechanics/cutting/cutting-speed.ts'
import type { WorkMaterialRow } from '../../../tables/work-materials.ts'
import { HeadDesign } from '../design.ts'
import { facetParameters } from '../facet-parameters.ts'
import { bitInSlot } from '../rules/bit-in-slot.ts'
import { anglesOf } from './angles.ts'
import { certain } from './certain.ts'
import { clampingOf } from './clamping.ts'
import { cuttingOf } from './cutting.ts'
import { groundStressOf } from './ground-stress.ts'
import { bitMassOf, massItemsOf } from './mass.ts'

/** What comes of one overhang of the same bit, ground as it is, in the same head. */
export interface ReachRow {
  /** Whether this is the overhang of the design itself. */
  readonly asSet: boolean
  /** mm: overhang, diameter of the tip's circle, diameter of all that turns, tip below the mounting face. */
  readonly overhang: number
  readonly swing: number
  readonly swept: number
  readonly tipDepth: number
  /** In use, rad. */
  readonly radialRake: number
  /** rad/s; undefined where even the slowest speed of the spindle is too fast. */
  readonly advised: number | undefined
  /** For every work material of the table, in its order, rad/s; `too fast`: even the slowest speed; undefined: no figure. */
  readonly advisedFor: readonly (number | 'too fast' | undefined)[]
  /** Grip over overhang; undefined where nothing holds the bit. */
  readonly gripRatio: number | undefined
  /** Largest bending stress in the bit, MPa, and deflection at the tip, mm; undefined where no cutting force is known. */
  readonly stress: number | undefined
  readonly deflection: number | undefined
  /** g·mm, and the force it makes at the advised speed, N. */
  readonly unbalance: number
  readonly unbalanceForce: number | undefined
  /** What is wrong with so much or so little overhang, in a few words. */
  readonly remark: string
}

/**
 * The bit pushed in and pulled out: round overhangs from half its width to where it is hardly held or strikes the
 * machine, and the design's own. Each row is the design anew with that overhang, asked with the same functions. A row
 * that makes no head is left out.
 */
export function reachTableOf(design: HeadDesign): readonly ReachRow[] {
  return design.once('reach table', () => {
    const own = design.layout.bit.overhang
    return overhangs(design).flatMap((overhang) => {
      const asSet = overhang === own
      const at = asSet ? design : withOverhang(design, overhang)
      return at ? [{ asSet, overhang, ...comesOf(design, at) }] : []
    })
  })
}

function comesOf(design: HeadDesign, at: HeadDesign): Omit<ReachRow, 'asSet' | 'overhang'> {
  const cutting = cuttingOf(at)
  const { held } = clampingOf(at)
  const stresses = [held?.bending?.atWall.stress, groundStressOf(at)].filter((stress) => stress !== undefined)
  // All but the bit stays where it is, and weighing the head takes longest.
  const rest = massItemsOf(design).filter((item) => item !== bitMassOf(design))
  const { amount } = certain(staticBalance([...rest, bitMassOf(at)]))
  const advised = cutting.speed.advised?.runAt
  return {
    swing: at.swing,
    swept: 2 * at.sweptRadius,
    tipDepth: -at.layout.bit.tip[2],
    radialRake: anglesOf(at).radialRake,
    advised,
    advisedFor: at.tables.workMaterials.map((work) => advisedSpeed(at, work)),
    gripRatio: held?.grip.ratio,
    stress: stresses.length > 0 ? Math.max(...stresses) : undefined,
    deflection: held?.bending?.deflection,
    unbalance: inGramMillimetres(amount),
    unbalanceForce: advised === undefined ? undefined : unbalanceForce(amount, advised),
    remark: remarkOn(at),
  }
}

function advisedSpeed(at: HeadDesign, work: WorkMaterialRow): number | 'too fast' | undefined {
  const range = cuttingSpeedRange(work, cuttingOf(at).bit)
  if (!range.ok) return undefined
  const own = at.parameters.work['cutting-speed']
  const speed = adviseSpeed({
    swing: at.swing,
    range: range.value,
    spindle: at.parameters.machine.speeds,
    ...(own !== undefined && work.name === at.layout.materials.work.name && { own }),
  })
  return speed.ok ? (speed.value.advised?.runAt ?? 'too fast') : undefined
}

const remarks: readonly (readonly [id: string, words: string])[] = [
  ['bit:hits-stop', 'tail meets the end of the slot'],
  ['bit:grip', 'hardly held'],
  ['bit:off-screw', 'a screw bears on nothing'],
  ['bit:tail-out', 'tail out of the far side'],
]

function remarkOn(at: HeadDesign): string {
  const ids = bitInSlot.findings(at).map(({ id }) => id)
  return remarks.flatMap(([start, words]) => (ids.some((id) => id.startsWith(start)) ? [words] : [])).join(', ')
}

/** The same head with the same ground bit further in or out; undefined where that makes no head. */
function withOverhang(design: HeadDesign, overhang: number): HeadDesign | undefined {
  const { parameters, layout } = design
  const { swing: _, ...bit } = parameters.bit
  const built = HeadDesign.from(
    {
      ...parameters,
      bit: {
        ...bit,
        overhang,
        // What was worked out for the present swing has been ground by now.
        grind: 'as-given',
        facets: facetParameters(layout),
      },
    },
    design.tables,
  )
  return built.ok ? built.value : undefined
}

const most = 12

/** Round overhangs, at most thirteen and the design's own, ascending, mm. */
function overhangs(design: HeadDesign): number[] {
  const { parameters, layout, gripped, units } = design
  const { bit, corner, faceAngle } = layout
  const held = gripped.from - corner + parameters.bit.length - parameters.bit.width
  const clears = parameters.machine['largest-swing'] / 2 / Math.cos(faceAngle) - corner
  const low = parameters.bit.width / 2
  const high = Math.max(low, Math.min(held, clears))
  const steps =
    units === 'in' ? [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5].map((inches) => inches * 25.4) : [1, 2, 5, 10, 20, 50]
  const step = steps.find((size) => (high - low) / size <= most) ?? steps.at(-1)!
  const first = Math.ceil(low / step - 1e-9)
  const round = Array.from({ length: most + 1 }, (_, i) => (first + i) * step).filter((overhang) => overhang <= high)
  return [...round.filter((overhang) => Math.abs(overhang - bit.overhang) > 1e-6), bit.overhang].sort((a, b) => a - b)
}

import type { Problem, Result } from '../../../input/problem.ts'
import { type AnglesInUse, anglesInUse } from '../../../mechanics/angles/angles-in-use.ts'
import { type GroundFacets, unground } from '../../../mechanics/angles/facets.ts'
import { facetsToGrind } from '../../../mechanics/angles/facets-to-grind.ts'
import { type BitBlank, blankProblems } from '../../../mechanics/angles/ground-bit.ts'
import { leastEndReliefAtTip } from '../../../mechanics/angles/least-end-relief.ts'
import type { TipSetting } from '../../../mechanics/angles/tip-setting.ts'
import { middleOf, type SuitableAngles, suitableAngles } from '../../../mechanics/angles/wanted-angles.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { WorkMaterialRow } from '../../../tables/work-materials.ts'
import { facetLimits } from '../parameters/bit.ts'
import type { Parameters } from '../parameters/parameters.ts'

/** What is ground on the bit, and what becomes of it when the tool turns. rad. */
export interface Grind {
  readonly facets: GroundFacets
  readonly inUse: AnglesInUse
}

/** Where each facet stands in a parameter set. */
export const facetPaths: Readonly<Record<keyof GroundFacets, string>> = {
  rakeAlong: 'bit.facets.rake-along',
  rakeAcross: 'bit.facets.rake-across',
  endEdgeAngle: 'bit.facets.end-edge-angle',
  endRelief: 'bit.facets.end-relief',
  workSideEdgeAngle: 'bit.facets.work-side-edge-angle',
  workSideRelief: 'bit.facets.work-side-relief',
}

/**
 * The facets of a bit: as given (left out altogether: square as bought), or worked out so that the angles in use are
 * those that the work material wants. Problems: reliefs that are missing, rakes or reliefs given beside those that are
 * worked out, a work material without angles in the table, facets that no grinder's table allows, that leave no corner
 * of metal, that face away, or that would have to lie outside the blank. Paths are those of parameters.
 */
export function grindOf(p: Parameters, blank: BitBlank, setting: TipSetting, work: WorkMaterialRow): Result<Grind> {
  if (p.bit.grind === 'for-work-material') return groundFor(p, blank, setting, work)
  const given = facetsGiven(p.bit.facets)
  if (!given.ok) return given
  const ground = groundWith(given.value, blank, setting)
  return ground.ok ? ground : { ok: false, problems: inParameters(ground.problems, false) }
}

function groundWith(facets: GroundFacets, blank: BitBlank, setting: TipSetting): Result<Grind> {
  const problems = blankProblems(blank, facets, setting.groundOffLeading)
  if (problems.length > 0) return { ok: false, problems }
  const inUse = anglesInUse(facets, setting)
  return inUse.ok ? { ok: true, value: { facets, inUse: inUse.value } } : inUse
}

/**
 * Angles in use that suit the work, for a bit that sits so: the table's, the relief of the end flank no less than its
 * heel needs to come through.
 */
export function suitableFor(
  work: WorkMaterialRow,
  setting: TipSetting,
  width: number,
  endEdgeAngle: number,
): Result<SuitableAngles> {
  const suitable = suitableAngles(work)
  const least = leastEndReliefAtTip(setting, width, endEdgeAngle)
  if (!suitable.ok || !least.ok) return suitable
  const { radialRelief } = suitable.value
  const needed = least.value.inUse
  if (needed <= radialRelief.low) return suitable
  const high = Math.max(radialRelief.high, needed + room)
  return { ok: true, value: { ...suitable.value, radialRelief: { low: needed, high } } }
}

/** Where the heel asks for more relief than the table: as much again as a hand-ground facet is off (rule of thumb). */
const room = (2 * Math.PI) / 180

/** Facets that give the middle of what is suitable, edges as ground. Problems: as `facetsToGrind` finds them. */
export const facetsForMiddle = (
  suitable: SuitableAngles,
  setting: TipSetting,
  endEdgeAngle: number,
  workSideEdgeAngle: number,
): Result<GroundFacets> =>
  facetsToGrind(
    {
      ...middleOf(suitable),
      endEdge: { kind: 'as-ground', angle: endEdgeAngle },
      workSideEdge: { kind: 'as-ground', angle: workSideEdgeAngle },
    },
    setting,
  )

function facetsGiven(given: Parameters['bit']['facets']): Result<GroundFacets> {
  if (given === undefined) return { ok: true, value: unground }
  const { 'end-relief': endRelief, 'work-side-relief': workSideRelief } = given
  if (endRelief === undefined || workSideRelief === undefined) {
    const missing = (['endRelief', 'workSideRelief'] as const).filter(
      (name) => (name === 'endRelief' ? endRelief : workSideRelief) === undefined,
    )
    const problems = missing.map(
      (name): Problem => ({
        code: 'missing-key',
        where: { file: '', path: facetPaths[name] },
        found: 'facets without this relief',
        allowed: 'both reliefs beside facets that are given',
        remedy: 'give it, or set bit.grind to for-work-material and leave rakes and reliefs out',
      }),
    )
    return { ok: false, problems }
  }
  return {
    ok: true,
    value: {
      rakeAlong: given['rake-along'] ?? 0,
      rakeAcross: given['rake-across'] ?? 0,
      endEdgeAngle: given['end-edge-angle'] ?? 0,
      endRelief,
      workSideEdgeAngle: given['work-side-edge-angle'] ?? 0,
      workSideRelief,
    },
  }
}

function groundFor(p: Parameters, blank: BitBlank, setting: TipSetting, work: WorkMaterialRow): Result<Grind> {
  const { bit, settings, face } = p
  const given = bit.facets ?? {}
  const twice = (['rake-along', 'rake-across', 'end-relief', 'work-side-relief'] as const)
    .filter((key) => given[key] !== undefined)
    .map(
      (key): Problem => ({
        code: 'contradiction',
        where: { file: '', path: `bit.facets.${key}` },
        found: 'an angle of your own, and one worked out for the work material',
        allowed: 'one of the two',
        remedy: 'leave it out, or set bit.grind to as-given',
      }),
    )
  if (twice.length > 0) return { ok: false, problems: twice }
  const endEdgeAngle = given['end-edge-angle'] ?? 0
  const suitable = suitableFor(work, setting, blank.width, endEdgeAngle)
  if (!suitable.ok) return { ok: false, problems: inParameters(suitable.problems, true) }
  const least = settings.grind['minor-edge-angle']
  const own = given['work-side-edge-angle']
  // On a face that is tilted enough the underside leaves the work by itself.
  const leaves = own !== undefined || face.angle >= least
  const facets = facetsToGrind(
    {
      ...middleOf(suitable.value),
      endEdge: { kind: 'as-ground', angle: endEdgeAngle },
      workSideEdge: leaves ? { kind: 'as-ground', angle: own ?? 0 } : { kind: 'in-use', angle: least },
    },
    setting,
  )
  if (!facets.ok) return { ok: false, problems: inParameters(facets.problems, true) }
  const beyond = facetsBeyondLimits(facets.value)
  if (beyond.length > 0) return { ok: false, problems: beyond }
  const ground = groundWith(facets.value, blank, setting)
  if (ground.ok) return ground
  const flat = groundWith(withoutNegativeRake(facets.value), blank, setting)
  if (flat.ok && isSuitable(flat.value.inUse, suitable.value, settings.grind['angle-tolerance'])) return flat
  return { ok: false, problems: inParameters(ground.problems, true) }
}

/** A rake face that leans the other way by a fraction of a degree is not worth grinding a corner off for. */
const withoutNegativeRake = (facets: GroundFacets): GroundFacets => ({
  ...facets,
  rakeAlong: Math.max(0, facets.rakeAlong),
  rakeAcross: Math.max(0, facets.rakeAcross),
})

const isSuitable = (inUse: AnglesInUse, suitable: SuitableAngles, tolerance: number): boolean =>
  (['radialRake', 'axialRake', 'radialRelief', 'axialRelief'] as const).every(
    (name) => inUse[name] >= suitable[name].low - tolerance && inUse[name] <= suitable[name].high + tolerance,
  )

/** Facets that are worked out and that no grinder's table allows. */
export function facetsBeyondLimits(facets: GroundFacets): Problem[] {
  return Object.entries(facetLimits).flatMap(([name, { low, high }]): Problem[] => {
    const angle = facets[name as keyof GroundFacets]
    if (angle >= low - 1e-9 && angle <= high + 1e-9) return []
    return [
      {
        code: 'out-of-range',
        where: { file: '', path: 'bit.grind' },
        found: `${facetPaths[name as keyof GroundFacets]} of ${inDegrees(angle)}`,
        allowed: `${inDegrees(low)} to ${inDegrees(high)}`,
        remedy: 'set the slot nearer to the axis, or give the facets yourself',
      },
    ]
  })
}

const inDegrees = (angle: number) => formatQuantity('angle', angle, 'mm', { decimals: 1 })

const otherPaths: Readonly<Record<string, string>> = {
  facets: 'bit.facets',
  groundOffLeading: 'bit.ground-off.leading',
  groundOffEnd: 'bit.ground-off.end',
  groundOffWorkSide: 'bit.ground-off.underside',
  hssAngles: 'work.material',
}

/** The mechanics' own names of their input, as paths of parameters. Facets that were worked out are the grind's. */
function inParameters(problems: readonly Problem[], workedOut: boolean): Problem[] {
  return problems.map((problem) => {
    const name = problem.where.path ?? ''
    const facet = facetPaths[name.replace('facets.', '') as keyof GroundFacets]
    const path = otherPaths[name] ?? (workedOut ? undefined : facet) ?? 'bit.grind'
    return { ...problem, where: { file: '', path: workedOut && path === 'bit.facets' ? 'bit.grind' : path } }
  })
}

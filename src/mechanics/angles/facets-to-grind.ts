import { dot, type Vec3 } from '../../geometry/vector.ts'
import type { Problem, Result } from '../../input/problem.ts'
import { angleProblem, inWords } from './angle-problem.ts'
import { cornerProblems, type GroundFacets } from './facets.ts'
import { type Tip, type TipSetting, tipOf } from './tip-setting.ts'

/** Where an edge shall run. rad. */
export type EdgeWanted =
  /** As the work sees it: κ_r of the end edge (0 to π), κ_r′ of the work-side edge (−π/2 to π/2). */
  | { readonly kind: 'in-use'; readonly angle: number }
  /** As it is ground: the edge angle of the facet itself, −π/2 to π/2. */
  | { readonly kind: 'as-ground'; readonly angle: number }

/** Angles that the tool shall have in use, rad, signs as in `AnglesInUse`. */
export interface WantedAngles {
  readonly radialRake: number
  readonly axialRake: number
  readonly radialRelief: number
  readonly axialRelief: number
  readonly endEdge: EdgeWanted
  readonly workSideEdge: EdgeWanted
}

/**
 * The facets to grind so that the angles in use are the wanted ones, in closed form: the inverse of `anglesInUse` for
 * the same setting, to rounding. The rake face's normal follows from the two rakes; each flank's from its relief and
 * from the edge that it must share with the rake face.
 *
 * Problems: an angle outside its range (`out-of-range`); a facet that would have to face the wrong way, edges that leave
 * no corner, facets that leave no metal (`contradiction`). Throws RangeError as `tipOf` does.
 */
export function facetsToGrind(wanted: WantedAngles, setting: TipSetting): Result<GroundFacets> {
  const problems = rangeProblems(wanted)
  const tip = tipOf(setting)
  if (problems.length > 0) return { ok: false, problems }
  const [f, p] = [Math.tan(wanted.radialRake), Math.tan(wanted.axialRake)]
  const rake = bitComponents(tip, [-f, 1, p])
  if (!(rake[1] > 0)) {
    const sum = wanted.radialRake + tip.lead
    problems.push(
      angleProblem(
        'radialRake',
        'contradiction',
        `radial rake ${inWords(wanted.radialRake)} with the tip ${inWords(tip.lead)} ahead: ${inWords(sum)} along the bit`,
        'below 90° along the bit',
      ),
    )
  }
  const end = endFlank(wanted, setting, tip, f, p, problems)
  const workSide = workSideFlank(wanted, setting, tip, f, p, problems)
  if (end === undefined || workSide === undefined || problems.length > 0) return { ok: false, problems }
  const facets: GroundFacets = {
    rakeAlong: Math.atan(-rake[0] / rake[1]),
    rakeAcross: Math.atan(-rake[2] / rake[1]),
    ...end,
    ...workSide,
  }
  const corner = cornerProblems(facets)
  return corner.length > 0 ? { ok: false, problems: corner } : { ok: true, value: facets }
}

type EndFlank = Pick<GroundFacets, 'endEdgeAngle' | 'endRelief'>
type WorkSideFlank = Pick<GroundFacets, 'workSideEdgeAngle' | 'workSideRelief'>

function endFlank(
  wanted: WantedAngles,
  { faceAngle: a }: TipSetting,
  tip: Tip,
  f: number,
  p: number,
  problems: Problem[],
): EndFlank | undefined {
  const { endEdge, radialRelief } = wanted
  if (endEdge.kind === 'as-ground') {
    // In the plane of motion the flank runs at its relief in use from the tangent, the bit at the tip's lead.
    const slope = Math.cos(a) + Math.tan(endEdge.angle) * Math.sin(a)
    const turn = radialRelief - tip.lead
    if (slope > 0 && Math.abs(turn) < Math.PI / 2) {
      return { endEdgeAngle: endEdge.angle, endRelief: Math.atan(slope * Math.tan(turn)) }
    }
  } else {
    // The edge lies in the rake face; the flank contains it and the line of its relief.
    const [sin, cos] = [Math.sin(endEdge.angle), Math.cos(endEdge.angle)]
    const along = f * cos - p * sin
    const relief = Math.tan(radialRelief)
    const m = bitComponents(tip, [1, -relief, (along * relief - cos) / sin])
    if (m[0] > 0) return { endEdgeAngle: Math.atan(-m[2] / m[0]), endRelief: Math.atan(-m[1] / m[0]) }
  }
  problems.push(
    angleProblem(
      'endEdge',
      'contradiction',
      `end edge at ${inWords(endEdge.angle)} (${endEdge.kind}) with radial relief ${inWords(radialRelief)}`,
      'an end flank that faces outwards along the bit',
    ),
  )
  return undefined
}

function workSideFlank(
  wanted: WantedAngles,
  { faceAngle: a }: TipSetting,
  tip: Tip,
  f: number,
  p: number,
  problems: Problem[],
): WorkSideFlank | undefined {
  const { workSideEdge, axialRelief } = wanted
  const relief = Math.tan(axialRelief)
  if (workSideEdge.kind === 'as-ground') {
    const edge = Math.tan(workSideEdge.angle)
    const rise = Math.cos(a) - edge * Math.sin(a)
    if (rise > 0) {
      const slope = Math.tan(tip.lead) * (edge * Math.cos(a) + Math.sin(a)) + (relief * rise) / Math.cos(tip.lead)
      return { workSideEdgeAngle: workSideEdge.angle, workSideRelief: Math.atan(slope) }
    }
  } else {
    const [sin, cos] = [Math.sin(workSideEdge.angle), Math.cos(workSideEdge.angle)]
    const along = -f * cos - p * sin
    const m = bitComponents(tip, [-(sin + along * relief) / cos, -relief, -1])
    if (m[2] > 0) return { workSideEdgeAngle: Math.atan(-m[0] / m[2]), workSideRelief: Math.atan(-m[1] / m[2]) }
  }
  problems.push(
    angleProblem(
      'workSideEdge',
      'contradiction',
      `work-side edge at ${inWords(workSideEdge.angle)} (${workSideEdge.kind}) with axial relief ${inWords(axialRelief)}`,
      'a work-side flank that faces the work',
    ),
  )
  return undefined
}

/** Components along (outward, motion, up) at the tip → components in the bit's own frame. */
function bitComponents(tip: Tip, [r, v, z]: Vec3): Vec3 {
  const direction: Vec3 = [r * tip.outward[0] + v * tip.motion[0], r * tip.outward[1] + v * tip.motion[1], z]
  return [dot(direction, tip.bit.x), dot(direction, tip.bit.y), dot(direction, tip.bit.z)]
}

function rangeProblems(wanted: WantedAngles): Problem[] {
  const right = Math.PI / 2
  const problems: Problem[] = []
  const check = (path: string, angle: number, low: number, high: number) => {
    if (angle > low && angle < high) return
    if (!Number.isFinite(angle)) throw new RangeError(`${path}: ${angle} is not a finite number`)
    problems.push(angleProblem(path, 'out-of-range', inWords(angle), `between ${inWords(low)} and ${inWords(high)}`))
  }
  for (const name of ['radialRake', 'axialRake', 'radialRelief', 'axialRelief'] as const) {
    check(name, wanted[name], -right, right)
  }
  const { endEdge, workSideEdge } = wanted
  check('endEdge', endEdge.angle, endEdge.kind === 'in-use' ? 0 : -right, endEdge.kind === 'in-use' ? 2 * right : right)
  check('workSideEdge', workSideEdge.angle, -right, right)
  const straight = endEdge.angle + workSideEdge.angle >= Math.PI
  if (problems.length === 0 && endEdge.kind === 'in-use' && workSideEdge.kind === 'in-use' && straight) {
    problems.push(
      angleProblem(
        'endEdge',
        'contradiction',
        `κr ${inWords(endEdge.angle)} and κr′ ${inWords(workSideEdge.angle)}`,
        'below 180° together: the two edges must leave a corner',
      ),
    )
  }
  return problems
}

import { dot } from '../../geometry/vector.ts'
import type { Problem, Result } from '../../input/problem.ts'
import { angleProblem, inWords } from './angle-problem.ts'
import { cornerProblems, edgeDirection, facetNormals, type GroundFacets, normalsInBody } from './facets.ts'
import { normalRakeFrom, orthogonalFrom } from './rake-conversion.ts'
import { type TipSetting, tipOf } from './tip-setting.ts'

/** What the ground angles become when the tool turns. rad. The end edge is the main one, the work-side edge the minor. */
export interface AnglesInUse {
  /** γ_f, in the plane of motion: positive where the rake face falls away inwards behind the end edge. */
  readonly radialRake: number
  /** γ_p, in the upright plane along the motion: positive where the rake face falls away upwards. */
  readonly axialRake: number
  /** α_f of the end flank: positive where it falls away inside the tip's tangent. */
  readonly radialRelief: number
  /** α_p of the work-side flank: positive where it rises off the cut plane. */
  readonly axialRelief: number
  /** κ_r of the end edge in the reference plane, 0 to π: π/2 leaves a square shoulder. */
  readonly cuttingEdgeAngle: number
  /** κ_r′ of the work-side edge in the reference plane, −π/2 to π/2: 0 rubs flat, negative digs in inside the tip. */
  readonly minorCuttingEdgeAngle: number
  /** ε_r, the corner between the two edges in the reference plane: π − κ_r − κ_r′. */
  readonly cornerAngle: number
  /** γ_o, γ_n and λ_s of the end edge. */
  readonly orthogonalRake: number
  readonly normalRake: number
  readonly inclination: number
}

/**
 * Angles in use at the tip, by the definitions of ISO 3002-1 with the reference plane square to the motion: radial rake
 * tan γ_f = −(n·r̂)/(n·v̂), axial rake tan γ_p = (n·ẑ)/(n·v̂) of the rake face's normal n; radial relief
 * tan α_f = −(m·v̂)/(m·r̂) of the end flank's normal m, axial relief tan α_p = (m·v̂)/(m·ẑ) of the work-side flank's; r̂
 * radially outward, v̂ the motion, ẑ up. Feed is left out: it takes f/(2πR) off the radial relief.
 *
 * Problems (`contradiction`): facets that leave no metal at the tip, or that face so far away that the angle is not
 * defined. Throws RangeError as `tipOf` and `facetNormals` do.
 */
export function anglesInUse(facets: GroundFacets, setting: TipSetting): Result<AnglesInUse> {
  const tip = tipOf(setting)
  const normals = facetNormals(facets)
  const problems = cornerProblems(facets)
  if (problems.length > 0) return { ok: false, problems }
  const { rake, end, workSide } = normalsInBody(normals, tip)
  const endEdge = edgeDirection(rake, end, workSide)
  const workSideEdge = edgeDirection(rake, workSide, end)
  const faults: [fails: boolean, path: string, what: string][] = [
    [dot(rake, tip.motion) <= 0, 'facets.rakeAlong', 'a rake face that looks back against the motion'],
    [dot(end, tip.outward) <= 0, 'facets.endEdgeAngle', 'an end flank that looks towards the axis'],
    [dot(workSide, tip.up) >= 0, 'facets.workSideEdgeAngle', 'a work-side flank that looks up'],
    [dot(endEdge, tip.up) <= 0, 'facets.endEdgeAngle', 'an end edge that runs down from the tip'],
    [
      dot(workSideEdge, tip.outward) >= 0,
      'facets.workSideEdgeAngle',
      'a work-side edge that runs outwards from the tip',
    ],
  ]
  for (const [fails, path, what] of faults) {
    if (fails) problems.push(facesAway(path, what, facets, setting))
  }
  if (problems.length > 0) return { ok: false, problems }

  const radialRake = Math.atan2(-dot(rake, tip.outward), dot(rake, tip.motion))
  const axialRake = Math.atan2(dot(rake, tip.up), dot(rake, tip.motion))
  const cuttingEdgeAngle = Math.atan2(dot(endEdge, tip.up), dot(endEdge, tip.outward))
  const minorCuttingEdgeAngle = Math.atan2(dot(workSideEdge, tip.up), -dot(workSideEdge, tip.outward))
  const orthogonal = orthogonalFrom({ radialRake, axialRake }, cuttingEdgeAngle)
  return {
    ok: true,
    value: {
      radialRake,
      axialRake,
      radialRelief: Math.atan2(-dot(end, tip.motion), dot(end, tip.outward)),
      axialRelief: Math.atan2(-dot(workSide, tip.motion), -dot(workSide, tip.up)),
      cuttingEdgeAngle,
      minorCuttingEdgeAngle,
      cornerAngle: Math.PI - cuttingEdgeAngle - minorCuttingEdgeAngle,
      ...orthogonal,
      normalRake: normalRakeFrom(orthogonal),
    },
  }
}

function facesAway(path: string, what: string, facets: GroundFacets, setting: TipSetting): Problem {
  const name = path.replace('facets.', '') as keyof GroundFacets
  return angleProblem(
    path,
    'contradiction',
    `${what}: ${inWords(facets[name])} ground, face at ${inWords(setting.faceAngle)}`,
    'facets that still face their own way when the bit is tilted and turned into place',
  )
}

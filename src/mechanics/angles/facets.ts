import { cross, dot, negate, unit, type Vec3 } from '../../geometry/vector.ts'
import type { Problem } from '../../input/problem.ts'
import { angleProblem, inWords, requireBelowRightAngle } from './angle-problem.ts'
import { bitDirection, type Tip } from './tip-setting.ts'

/**
 * Angles ground on the bit, rad, each between −π/2 and π/2, in the bit's own frame at the tip: x outward along the
 * bit, y in the direction of motion, z towards the work. All three facets pass through the tip.
 */
export interface GroundFacets {
  /** Rake face y = x·tan(rakeAlong) + z·tan(rakeAcross). Along: positive where it falls away inwards from the end edge. */
  readonly rakeAlong: number
  /** Across: positive where it falls away from the work. */
  readonly rakeAcross: number
  /** End flank x = z·tan(endEdgeAngle) + y·tan(endRelief). Edge: positive where the end leans back away from the work. */
  readonly endEdgeAngle: number
  /** Positive where the end falls away behind its edge. */
  readonly endRelief: number
  /** Work-side flank z = x·tan(workSideEdgeAngle) + y·tan(workSideRelief). Edge: positive where it rises inwards. */
  readonly workSideEdgeAngle: number
  /** Positive where the underside falls away behind its edge. */
  readonly workSideRelief: number
}

/** A blank as bought: square all over. */
export const unground: GroundFacets = {
  rakeAlong: 0,
  rakeAcross: 0,
  endEdgeAngle: 0,
  endRelief: 0,
  workSideEdgeAngle: 0,
  workSideRelief: 0,
}

/** Unit normals of the facets, pointing out of the metal. */
export interface FacetNormals {
  readonly rake: Vec3
  readonly end: Vec3
  readonly workSide: Vec3
}

/** Normals in the bit's own frame. Throws RangeError for an angle that is not between −π/2 and π/2. */
export function facetNormals(facets: GroundFacets): FacetNormals {
  const t = tangents(facets)
  return {
    rake: unit([-t.rakeAlong, 1, -t.rakeAcross]),
    end: unit([1, -t.endRelief, -t.endEdgeAngle]),
    workSide: unit([-t.workSideEdgeAngle, -t.workSideRelief, 1]),
  }
}

/** The same normals in the body frame, for either hand. */
export function normalsInBody(normals: FacetNormals, tip: Tip): FacetNormals {
  return {
    rake: bitDirection(tip, normals.rake),
    end: bitDirection(tip, normals.end),
    workSide: bitDirection(tip, normals.workSide),
  }
}

/**
 * Unit direction of the edge between two facets from the tip into the metal, in whichever frame the normals are in. The
 * metal of the corner lies behind all three facets, which tells the edge from its continuation past the tip.
 */
export function edgeDirection(one: Vec3, other: Vec3, third: Vec3): Vec3 {
  const line = unit(cross(one, other))
  return dot(line, third) < 0 ? line : negate(line)
}

/**
 * Why the facets leave no corner of metal behind the tip; empty where they do. A wedge needs rake + relief within 90°
 * either way, at the end edge and at the work-side edge; a corner needs the same of the two edge angles. When all hold, the three facets together may still meet in front of the tip instead of behind it: that is the sign
 * of the determinant of their equations.
 */
export function cornerProblems(facets: GroundFacets): Problem[] {
  const problems: Problem[] = []
  const pairs = [
    ['rakeAlong', 'endRelief', 'rake along the bit and end relief'],
    ['rakeAcross', 'workSideRelief', 'rake across the bit and work-side relief'],
    ['endEdgeAngle', 'workSideEdgeAngle', 'end edge angle and work-side edge angle'],
  ] as const
  for (const [first, second, name] of pairs) {
    const sum = facets[first] + facets[second]
    if (Math.abs(sum) < Math.PI / 2 - slack) continue
    problems.push(
      angleProblem(
        `facets.${second}`,
        'contradiction',
        `${name}: ${inWords(facets[first])} + ${inWords(facets[second])} = ${inWords(sum)}`,
        'between -90° and 90° together: else the two facets leave no wedge',
      ),
    )
  }
  if (problems.length > 0) return problems
  const t = tangents(facets)
  const corner =
    1 -
    t.rakeAcross * t.workSideRelief -
    t.endRelief * t.rakeAlong -
    t.endEdgeAngle * t.workSideEdgeAngle -
    t.endRelief * t.rakeAcross * t.workSideEdgeAngle -
    t.endEdgeAngle * t.rakeAlong * t.workSideRelief
  if (corner > slack) return []
  return [
    angleProblem(
      'facets',
      'contradiction',
      'rake, relief and edge angles that meet in front of the tip',
      'smaller angles: no corner of metal is left behind the tip',
    ),
  ]
}

/** Far below what can be ground (6e-8°), far above rounding. */
const slack = 1e-9

function tangents(facets: GroundFacets): GroundFacets {
  requireBelowRightAngle({ ...facets })
  return {
    rakeAlong: Math.tan(facets.rakeAlong),
    rakeAcross: Math.tan(facets.rakeAcross),
    endEdgeAngle: Math.tan(facets.endEdgeAngle),
    endRelief: Math.tan(facets.endRelief),
    workSideEdgeAngle: Math.tan(facets.workSideEdgeAngle),
    workSideRelief: Math.tan(facets.workSideRelief),
  }
}

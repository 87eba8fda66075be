import { coincident } from '../../geometry/tolerance.ts'
import { dot, type Vec3 } from '../../geometry/vector.ts'
import type { Problem, Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { angleProblem } from './angle-problem.ts'
import { type BlankSide, sideDirection } from './blank-side.ts'
import { type ConvexPolyhedron, polyhedronInside, type Side } from './convex-polyhedron.ts'
import { cornerProblems, edgeDirection, type FacetNormals, facetNormals, type GroundFacets } from './facets.ts'
import { type Tip, type TipSetting, tipOf } from './tip-setting.ts'

/** A rectangular blank and how far its tip has been ground back. mm. */
export interface BitBlank {
  /** Along the motion, square to the face, and along the bit; all > 0. */
  readonly width: number
  readonly height: number
  readonly length: number
  /** Ground off the outer end and off the work side at the tip, ≥ 0. What is off the leading face is in the setting. */
  readonly groundOffEnd: number
  readonly groundOffWorkSide: number
  /** How far inwards from the tip the facets run, > 0; the blank is untouched behind that. */
  readonly groundLength: number
}

export type BitFace = BlankSide | 'rake face' | 'end flank' | 'work-side flank' | 'end of grinding'

/** The metal of the bit, in its own frame at the tip: two convex bodies side by side. */
export interface GroundBit {
  readonly tip: Tip
  readonly normals: FacetNormals
  /** From the outer end inwards as far as the facets run. */
  readonly head: ConvexPolyhedron<BitFace>
  /** The untouched blank behind; undefined where the facets run along the whole bit. */
  readonly tail: ConvexPolyhedron<BitFace> | undefined
}

/**
 * Why the facets cannot be ground on the blank; empty where they can: more ground off than there is; facets that leave
 * no corner; facets that would have to lie outside the blank near the tip, so that not they but the bare blank would
 * cut: then more must be ground off that side. Throws RangeError for sizes that are not as `BitBlank` says, and as
 * `facetNormals` does.
 */
export function blankProblems(blank: BitBlank, facets: GroundFacets, groundOffLeading: number): Problem[] {
  const { width, height, length, groundOffEnd, groundOffWorkSide, groundLength } = blank
  for (const [name, value] of Object.entries({ width, height, length, groundLength })) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} mm must be above 0`)
  }
  for (const [name, value] of Object.entries({ groundOffEnd, groundOffWorkSide })) {
    if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} mm must be 0 or more`)
  }
  const normals = facetNormals(facets)
  const grounds = [
    { path: 'groundOffLeading', off: groundOffLeading, size: width, side: 'leading face' },
    { path: 'groundOffEnd', off: groundOffEnd, size: length, side: 'outer end' },
    { path: 'groundOffWorkSide', off: groundOffWorkSide, size: height, side: 'work side' },
  ] as const
  const problems: Problem[] = grounds
    .filter(({ off, size }) => off >= size)
    .map(({ path, off, size }) =>
      angleProblem(path, 'contradiction', `${inMm(off)} of ${inMm(size)}`, 'less than the blank has there'),
    )
  problems.push(...cornerProblems(facets))
  if (problems.length > 0) return problems
  for (const { path, off, side } of grounds) {
    const outside = off === 0 && cornerEdges(normals).some((edge) => dot(edge, sideDirection[side]) > 1e-9)
    if (outside) {
      problems.push(
        angleProblem(
          path,
          'contradiction',
          `facets that run out of the blank through its ${side}`,
          'facets within the blank',
          `grind more off the ${side} at the tip, or choose other angles`,
        ),
      )
    }
  }
  return problems
}

/**
 * The ground bit, exact: a box less what each facet takes within the ground length. Problems as `blankProblems` finds
 * them. Throws RangeError as that does, and as `tipOf` does.
 */
export function groundBit(blank: BitBlank, facets: GroundFacets, setting: TipSetting): Result<GroundBit> {
  const { width, height, length, groundOffEnd, groundOffWorkSide, groundLength } = blank
  const problems = blankProblems(blank, facets, setting.groundOffLeading)
  if (problems.length > 0) return { ok: false, problems }
  const tip = tipOf(setting)
  const normals = facetNormals(facets)

  const side = (name: BitFace, normal: Vec3, offset: number): Side<BitFace> => ({ kind: 'plane', name, normal, offset })
  const wall = (name: BlankSide, offset: number) => side(name, sideDirection[name], offset)
  const sides = [
    wall('leading face', setting.groundOffLeading),
    wall('trailing face', width - setting.groundOffLeading),
    wall('outer end', groundOffEnd),
    wall('inner end', length - groundOffEnd),
    wall('work side', groundOffWorkSide),
    wall('back', height - groundOffWorkSide),
  ]
  const head = polyhedronInside<BitFace>([
    side('rake face', normals.rake, 0),
    side('end flank', normals.end, 0),
    side('work-side flank', normals.workSide, 0),
    ...sides,
    side('end of grinding', [-1, 0, 0], groundLength),
  ])
  const tail =
    groundLength < length - groundOffEnd
      ? polyhedronInside<BitFace>([side('end of grinding', [1, 0, 0], -groundLength), ...sides])
      : undefined
  return { ok: true, value: { tip, normals, head, tail } }
}

/** Whether a point of the bit's own frame lies on its cutting edge: in the rake face and in the flank, to 1e-6 mm. */
export const liesOnEdge = (normals: FacetNormals, flank: 'end' | 'workSide', p: Vec3): boolean =>
  Math.abs(dot(normals.rake, p)) < coincident && Math.abs(dot(normals[flank], p)) < coincident

/** Unit directions, from the tip into the metal, of the three edges in which two facets meet. */
function cornerEdges({ rake, end, workSide }: FacetNormals): Vec3[] {
  return [edgeDirection(rake, end, workSide), edgeDirection(rake, workSide, end), edgeDirection(end, workSide, rake)]
}

const inMm = (value: number): string => formatLength(value, 'mm')

import { facetNormals, type GroundFacets } from './facets.ts'
import type { BitBlank } from './ground-bit.ts'

/** What grinding leaves of the bit's section square to its length, at one distance behind the tip. */
export interface GroundSection {
  /** Of metal, mm²; 0 where the facets have taken everything, so that the tip falls off. */
  readonly area: number
  /** The same as a share of the blank's section. */
  readonly share: number
  /**
   * Section modulus against the main cutting force (along the motion), mm³: bending moment over the largest stress it
   * makes anywhere in the section. 0 where nothing is left.
   */
  readonly modulus: number
  /** Of the blank as bought, height·width²/6, mm³. */
  readonly blankModulus: number
}

/**
 * The section that is left `behind` mm behind the tip (0 or more, no more than the ground length), seen along the bit:
 * the blank's rectangle cut by the three facets. The rest is lopsided, so bending is reckoned about both its axes at
 * once: stress = a·y + b·z about the centroid, with a·∫y² + b·∫yz = moment and a·∫yz + b·∫z² = 0 (unsymmetrical
 * bending, as in any strength-of-materials book). Throws RangeError for a distance that is below 0, and as
 * `facetNormals` does.
 */
export function groundSection(
  { width, height, groundOffWorkSide }: Pick<BitBlank, 'width' | 'height' | 'groundOffWorkSide'>,
  facets: GroundFacets,
  groundOffLeading: number,
  behind: number,
): GroundSection {
  if (!(behind >= 0 && Number.isFinite(behind))) throw new RangeError(`behind the tip: ${behind} mm must be 0 or more`)
  const blankModulus = (height * width ** 2) / 6
  const [front, back] = [groundOffLeading, groundOffLeading - width]
  const [below, above] = [groundOffWorkSide, groundOffWorkSide - height]
  let outline: Point[] = [
    [back, above],
    [front, above],
    [front, below],
    [back, below],
  ]
  for (const [x, y, z] of Object.values(facetNormals(facets))) outline = cut(outline, y, z, x * behind)
  const { area, alongY, alongZ, yy, yz, zz } = momentsOf(outline)
  const twist = yy * zz - yz * yz
  if (!(area > 1e-9 && twist > 0)) return { area: 0, share: 0, modulus: 0, blankModulus }
  const [a, b] = [zz / twist, -yz / twist]
  const stress = Math.max(...outline.map(([y, z]) => Math.abs(a * (y - alongY) + b * (z - alongZ))))
  return { area, share: area / (width * height), modulus: 1 / stress, blankModulus }
}

/** y in the direction of motion, z towards the work, mm. */
type Point = readonly [y: number, z: number]

/** The part of a convex outline in which ny·y + nz·z ≤ most. */
function cut(outline: readonly Point[], ny: number, nz: number, most: number): Point[] {
  const over = ([y, z]: Point) => ny * y + nz * z - most
  return outline.flatMap((point, at): Point[] => {
    const next = outline[(at + 1) % outline.length] ?? point
    const [here, there] = [over(point), over(next)]
    const kept = here <= 0 ? [point] : []
    if (here < 0 === there < 0 || here === 0 || there === 0) return kept
    const t = here / (here - there)
    return [...kept, [point[0] + t * (next[0] - point[0]), point[1] + t * (next[1] - point[1])]]
  })
}

/** Area, centroid and second moments about the centroid of a convex outline (Green's theorem). */
function momentsOf(outline: readonly Point[]) {
  let [area, sy, sz, yy, yz, zz] = [0, 0, 0, 0, 0, 0]
  outline.forEach(([y0, z0], at) => {
    const [y1, z1] = outline[(at + 1) % outline.length]!
    const turn = y0 * z1 - y1 * z0
    area += turn / 2
    sy += (turn * (y0 + y1)) / 6
    sz += (turn * (z0 + z1)) / 6
    yy += (turn * (y0 * y0 + y0 * y1 + y1 * y1)) / 12
    zz += (turn * (z0 * z0 + z0 * z1 + z1 * z1)) / 12
    yz += (turn * (2 * y0 * z0 + y0 * z1 + y1 * z0 + 2 * y1 * z1)) / 24
  })
  if (!(area > 0)) return { area: 0, alongY: 0, alongZ: 0, yy: 0, yz: 0, zz: 0 }
  const [alongY, alongZ] = [sy / area, sz / area]
  return {
    area,
    alongY,
    alongZ,
    yy: yy - area * alongY ** 2,
    zz: zz - area * alongZ ** 2,
    yz: yz - area * alongY * alongZ,
  }
}

/**
 * Marks that a round-nosed tool leaves at a steady feed: each turn removes what lies above its profile, so the surface
 * is the lower envelope of profiles one feed apart. Lengths in mm, angles in rad. The profile is the nose, tangent on
 * either side to a straight edge; heights are measured from its lowest point. Elementary geometry.
 */
export interface ToolProfile {
  /** At least 0. */
  readonly noseRadius: number
  /** Angles of both edges against the surface, above 0 and at most π/2, in either order. */
  readonly edges: readonly [number, number]
}

/** Which parts of the profile meet at the cusp. */
export type Cusp = 'nose-nose' | 'edge-nose' | 'edge-edge'

/**
 * Height of the cusps, R_t, for a feed above 0. Nose to nose (f ≤ 2·r·sin κ, κ the flatter edge) r − √(r² − f²/4); edge
 * to nose r(1 − cos κ) + f·sin κ·cos κ − √(2·f·r·sin³κ − f²·sin⁴κ); edge to edge
 * (f − r·(tan κ₁/2 + tan κ₂/2))/(cot κ₁ + cot κ₂). The three join without a step.
 */
export function cuspHeight({ noseRadius: r, edges }: ToolProfile, feed: number): { height: number; cusp: Cusp } {
  const [flat, steep] = edges[0] <= edges[1] ? edges : [edges[1], edges[0]]
  if (feed <= 2 * r * Math.sin(flat))
    return { height: feed ** 2 / 4 / (r + rootOfDifference(r, feed / 2)), cusp: 'nose-nose' }
  const [sin, cos] = [Math.sin(flat), Math.cos(flat)]
  const noseEnd = noseHeight(r, steep)
  if (feed <= halfWidth(r, flat, noseEnd) + halfWidth(r, steep, noseEnd)) {
    const root = Math.sqrt(Math.max(0, feed * sin ** 3 * (2 * r - feed * sin)))
    return { height: noseHeight(r, flat) + feed * sin * cos - root, cusp: 'edge-nose' }
  }
  const rounded = r * (Math.tan(flat / 2) + Math.tan(steep / 2))
  return { height: (feed - rounded) / (1 / Math.tan(flat) + 1 / Math.tan(steep)), cusp: 'edge-edge' }
}

/**
 * Arithmetic mean deviation R_a of the same surface, exact: mean distance from the mean line. Tends to
 * 4/(9√3) = 0.2566 of the cusp height for a small feed, and is a quarter of it for a tool without a nose.
 */
export function meanDeviation({ noseRadius: r, edges }: ToolProfile, feed: number): number {
  const { height } = cuspHeight({ noseRadius: r, edges }, feed)
  const areaTo = (level: number) =>
    edges.reduce((sum, edge) => sum + areaBelowProfile(r, edge, halfWidth(r, edge, level)), 0)
  const mean = areaTo(height) / feed
  const width = edges.reduce((sum, edge) => sum + halfWidth(r, edge, mean), 0)
  return (2 * (mean * width - areaTo(mean))) / feed
}

/** Height at which the nose runs into an edge, r·(1 − cos κ) without losing digits. */
function noseHeight(r: number, edge: number): number {
  return 2 * r * Math.sin(edge / 2) ** 2
}

/** Distance from the lowest point to the profile at a height, on the side of one edge. */
function halfWidth(r: number, edge: number, height: number): number {
  if (height <= noseHeight(r, edge)) return Math.sqrt(height * (2 * r - height))
  return height / Math.tan(edge) + r * Math.tan(edge / 2)
}

/** Area between the lowest level and the profile, out to a distance on the side of one edge. */
function areaBelowProfile(r: number, edge: number, distance: number): number {
  const onNose = Math.min(distance, r * Math.sin(edge))
  const onEdge = distance - onNose
  return areaBelowNose(r, onNose) + onEdge * (noseHeight(r, edge) + (onEdge * Math.tan(edge)) / 2)
}

function areaBelowNose(r: number, distance: number): number {
  if (distance <= 0) return 0
  const share = distance / r
  // The closed form is a difference of nearly equal numbers there; the next term of the series is below 1e-16.
  if (share < 0.01) return r * distance * share ** 2 * (1 / 6 + share ** 2 / 40 + share ** 4 / 112)
  return r * distance - (distance * rootOfDifference(r, distance) + r * r * Math.asin(Math.min(1, share))) / 2
}

/** √(a² − b²) for b ≤ a, never NaN for a last digit. */
function rootOfDifference(a: number, b: number): number {
  return Math.sqrt(Math.max(0, (a - b) * (a + b)))
}

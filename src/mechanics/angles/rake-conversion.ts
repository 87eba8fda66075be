/**
 * Rake of one face in three systems of planes, all in rad. Symbols and definitions: ISO 3002-1; the two conversions are
 * also printed, under the lathe names back rake (γ_p) and side rake (γ_f), in the textbooks A Textbook of Production
 * Engineering, chapter 14, and Manufacturing Science, chapter 4.
 */
export interface SideAndBackRake {
  /** γ_f: in the plane of motion. Between −π/2 and π/2; positive where the face falls away behind the edge. */
  readonly radialRake: number
  /** γ_p: in the plane square to that and to the reference plane. */
  readonly axialRake: number
}

export interface OrthogonalRake {
  /** γ_o: square to the edge as it is seen in the reference plane. */
  readonly orthogonalRake: number
  /** λ_s: the edge against the reference plane; positive where the corner is its foremost point. */
  readonly inclination: number
}

/** tan γ_o = tan γ_p·cos κ_r + tan γ_f·sin κ_r; tan λ_s = tan γ_p·sin κ_r − tan γ_f·cos κ_r. κ_r in rad, any. */
export function orthogonalFrom(rake: SideAndBackRake, cuttingEdgeAngle: number): OrthogonalRake {
  const [f, p] = [Math.tan(rake.radialRake), Math.tan(rake.axialRake)]
  const [sin, cos] = [Math.sin(cuttingEdgeAngle), Math.cos(cuttingEdgeAngle)]
  return { orthogonalRake: Math.atan(p * cos + f * sin), inclination: Math.atan(p * sin - f * cos) }
}

/** The way back: tan γ_f = tan γ_o·sin κ_r − tan λ_s·cos κ_r; tan γ_p = tan γ_o·cos κ_r + tan λ_s·sin κ_r. */
export function sideAndBackFrom(rake: OrthogonalRake, cuttingEdgeAngle: number): SideAndBackRake {
  const [o, s] = [Math.tan(rake.orthogonalRake), Math.tan(rake.inclination)]
  const [sin, cos] = [Math.sin(cuttingEdgeAngle), Math.cos(cuttingEdgeAngle)]
  return { radialRake: Math.atan(o * sin - s * cos), axialRake: Math.atan(o * cos + s * sin) }
}

/** γ_n, square to the edge itself: tan γ_n = tan γ_o·cos λ_s. rad. */
export const normalRakeFrom = (rake: OrthogonalRake): number =>
  Math.atan(Math.tan(rake.orthogonalRake) * Math.cos(rake.inclination))

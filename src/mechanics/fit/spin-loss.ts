import type { PressJoint } from './press-joint.ts'

/** Densities of hub and shaft, kg/m³. */
export interface Densities {
  readonly hub: number
  readonly shaft: number
}

/**
 * Interference that turning takes away, mm on the diameter, because the hub grows more than the shaft: the difference of
 * the free growths of two turning rings (thin-disc solution of the theory of elasticity). Speed rad/s. RangeError for
 * densities or speeds that are negative, NaN or infinite.
 */
export function spinLoss(joint: PressJoint, densities: Densities, speed: number): number {
  for (const figure of [densities.hub, densities.shaft, speed]) {
    if (!(figure >= 0 && Number.isFinite(figure))) throw new RangeError(`density or speed: ${figure}`)
  }
  return lossPerSquare(joint, densities) * speed ** 2
}

/**
 * Speed, rad/s, at which turning has taken away `spare` mm of interference; undefined where it never does (no spare is
 * speed 0). Spare is what the joint has over what its load needs.
 */
export function speedLosing(spare: number, joint: PressJoint, densities: Densities): number | undefined {
  const perSquare = lossPerSquare(joint, densities)
  return perSquare > 0 ? Math.sqrt(Math.max(0, spare) / perSquare) : undefined
}

/** mm·s²: loss over the square of the speed. */
function lossPerSquare(joint: PressJoint, densities: Densities): number {
  const r = joint.diameter / 2
  const grown = ({ youngsModulus, poissonRatio }: PressJoint['hub'], density: number, other: number) =>
    ((density * megapascals * r) / (4 * youngsModulus)) *
    ((3 + poissonRatio) * other ** 2 + (1 - poissonRatio) * r ** 2)
  const hub = grown(joint.hub, densities.hub, joint.hubOutside / 2)
  const shaft = grown(joint.shaft, densities.shaft, joint.shaftBore / 2)
  return 2 * (hub - shaft)
}

/** kg/m³ · (mm/s)² in MPa. */
const megapascals = 1e-12

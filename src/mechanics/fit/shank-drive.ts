import type { Result } from '../../input/problem.ts'
import type { ShankKind } from '../../tables/shanks.ts'
import { InputFaults } from './input-faults.ts'

/** How a kind of shank is held and turned in the spindle. */
export interface ShankDrive {
  /** What carries the torque. */
  readonly turnedBy: 'friction' | 'keys'
  /** Whether it stays in by itself while it is not drawn in. */
  readonly selfHolding: boolean
  /** Whether interrupted cutting asks for a drawbar; without one it is a stop. */
  readonly needsDrawbar: boolean
  readonly says: string
  readonly source: string
}

/** Common practice, no source, where nothing else is said. */
export const shankDrives: Readonly<Record<ShankKind, ShankDrive>> = {
  straight: {
    turnedBy: 'friction',
    selfHolding: false,
    needsDrawbar: true,
    says: 'A straight shank is turned by the grip of its collet, which a drawbar closes. A drill chuck does not hold it.',
    source: 'common practice, no source',
  },
  morse: {
    turnedBy: 'friction',
    selfHolding: true,
    needsDrawbar: true,
    says: 'A Morse taper sticks, and interrupted cutting with its side load shakes it loose; the tang drives nothing here.',
    source: 'common practice, no source',
  },
  r8: {
    turnedBy: 'friction',
    selfHolding: false,
    needsDrawbar: true,
    says: 'The pin in an R8 spindle only aligns; the taper turns the shank as hard as the drawbar pulls.',
    source: 'common practice, no source',
  },
  '7-24': {
    turnedBy: 'keys',
    selfHolding: false,
    needsDrawbar: true,
    says: 'A 7:24 taper is too steep to hold: keys of the spindle nose turn the shank and the drawbar keeps it in.',
    source: 'ISO 297, from memory',
  },
}

/** A taper drawn into its socket; forces N, lengths mm, angle rad. */
export interface TaperInput {
  /** Pull of the drawbar. */
  readonly drawForce: number
  /** Diameters at the ends of the part that touches. */
  readonly largeDiameter: number
  readonly smallDiameter: number
  /** Half the included angle, above 0 to below π/2. */
  readonly halfAngle: number
  readonly friction: number
}

/**
 * Torque, N·mm, that a taper carries by friction: the pull is met by pressure and by friction along the taper,
 * N = F/(sin α + μ·cos α), which turns at the mean radius with μ·N; as of a cone clutch, textbooks of machine design.
 * Problems: no pull, no friction, an angle or diameters that are no taper.
 */
export function taperTorque(input: TaperInput): Result<number> {
  const { drawForce, largeDiameter, smallDiameter, halfAngle, friction } = input
  const faults = new InputFaults()
  faults.keeps('drawForce', drawForce, 'force', { above: 0 })
  faults.keeps('smallDiameter', smallDiameter, 'length', { above: 0 })
  faults.keeps('largeDiameter', largeDiameter, 'length', { above: smallDiameter })
  faults.keeps('halfAngle', halfAngle, 'angle', { above: 0, below: Math.PI / 2 })
  faults.keeps('friction', friction, 'ratio', { above: 0, max: 1 })
  return faults.result(() => {
    const pressing = drawForce / (Math.sin(halfAngle) + friction * Math.cos(halfAngle))
    return (friction * pressing * (largeDiameter + smallDiameter)) / 4
  })
}

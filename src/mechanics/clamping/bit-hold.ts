import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface BitHoldInput {
  /** Force of each screw, N (count on the least), at least 0. */
  readonly screwForces: readonly number[]
  /** Between screw point and bit, and bit and wall: a plain number, above 0. */
  readonly friction: number
  /** Of the bit, kg, above 0. */
  readonly bitMass: number
  /** Distance of the bit's centroid from the spindle axis, mm, positive on the bit side, negative beyond the axis. */
  readonly centroidRadius: number
  /** Of the spindle, rad/s, at least 0. */
  readonly speed: number
  /** Tilt of the face, rad, 0 to below π/2. */
  readonly faceAngle: number
  /** Cutting force on the tip towards the spindle axis, N, at least 0. */
  readonly radialForce: number
  /** Cutting force on the tip along the spindle axis, N, positive towards the head. */
  readonly axialForce: number
  /** Wanted factor, above 0. */
  readonly wanted: number
}

export interface HoldInDirection {
  /** What pulls that way at worst, N, at least 0. */
  readonly load: number
  /** Friction over load; undefined where nothing pulls that way. */
  readonly factor: number | undefined
}

export interface BitHold {
  /** Friction on both faces, N: the same in every direction along them. */
  readonly friction: number
  /** Out along the bit. */
  readonly outward: HoldInDirection
  /** In along the bit. */
  readonly inward: HoldInDirection
  /** Out of the slot, square to the face. */
  readonly outOfSlot: HoldInDirection
  /** Spindle speed at which the wanted factor is just kept, rad/s; undefined where speed does not pull the bit. */
  readonly speedLimit: number | undefined
}

/**
 * Rules of thumb: friction of a flat screw point and of the wall on high-speed steel, which is harder than both (a
 * holding table for cup points on soft shafts does not apply), and the factor. Common practice without a source.
 */
export const bitHoldRules = { friction: 0.12, wanted: 3 } as const

/**
 * What keeps the bit from sliding: friction 2·μ·ΣF on the two faces squeezed, each direction for itself. In the face
 * frame (x out along the bit, z into the metal, tilted by a) the centrifugal force C = m·r·ω² splits into C·cos a
 * outward and C·sin a into the slot, the radial cutting force into R·cos a inward and R·sin a out of the slot, the axial
 * one into A·sin a inward and A·cos a into the slot. Every load is the sum of what pulls that way; what would relieve
 * it is left out, because it comes and goes with the cut. So is the weight, below a thousandth of one screw's force.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function bitHold(input: BitHoldInput): Result<BitHold> {
  const { screwForces, friction, bitMass, centroidRadius, speed, faceAngle, radialForce, axialForce, wanted } = input
  const problems = outOfRange([
    ...screwForces.map((force, at) => [`screwForces.${at}`, 'force', force, { min: 0 }] as const),
    ['friction', 'ratio', friction, { above: 0 }],
    ['bitMass', 'mass', bitMass, { above: 0 }],
    ['centroidRadius', 'length', centroidRadius, {}],
    ['speed', 'rotation-speed', speed, { min: 0 }],
    ['faceAngle', 'angle', faceAngle, { min: 0, below: Math.PI / 2 }],
    ['radialForce', 'force', radialForce, { min: 0 }],
    ['axialForce', 'force', axialForce, {}],
    ['wanted', 'ratio', wanted, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }

  const [cos, sin] = [Math.cos(faceAngle), Math.sin(faceAngle)]
  const carried = 2 * friction * screwForces.reduce((sum, force) => sum + force, 0)
  /** Centrifugal force per speed squared, N·s²: kg·mm/s² are thousandths of a newton. */
  const thrown = (bitMass * centroidRadius) / 1000
  const [out, back] = [Math.max(0, thrown), Math.max(0, -thrown)]
  const [pushed, pulled] = [Math.max(0, axialForce), Math.max(0, -axialForce)]
  const ways = {
    outward: { still: pulled * sin, perSquare: out * cos },
    inward: { still: radialForce * cos + pushed * sin, perSquare: back * cos },
    outOfSlot: { still: radialForce * sin + pulled * cos, perSquare: back * sin },
  }
  const way = ({ still, perSquare }: { still: number; perSquare: number }): HoldInDirection => {
    const load = still + perSquare * speed ** 2
    return { load, factor: load > 0 ? carried / load : undefined }
  }
  const limits = Object.values(ways)
    .filter(({ perSquare }) => perSquare > 0)
    .map(({ still, perSquare }) => Math.sqrt(Math.max(0, carried / wanted - still) / perSquare))
  return {
    ok: true,
    value: {
      friction: carried,
      outward: way(ways.outward),
      inward: way(ways.inward),
      outOfSlot: way(ways.outOfSlot),
      speedLimit: limits.length === 0 ? undefined : Math.min(...limits),
    },
  }
}

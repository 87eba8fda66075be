import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface BitBendingInput {
  /** Main cutting force against the motion (along y), N, at least 0. */
  readonly cuttingForce: number
  /** Force along the spindle axis, N; only its size counts. */
  readonly axialForce: number
  /** Unsupported length, tip to the outer end of the wall behind the bit, mm, above 0. */
  readonly overhang: number
  /** Of the bit, along the motion, mm, above 0. */
  readonly width: number
  /** Of the bit, square to the face, mm, above 0. */
  readonly height: number
  /** Of the bit, MPa, above 0. */
  readonly youngsModulus: number
  /** Largest bending stress, MPa, and largest deflection at the tip, mm, both above 0. */
  readonly stressLimit: number
  readonly deflectionLimit: number
}

/** Bending in one plane. */
export interface BendingInPlane {
  /** At the end of the wall, on the outermost fibre, MPa. */
  readonly stress: number
  /** At the tip, mm, in the direction of the force. */
  readonly deflection: number
  /** By which the end of the bit turns, rad. */
  readonly slope: number
}

export interface BitBending {
  readonly main: BendingInPlane
  readonly axial: BendingInPlane
  /** Both planes together at the corner of the section, MPa. */
  readonly stress: number
  /** Both planes together, mm. */
  readonly deflection: number
  /** Limit over figure; undefined where there is no force. */
  readonly stressFactor: number | undefined
  readonly deflectionFactor: number | undefined
  /** Largest overhang at which both limits are kept, mm; undefined where there is no force. */
  readonly largestOverhang: number | undefined
}

/** Rules of thumb for a bit of high-speed steel, common practice without a source: MPa and mm. */
export const bitBendingRules = { stressLimit: 600, deflectionLimit: 0.05 } as const

/**
 * The bit as a cantilever held at the outer end of the wall behind it: stress 6·F·L/(b·h²), deflection F·L³/(3·E·I),
 * slope F·L²/(2·E·I) with I = b·h³/12, h in the direction of the force (beam formulas of any strength-of-materials
 * book); for the axial force width and height change places. Shear is left out: it adds less than 1 % to the deflection
 * from an overhang of 10 heights and about a tenth at 3. The radial force is left out too: it acts inwards on
 * the leading, work-side corner and bends the bit back, so that leaving it out is on the safe side.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function bitBending(input: BitBendingInput): Result<BitBending> {
  const { cuttingForce, axialForce, overhang, width, height, youngsModulus, stressLimit, deflectionLimit } = input
  const problems = outOfRange([
    ['cuttingForce', 'force', cuttingForce, { min: 0 }],
    ['axialForce', 'force', axialForce, {}],
    ['overhang', 'length', overhang, { above: 0 }],
    ['width', 'length', width, { above: 0 }],
    ['height', 'length', height, { above: 0 }],
    ['youngsModulus', 'pressure', youngsModulus, { above: 0 }],
    ['stressLimit', 'pressure', stressLimit, { above: 0 }],
    ['deflectionLimit', 'length', deflectionLimit, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const inPlane = (force: number, across: number, along: number): BendingInPlane => {
    const stiffness = (youngsModulus * across * along ** 3) / 12
    return {
      stress: (6 * force * overhang) / (across * along ** 2),
      deflection: (force * overhang ** 3) / (3 * stiffness),
      slope: (force * overhang ** 2) / (2 * stiffness),
    }
  }
  const main = inPlane(cuttingForce, height, width)
  const axial = inPlane(Math.abs(axialForce), width, height)
  const stress = main.stress + axial.stress
  const deflection = Math.hypot(main.deflection, axial.deflection)
  const loaded = stress > 0
  const stressFactor = loaded ? stressLimit / stress : undefined
  const deflectionFactor = loaded ? deflectionLimit / deflection : undefined
  // Stress grows with the overhang, deflection with its cube.
  const largestOverhang =
    stressFactor === undefined || deflectionFactor === undefined
      ? undefined
      : overhang * Math.min(stressFactor, Math.cbrt(deflectionFactor))
  return {
    ok: true,
    value: { main, axial, stress, deflection, stressFactor, deflectionFactor, largestOverhang },
  }
}

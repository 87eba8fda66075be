import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import type { Range } from '../../tables/range.ts'
import type { WorkMaterialRow } from '../../tables/work-materials.ts'
import type { BitKind } from './cutting-speed.ts'
import { type EdgeInCut, edgeInCut } from './edge-in-cut.ts'
import { kienzleRange, specificForce } from './kienzle.ts'
import { outOfRange } from './out-of-range.ts'

export interface CuttingForceInput {
  readonly work: Pick<WorkMaterialRow, 'name' | 'specificForce' | 'forceExponent'>
  readonly bit: BitKind
  /** Depth of cut, mm, above 0. */
  readonly depth: number
  /** Feed of one edge, mm, above 0: with one bit, per turn. */
  readonly feed: number
  /** mm, at least 0. */
  readonly noseRadius: number
  /** κ_r in use, rad, above 0 and below π. */
  readonly edgeAngle: number
  /** γ_o in use, rad, −30° to 45°. */
  readonly rake: number
  readonly rules: CuttingForceRules
}

/** What turns the table's force of a new carbide edge into that of a shop-ground bit. */
export interface CuttingForceRules {
  /** Factor of high-speed steel and of a worn edge, above 0. */
  readonly hssFactor: number
  readonly wearFactor: number
  /** Share of the force that a radian of rake takes off, at least 0, and the rake (rad) that the table holds for. */
  readonly perRake: number
  readonly tableRake: number
  /** Thrust square to the edge, over the main force, at least 0. */
  readonly thrustShare: number
  /** Chip thicknesses that the table's formula holds for, mm. */
  readonly chips: Range
}

const degree = Math.PI / 180

/**
 * Rules of thumb that a shop may change. Factors of high-speed steel and wear and 1.5 % a degree of rake: common
 * practice. Rake of the table: 6°, from memory of the tables for steel (2° for cast iron), not stated by our table's
 * source; the larger is on the safe side. Thrust half the main force: common practice without a source.
 */
export const cuttingForceRules: CuttingForceRules = {
  hssFactor: 1.2,
  wearFactor: 1.3,
  perRake: 0.015 / degree,
  tableRake: 6 * degree,
  thrustShare: 0.5,
  chips: kienzleRange,
}

export interface CuttingForce {
  readonly edge: EdgeInCut
  /** Chip thickness a·f/l where it is thickest, mm: where the bit moves square to the feed. */
  readonly chipThickness: number
  /** All factors together, and the table's k_c1.1 (MPa) times them. */
  readonly factor: number
  readonly unitForce: number
  readonly exponent: number
  readonly chips: Range
  /** Main cutting force at the thickest chip, N, against the motion. */
  readonly main: number
  /**
   * `formula`: the chip lies in the formula's range. `upper-bound`: it is thinner, and the force is that of the thinnest
   * chip of the range, which the true one does not exceed; nothing is extrapolated.
   */
  readonly basis: 'formula' | 'upper-bound'
  /** Main force over chip section a·f, MPa. */
  readonly specific: number
  /** Thrust towards the spindle axis, N, and along it, N, positive towards the head (negative on an overhanging edge). */
  readonly radial: number
  readonly axial: number
  /** Least feed that the formula holds for at this depth, mm. */
  readonly leastFeed: number
}

/**
 * Forces at the tip: F_c = k_c·a·f with Kienzle's k_c at h = a·f/l, times the factors of bit, wear and rake. Thrust is
 * taken square to the chord of the edge in cut and as a fixed share of the main force.
 *
 * Problems: a figure outside the ranges of the input, a work material without a published force, a chip thicker than
 * the formula holds for.
 */
export function cuttingForce(input: CuttingForceInput): Result<CuttingForce> {
  const { work, bit, depth, feed, noseRadius, edgeAngle, rake, rules } = input
  const edge = edgeInCut({ depth, noseRadius, edgeAngle })
  const problems = outOfRange([
    ['feed', 'length', feed, { above: 0 }],
    ['rake', 'angle', rake, { min: -30 * degree, max: 45 * degree }],
    ['rules.hssFactor', 'ratio', rules.hssFactor, { above: 0 }],
    ['rules.wearFactor', 'ratio', rules.wearFactor, { above: 0 }],
    ['rules.perRake', 'ratio', rules.perRake, { min: 0 }],
    ['rules.tableRake', 'angle', rules.tableRake, { min: -30 * degree, max: 45 * degree }],
    ['rules.thrustShare', 'ratio', rules.thrustShare, { min: 0 }],
    ['rules.chips.low', 'length', rules.chips.low, { above: 0 }],
    ['rules.chips.high', 'length', rules.chips.high, { min: rules.chips.low }],
  ])
  if (!edge.ok) problems.push(...edge.problems)
  const rakeFactor = 1 - rules.perRake * (rake - rules.tableRake)
  if (problems.length === 0) problems.push(...outOfRange([['rules.perRake', 'ratio', rakeFactor, { above: 0 }]]))
  const { specificForce: tableForce, forceExponent: exponent } = work
  if (tableForce === undefined || exponent === undefined) {
    problems.push({
      code: 'not-in-table',
      where: { file: '', path: 'work' },
      found: `no cutting force of ${work.name}`,
      allowed: 'a work material with a published cutting force',
      remedy: 'add specificForce and forceExponent to its row of work-materials.json',
    })
    return { ok: false, problems }
  }
  if (problems.length > 0 || !edge.ok) return { ok: false, problems }

  const { length, chordAngle } = edge.value
  const chipThickness = (depth * feed) / length
  const { low, high } = rules.chips
  if (chipThickness > high) {
    const write = (value: number) => formatLength(value, 'mm')
    const chip = `a chip ${write(chipThickness)} thick`
    const most = `up to ${write(high)}, where the cutting force was measured`
    const remedy = `feed no more than ${write((high * length) / depth)} at this depth`
    return {
      ok: false,
      problems: [{ code: 'out-of-range', where: { file: '', path: 'feed' }, found: chip, allowed: most, remedy }],
    }
  }
  const factor = (bit === 'hss' ? rules.hssFactor : 1) * rules.wearFactor * rakeFactor
  const unitForce = tableForce * factor
  const counted = Math.max(low, chipThickness)
  const main = specificForce(unitForce, exponent, counted) * counted * length
  const thrust = rules.thrustShare * main
  return {
    ok: true,
    value: {
      edge: edge.value,
      chipThickness,
      factor,
      unitForce,
      exponent,
      chips: rules.chips,
      main,
      basis: chipThickness < low ? 'upper-bound' : 'formula',
      specific: main / (depth * feed),
      radial: thrust * Math.sin(chordAngle),
      axial: thrust * Math.cos(chordAngle),
      leastFeed: (low * length) / depth,
    },
  }
}

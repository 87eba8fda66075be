import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface ScrewRowInput {
  /** Places of the screws along the bit, x in the face frame, mm. */
  readonly xs: readonly number[]
  /** Major diameter, diameter of the flat point, key across flats, tap drill, mm, above 0. */
  readonly majorDiameter: number
  readonly pointDiameter: number
  readonly keySize: number
  readonly tapDrill: number
  /** The stretch of bit that lies on its wall: its two ends, same scale, mm. */
  readonly wall: { readonly outer: number; readonly inner: number }
  /** Screw axis and step floor below the face, mm, above 0. */
  readonly screwHeight: number
  readonly stepDepth: number
}

export interface ScrewRow {
  /** Whether each screw stands on the bit with its whole point. */
  readonly onBit: readonly boolean[]
  readonly countOnBit: number
  /** Least distance between neighbours, mm, and in major diameters; undefined for one screw. */
  readonly spacing: number | undefined
  readonly spacingDiameters: number | undefined
  /** Outer end of the wall to the outermost screw, mm, negative beyond it, and in major diameters. */
  readonly fromEnd: number | undefined
  readonly fromEndDiameters: number | undefined
  /** Axis above the step floor, mm, against what the key's corners and the tap drill's body need there. */
  readonly aboveFloor: number
  readonly keyNeeds: number
  readonly drillNeeds: number
  readonly reached: boolean
}

/** Rules of thumb in major diameters, common practice without a source. */
export const screwRowRules = { spacing: 2.5, fromEnd: 1, leastOnBit: 2 } as const

/**
 * How the row of screws stands: on the bit or beside it, how close, and whether key and drill reach it over the floor
 * of the step. A floor that does not lie lower than the axis by half of key or drill is in their way.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function screwRow(input: ScrewRowInput): Result<ScrewRow> {
  const { xs, majorDiameter, pointDiameter, keySize, tapDrill, wall, screwHeight, stepDepth } = input
  const problems = outOfRange([
    ...xs.map((x, at) => [`xs.${at}`, 'length', x, {}] as const),
    ['majorDiameter', 'length', majorDiameter, { above: 0 }],
    ['pointDiameter', 'length', pointDiameter, { above: 0 }],
    ['keySize', 'length', keySize, { above: 0 }],
    ['tapDrill', 'length', tapDrill, { above: 0 }],
    ['wall.outer', 'length', wall.outer, { above: wall.inner }],
    ['screwHeight', 'length', screwHeight, { above: 0 }],
    ['stepDepth', 'length', stepDepth, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }

  const onBit = xs.map((x) => x - pointDiameter / 2 >= wall.inner && x + pointDiameter / 2 <= wall.outer)
  const inOrder = xs.toSorted((a, b) => b - a)
  const gaps = inOrder.slice(1).map((x, at) => (inOrder[at] ?? x) - x)
  const spacing = gaps.length === 0 ? undefined : Math.min(...gaps)
  const outermost = inOrder[0]
  const fromEnd = outermost === undefined ? undefined : wall.outer - outermost
  const inDiameters = (length: number | undefined) => (length === undefined ? undefined : length / majorDiameter)
  const aboveFloor = stepDepth - screwHeight
  const keyNeeds = keySize / Math.sqrt(3)
  const drillNeeds = tapDrill / 2
  return {
    ok: true,
    value: {
      onBit,
      countOnBit: onBit.filter(Boolean).length,
      spacing,
      spacingDiameters: inDiameters(spacing),
      fromEnd,
      fromEndDiameters: inDiameters(fromEnd),
      aboveFloor,
      keyNeeds,
      drillNeeds,
      reached: aboveFloor >= keyNeeds && aboveFloor >= drillNeeds,
    },
  }
}

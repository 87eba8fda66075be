import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { type Fit, strangeSize } from './fit.ts'
import { InputFaults } from './input-faults.ts'
import { type InterferenceSpan, inwardTo, type Limits, limitsFrom, toNanometre } from './limits.ts'

/** Bore first, measure it, then turn the spigot to that bore. */
export interface MatchedInput {
  /** Nominal bore, mm. */
  readonly nominal: number
  /** Wanted interference over diameter, 0 to 0.01, and how far either way it may be, 0 to 0.005. Rules of thumb. */
  readonly ratio: number
  readonly spread: number
  /** Limits that the bore is made to, mm; left out: the nominal size. */
  readonly boreLimits?: Limits
  /** What the bore measured; left out: not bored yet. */
  readonly measuredBore?: Measurement
  /** What the drawing rounds to, mm; left out: 0.001. In an inch shop 0.0001 in. */
  readonly printStep?: number
}

/** A diameter as read, mm, and how warm the part was, °C; left out: 20 °C, where sizes are defined. */
export interface Measurement {
  readonly size: number
  readonly warm?: { readonly temperature: number; readonly expansion: number }
}

/** A matched fit. Bore and spigot are not free of each other: use `interference`, never the limits' difference. */
export interface MatchedFit extends Fit {
  readonly kind: 'matched'
  /** Whether the spigot limits are final: turned to a bore that was measured. */
  readonly measured: boolean
  /** What the spigot is turned over the bore, mm on the diameter; and as a drawing prints that, rounded inwards. */
  readonly overBore: InterferenceSpan
  readonly printedOver: InterferenceSpan
  /** Limits to turn to, mm at 20 °C: for the bore that was measured, or for the smallest, nominal and largest one. */
  readonly turnTo: readonly { readonly bore: number; readonly spigot: Limits }[]
}

/**
 * Matched fit: interference = (ratio ± spread) · diameter, mm; the diameter is the measured bore's, or nominal. Until the
 * bore is measured `spigot` is for a bore of nominal size, and `turnTo` shows what the ends of its tolerance would ask.
 * Problems: figures outside their range, a measured bore more than 5 % from nominal. RangeError for NaN or infinity.
 * Ratio and spread are rules of thumb of the trade; the method is common practice, no source.
 */
export function matchedFit(input: MatchedInput): Result<MatchedFit> {
  const { nominal, ratio, spread, boreLimits, measuredBore, printStep = 0.001 } = input
  const faults = new InputFaults()
  const nominalGood = faults.keeps('nominal', nominal, 'length', { above: 0 })
  faults.keeps('ratio', ratio, 'ratio', { min: 0, max: 0.01 })
  faults.keeps('spread', spread, 'ratio', { min: 0, max: 0.005 })
  faults.keeps('printStep', printStep, 'length', { above: 0, max: 0.1 })
  if (boreLimits !== undefined && boreLimits.smallest > boreLimits.largest) {
    const found = `${formatLength(boreLimits.smallest, 'mm')} to ${formatLength(boreLimits.largest, 'mm')}`
    faults.add('boreLimits', 'contradiction', found, 'smallest no greater than largest', 'exchange the two')
  }
  const readable = measuredBore && faults.keeps('measuredBore.size', measuredBore.size, 'length', { above: 0 })
  const measured = measuredBore && readable ? sizeAt20(measuredBore) : undefined
  if (measured !== undefined && nominalGood && Math.abs(measured - nominal) > strangeSize * nominal) {
    const allowed = `within 5 % of the nominal ${formatLength(nominal, 'mm')}`
    const found = formatLength(measured, 'mm')
    faults.add('measuredBore', 'contradiction', found, allowed, 'correct this size or the bore diameter')
  }
  return faults.result(() => {
    const diameter = measured ?? nominal
    const overBore = {
      least: toNanometre((ratio - spread) * diameter),
      most: toNanometre((ratio + spread) * diameter),
    }
    const bore = measured === undefined ? (boreLimits ?? only(nominal)) : only(measured)
    const turn = (size: number) =>
      inwardTo(limitsFrom(size, { lower: overBore.least, upper: overBore.most }), printStep)
    const printed = inwardTo({ smallest: overBore.least, largest: overBore.most }, printStep)
    const bores = measured === undefined ? [bore.smallest, nominal, bore.largest] : [measured]
    return {
      kind: 'matched',
      name: 'matched',
      nominal,
      diameter,
      bore,
      spigot: turn(diameter),
      interference: overBore,
      measured: measured !== undefined,
      overBore,
      printedOver: { least: printed.smallest, most: printed.largest },
      turnTo: [...new Set(bores)].toSorted((a, b) => a - b).map((size) => ({ bore: size, spigot: turn(size) })),
      source: 'spigot turned to the measured bore; common practice, no source',
    }
  })
}

/**
 * Size at 20 °C, mm, of a part that was measured warm (or cold): size / (1 + expansion · (temperature − 20)). 20 °C is the
 * reference temperature of ISO 1. RangeError for a size that is not above 0, NaN or infinity.
 */
export function sizeAt20({ size, warm }: Measurement): number {
  const at20 = warm === undefined ? size : size / (1 + warm.expansion * (warm.temperature - 20))
  if (!(at20 > 0 && Number.isFinite(at20))) throw new RangeError(`measured size: ${size}`)
  return toNanometre(at20)
}

function only(size: number): Limits {
  return { smallest: size, largest: size }
}

import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { type Fit, strangeSize } from './fit.ts'
import { InputFaults } from './input-faults.ts'
import { interferenceOf, type Limits } from './limits.ts'

/** Limits of bore and spigot as the user gave or measured them, mm at 20 °C. */
export interface GivenLimits {
  readonly nominal: number
  readonly bore: Limits
  readonly spigot: Limits
}

/**
 * Fit of limits given outright. Problems: a size that is not above 0, limits that are swapped, a size more than 5 % from
 * nominal (another bore or the wrong unit). RangeError for NaN or infinity.
 */
export function givenFit({ nominal, bore, spigot }: GivenLimits): Result<Fit> {
  const faults = new InputFaults()
  const nominalGood = faults.keeps('nominal', nominal, 'length', { above: 0 })
  for (const [path, limits] of [
    ['bore', bore],
    ['spigot', spigot],
  ] as const) {
    const good = (['smallest', 'largest'] as const).filter((end) => {
      const positive = faults.keeps(`${path}.${end}`, limits[end], 'length', { above: 0 })
      return positive && nominalGood && nearNominal(faults, `${path}.${end}`, limits[end], nominal)
    })
    if (good.length === 2 && limits.smallest > limits.largest) {
      const found = `${formatLength(limits.smallest, 'mm')} to ${formatLength(limits.largest, 'mm')}`
      faults.add(path, 'contradiction', found, 'smallest no greater than largest', 'exchange the two')
    }
  }
  return faults.result(() => ({
    kind: 'limits',
    name: 'limits',
    nominal,
    diameter: bore.smallest === bore.largest ? bore.smallest : nominal,
    bore,
    spigot,
    interference: interferenceOf(bore, spigot),
    source: 'given in the parameter set',
  }))
}

/**
 * The same fit after measuring: a measured size, mm at 20 °C, takes the place of its limits, the other keeps its own.
 * A spigot that is measured is matched no more. Problems as `givenFit`; RangeError for a matched fit whose spigot is not
 * measured: that one is turned to the bore anew, by `matchedFit`.
 */
export function measuredFit(fit: Fit, measured: { readonly bore?: number; readonly spigot?: number }): Result<Fit> {
  if (fit.kind === 'matched' && measured.spigot === undefined) {
    throw new RangeError('of a matched fit without a measured spigot, spigot limits follow from the bore')
  }
  const as = (size: number | undefined, limits: Limits): Limits =>
    size === undefined ? limits : { smallest: size, largest: size }
  const given = givenFit({
    nominal: fit.nominal,
    bore: as(measured.bore, fit.bore),
    spigot: as(measured.spigot, fit.spigot),
  })
  return given.ok ? { ok: true, value: { ...given.value, kind: fit.kind, name: fit.name, source: fit.source } } : given
}

function nearNominal(faults: InputFaults, path: string, size: number, nominal: number): boolean {
  const near = Math.abs(size - nominal) <= strangeSize * nominal
  if (!near) {
    const allowed = `within 5 % of the nominal ${formatLength(nominal, 'mm')}`
    faults.add(path, 'contradiction', formatLength(size, 'mm'), allowed, 'correct this size or the bore diameter')
  }
  return near
}

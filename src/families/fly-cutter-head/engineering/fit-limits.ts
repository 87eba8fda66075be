import type { Result } from '../../../input/problem.ts'
import { classFit } from '../../../mechanics/fit/class-fit.ts'
import type { Fit } from '../../../mechanics/fit/fit.ts'
import { givenFit } from '../../../mechanics/fit/given-fit.ts'
import { isoFit } from '../../../mechanics/fit/iso-fit.ts'
import { matchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { zoneLimits } from '../../../mechanics/fit/zone.ts'
import type { Tables } from '../../../tables/read-tables.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { underPaths } from './problem-paths.ts'

/** What a drawing of spigots rounds to, mm. */
export const printStep = { mm: 0.001, in: 0.00254 } as const

/**
 * Limits of bore and spigot, mm at 20 °C, and the interference they leave; undefined for a head that is screwed on. Until
 * the bore is measured, a matched spigot is given for a bore of nominal size. Problems, with paths of parameters: a code or
 * class that does not exist, one outside its sizes, limits that are reversed or belong to another bore.
 */
export function fitLimitsOf({ fit, bore, units }: Parameters, tables: Tables): Result<Fit | undefined> {
  const nominal = bore.diameter
  if (fit.kind === 'threaded') return { ok: true, value: undefined }
  if (fit.kind === 'iso-286') return under(isoFit(fit.code, nominal, tables.iso286), ['code', 'fit.code'])
  if (fit.kind === 'ansi-b4-1') return under(classFit(fit.class, nominal, tables.ansiB41), ['class', 'fit.class'])
  if (fit.kind === 'limits') {
    return under(
      givenFit({
        nominal,
        bore: { smallest: fit['bore-smallest'], largest: fit['bore-largest'] },
        spigot: { smallest: fit['spigot-smallest'], largest: fit['spigot-largest'] },
      }),
      // The largest before what both limits are about: the first that a name begins with counts.
      ['bore.largest', 'fit.bore-largest'],
      ['bore', 'fit.bore-smallest'],
      ['spigot.largest', 'fit.spigot-largest'],
      ['spigot', 'fit.spigot-smallest'],
    )
  }
  const boreLimits = under(zoneLimits(fit['bore-zone'], 'hole', nominal, tables.iso286), ['code', 'fit.bore-zone'])
  if (!boreLimits.ok) return boreLimits
  return under(
    matchedFit({
      nominal,
      ratio: fit['interference-ratio'],
      spread: fit['interference-spread'],
      boreLimits: boreLimits.value,
      printStep: printStep[units],
    }),
    ['ratio', 'fit.interference-ratio'],
    ['spread', 'fit.interference-spread'],
  )
}

/** The same result with parameters' paths in the place of the calculation's own names. */
function under<T>(result: Result<T>, ...paths: readonly (readonly [name: string, path: string])[]): Result<T> {
  if (result.ok) return result
  return { ok: false, problems: underPaths(result.problems, [['nominal', 'bore.diameter'], ...paths], 'fit') }
}

import { nearest } from '../../input/nearest.ts'
import type { Result } from '../../input/problem.ts'
import type { AnsiB41Row } from '../../tables/ansi-b4-1.ts'
import type { Fit } from './fit.ts'
import { InputFaults } from './input-faults.ts'
import { interferenceOf, limitsFrom } from './limits.ts'
import { sizeStep } from './size-step-of.ts'

/**
 * Fit of an ANSI/ASME B4.1 class, `FN2`, at a nominal size in mm. Problems: a class that the table does not have (path
 * `class`, with the nearest), a class that is not defined at that size (with the nearest that is), a size outside the
 * whole table (path `nominal`). RangeError for a table without rows, NaN or infinity.
 */
export function classFit(fitClass: string, nominal: number, rows: readonly AnsiB41Row[]): Result<Fit> {
  const classes = [...new Set(rows.map((row) => row.fitClass))]
  const faults = new InputFaults()
  if (!classes.includes(fitClass)) {
    const near = nearestNumber(fitClass, classes) ?? nearest(fitClass, classes)
    faults.add('class', 'not-in-table', fitClass, classes.join(', '), near === undefined ? undefined : `write ${near}`)
    return { ok: false, problems: faults.problems }
  }
  const anyRow = sizeStep(rows, nominal, 'nominal', 'in')
  if (!anyRow.ok) return anyRow
  const own = sizeStep(
    rows.filter((row) => row.fitClass === fitClass),
    nominal,
    'nominal',
    'in',
  )
  if (!own.ok) {
    const atSize = classes.filter((other) => has(rows, other, nominal))
    const near = nearestNumber(fitClass, atSize)
    const allowed = `at this size ${atSize.join(', ')}`
    const remedy = near === undefined ? undefined : `write ${near}`
    faults.add('class', 'not-in-table', fitClass, allowed, remedy)
    return { ok: false, problems: faults.problems }
  }
  const bore = limitsFrom(nominal, own.value.hole)
  const spigot = limitsFrom(nominal, own.value.shaft)
  return {
    ok: true,
    value: {
      kind: 'ansi-b4-1',
      name: fitClass,
      nominal,
      diameter: nominal,
      bore,
      spigot,
      interference: interferenceOf(bore, spigot),
      source: own.value.source,
    },
  }
}

function has(rows: readonly AnsiB41Row[], fitClass: string, nominal: number): boolean {
  const own = rows.filter((row) => row.fitClass === fitClass)
  return sizeStep(own, nominal, 'nominal', 'in').ok
}

/** Of the classes with the same letters, the one whose number is nearest; the lighter of two. */
function nearestNumber(fitClass: string, classes: readonly string[]): string | undefined {
  const kind = fitClass.replace(/\d+$/, '')
  const number = (name: string) => Number(name.slice(kind.length))
  return classes
    .filter((name) => name.replace(/\d+$/, '') === kind)
    .toSorted((a, b) => Math.abs(number(a) - number(fitClass)) - Math.abs(number(b) - number(fitClass)))
    .at(0)
}

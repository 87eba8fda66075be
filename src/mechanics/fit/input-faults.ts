import type { Problem, ProblemCode, Result } from '../../input/problem.ts'
import { formatQuantity } from '../../quantity/format-quantity.ts'
import type { QuantityKind } from '../../quantity/kind.ts'

/** What a figure must keep to. `above` and `below` are not allowed themselves, `min` and `max` are. */
export interface Bounds {
  readonly above?: number
  readonly min?: number
  readonly below?: number
  readonly max?: number
}

/**
 * Everything that is wrong with the figures handed to one calculation. Paths are the names of the calculation's own
 * inputs (`hub.outside`); whoever knows the file they came from puts file, line and its own path in their place.
 */
export class InputFaults {
  readonly problems: Problem[] = []

  add(path: string, code: ProblemCode, found: string, allowed: string, remedy?: string): void {
    this.problems.push({
      code,
      where: { file: '', path },
      found,
      allowed,
      ...(remedy === undefined ? {} : { remedy }),
    })
  }

  /**
   * Notes the figure where it breaks its bounds; true where it keeps them. NaN and infinity never come from a user's
   * file, so they are the caller's mistake: RangeError.
   */
  keeps(path: string, value: number, kind: QuantityKind, bounds: Bounds): boolean {
    if (!Number.isFinite(value)) throw new RangeError(`${path} is ${value}`)
    const { above, min, below, max } = bounds
    const kept =
      (above === undefined || value > above) &&
      (min === undefined || value >= min) &&
      (below === undefined || value < below) &&
      (max === undefined || value <= max)
    if (!kept) this.add(path, 'out-of-range', write(kind, value), words(kind, bounds))
    return kept
  }

  /** The value that `make` works out, or what is wrong. `make` is only called where nothing is. */
  result<T>(make: () => T): Result<T> {
    return this.problems.length > 0 ? { ok: false, problems: this.problems } : { ok: true, value: make() }
  }
}

function words(kind: QuantityKind, { above, min, below, max }: Bounds): string {
  const parts = [
    above === undefined ? [] : [`above ${write(kind, above)}`],
    min === undefined ? [] : [`${write(kind, min)} or more`],
    below === undefined ? [] : [`below ${write(kind, below)}`],
    max === undefined ? [] : [`no more than ${write(kind, max)}`],
  ]
  return parts.flat().join(', ')
}

function write(kind: QuantityKind, value: number): string {
  return formatQuantity(kind, value, 'mm')
}

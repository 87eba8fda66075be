import type { Amount } from '../checks/finding.ts'

/** A named number that a design yields: report, drawing, inspection and sweep read it by this name. */
export interface Figure<D> {
  /** Unique and stable: `swing`, `wall.bore-slot`, `mass.body`. */
  readonly id: string
  readonly label: string
  readonly kind: Amount['kind']
  /** Where the formula comes from. */
  readonly source: string
  /** Internal unit of the kind; undefined where the design has no such thing. */
  of(design: D): number | undefined
  /** What it is held against, where there is a limit. */
  limit?(design: D): number | undefined
  /** Whether the limit is the least or the most it should be. */
  readonly limitIs?: 'least' | 'most'
}

export interface FigureValue extends Omit<Figure<never>, 'of' | 'limit' | 'limitIs'> {
  readonly value: number
  readonly limit?: { readonly value: number; readonly is: 'least' | 'most' }
}

/** All figures that the design has. Throws Error on a figure that is not a number: a defect, never the input. */
export function figuresOf<D>(figures: readonly Figure<D>[], design: D): FigureValue[] {
  return figures.flatMap(({ id, label, kind, source, of, limit, limitIs = 'most' }) => {
    const value = of(design)
    if (value === undefined) return []
    if (!Number.isFinite(value)) throw new Error(`figure ${id} is ${value}`)
    const held = limit?.(design)
    return [{ id, label, kind, source, value, ...(held !== undefined && { limit: { value: held, is: limitIs } }) }]
  })
}

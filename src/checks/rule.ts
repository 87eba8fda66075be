import { formatQuantity } from '../quantity/format-quantity.ts'
import type { Units } from '../quantity/kind.ts'
import type { Amount, Finding } from './finding.ts'

/**
 * One check. `design` is whatever the rule needs to know, so that a rule runs on every family that offers it.
 * `only`: the id of the one finding that is wanted; a rule with many may then leave the others out.
 */
export interface Rule<Design> {
  readonly id: string
  /** About what is bought for the job: settled when the part is made. */
  readonly beforeMaking?: true
  findings(design: Design, only?: string): readonly Finding[]
}

/** Findings of all rules, stops first, otherwise in the order of the rules. */
export function findingsOf<Design>(rules: readonly Rule<Design>[], design: Design): Finding[] {
  const rank = { stop: 0, caution: 1, note: 2 }
  return rules
    .flatMap((rule) => rule.findings(design))
    .map((finding, order) => ({ finding, order }))
    .sort((a, b) => rank[a.finding.level] - rank[b.finding.level] || a.order - b.order)
    .map(({ finding }) => finding)
}

/** A figure as a sentence shows it. */
export const written = (amount: Amount, units: Units): string =>
  amount.kind === 'count' ? String(amount.value) : formatQuantity(amount.kind, amount.value, units)

export const mm = (value: number): Amount => ({ value, kind: 'length' })
export const ratio = (value: number): Amount => ({ value, kind: 'ratio' })

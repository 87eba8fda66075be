import type { z } from 'zod'
import { formatQuantity } from '../quantity/format-quantity.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { type IssueProblem, isQuantityKind } from './field-meta.ts'
import type { Problem } from './problem.ts'
import { schemaAt } from './schema-tree.ts'
import { walkParameters } from './walk-parameters.ts'

/**
 * Quantities of a parameter set, in internal units, that no file could give because their field does not allow them:
 * for sets that come from elsewhere, such as from measured sizes. Problems have paths without lines.
 */
export function outsideLimits(schema: z.ZodType, parameters: unknown, units: Units): Problem[] {
  return walkParameters(schema, { has: () => true }, parameters, units).flatMap(({ path, kind, value }) => {
    if (!isQuantityKind(kind) || typeof value !== 'number') return []
    const field = schemaAt(schema, path.split('.'), parameters) as z.ZodType | undefined
    const read = field?.safeParse(toUnit(kind, value, units))
    const issue = read?.error?.issues[0]
    if (issue?.code !== 'custom' || !issue.params) return []
    const { code, allowed } = issue.params.problem as IssueProblem
    return [{ code, where: { file: '', path }, found: formatQuantity(kind, value, units), allowed }]
  })
}

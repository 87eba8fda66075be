import type { Operation } from './operation.ts'

/**
 * Operations so that each comes after all that it needs, and otherwise in the order given. Throws Error on a need that is not
 * there, a doubled id or a ring: defects.
 */
export function ordered(operations: readonly Operation[]): Operation[] {
  const ids = new Set(operations.map((o) => o.id))
  if (ids.size !== operations.length) throw new Error('two operations of one id')
  for (const { id, needs } of operations) {
    for (const need of needs) if (!ids.has(need)) throw new Error(`operation ${id} needs ${need}, which is not there`)
  }
  const done = new Set<string>()
  const left = [...operations]
  const out: Operation[] = []
  while (left.length > 0) {
    const next = left.findIndex((o) => o.needs.every((need) => done.has(need)))
    if (next < 0) throw new Error(`operations that wait for each other: ${left.map((o) => o.id).join(', ')}`)
    const [operation] = left.splice(next, 1)
    done.add(operation!.id)
    out.push(operation!)
  }
  return out
}

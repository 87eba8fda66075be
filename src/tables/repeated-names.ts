import type { RowFault } from './row-fault.ts'

/** Two rows of one name: a parameter file could mean either. Each later one is a fault, `path` pointing at it. */
export function repeatedNames(
  names: readonly { readonly name: string; readonly path: RowFault['path'] }[],
): readonly RowFault[] {
  const first = new Map<string, number>()
  const faults: RowFault[] = []
  for (const { name, path } of names) {
    const row = Number(path[1])
    const before = first.get(name)
    if (before === undefined) first.set(name, row)
    else {
      faults.push({
        code: 'contradiction',
        path,
        allowed: 'a name that no other row has',
        remedy: `row ${before + 1} is already ${name}; remove or rename one of the two`,
      })
    }
  }
  return faults
}

/** Neighbours that are alike: from place `from` up to `to`, both counted in. */
export interface Run<T> {
  readonly of: T
  readonly from: number
  readonly to: number
}

export function runsOf<T>(values: readonly T[]): Run<T>[] {
  const runs: Run<T>[] = []
  values.forEach((of, at) => {
    const last = runs.at(-1)
    if (last !== undefined && last.of === of) runs[runs.length - 1] = { ...last, to: at }
    else runs.push({ of, from: at, to: at })
  })
  return runs
}

import { lstatSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Everything in a folder, names with their content; undefined where there is no folder. */
export function folderState(folder: string): Record<string, string> | undefined {
  if (lstatSync(folder, { throwIfNoEntry: false }) === undefined) return undefined
  const state: Record<string, string> = {}
  for (const name of readdirSync(folder).toSorted()) {
    const path = join(folder, name)
    state[name] = lstatSync(path).isFile() ? readFileSync(path, 'latin1') : '(no file)'
  }
  return state
}

/** Names beside the target that are left of its writing. */
export const leftovers = (parent: string, name: string): string[] =>
  readdirSync(parent)
    .filter((found) => found.startsWith(`.${name}.`))
    .toSorted()

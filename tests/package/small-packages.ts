import { expect } from 'vitest'
import type { Problem, Result } from '../../src/input/problem.ts'
import { manifestName, manifestOf, manifestText } from '../../src/package/manifest.ts'
import { type PackagePlace, packagePlace } from '../../src/package/package-place.ts'

/** Two packages that share a name, a content and differ in the rest: a mix of them would show. */
export const earlierFiles: ReadonlyMap<string, Uint8Array | string> = new Map<string, Uint8Array | string>([
  ['body.stl', Uint8Array.of(1, 2, 3, 4, 5, 6)],
  ['old-sheet.csv', 'x,y\n1,2\n'],
  ['report.md', '# earlier report\n'],
])
export const newFiles: ReadonlyMap<string, Uint8Array | string> = new Map<string, Uint8Array | string>([
  ['arbor.stl', Uint8Array.of(9, 8, 7, 6)],
  ['body.stl', Uint8Array.of(1, 2, 3, 4, 5, 7)],
  ['report.md', '# newer report\n'],
])

/** What the folder of a package holds. */
export function stateOf(files: ReadonlyMap<string, Uint8Array | string>, revision: string): Record<string, string> {
  const text = (content: Uint8Array | string) =>
    typeof content === 'string' ? content : Buffer.from(content).toString('latin1')
  const all = [...files].map(([name, content]) => [name, text(content)] as const)
  const entries = [...all, [manifestName, manifestText(manifestOf(files, revision))] as const]
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)))
}

export function placeAt(parent: string, name = 'head'): PackagePlace {
  const place = packagePlace(parent, name)
  if (!place.ok) throw new Error('no place')
  return place.value
}

export function problemsOf(result: Result<unknown>): Problem[] {
  expect(result.ok).toBe(false)
  return result.ok ? [] : result.problems
}

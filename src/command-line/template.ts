import { readFileSync } from 'node:fs'
import type { Units } from '../quantity/kind.ts'

/** The starting parameter set of a family; the same path from `src/command-line/` and from `dist/command-line/`. */
export function templateOf(family: string, units: Units): string {
  const name = units === 'in' ? 'parameters-inch.yaml' : 'parameters.yaml'
  return readFileSync(new URL(`../../templates/${family}/${name}`, import.meta.url), 'utf8')
}

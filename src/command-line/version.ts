import { readFileSync } from 'node:fs'
import { z } from 'zod'

/** As the package says; the same path from `src/command-line/` and from `dist/command-line/`. */
export function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8')
  return z.object({ version: z.string() }).parse(JSON.parse(text)).version
}

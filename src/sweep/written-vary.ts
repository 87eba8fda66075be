import type { Problem, Result } from '../input/problem.ts'

/** What stands behind one `--vary`, taken apart and not yet understood. */
export type WrittenVary =
  | {
      readonly form: 'range'
      readonly path: string
      readonly from: string
      readonly to: string
      readonly steps: string
      /** Everything behind the equals sign. */
      readonly text: string
    }
  | { readonly form: 'list'; readonly path: string; readonly items: readonly string[]; readonly text: string }

export const varyForms = 'PATH=FROM..TO:STEPS, such as slot.depth=8..12:5, or PATH=A,B,C'

/** Takes `PATH=FROM..TO:STEPS` or `PATH=A,B,C` apart. */
export function writtenVary(written: string): Result<WrittenVary> {
  const refuse = (found: string, remedy?: string): Result<never> => ({
    ok: false,
    problems: [varyProblem({ found, allowed: varyForms, ...(remedy !== undefined && { remedy }) })],
  })
  const equals = written.indexOf('=')
  if (equals < 0) return refuse(written, 'write the path of one parameter, an equals sign and the values')
  const path = written.slice(0, equals).trim()
  const text = written.slice(equals + 1).trim()
  if (path === '') return refuse(written, 'write the path of a parameter in front of the equals sign')
  if (text === '') return refuse(written, 'write the values behind the equals sign')
  const dots = text.indexOf('..')
  if (dots < 0) {
    const items = text.split(',').map((item) => item.trim())
    if (items.includes('')) return refuse(written, 'write a value between any two commas')
    return { ok: true, value: { form: 'list', path, items, text } }
  }
  const from = text.slice(0, dots).trim()
  const tail = text.slice(dots + 2)
  // 8...12 would be 8 to 0.12, which nobody meant.
  if (tail.startsWith('.')) return refuse(written, 'write two dots between FROM and TO, and 0.5 for .5')
  const colon = tail.lastIndexOf(':')
  if (colon < 0) return refuse(written, `add how many values there shall be: ${path}=${text}:5`)
  const [to, steps] = [tail.slice(0, colon).trim(), tail.slice(colon + 1).trim()]
  if (from === '' || to === '' || steps === '') return refuse(written)
  return { ok: true, value: { form: 'range', path, from, to, steps, text } }
}

/** Something wrong with a `--vary`. */
export const varyProblem = (
  problem: Omit<Problem, 'where' | 'code'> & { readonly code?: Problem['code']; readonly path?: string },
): Problem => {
  const { path, code = 'bad-command', ...rest } = problem
  return { code, where: { file: '(command line)', ...(path !== undefined && { path }) }, ...rest }
}

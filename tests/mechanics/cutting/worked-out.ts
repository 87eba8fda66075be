import type { ProblemCode, Result } from '../../../src/input/problem.ts'

/** The value of a calculation that must work out; throws with the problems where it does not. */
export function workedOut<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** Code and place of every problem of a calculation that must not work out. */
export function problemsOf(result: Result<unknown>): (readonly [ProblemCode, string | undefined])[] {
  if (result.ok) throw new Error('worked out')
  return result.problems.map(({ code, where }) => [code, where.path] as const)
}

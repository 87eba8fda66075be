import type { Result } from '../../../input/problem.ts'

/**
 * The value of a calculation whose input has been looked at before (schema, layout, engineering problems), so that it can
 * only fail by a mistake of this program: then RangeError.
 */
export function certain<T>(result: Result<T>): T {
  if (!result.ok) throw new RangeError(JSON.stringify(result.problems))
  return result.value
}

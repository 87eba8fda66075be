import type { Problem } from '../../../input/problem.ts'

/**
 * Problems of a calculation with the paths of parameters in the place of the calculation's own names: of all names that a
 * problem's path begins with, the first in the list. Names that are not listed take `otherwise`.
 */
export const underPaths = (
  problems: readonly Problem[],
  paths: readonly (readonly [name: string, path: string])[],
  otherwise: string,
): Problem[] =>
  problems.map((problem) => {
    const name = problem.where.path ?? ''
    const path = paths.find(([start]) => name.startsWith(start))?.[1] ?? otherwise
    return { ...problem, where: { ...problem.where, path } }
  })

import type { Problem } from '../input/problem.ts'

/** Something wrong with the command line itself. */
export const commandProblem = (found: string, allowed: string, remedy?: string): Problem => ({
  code: 'bad-command',
  where: { file: '(command line)' },
  found,
  allowed,
  ...(remedy !== undefined && { remedy }),
})

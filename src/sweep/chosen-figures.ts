import type { Figure } from '../figures/figure.ts'
import { nearest } from '../input/nearest.ts'
import type { Problem, Result } from '../input/problem.ts'

/** Most figures of one sweep: more columns and pictures than this are not read. */
export const mostFigures = 12

/** The figures of those ids, `swing,speed.advised`, in that order; without ids the usual ones. */
export function chosenFigures<D>(
  written: string | undefined,
  usual: readonly string[],
  figures: readonly Figure<D>[],
): Result<Figure<D>[]> {
  const ids = written === undefined ? usual : written.split(',').map((id) => id.trim())
  const known = figures.map(({ id }) => id)
  const problems = ids.flatMap((id, at): Problem[] => {
    if (!known.includes(id)) return [unknownFigure(id, known)]
    return ids.indexOf(id) === at ? [] : [problemOf(`${id} twice`, 'each figure once')]
  })
  if (ids.length > mostFigures) problems.push(problemOf(`${ids.length} figures`, `at most ${mostFigures} figures`))
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, value: ids.map((id) => figures.find((figure) => figure.id === id)!) }
}

function unknownFigure(id: string, known: readonly string[]): Problem {
  const near = nearest(id, known) ?? known.find((name) => name.split('.').includes(id))
  const word = id.split('.')[0]
  const kin = known.filter((name) => name.split('.')[0] === word)
  const allowed = (kin.length > 0 ? kin : [...new Set(known.map(beginning))]).join(', ')
  const remedy = near === undefined ? 'check with --json lists every figure with its id' : `did you mean ${near}?`
  return { ...problemOf(id === '' ? 'nothing' : id, allowed, remedy), code: 'unknown-choice' }
}

/** An id without a dot stands for itself, of all others there are too many to list. */
const beginning = (id: string): string => id.replace(/\..*/, '.…')

const problemOf = (found: string, allowed: string, remedy?: string): Problem => ({
  code: 'bad-command',
  where: { file: '(command line)', path: '--figures' },
  found,
  allowed,
  ...(remedy !== undefined && { remedy }),
})

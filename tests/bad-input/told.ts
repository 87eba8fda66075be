import { expect } from 'vitest'
import type { Problem } from '../../src/input/problem.ts'
import type { Broken, BrokenText } from './corpus.ts'
import type { Ran } from './refusal.ts'

/** That a refusal tells what the corpus wants it to: code and place, its words in front of them, and how much beside it. */
export function expectTold({ problems, err }: Ran, file: string, broken: Broken, { place }: BrokenText): void {
  const { code, path, found, says = '', also = 0, elsewhere } = broken
  const is = (problem: Problem) =>
    problem.code === code &&
    (path === undefined || problem.where.path === path) &&
    (elsewhere === true ||
      (problem.where.file === file && problem.where.line === place?.line && problem.where.column === place?.column))
  expect(problems.filter(is).length, err).toBeGreaterThan(0)
  const where = [
    file,
    ...(place === undefined ? [] : [place.line, place.column]),
    ...(path === undefined ? [] : [` ${path}`]),
  ]
  if (elsewhere !== true) expect(err).toContain(`${where.join(':')}:${found === undefined ? '' : ` found ${found}`}`)
  expect(err).toContain(`found ${found ?? ''}`)
  expect(err.toLowerCase()).toContain(says.toLowerCase())
  expect(problems, err).toHaveLength(1 + also)
}

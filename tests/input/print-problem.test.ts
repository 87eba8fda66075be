import { describe, expect, it } from 'vitest'
import { printProblem, printProblems } from '../../src/input/print-problem.ts'
import type { Problem } from '../../src/input/problem.ts'

const problem = (change: Partial<Problem> = {}): Problem => ({
  code: 'unknown-key',
  where: { file: 'head.yaml', line: 2, column: 3, path: 'screws.cuont' },
  found: 'cuont',
  allowed: 'count, size',
  remedy: 'did you mean count?',
  ...change,
})

/** Column of the mark and the character it stands under. */
const marked = (printed: string) => {
  const [line = '', mark = ''] = printed.split('\n').slice(1)
  return [...line][mark.indexOf('^')]
}

describe('a printed problem', () => {
  it('has place, finding, what is allowed and the remedy on one line', () => {
    expect(printProblem(problem())).toBe(
      'head.yaml:2:3: screws.cuont: found cuont; allowed: count, size. Did you mean count?',
    )
  })

  it('leaves out what is not known', () => {
    const where = { file: 'head.yaml' }
    expect(printProblem({ code: 'file-empty', where, found: 'nothing', allowed: 'keys with values' }, '')).toBe(
      'head.yaml: found nothing; allowed: keys with values.',
    )
  })

  it('shows the source line with a mark below the column', () => {
    expect(printProblem(problem(), 'screws:\n  cuont: 3\n').split('\n').slice(1)).toEqual(['    cuont: 3', '    ^'])
    expect(marked(printProblem(problem({ where: { file: 'a', line: 1, column: 5 } }), '\ta:\tX'))).toBe('X')
    expect(marked(printProblem(problem({ where: { file: 'a', line: 1, column: 5 } }), '\ufeffab: X\r\n'))).toBe('X')
  })

  it('shows a window of a long line that has the column in it', () => {
    for (const column of [1, 80, 500, 999, 1000]) {
      const text = `${'a'.repeat(column - 1)}X${'b'.repeat(1000 - column)}`
      const printed = printProblem(problem({ where: { file: 'a', line: 1, column } }), text)
      expect(marked(printed)).toBe('X')
      expect(Math.max(...printed.split('\n').map((line) => line.length))).toBeLessThanOrEqual(166)
    }
  })

  it('lets nothing through that could steer a terminal', () => {
    const nasty = '\u001b[2J\u0007\u202e\u009b\r'
    const text = `${nasty}X`
    const printed = printProblem(
      problem({ found: nasty, allowed: nasty, remedy: nasty, where: { file: nasty, line: 1, column: 8, path: nasty } }),
      text,
    )
    for (const character of nasty.replace('[2J', '')) expect(printed).not.toContain(character)
    expect(printed.split('\n').length).toBe(3)
  })

  it('stays short however long the key was', () => {
    const long = 'k'.repeat(100_000)
    const where = { file: 'a', line: 1, column: 1, path: long }
    expect(printProblem(problem({ found: long, where }), `${long}: 1`).length).toBeLessThan(1200)
  })

  it('stands where a line is beyond the text', () => {
    expect(printProblem(problem({ where: { file: 'a', line: 9, column: 1 } }), 'a: 1').split('\n').length).toBe(1)
  })
})

it('problems are printed in the order in which they stand, each with the line of its own file', () => {
  const at = (file: string, line: number, column: number) => problem({ where: { file, line, column } })
  const texts = new Map([
    ['a', 'first\nsecond'],
    ['b', 'other'],
  ])
  const printed = printProblems([at('b', 1, 1), at('a', 2, 2), at('a', 2, 1), at('a', 1, 1)], texts).split('\n')
  expect(printed.filter((line) => line.includes('found')).map((line) => line.slice(0, 5))).toEqual([
    'a:1:1',
    'a:2:1',
    'a:2:2',
    'b:1:1',
  ])
  expect(printed.at(-2)).toBe('  other')
})

import { describe, expect, it } from 'vitest'
import { parseDocument } from 'yaml'
import { findingsOf } from '../../src/checks/rule.ts'
import { families } from '../../src/families/families.ts'
import { readAnyDesign } from '../../src/families/read-design.ts'
import { type FigureValue, figuresOf } from '../../src/figures/figure.ts'
import { toUnit } from '../../src/quantity/to-unit.ts'
import { headFile, headText, typed } from '../command-line/workshop.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { swept, tables } from './workbench.ts'

const folder = temporaryFolder()

/** The demo file with these values written into it by a YAML writer. */
function fileWith(values: ReadonlyMap<string, unknown>): string {
  const document = parseDocument(headText())
  for (const [path, value] of values) document.setIn(path.split('.'), value)
  return String(document)
}

/** What comes of a file, the long way: read as text, checked, built. */
function checked(values: ReadonlyMap<string, unknown>) {
  const read = readAnyDesign(families, fileWith(values), 'head.yaml', tables)
  if (!read.ok) return { level: 'impossible', stops: [], codes: read.problems.map((p) => p.code), figures: new Map() }
  const { family, design } = read.value
  const findings = findingsOf(family.rules, design)
  const figures = family.figures.filter(({ id }) => family.sweepFigures.includes(id))
  const inFile = (kind: FigureValue['kind'], value: number) =>
    Number((kind === 'count' ? value : toUnit(kind, value, design.units)).toPrecision(9))
  return {
    level: findings[0]?.level ?? 'none',
    stops: findings.filter((f) => f.level === 'stop').map((f) => f.id),
    codes: [],
    figures: new Map(
      figuresOf(figures, design).map(({ id, kind, value, limit }) => [
        id,
        { value: inFile(kind, value), ...(limit && { limit: inFile(kind, limit.value) }) },
      ]),
    ),
  }
}

describe('a set of a sweep comes to the same as check on a file with its values written into it', () => {
  it.each([
    [['slot.depth=8..13:4'], 4],
    [['bore.depth=7/8 in..34 mm:3'], 3],
    [['screws.thread=M5,M7,M8'], 3],
    [['bit.overhang=20..60:2', 'work.depth-of-cut=0.4..3:2'], 4],
    [['settings.hub.least=1.5..2.5:3'], 3],
    [['machine.reverse=true,false', 'rotation=clockwise,anticlockwise'], 4],
    [['fit.interference-ratio=0.1 %..0.3 %:3'], 3],
    [['face.angle=4 deg 20 min..10 deg:3'], 3],
    [['screws.count=1..3:3'], 3],
    [['bit.swing=100..110:2'], 2],
  ])('%j', (vary, count) => {
    const { axes, figures, sets } = swept(vary)
    expect(sets).toHaveLength(count)
    for (const set of sets) {
      const written = new Map<string, unknown>(
        axes.map(({ path, kind }, at) => [path, kind === 'flag' ? set.at[at]!.shown === 'true' : set.at[at]!.shown]),
      )
      const check = checked(written)
      expect({ level: set.level, stops: set.stops, codes: set.problems.map((p) => p.code) }).toEqual({
        level: check.level,
        stops: check.stops,
        codes: check.codes,
      })
      figures.forEach(({ id }, at) => {
        expect(set.figures[at], id).toBe(check.figures.get(id)?.value ?? null)
        expect(set.limits[at], id).toBe(check.figures.get(id)?.limit ?? null)
      })
    }
  })

  it('in the very numbers that check --json prints', async () => {
    const { sets, figures } = swept(['slot.depth=12.8..12.8:1'])
    headFile(folder(), fileWith(new Map([['slot.depth', 12.8]])))
    const report = JSON.parse((await typed(folder(), ['check', 'head.yaml', '--json', '--no-remedies'])).out)
    const printed = figures.map(({ id }) => report.figures.find((f: { id: string }) => f.id === id))
    expect(printed.map((f) => f.value)).toEqual(sets[0]?.figures)
    expect(printed.map((f) => f.unit)).toEqual(figures.map(({ unit }) => unit))
    expect(report.findings[0].level).toBe(sets[0]?.level)
  })

  it('and these sets have every level among them', () => {
    const levels = [['slot.depth=8..13:4'], ['screws.thread=M6,M7']].flatMap((vary) =>
      swept(vary, 'swing').sets.map((s) => s.level),
    )
    expect(new Set(levels)).toEqual(new Set(['stop', 'note', 'caution', 'impossible']))
  })
})

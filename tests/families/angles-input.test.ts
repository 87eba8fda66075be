import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { tables, templateText } from './random-heads.ts'

type Change = [string | RegExp, string]

function problems(...changes: Change[]) {
  let text = templateText('parameters')
  for (const [from, to] of changes) {
    const changed = text.replace(from, to)
    if (changed === text) throw new Error(`nothing to change: ${from}`)
    text = changed
  }
  const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
  if (read.ok) throw new Error('no problem')
  return read.problems
}

const noFacets: Change = [/ {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/, '']
const forWork: Change = ['  ground-off:', '  grind: for-work-material\n  ground-off:']

/** What is written, and code and path of everything that is said to be wrong. */
const impossible: [string, Change[], string[]][] = [
  ['a relief of −80°', [['end-relief: 10 deg', 'end-relief: -80 deg']], ['out-of-range bit.facets.end-relief']],
  ['a rake of 90°', [['rake-along: 22 deg', 'rake-along: 90 deg']], ['out-of-range bit.facets.rake-along']],
  [
    'rake and relief that leave no wedge',
    [
      ['rake-along: 22 deg', 'rake-along: 45 deg'],
      ['end-relief: 10 deg', 'end-relief: 45 deg'],
    ],
    ['contradiction bit.facets.end-relief'],
  ],
  [
    'edge angles that leave no corner',
    [['length: 6 ', 'end-edge-angle: 50 deg\n    work-side-edge-angle: 45 deg\n    length: 6 ']],
    ['contradiction bit.facets.work-side-edge-angle'],
  ],
  [
    'angles that each would do and together leave no metal behind the tip',
    [
      ['rake-along: 22 deg', 'rake-along: 40 deg'],
      ['end-relief: 10 deg', 'end-relief: 44 deg'],
      ['rake-across: 33 deg 30 min', 'rake-across: 45 deg'],
      ['work-side-relief: 8 deg', 'work-side-relief: 40 deg'],
    ],
    ['contradiction bit.facets'],
  ],
  ['facets without a relief', [[/ {4}work-side-relief: .*\n/, '']], ['missing-key bit.facets.work-side-relief']],
  [
    'a negative rake on an unground leading face: rake face and work-side edge would lie outside the blank',
    [
      ['rake-along: 22 deg', 'rake-along: -5 deg'],
      ['leading: 0.6', 'leading: 0'],
    ],
    ['contradiction bit.ground-off.leading', 'contradiction bit.ground-off.underside'],
  ],
  [
    'a work-side edge below an underside that nothing is ground off',
    [['length: 6 ', 'work-side-edge-angle: -20 deg\n    length: 6 ']],
    ['contradiction bit.ground-off.underside'],
  ],
  [
    'angles of one’s own beside those worked out',
    [forWork],
    [
      'contradiction bit.facets.rake-along',
      'contradiction bit.facets.rake-across',
      'contradiction bit.facets.end-relief',
      'contradiction bit.facets.work-side-relief',
    ],
  ],
  [
    'a slot so far ahead that the rake worked out cannot be ground',
    [noFacets, forWork, ['ahead-of-centre: 2.4', 'ahead-of-centre: 26']],
    ['out-of-range bit.grind'],
  ],
  [
    'a way to grind that there is not',
    [['  ground-off:', '  grind: for-work\n  ground-off:']],
    ['unknown-choice bit.grind'],
  ],
  [
    'a work material that no table has',
    [['material: aluminium', 'material: aluminum']],
    ['not-in-table work.material'],
  ],
  [
    'a bit so high that its tip stands behind the axis',
    [
      ['angle: 7 deg', 'angle: 30 deg'],
      ['overhang: 27', 'overhang: 4'],
      ['height: 10 ', 'height: 100 '],
    ],
    ['contradiction bit.height'],
  ],
]

describe('a bit that cannot be', () => {
  it.each(impossible)('%s', (_, changes, expected) => {
    const found = problems(...changes)
    expect(found.map(({ code, where }) => `${code} ${where.path}`)).toEqual(expected)
    for (const { where, allowed } of found) {
      expect(where.line).toBeGreaterThan(1)
      expect(allowed).not.toBe('')
    }
  })

  it('names the nearest that the table has', () => {
    expect(problems(['material: aluminium', 'material: aluminum'])[0]!.remedy).toBe('write aluminium')
  })

  it('is told what to grind first', () => {
    const [problem] = problems(['rake-along: 22 deg', 'rake-along: -5 deg'], ['leading: 0.6', 'leading: 0'])
    expect(problem!.remedy).toContain('grind more off the leading face')
  })

  it('for a work material without angles in the table has to be given facets', () => {
    const bare = { ...tables, workMaterials: tables.workMaterials.map(({ hssAngles: _, ...row }) => row) }
    const text = templateText('parameters')
      .replace(noFacets[0], '')
      .replace(...forWork)
    const read = readDesign(flyCutterHead, text, 'head.yaml', bare)
    expect(read.ok ? [] : read.problems.map(({ code, where }) => `${code} ${where.path}`)).toEqual([
      'not-in-table work.material',
    ])
  })
})

describe('facets that are worked out', () => {
  it('are listed with the parameters as derived, a left-out grind as the default it is', () => {
    const text = templateText('parameters')
      .replace(noFacets[0], '')
      .replace(...forWork)
    const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    const rows = new Map(read.value.rows.map((row) => [row.path, row]))
    for (const key of ['rake-along', 'rake-across', 'end-relief', 'work-side-relief', 'length']) {
      expect(rows.get(`bit.facets.${key}`)).toMatchObject({ origin: 'derived', value: expect.any(Number) })
    }
    expect(rows.get('bit.facets.length')!.value).toBeCloseTo(0.75 * 10, 12)
    const demo = readDesign(flyCutterHead, templateText('parameters'), 'head.yaml', tables)
    if (!demo.ok) throw new Error(JSON.stringify(demo.problems))
    expect(demo.value.rows.find((row) => row.path === 'bit.grind')).toMatchObject({
      origin: 'default',
      value: 'as-given',
    })
  })
})

import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { tables, templateText } from './random-heads.ts'

type Change = [string | RegExp, string]

const problems = (...changes: Change[]) => {
  const text = changes.reduce((before, [from, to]) => {
    const after = before.replace(from, to)
    if (after === before) throw new Error(`nothing to change: ${from}`)
    return after
  }, templateText('parameters'))
  const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
  return read.ok ? [] : read.problems
}

const settings = (text: string): Change => ['work:\n', `settings:\n  ${text}\nwork:\n`]

const refused: [string, Change[], string, string, string?][] = [
  [
    'spindle speeds that are reversed',
    [['speeds: [95, 180, 270, 430, 620, 940, 1400, 2200]', 'speeds: { slowest: 2200, fastest: 95 }']],
    'contradiction',
    'machine.speeds.slowest',
  ],
  [
    'spindle speeds from the fastest down',
    [['[95, 180, 270, 430, 620, 940, 1400, 2200]', '[2200, 1400, 940]']],
    'contradiction',
    'machine.speeds.1',
  ],
  [
    'a spindle speed that is listed twice',
    [['[95, 180, 270, 430, 620, 940, 1400, 2200]', '[95, 180, 180, 430]']],
    'contradiction',
    'machine.speeds.2',
  ],
  ['a spindle speed of nothing', [['speeds: [95,', 'speeds: [0,']], 'out-of-range', 'machine.speeds.0'],
  ['zero friction of the screws', [settings('screws: { friction: 0 }')], 'out-of-range', 'settings.screws.friction'],
  [
    'a screw force of which all may be missing',
    [settings('screws: { scatter: 1 }')],
    'out-of-range',
    'settings.screws.scatter',
  ],
  [
    'a grip to note below the grip to caution of',
    [settings('screws: { grip-caution: 1.2, grip-note: 1.1 }')],
    'contradiction',
    'settings.screws.grip-note',
  ],
  [
    'a work material that is spelt wrongly',
    [['material: aluminium', 'material: aluminum']],
    'not-in-table',
    'work.material',
    'write aluminium',
  ],
  [
    'a feed that leaves chips thicker than the force was measured for',
    [
      ['feed-per-turn: 0.12', 'feed-per-turn: 1.5'],
      ['depth-of-cut: 0.4', 'depth-of-cut: 4'],
    ],
    'out-of-range',
    'work.feed-per-turn',
    'feed no more than 1.1',
  ],
  ['no depth of cut', [['depth-of-cut: 0.4', 'depth-of-cut: 0']], 'out-of-range', 'work.depth-of-cut'],
  ['a relief of −80°', [['end-relief: 10 deg', 'end-relief: -80 deg']], 'out-of-range', 'bit.facets.end-relief'],
  [
    'a set screw for which no torque is published',
    [['thread: M6', 'thread: M12']],
    'not-in-table',
    'screws.tightening-torque',
    'give the tightening torque',
  ],
  [
    'a bit of what a shop cuts',
    [['length: 78', 'length: 78\n  material: steel-1018']],
    'contradiction',
    'bit.material',
    'write hss',
  ],
  [
    'a drive that gives more than the motor has',
    [settings('cutting: { drive-efficiency: 1.1 }')],
    'out-of-range',
    'settings.cutting.drive-efficiency',
  ],
  [
    'a proof run that stood still',
    [settings('running: { proof-run: 0 rpm }')],
    'out-of-range',
    'settings.running.proof-run',
  ],
  ['no drill in the drawer', [settings('balance: { drills: [] }')], 'out-of-range', 'settings.balance.drills'],
  [
    'a tram reading without the circle it was taken on',
    [['power: 1.1 kW', 'power: 1.1 kW\n  tram: { along: 0.02, across: 0 }']],
    'missing-key',
    'machine.tram.span',
  ],
]

describe('impossible input about the running tool', () => {
  it.each(refused)('%s is refused where it stands', (_, changes, code, path, remedy) => {
    const found = problems(...changes)
    expect(found.map((p) => [p.code, p.where.path])).toContainEqual([code, path])
    const problem = found.find((p) => p.where.path === path)!
    expect(problem.where.line).toBeGreaterThan(0)
    if (remedy !== undefined) expect(problem.remedy).toContain(remedy)
  })

  it('speeds that do not ascend are pointed at, with what is allowed', () => {
    const [problem] = problems(['[95, 180, 270, 430, 620, 940, 1400, 2200]', '[2200, 1400, 940]'])
    const line =
      templateText('parameters')
        .split('\n')
        .findIndex((l) => l.includes('speeds:')) + 1
    expect(problem).toMatchObject({
      found: '1400',
      allowed: 'ascending: each greater than the one before it',
      where: { line, column: 18 },
    })
  })

  it('a torque of one’s own does for a screw without a published one', () => {
    const big: Change[] = [
      ['thread: M6', 'thread: M12\n  tightening-torque: 50'],
      ['size: 46 ', 'size: 80 '],
    ]
    expect(problems(...big)).toEqual([])
  })
})

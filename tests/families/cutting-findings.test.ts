import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { advisedSpeed } from '../../src/families/fly-cutter-head/rules/advised-speed.ts'
import { cut } from '../../src/families/fly-cutter-head/rules/cut.ts'
import { finish } from '../../src/families/fly-cutter-head/rules/finish.ts'
import { judged } from '../../src/families/variants.ts'
import { headFrom } from './random-heads.ts'
import { everyFindingAbove } from './shown-remedy.ts'

type Change = [string | RegExp, string]
type Level = 'stop' | 'caution' | 'note' | 'nothing'

const rules = [advisedSpeed, cut, finish]
const found = (...changes: Change[]) =>
  new Map(findingsOf(rules, headFrom('parameters', ...changes)).map((f) => [f.id, f]))

const speeds = (list: string): Change => ['[95, 180, 270, 430, 620, 940, 1400, 2200]', list]
const steel: Change = ['material: aluminium', 'material: mild-steel']
const feed = (value: string): Change => ['feed-per-turn: 0.12', `feed-per-turn: ${value}`]
const ofWork = (text: string): Change => ['depth-of-cut: 0.4', `depth-of-cut: 0.4\n  ${text}`]
const ofMachine = (text: string): Change => ['power: 1.1 kW', `power: 1.1 kW\n  ${text}`]
const power = (value: string): Change => ['power: 1.1 kW', `power: ${value}`]

describe('the templates', () => {
  it.each(['parameters', 'parameters-inch'] as const)('%s has a cut that its mill takes: nothing but notes', (name) => {
    expect(findingsOf(rules, headFrom(name)).filter((f) => f.level !== 'note')).toEqual([])
  })
})

/** Swing 106.653; mild steel stands 120 ft/min = 36.576 m/min with high-speed steel, aluminium 250 to 500 ft/min. */
const cases: [string, Level, string, Change[], number?][] = [
  // 36576 / (π·109) = 106.81 mm, 36576 / (π·110) = 105.84 mm.
  [
    'a spindle that goes just slow enough for steel',
    'nothing',
    'advised-speed:slowest-too-fast',
    [steel, speeds('[109, 300, 600]')],
  ],
  ['a spindle that does not', 'caution', 'advised-speed:slowest-too-fast', [steel, speeds('[110, 300, 600]')], 106.653],
  // 1.5 × 36576 / (π·106.653) = 163.74 rev/min
  [
    'a slowest speed 1.49 times too fast for steel',
    'caution',
    'advised-speed:slowest-too-fast',
    [steel, speeds('[163, 300, 600]')],
  ],
  [
    'a slowest speed at which the edge burns off',
    'stop',
    'advised-speed:slowest-too-fast',
    [steel, speeds('[165, 300, 600]')],
  ],
  ['no speed between 180 and 460 rev/min for aluminium', 'note', 'advised-speed:slow', [speeds('[95, 180, 460]')]],
  ['one at 230 rev/min', 'nothing', 'advised-speed:slow', [speeds('[95, 180, 230, 460]')]],
  ['a spindle that ends at 220 rev/min', 'note', 'advised-speed:slow', [speeds('{ slowest: 60, fastest: 220 }')]],
  [
    'a cutting speed of one’s own above the table',
    'caution',
    'advised-speed:own',
    [ofWork('cutting-speed: 153 m/min')],
  ],
  ['one within it', 'nothing', 'advised-speed:own', [ofWork('cutting-speed: 152 m/min')]],
  ['one below it', 'note', 'advised-speed:own', [ofWork('cutting-speed: 76 m/min')]],

  [
    'a work material without a cutting force',
    'caution',
    'cut:no-force',
    [['material: aluminium', 'material: plastic']],
  ],
  ['a motor that the mean power stalls', 'stop', 'cut:mean-power', [power('0.09 kW')]],
  ['one that it does not', 'nothing', 'cut:mean-power', [power('0.1 kW')]],
  ['a motor that each bite is too much for', 'caution', 'cut:peak-power', [power('0.31 kW')]],
  ['one that stands it', 'nothing', 'cut:peak-power', [power('0.33 kW')]],
  // 0.4·f/(0.8·acos 0.5): f = 0.0418 leaves a chip of 0.01996, f = 0.0420 one of 0.02005.
  ['a feed that only rubs', 'caution', 'cut:thin-chip', [feed('0.0418')], (0.4 * 0.0418) / (0.8 * Math.acos(0.5))],
  ['one that cuts', 'nothing', 'cut:thin-chip', [feed('0.0420')]],
  ['a chip thinner than forces were measured for', 'note', 'cut:force-bound', [feed('0.104')]],
  ['one just as thick', 'nothing', 'cut:force-bound', [feed('0.105')]],
  // To cut: 140 + R + 2 − √(R² − 46²) = 168.35; to leave the work as well: 140 + 2·(R + 2) = 250.65.
  ['a table too short for the cut', 'stop', 'cut:table-travel', [ofMachine('table-travel: 168.3')], 250.653],
  ['a table too short to leave the work', 'caution', 'cut:table-travel', [ofMachine('table-travel: 168.4')]],
  ['the same by a hair', 'caution', 'cut:table-travel', [ofMachine('table-travel: 250.6')]],
  ['a table long enough', 'nothing', 'cut:table-travel', [ofMachine('table-travel: 250.7')]],

  ['a finish that the feed cannot give', 'caution', 'finish:rough', [ofWork('roughness-wanted: 0.5 um')]],
  ['one that it can', 'nothing', 'finish:rough', [ofWork('roughness-wanted: 0.6 um')]],
  ['no wish for a finish', 'nothing', 'finish:rough', []],
  // 2·0.8·sin 10.432° = 0.2897
  ['a feed beyond the nose: it cuts a thread', 'caution', 'finish:thread', [feed('0.29')], 0.29],
  ['one that the nose covers', 'nothing', 'finish:thread', [feed('0.289')]],
  [
    'a sharp corner cuts a thread at any feed',
    'caution',
    'finish:thread',
    [['length: 78', 'length: 78\n  nose-radius: 0']],
  ],
  // sin θ·(R − √(R² − 46²)) with θ = 0.02/200: 1e-4 · 26.350 = 0.002635
  [
    'a spindle that leans too much for the flatness wanted',
    'caution',
    'finish:dish',
    [ofWork('flatness-wanted: 2.6 um'), ofMachine('tram: { along: 0.02, across: 0, span: 200 }')],
    0.002635,
  ],
  [
    'one that leans just little enough, the other way',
    'nothing',
    'finish:dish',
    [ofWork('flatness-wanted: 2.7 um'), ofMachine('tram: { along: -0.02, across: 0.5, span: 200 }')],
  ],
]

describe('a check of the cut', () => {
  it.each(cases)('tells of %s: %s', (_, level, id, changes, figure) => {
    const finding = found(...changes).get(id)
    expect(finding?.level ?? 'nothing').toBe(level)
    if (figure !== undefined) expect(finding!.figure!.value / figure).toBeCloseTo(1, 4)
  })

  it('names the largest swing that suits steel at the slowest speed, and the remedy keeps to it', () => {
    // 36576 / (π·110) = 105.84 mm
    const design = headFrom('parameters', steel, speeds('[110, 300, 600]'))
    const finding = judged(flyCutterHead, design, true).find((f) => f.id === 'advised-speed:slowest-too-fast')!
    expect(finding.limit!.value).toBeCloseTo(36576 / (Math.PI * 110), 6)
    expect(finding.text).toContain('105.841 mm')
    expect(finding.remedy!.path).toBe('bit.overhang')
    // Overhang 27 less (106.653 − 105.841)/2·cos 7° or a little more.
    expect(finding.remedy!.to).toBeLessThanOrEqual(26.594)
    expect(finding.remedy!.to).toBeGreaterThan(26.2)
  })

  it('never calls the slowest speed of the spindle an advised one where it is too fast', () => {
    const [finding] = [...found(steel, speeds('[165, 300, 600]')).values()]
    expect(finding!.text).not.toMatch(/advise/)
    expect(finding!.text).toContain('165 rev/min')
  })
})

/** Rows above that no single change clears. */
const noSingleChange: readonly string[] = [
  // Nothing in the set is wrong: a figure is missing from a table.
  'a work material without a cutting force',
]

everyFindingAbove(
  cases.flatMap(([name, level, id, changes]) => (level === 'nothing' ? [] : [[name, changes, id] as const])),
  noSingleChange,
)

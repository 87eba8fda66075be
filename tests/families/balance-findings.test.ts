import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import {
  balanceOf,
  drillingFor,
  ringToDrill,
  waysToBalance,
} from '../../src/families/fly-cutter-head/engineering/balance.ts'
import { cuttingOf } from '../../src/families/fly-cutter-head/engineering/cutting.ts'
import { neverExceedOf } from '../../src/families/fly-cutter-head/engineering/never-exceed.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { balance } from '../../src/families/fly-cutter-head/rules/balance.ts'
import { neverExceedRule } from '../../src/families/fly-cutter-head/rules/never-exceed.ts'
import { judged } from '../../src/families/variants.ts'
import { cellOf } from '../../src/geometry/cell.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import { solidOf } from '../../src/part/part.ts'
import { volumeOf } from '../../src/solid/volume.ts'
import { headFrom } from './random-heads.ts'
import { everyFindingAbove } from './shown-remedy.ts'

type Change = [string | RegExp, string]

const rules = [balance, neverExceedRule]
const found = (...changes: Change[]) =>
  new Map(findingsOf(rules, headFrom('parameters', ...changes)).map((f) => [f.id, f]))

const running = (text: string): Change => ['work:\n', `settings:\n  running: { ${text} }\nwork:\n`]
const speeds = (list: string): Change => ['[95, 180, 270, 430, 620, 940, 1400, 2200]', list]
const tight = (force: number) => headFrom('parameters', running(`unbalance-force: ${force}`))
const rpm = Math.PI / 30

describe('the templates', () => {
  it.each(['parameters', 'parameters-inch'] as const)('%s runs well below what it may', (name) => {
    expect(findingsOf(rules, headFrom(name))).toEqual([])
  })
})

/** 1215.4 g·mm at 430 rev/min: 2.4645 N. Below the never-exceed speed while 0.8²·limit > 2.4645 N: 3.851 N. */
const cases: [string, 'stop' | 'caution' | 'nothing', string, Change[]][] = [
  ['an unbalance above what the spindle should feel', 'caution', 'balance', [running('unbalance-force: 2.46')]],
  ['an unbalance just below it', 'nothing', 'balance', [running('unbalance-force: 2.47')]],
  ['a speed above the limit of unbalance', 'stop', 'never-exceed', [running('unbalance-force: 3.84')]],
  ['a speed below it', 'nothing', 'never-exceed', [running('unbalance-force: 3.86')]],
  // 430/0.8 = 537.5
  ['the fastest speed of a spindle', 'stop', 'never-exceed', [speeds('[95, 180, 270, 430, 537]')]],
  ['four fifths of it', 'nothing', 'never-exceed', [speeds('[95, 180, 270, 430, 538]')]],
  // 144.08/0.8 = 180.1 m/min
  ['a tip faster than may be', 'stop', 'never-exceed', [running('tip-speed: 180 m/min')]],
  ['a tip as fast as may be', 'nothing', 'never-exceed', [running('tip-speed: 180.2 m/min')]],
  // 430/(0.8·0.6) = 895.8
  ['a proof run too slow for the job', 'stop', 'never-exceed', [running('proof-run: 895 rpm')]],
  ['a proof run fast enough', 'nothing', 'never-exceed', [running('proof-run: 896 rpm')]],
  // Held 3 times at 7331.5 rev/min with 7.2 N·m: at 537.5 with 7.2·(537.5/7331.5)² = 0.0387 N·m.
  [
    'screws too loose for the speed',
    'stop',
    'never-exceed',
    [['thread: M6', 'thread: M6\n  tightening-torque: 0.029']],
  ],
]

describe('a check of balance and speed', () => {
  it.each(cases)('tells of %s: %s', (_, level, id, changes) => {
    expect(found(...changes).get(id)?.level ?? 'nothing').toBe(level)
  })

  it('names the limit that the never-exceed speed comes from, and both speeds by their names', () => {
    const finding = found(running('proof-run: 800 rpm')).get('never-exceed')!
    expect(finding.text).toContain('speed advised for the edge, 430 rev/min')
    // 0.8·0.6·800
    expect(finding.text).toContain('384 rev/min')
    expect(finding.text).toContain('proof run')
    expect(finding.limit!.value).toBeCloseTo(384 * rpm, 9)
  })

  it('says “slowest speed of the spindle” where no speed suits the edge', () => {
    const steel: Change = ['material: aluminium', 'material: mild-steel']
    const finding = found(steel, speeds('[165, 200]'), running('tip-speed: 60 m/min')).get('never-exceed')!
    expect(finding.text).toMatch(/^The slowest speed of the spindle, 165 rev\/min,/)
  })

  it('says outright that a tool must not turn whose joint does not even hold at rest', () => {
    const finding = found(['kind: matched', 'kind: matched\n  interference-ratio: 0.0005']).get('never-exceed')!
    expect(finding.text).toBe('This tool must not turn at all: the joint does not carry the cut even at rest.')
    expect(finding.limit!.value).toBe(0)
  })

  it('brings a speed down to what the tool may turn by asking for a lower cutting speed', () => {
    const design = headFrom('parameters', running('proof-run: 800 rpm'))
    const finding = judged(flyCutterHead, design, true).find((f) => f.id === 'never-exceed')!
    expect(finding.remedy!.path).toBe('work.cutting-speed')
    // The next speed down is 270 rev/min: anything below 430·π·106.653 mm.
    expect(finding.remedy!.to).toBeLessThan(cuttingOf(design).cuttingSpeed)
  })
})

/** The head of a design with holes drilled into its mounting face: moment about the axis, kg·mm. */
function unbalanceDrilled(
  design: HeadDesign,
  drill: number,
  depth: number,
  centres: readonly (readonly [number, number])[],
) {
  const solid = solidOf(design.part('body'))
  const r = drill / 2
  const point = r / Math.tan((59 * Math.PI) / 180)
  const holes = centres.map(([x, y]) =>
    cellOf(
      cylinder('hole', [x, y, 0], [0, 0, -1], r),
      coneThrough('point', [x, y, -depth - point], 0, [x, y, -depth], r),
      plane('mouth', [0, 0, 0], [0, 0, 1]),
    ),
  )
  const before = volumeOf(solid)
  const after = volumeOf({ ...solid, cuts: [...solid.cuts, ...holes] })
  const lost = [0, 1].map((k) => before.centroid[k]! * before.volume - after.centroid[k]! * after.volume)
  return Math.hypot(...lost) * 7850e-9
}

describe('an unbalance that is too large', () => {
  it('is drilled out where drilling does it: measured again on the drilled solid it is as promised', () => {
    const design = tight(2.43)
    const { aim, at } = balanceOf(design)
    const found = drillingFor(design, aim)
    if (found.kind !== 'plans') throw new Error(found.kind)
    const plan = found.plans[0]!
    expect(at.amount - plan.removes).toBeLessThanOrEqual(aim)
    const removed = unbalanceDrilled(design, plan.drill, plan.depth, plan.centres)
    expect(removed / plan.removes).toBeCloseTo(1, 3)
    const ring = ringToDrill(design)
    expect(plan.radius - plan.drill / 2).toBeGreaterThanOrEqual(ring.innerRadius + 2 - 1e-9)
    expect(plan.radius + plan.drill / 2).toBeLessThanOrEqual(ring.outerRadius - 2 + 1e-9)
    const point = plan.drill / 2 / Math.tan((59 * Math.PI) / 180)
    expect(plan.depth + point).toBeLessThanOrEqual(ring.depth - 2 + 1e-9)
    expect(findingsOf([balance], design)[0]!.text).toContain(`Drill ${plan.holes} holes of 3 mm into the mounting face`)
  })

  it('is drilled above a cross pin, and deeper where there is none', () => {
    // Pin of 5 mm with its middle 11 mm down: 1 mm chamfer at each end of the spigot’s 22.
    expect(ringToDrill(tight(2.4)).depth).toBeCloseTo(11 - 2.5, 9)
    // By hand: h − 10.5/cos 7° less what the slope takes: least over 60° either side of the heavy side at 29°.
    const free = headFrom('parameters', ['catch: pin', 'catch: none'])
    const heavy = balanceOf(free).at.heavySide!
    const x = Math.cos(heavy + Math.PI / 3) * 16
    expect(x).toBeGreaterThan(0)
    expect(ringToDrill(free).depth).toBeCloseTo(
      41 - 10.5 / Math.cos((7 * Math.PI) / 180) + x * Math.tan((7 * Math.PI) / 180),
      9,
    )
  })

  it('that drilling cannot take out is met with the other ways, each of which leaves just the limit', () => {
    const design = tight(1.8)
    const { aim, at, speedLimit } = balanceOf(design)
    const ways = waysToBalance(design, aim)
    expect(ways.drilling.kind).toBe('cannot')
    const { less, kind } = ways.lessOverhang
    expect(kind).toBe('reaches')
    // A second road: the design with so much less overhang, worked out from the start.
    const closer = headFrom('parameters', running('unbalance-force: 1.8'), ['overhang: 27', `overhang: ${27 - less}`])
    expect(balanceOf(closer).at.amount).toBeCloseTo(aim, 6)
    const { mass, centroid } = ways.counterMass
    const left = Math.hypot(at.unbalance[0] + mass * centroid[0], at.unbalance[1] + mass * centroid[1])
    expect(left).toBeCloseTo(aim, 9)
    expect(Math.hypot(...centroid)).toBeCloseTo(23, 9)
    expect((at.amount * speedLimit! ** 2) / 1000).toBeCloseTo(1.8, 9)
    const [finding] = findingsOf([balance], design)
    for (const way of ['less overhang', 'counter-mass', 'second bit', 'no more than'])
      expect(finding!.text).toContain(way)
  })

  it('has a remedy that clears it', () => {
    const finding = judged(flyCutterHead, tight(2.3), true).find((f) => f.id === 'balance')!
    expect(finding.remedy!.path).toBe('bit.overhang')
    const after = headFrom('parameters', running('unbalance-force: 2.3'), [
      'overhang: 27',
      `overhang: ${finding.remedy!.to}`,
    ])
    expect(findingsOf([balance], after)).toEqual([])
  })
})

describe('a proven long set-up', () => {
  // Common practice, no source: 8 in swing at about 500 rev/min with a fine feed is right for high-speed steel in aluminium.
  const long: Change[] = [
    ['overhang: 27', 'swing: 8 in'],
    ['length: 78', 'length: 122'],
    ['largest-swing: 165', 'largest-swing: 210'],
    ['width: 92', 'width: 180'],
    ['feed-per-turn: 0.12', 'feed-per-turn: 0.08'],
    ['depth-of-cut: 0.4', 'depth-of-cut: 0.25'],
  ]
  const fast: Change[] = [
    ['depth-of-cut: 0.25', 'depth-of-cut: 0.25\n  cutting-speed: 320 m/min'],
    speeds('{ slowest: 60, fastest: 4200 }'),
  ]
  it.each([
    ['at the speed that the table advises', long],
    ['at 500 rev/min', [...long, ...fast]],
  ] as [string, Change[]][])('%s gives cautions, no stops', (_, changes) => {
    const design = headFrom('parameters', ...changes)
    const findings = findingsOf(flyCutterHead.rules, design)
    expect(findings.filter((f) => f.level === 'stop').map((f) => f.text)).toEqual([])
    const cautions = findings.filter((f) => f.level === 'caution').map((f) => f.id)
    expect(cautions).toEqual(expect.arrayContaining(['clamp:grip', 'clamp:deflection']))
    expect(neverExceedOf(design).notAbove).toBeGreaterThan(cuttingOf(design).runAt)
  })
  it('does run at about 500 rev/min when asked to', () => {
    expect(cuttingOf(headFrom('parameters', ...long, ...fast)).runAt / rpm).toBeCloseTo(501.3, 0)
  })
})

everyFindingAbove(
  cases.flatMap(([name, level, id, changes]) => (level === 'nothing' ? [] : [[name, changes, id] as const])),
)

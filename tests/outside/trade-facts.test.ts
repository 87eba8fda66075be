import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import { anglesOf, heelOfBit } from '../../src/families/fly-cutter-head/engineering/angles.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { tiltedSetUp } from '../../src/families/fly-cutter-head/making/tilted-set-up.ts'
import { onePass, onePassRules } from '../../src/mechanics/cutting/one-pass.ts'
import { cautions } from '../../src/report/cautions.ts'
import { headFrom } from '../families/random-heads.ts'
import { workedOut } from '../mechanics/cutting/worked-out.ts'
import { reportOn } from '../report/made-reports.ts'

type Change = [string | RegExp, string]

const deg = Math.PI / 180
const inch = 25.4
const demo = (...changes: Change[]) => headFrom('parameters', ...changes)
const ids = (...changes: Change[]) => findingsOf(flyCutterHead.rules, demo(...changes)).map((f) => f.id)
const square: Change[] = [
  [/ {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/, ''],
  ['leading: 0.6', 'leading: 0'],
]

// All common practice, no source, unless a source is named. The same facts in figures of one calculation alone: rake and place of
// the slot in tool-angles.test.ts, an 8 in swing in cutting.test.ts, interference in tests/mechanics/fit/joint.test.ts, stick-up
// in tests/mechanics/set-up/tilted-work.test.ts, sine bars in sine-bar.test.ts.

describe('slot and bit (common practice, no source)', () => {
  it('a 1/2 in bit wants a slot 1/2 in wide and as deep, give or take, at a face of about 10°', () => {
    const half: Change[] = [
      ['width: 10 ', 'width: 1/2 in '],
      ['height: 10 ', 'height: 1/2 in '],
      ['depth: 9.5', 'depth: 12.2'],
      ['angle: 7 deg', 'angle: 10 deg'],
    ]
    const { slot } = demo(...half).layout
    expect(slot.width - 0.5 * inch).toBeCloseTo(0.04, 9)
    // Proud of the face by a little, so that the bit and not the head meets the work.
    expect(0.5 * inch - slot.depth).toBeGreaterThan(0)
    expect(0.5 * inch - slot.depth).toBeLessThan(1)
    expect(ids(...half)).not.toContain('body-clearance')
  })

  it('ahead of centre is more negative rake, behind it more positive', () => {
    const rake = (ahead: string) =>
      anglesOf(demo(...square, [/ahead-of-centre: 2.4 +/, `ahead-of-centre: ${ahead} `])).radialRake
    expect(rake('2.4')).toBeLessThan(rake('0'))
    expect(rake('0')).toBeCloseTo(0, 9)
    expect(rake('-2.4')).toBeGreaterThan(0)
  })

  it('the slot runs from point to point of a hexagon, and the jaws then hold the flats parallel to it', () => {
    const across: Change[] = [['slot-runs: point-to-point', 'slot-runs: flat-to-flat']]
    expect(ids()).not.toContain('jaw-hold')
    expect(ids(...across)).toContain('jaw-hold')
    // The flats stand 46 apart square to the slot, and along it the bar reaches to its points.
    expect(tiltedSetUp(demo()).opening).toBeCloseTo(46, 9)
    expect(demo().layout.across).toBeCloseTo(46 / Math.cos(30 * deg), 9)
    expect(tiltedSetUp(demo(...across)).opening).toBeGreaterThan(46)
  })

  it('a bit without back relief leaves a faint skip pattern', () => {
    expect(heelOfBit(demo(...square))!.workSide.clearance).toBeLessThan(0.05)
    const heel = findingsOf(flyCutterHead.rules, demo(...square, ['angle: 7 deg', 'angle: 0 deg']))
    expect(heel.find((f) => f.id === 'heel:work-side')!.text).toContain('faint skip marks')
  })
})

describe('screws (common practice, no source)', () => {
  it('two or three hold a bit: one is none, two or three are enough', () => {
    const count = (n: number): Change[] => [
      ['count: 2\n', `count: ${n} \n`],
      ['spacing: 24', 'spacing: 15'],
    ]
    expect(ids(...count(1))).toContain('clamp:one-screw')
    for (const n of [2, 3]) expect(ids(...count(n)).filter((id) => /^clamp:(one|prying|slips)/.test(id))).toEqual([])
  })
})

describe('bore and slot (common practice, no source)', () => {
  it('a bore a little too deep opens into the slot', () => {
    const wall = (depth: number) =>
      findingsOf(flyCutterHead.rules, demo(['depth: 24', `depth: ${depth}`])).find((f) => f.id === 'wall:slot/bore')
    // (41 − b)·cos 7° − 10·sin 7° − 9.5 is nothing at b = 30.201.
    const opens = 41 - (10 * Math.sin(7 * deg) + 9.5) / Math.cos(7 * deg)
    expect(wall(opens - 0.1)!.figure!.value).toBeCloseTo(0.1 * Math.cos(7 * deg), 6)
    expect(wall(opens + 0.1)).toMatchObject({ level: 'stop', figure: { value: 0 } })
    expect(wall(opens + 0.1)!.text).toContain('break into each other: an opening of')
  })
})

describe('one pass (common practice, no source)', () => {
  it('is the gain over a face mill: the whole width without a step', () => {
    const passes = (swing: number) => workedOut(onePass({ swing, width: 92, ...onePassRules })).passes
    expect(passes(demo().swing)).toBe(1)
    // A face mill of 50 on the same work.
    expect(passes(50)).toBe(3)
    const narrow = findingsOf(flyCutterHead.rules, demo(['width: 92', 'width: 120'])).find(
      (f) => f.id === 'swing:covers-work',
    )
    expect(narrow!.text).toContain('more than one pass, with a step between them')
  })
})

describe('hand (common practice, no source)', () => {
  const other: [string, string][] = [
    ['rotation: clockwise', 'rotation: anticlockwise'],
    ['reverse: false', 'reverse: true'],
  ]

  it('clockwise seen from the spindle is anticlockwise seen from below', () => {
    // In the body frame +Z goes up into the spindle: a point on +X of a clockwise tool moves towards −Y.
    expect(demo().layout.hand).toBe(-1)
    expect(demo(...other).layout.hand).toBe(1)
    // The report shows both ways of looking and names each.
    expect(reportOn('parameters').html).toMatch(/the same tool seen from below: there it turns anticlockwise/)
    expect(reportOn('parameters', ...other).html).toMatch(/the same tool seen from below: there it turns clockwise/)
  })
})

describe('vise (shop rule and usual catalogues, from memory)', () => {
  const { 'set-up': rules } = demo().parameters.settings

  it('grips a third of the height, or 1/4 in: ours is 12 mm, and half of it where nothing more is to be had', () => {
    expect(rules['grip-share']).toBeCloseTo(1 / 3, 12)
    expect(rules['least-grip']).toBeGreaterThan(inch / 4)
    // On good parallels 1/8 in is called the least: a tool that is milled at a tilt gets no less than twice that.
    expect(rules['never-grip'] * rules['least-grip']).toBeGreaterThan(inch / 8)
  })

  it('of 4 in has jaws 1-1/4 to 1-3/8 in high: the template’s is one', () => {
    const { vise } = demo().parameters.machine
    expect(vise['jaw-height'] / inch).toBeGreaterThan(1.25)
    expect(vise['jaw-height'] / inch).toBeLessThan(1.375)
    expect(vise['jaw-opening'] / inch).toBeGreaterThan(4)
  })
})

describe('dangers that every report tells of (common practice, no source)', () => {
  it.each([
    ['the mock-up is turned by hand, never under power', /mock-up.*by hand.*never under power/],
    ['one full turn by hand before power', /one full turn by hand over clamps, vise handles and column/],
    ['key out of the drawbar', /key out of the drawbar/],
    ['first run slow, behind a guard, out of the plane of the swing', /slow, behind a guard.*plane of the swing/],
    ['screws tightened again after the first minute', /Tighten the screws again after the first minute/],
    ['no gloves, sleeves, hair', /gloves.*sleeves.*hair/],
    ['hardened steel cracks over a chip, a gap, or under an overtightened screw', /chip.*gap.*overtightened/],
    ['chlorinated cleaner before torch or weld makes phosgene', /chlorinated.*phosgene/],
    ['compounds and plating fume', /compounds and plating fume/],
    ['no welding in the spindle, through bearings, with bit and screws', /weld.*spindle.*bearings.*bit and screws/],
    ['run-out is checked afterwards', /check the run-out afterwards/],
    ['heat evenly and measure it; hot and cold burn; nitrogen suffocates', /evenly.*measure.*burn.*cold.*suffocates/],
    ['a loose wedge under the press can shoot out', /wedge.*shoot out/],
  ])('%s', (_, words) => {
    expect(cautions.filter((caution) => words.test(caution))).toHaveLength(1)
  })
})

import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import {
  anglesOf,
  suitableOf,
  type TableAngle,
  tableAngles,
} from '../../src/families/fly-cutter-head/engineering/angles.ts'
import { facetPaths } from '../../src/families/fly-cutter-head/engineering/grind.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { angleRules } from '../../src/families/fly-cutter-head/rules/angle-rules.ts'
import { judged } from '../../src/families/variants.ts'
import { withParameter } from '../../src/input/parameter-path.ts'
import { headFrom, tables } from './random-heads.ts'
import { everyFindingAbove } from './shown-remedy.ts'

type Change = [string | RegExp, string]

const deg = Math.PI / 180
const found = (...changes: Change[]) =>
  new Map(findingsOf(angleRules, headFrom('parameters', ...changes)).map((f) => [f.id, f]))

/** The demo's bit square as bought, its leading wall where said. */
const square = (ahead = '2.4'): Change[] => [
  [/ {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/, ''],
  ['leading: 0.6', 'leading: 0'],
  [/ahead-of-centre: 2.4 +/, `ahead-of-centre: ${ahead} `],
]
const level: Change = ['angle: 7 deg', 'angle: 0 deg']

describe('the templates', () => {
  it.each(['parameters', 'parameters-inch'] as const)('%s is ground for its work: nothing to say about it', (name) => {
    expect(findingsOf(angleRules, headFrom(name))).toEqual([])
  })
})

const mistakes: [string, Change[], string, 'stop' | 'caution' | 'note', number?][] = [
  // By hand: R = 46/√3 + 27·cos 7° − 0.5·sin 7° = 53.29593; R − √(R² + 10²) = −0.93004.
  ['a square bit end at centre: the heel strikes', square('0'), 'heel:end', 'stop', -0.93004],
  ['a square bit without back relief: skip marks', square(), 'heel:work-side', 'caution', 0],
  [
    'an underside ground the wrong way',
    [
      ['work-side-relief: 8 deg', 'work-side-relief: -5 deg'],
      ['leading: 0.6', 'leading: 0.6\n    underside: 0.4'],
    ],
    'heel:work-side',
    'stop',
  ],
  [
    'an underside without relief',
    [['work-side-relief: 8 deg', 'work-side-relief: 0 deg']],
    'angles:axial-relief',
    'caution',
  ],
  ['a square bit on a level face: its whole underside rubs', [...square(), level], 'edge:minor', 'caution', 0],
  [
    'a work-side edge that runs down inwards',
    [
      ['work-side-relief: 8 deg', 'work-side-relief: 8 deg\n    work-side-edge-angle: -20 deg'],
      ['leading: 0.6', 'leading: 0.6\n    underside: 3\n    end: 2'],
    ],
    'edge:minor',
    'stop',
  ],
  ['a cut deeper than the bit is high', [['depth-of-cut: 0.4', 'depth-of-cut: 11']], 'edge:short', 'stop', 11],
  ['a nose larger than the ground part', [['length: 6 ', 'length: 6\n  nose-radius: 9 ']], 'edge:nose', 'stop'],
  ['a steep rake ground so far back that the tip breaks off', [['length: 6 ', 'length: 16 ']], 'grind:thin', 'stop'],
  ['a steep rake ground right through the bit', [['length: 6 ', 'length: 24 ']], 'grind:through', 'stop', 24],
  ['a slot laid out for the other hand', square('7.6'), 'slot-side:ahead', 'stop', 7.6],
  [
    'a slot laid out for the other hand, the bit ground back into cutting',
    [['ahead-of-centre: 2.4', 'ahead-of-centre: 7.6']],
    'slot-side:ahead',
    'caution',
    7.6,
  ],
  [
    'ahead of centre with the wrong sign',
    [['ahead-of-centre: 2.4', 'ahead-of-centre: -2.4']],
    'slot-side:behind',
    'caution',
    -2.4,
  ],
  ['a square bit set behind centre on purpose', square('-2.4'), 'slot-side:behind', 'note', -2.4],
  // −asin(2.4/√(53.2959² + 2.4²)).
  ['no rake on a bit for aluminium', square(), 'angles:radial-rake', 'caution', -2.5784 * deg],
  ['no axial rake on a bit for aluminium', square(), 'angles:axial-rake', 'caution', 0],
  ['a rake for aluminium in steel', [['material: aluminium', 'material: mild-steel']], 'angles:axial-rake', 'caution'],
  [
    'hardly any relief behind the end edge',
    [['end-relief: 10 deg', 'end-relief: 4 deg']],
    'angles:radial-relief',
    'caution',
  ],
  [
    'so much relief that the edge is weak',
    [['end-relief: 10 deg', 'end-relief: 20 deg']],
    'angles:radial-relief',
    'caution',
  ],
]

describe('a check of the bit’s angles finds', () => {
  it.each(mistakes)('%s', (_, changes, id, level, figure) => {
    const finding = found(...changes).get(id)
    expect(finding).toBeDefined()
    expect(finding!.level).toBe(level)
    expect(finding!.text).not.toMatch(/NaN|undefined|-0 |Infinity/)
    if (figure !== undefined) expect(finding!.figure!.value).toBeCloseTo(figure, 4)
    expect(finding!.limit).toBeDefined()
  })

  it('that the spindle’s only direction is meant, where it has but one', () => {
    const other = (...changes: Change[]) => found(...square('7.6'), ...changes).get('slot-side:ahead')!.text
    expect(other()).toContain('this spindle turns no other way')
    expect(other(['reverse: false', 'reverse: true'])).not.toContain('no other way')
    // The slot is 10.04 wide: mirrored, its other wall leads by 10.04 − 7.6.
    expect(other()).toContain('2.44 mm ahead')
  })

  it('what no grinding makes good: a slot so far ahead that no rake within the blank is the wanted one', () => {
    const text = found(...square('26')).get('angles:radial-rake')!.text
    expect(text).toContain('No facet that can be ground')
    expect(found(...square('4')).get('angles:radial-rake')!.text).toMatch(/Grind rake along to 2\d\.\d°/)
  })

  it('nothing to hold angles against where the table of work materials has none', () => {
    const { parameters } = headFrom('parameters')
    const bare = tables.workMaterials.map(({ hssAngles: _, ...row }) => row)
    const design = HeadDesign.from(parameters, { ...tables, workMaterials: bare })
    if (!design.ok) throw new Error(JSON.stringify(design.problems))
    expect(findingsOf(angleRules, design.value).map(({ level, id }) => `${level} ${id}`)).toEqual([
      'note angles:not-in-table',
    ])
  })
})

describe('each limit has two sides', () => {
  const { parameters } = headFrom('parameters')
  const with_ = (path: string, value: number) => {
    const built = HeadDesign.from(withParameter(parameters, path, value), tables)
    if (!built.ok) throw new Error(JSON.stringify(built.problems))
    return built.value
  }
  const has = (design: HeadDesign, id: string) => findingsOf(angleRules, design).some((f) => f.id === id)

  it.each([
    ['radialRake', 'angles:radial-rake', 'rakeAlong'],
    ['axialRake', 'angles:axial-rake', 'rakeAcross'],
    ['radialRelief', 'angles:radial-relief', 'endRelief'],
    ['axialRelief', 'angles:axial-relief', 'workSideRelief'],
  ] as const)(
    '%s is a finding just when it is more than 5° outside the wanted range',
    (name: TableAngle, id, facet) => {
      const told = new Set<boolean>()
      for (let degrees = 0.3; degrees < 45; degrees += 1.1) {
        const design = with_(facetPaths[facet], degrees * deg)
        const { low, high } = suitableOf(design)![name]
        const value = anglesOf(design)[name]
        const outside = value < low - 5 * deg || value > high + 5 * deg
        expect(has(design, id)).toBe(outside)
        told.add(outside)
      }
      expect(told).toEqual(new Set([true, false]))
    },
  )

  it.each([
    ['slot.ahead-of-centre', 5, 5.01, 'slot-side:ahead'],
    ['slot.ahead-of-centre', 0, -0.01, 'slot-side:behind'],
    ['work.depth-of-cut', 10.07, 10.09, 'edge:short'],
    // The nose takes r/tan(εr/2) of each edge, εr 78.04°: 6 mm at r = 4.861.
    ['bit.nose-radius', 4.85, 4.87, 'edge:nose'],
  ])('%s: %d passes, %d does not', (path, good, bad, id) => {
    expect(has(with_(path, good), id)).toBe(false)
    expect(has(with_(path, bad), id)).toBe(true)
  })

  it('the heel may come as near as the feed lets it, and no nearer', () => {
    // Relief as ground at which the heel of a square-sided bit runs on the circle: half the arc, by hand
    // ½·(asin(2.4/R′) + asin(7.6/R′)) − asin(2.4/R′) with R′ = √(53.2959² + 2.4²), times cos 7° in the tangent.
    const radius = Math.hypot(53.2959, 2.4)
    const least = (Math.asin(2.4 / radius) + Math.asin(7.6 / radius)) / 2 - Math.asin(2.4 / radius)
    const asGround = Math.atan(Math.cos(7 * deg) * Math.tan(least)) / deg
    const heel = (relief: number) =>
      found(
        [/rake-along: .*\n/, 'rake-along: 0 deg\n'],
        [/rake-across: .*\n/, 'rake-across: 0 deg\n'],
        ['end-relief: 10 deg', `end-relief: ${relief} deg`],
        ['work-side-relief: 8 deg', 'work-side-relief: 0 deg'],
        ['leading: 0.6', 'leading: 0'],
      ).get('heel:end')
    expect(heel(asGround - 0.01)?.level).toBe('stop')
    // 0.12 mm a turn over 10.7° of arc: 3.6 µm, which is 0.02° of relief on 10 mm.
    expect(heel(asGround + 0.01)?.level).toBe('caution')
    expect(heel(asGround + 0.01)!.limit!.value).toBeCloseTo((0.12 * 10.77) / 360, 4)
    expect(heel(asGround + 0.04)).toBeUndefined()
  })

  it('the underside may come within 0.05 mm of the cut surface at its heel', () => {
    // Level face, nothing but relief: the heel of a 10 mm bit stands 10·tan α up; 0.05 mm at 0.2865°.
    const underside = (relief: number) =>
      found(
        level,
        [/rake-along: .*\n/, 'rake-along: 0 deg\n'],
        [/rake-across: .*\n/, 'rake-across: 0 deg\n'],
        ['work-side-relief: 8 deg', `work-side-relief: ${relief} deg\n    work-side-edge-angle: 5 deg`],
        ['end-relief: 10 deg', 'end-relief: 0 deg'],
        ['leading: 0.6', 'leading: 0'],
        ['    length: 6 ', '    length: 78 '],
      ).get('heel:work-side')
    expect(underside(0.28)?.figure?.value).toBeCloseTo(10 * Math.tan(0.28 * deg), 9)
    expect(underside(0.28)?.level).toBe('caution')
    expect(underside(0.29)).toBeUndefined()
  })
})

describe('a remedy', () => {
  const remedies = (...changes: Change[]) =>
    new Map(judged(flyCutterHead, headFrom('parameters', ...changes), true).map((f) => [f.id, f.remedy]))

  it('for a square bit is to grind it for its work', () => {
    const told = remedies(...square('0'))
    for (const id of ['heel:end', 'heel:work-side', 'angles:radial-rake', 'angles:axial-rake']) {
      expect(told.get(id)).toMatchObject({ path: 'bit.grind', to: 'for-work-material' })
    }
  })

  it('for a facet of one’s own is its angle', () => {
    const remedy = remedies(['work-side-relief: 8 deg', 'work-side-relief: 1 deg']).get('angles:axial-relief')
    expect(remedy?.path).toBe('bit.facets.work-side-relief')
    expect(remedy!.to).toBeGreaterThan(3 * deg)
    expect(remedy!.to).toBeLessThan(6 * deg)
  })

  it('for a rake ground too far back is a shorter ground part', () => {
    expect(remedies(['length: 6 ', 'length: 16 ']).get('grind:thin')?.path).toBe('bit.facets.length')
  })
})

describe('a proven long set-up', () => {
  // 8 in swing, half-inch bit gripped half as much as it sticks out, 0.4 mm in aluminium.
  const long: Change[] = [
    ['overhang: 27', 'swing: 8 in'],
    ['largest-swing: 165', 'largest-swing: 230'],
    ['  length: 78', '  length: 128'],
    ['width: 10 ', 'width: 12.7 '],
    ['height: 10 ', 'height: 12.7 '],
    ['  depth: 9.5', '  depth: 12.2'],
    ['depth: 10.5', 'depth: 13.2'],
    ['height: 6', 'height: 7.5'],
    ['width: 92', 'width: 180'],
  ]

  it('gets cautions and no stop', () => {
    const design = headFrom('parameters', ...long)
    expect(design.swing).toBeCloseTo(203.2, 9)
    const grip = design.gripped.from - design.gripped.to
    expect(grip).toBeLessThan(0.7 * (design.layout.bit.tipInFace[0] - design.gripped.from))
    const stops = findingsOf(flyCutterHead.rules, design).filter((f) => f.level === 'stop')
    expect(stops.map((f) => f.text)).toEqual([])
  })

  it('has angles that aluminium wants: longer reach turns the same slot’s lead into less', () => {
    const design = headFrom('parameters', ...long)
    expect(findingsOf(angleRules, design)).toEqual([])
    const demo = anglesOf(headFrom('parameters')).radialRake
    // The lead falls from asin(1.8/53.33) = 1.93° to asin(1.8/101.6) = 1.02°.
    expect((anglesOf(design).radialRake - demo) / deg).toBeCloseTo(1.93 - 1.02, 1)
    for (const name of tableAngles) expect(suitableOf(design)![name].low).toBeGreaterThan(0)
  })
})

/** Rows above that no single change clears. */
const noSingleChange: readonly string[] = [
  // Level it rubs, and so does a steeper face: its end is ground off too far.
  'a work-side edge that runs down inwards',
  // Nearer to the axis the heel of the square bit strikes: it wants grinding besides.
  'a slot laid out for the other hand',
]

everyFindingAbove(
  mistakes.map(([name, changes, id]) => [name, changes, id]),
  noSingleChange,
)

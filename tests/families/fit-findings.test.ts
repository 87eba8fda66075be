import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import type { Rule } from '../../src/checks/rule.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { jointInputOf, jointOfHead } from '../../src/families/fly-cutter-head/engineering/fit.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { fitAssembly } from '../../src/families/fly-cutter-head/rules/fit-assembly.ts'
import { fitCatch } from '../../src/families/fly-cutter-head/rules/fit-catch.ts'
import { fitGrip } from '../../src/families/fly-cutter-head/rules/fit-grip.ts'
import { fitStress } from '../../src/families/fly-cutter-head/rules/fit-stress.ts'
import { fitThread } from '../../src/families/fly-cutter-head/rules/fit-thread.ts'
import { shank } from '../../src/families/fly-cutter-head/rules/shank.ts'
import { judged } from '../../src/families/variants.ts'
import { headFrom } from './random-heads.ts'
import { everyFindingAbove, shownRemedy } from './shown-remedy.ts'

type Change = [string | RegExp, string]

const rules: readonly Rule<HeadDesign>[] = [fitGrip, fitStress, fitAssembly, fitCatch, fitThread, shank]

const found = (...changes: Change[]) =>
  new Map(rules.flatMap((rule) => rule.findings(headFrom('parameters', ...changes))).map((f) => [f.id, f]))

/** Another fit in the place of the template's matched one, which is shrunk on and pinned. */
const joined = (...lines: string[]): Change => [/fit:\n(?: {2}.*\n)+/, `fit:\n${lines.map((l) => `  ${l}\n`).join('')}`]
const pinned = (...lines: string[]): Change => joined('catch: pin', ...lines)

/** Limits given outright, bore of 20 mm exactly; interference `least` to `most`, mm. */
const limits = (least: number, most: number, ...more: string[]): Change =>
  pinned(
    'kind: limits',
    'bore-smallest: 20',
    'bore-largest: 20',
    `spigot-smallest: ${20 + least}`,
    `spigot-largest: ${20 + most}`,
    ...more,
  )

const straightArbor: Change = [
  /kind: shank\n {2}shank: straight-20\n(.*\n.*\n).*\n.*\n/,
  'kind: straight\n  length-above: 60\n$1',
]
const threaded = (hand: string): Change => pinned('kind: threaded', 'thread: M20', `hand: ${hand}`)
const anticlockwise: Change[] = [
  ['rotation: clockwise', 'rotation: anticlockwise'],
  ['reverse: false', 'reverse: true'],
]
const aluminiumHead: Change = ['material: steel-12l14', 'material: aluminium-6061']
const ironHead: Change = ['material: steel-12l14', 'material: grey-iron']

/** Mistakes of the shop: what is changed in a good set, the finding it must give, how bad it is, its figure. */
const mistakes: [string, Change[], string, Finding['level'], number?][] = [
  ['an arbor turned line to line', [limits(0, 0.013)], 'fit-grip:none', 'stop', 0],
  ['an arbor turned too small', [limits(-0.03, -0.01)], 'fit-grip:none', 'stop', -0.03],
  [
    'two tenths of a thou of interference, which smoothing eats',
    [limits(0.0051, 0.0102)],
    'fit-grip:none',
    'stop',
    0.0051,
  ],
  ['a sliding fit by its code', [pinned('kind: iso-286', 'code: H7/g6')], 'fit-grip:none', 'stop', -0.041],
  [
    'a hub with hardly a whole bore round the spigot',
    [['spigot-length: 22', 'spigot-length: 2']],
    'fit-grip:length',
    'stop',
    0,
  ],
  ['a joint that slips in the cut', [limits(0.011, 0.02)], 'fit-grip:cut', 'stop'],
  [
    'a light press fit that a jam turns',
    [joined('kind: iso-286', 'code: H7/s6', 'catch: none')],
    'fit-grip:jam',
    'caution',
  ],
  [
    'the same with a pin, which takes the jam',
    [joined('kind: iso-286', 'code: H7/s6', 'catch: pin')],
    'fit-grip:jam',
    'note',
  ],
  [
    'a deep cut that bends the head off a short spigot',
    [
      ['spigot-length: 22', 'spigot-length: 7'],
      ['depth-of-cut: 0.4', 'depth-of-cut: 1'],
    ],
    'fit-grip:bending',
    'stop',
  ],
  ['a fit that yields a free-cutting head', [pinned('kind: iso-286', 'code: H7/u6')], 'fit-stress:head', 'caution'],
  [
    'a fit that yields the head right through',
    [pinned('kind: matched', 'interference-ratio: 0.0048')],
    'fit-stress:head',
    'stop',
  ],
  [
    'a fit that cracks an iron head',
    [ironHead, pinned('kind: matched', 'interference-ratio: 0.0017')],
    'fit-stress:head',
    'stop',
  ],
  [
    'a hollow arbor that gives',
    [
      ['spigot-length: 22', 'bore-through: 15\n  spigot-length: 22'],
      pinned('kind: matched', 'interference-ratio: 0.004'),
    ],
    'fit-stress:arbor',
    'caution',
  ],
  [
    'an arbor of which no strength is published',
    [['material: steel-1045', 'material: alloy-steel']],
    'fit-stress:arbor',
    'caution',
  ],
  [
    'heat for a spigot without interference',
    [limits(-0.01, 0.01, 'assembly: heat')],
    'fit-assembly:heat-adds-nothing',
    'caution',
    -0.01,
  ],
  [
    'an aluminium head heated beyond its temper, where a cold arbor would do',
    [aluminiumHead, pinned('kind: matched', 'interference-ratio: 0.002', 'assembly: heat')],
    'fit-assembly:too-hot',
    'caution',
    20 + (0.046 + 0.02) / (23.6e-6 * 20),
  ],
  [
    'the same on an arbor of which no shrinkage is known',
    [
      aluminiumHead,
      ['material: steel-1045', 'material: aluminium-6061'],
      pinned('kind: matched', 'interference-ratio: 0.002', 'assembly: heat'),
    ],
    'fit-assembly:too-hot',
    'stop',
  ],
  [
    'pressing against the angled face',
    [pinned('kind: matched', 'assembly: press')],
    'fit-assembly:angled-face',
    'note',
  ],
  [
    'a spigot and a bore without chamfers',
    [
      ['spigot-length: 22', 'lead-in: 0\n  spigot-length: 22'],
      ['  depth: 24', '  chamfer: 0\n  depth: 24'],
      pinned('kind: matched', 'assembly: press'),
    ],
    'fit-assembly:lead-in',
    'caution',
    0,
  ],
  [
    'a blind bore without a vent',
    [['vent: hole', 'vent: none']],
    'fit-assembly:vent',
    'caution',
    // Boyle: 24 mm of air shut into 2 mm, on π/4·20² mm².
    0.1013 * (24 / 2 - 1) * (Math.PI / 4) * 20 ** 2,
  ],
  ['nothing that catches the head', [['catch: pin', 'catch: none']], 'fit-catch:none', 'caution'],
  ['a screw from below into a blind bore', [['catch: pin', 'catch: screw-and-washer']], 'fit-catch:blind', 'stop'],
  ['a shoulder below a blind bore', [['catch: pin', 'catch: shoulder-below']], 'fit-catch:blind', 'stop'],
  ['no drawbar', [['drawbar: true', 'drawbar: false']], 'shank:drawbar', 'stop'],
  ['a straight arbor without a shoulder', [straightArbor], 'shank:no-shoulder', 'caution'],
  ['a right-hand thread on an anticlockwise tool', [...anticlockwise, threaded('right')], 'fit-thread:hand', 'stop'],
  ['a left-hand thread on a clockwise tool', [threaded('left')], 'fit-thread:hand', 'stop'],
  ['a threaded head without a shoulder', [straightArbor, threaded('right')], 'fit-thread:shoulder', 'stop'],
  [
    'a thread too short for the head',
    [['spigot-length: 22', 'spigot-length: 21'], threaded('right')],
    'fit-thread:engagement',
    'caution',
  ],
  [
    'a thread that is reversed',
    [['reverse: false', 'reverse: true'], threaded('right')],
    'fit-thread:reversed-or-braked',
    'caution',
  ],
  [
    'a thread of a head whose strength is not known',
    [['material: steel-12l14', 'material: alloy-steel'], threaded('right')],
    'fit-thread:strength',
    'caution',
  ],
]

describe('a check of the fit finds', () => {
  it.each(mistakes)('%s', (_, changes, id, level, figure) => {
    const finding = found(...changes).get(id)
    expect(finding?.level).toBe(level)
    if (figure !== undefined) expect(finding!.figure!.value).toBeCloseTo(figure, 6)
    expect(finding!.text).not.toMatch(/NaN|undefined|Infinity/)
    expect(found().has(id)).toBe(false)
  })
})

describe('both sides of a limit', () => {
  const grips = (least: number) =>
    [...found(limits(least, 0.03, 'assembly: heat')).keys()].filter((id) => /grip/.test(id))

  it('smoothing takes 0.8·(6.3 + 6.3) µm and what is left must hold', () => {
    expect(grips(0.01007)).toEqual(['fit-grip:none'])
    expect(grips(0.01009)).toContain('fit-grip:cut')
  })

  it('the joint slips below the demand of the cut and is short of safety below twice that', () => {
    const design = headFrom('parameters', limits(0.02, 0.03, 'assembly: heat'))
    const { least } = jointOfHead(design)!
    // Grip is proportional to what smoothing leaves.
    const loss = 0.8 * 0.0126
    const at = (slip: number) => loss + ((0.02 - loss) * slip) / least.shrunk.slip!
    const level = (interference: number) =>
      found(limits(interference, 0.03, 'assembly: heat')).get('fit-grip:cut')?.level
    expect(level(at(0.99))).toBe('stop')
    expect(level(at(1.01))).toBe('caution')
    expect(level(at(1.99))).toBe('caution')
    expect(level(at(2.01))).toBeUndefined()
  })

  it('the joint gapes below the moment of the cut, and already without its blow below half of it', () => {
    const bends = (length: number) =>
      found(['spigot-length: 22', `spigot-length: ${length}`]).get('fit-grip:bending')?.level
    // Moment that the joint stands goes with the square of its length; found by halving.
    const steps = Array.from({ length: 60 }, (_, i) => 2.5 + i * 0.2)
    const levels = steps.map(bends)
    expect(levels[0]).toBe('stop')
    expect(levels.at(-1)).toBeUndefined()
    const order = { stop: 0, caution: 1, none: 2 } as const
    const ranks = levels.map((level) => order[(level ?? 'none') as keyof typeof order])
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
    expect(new Set(ranks).size).toBe(3)
    for (const [i, length] of steps.entries()) {
      const design = headFrom('parameters', ['spigot-length: 22', `spigot-length: ${length}`])
      const { gape } = jointOfHead(design)!.least.shrunk
      expect(levels[i]).toBe(gape! < 0.5 ? 'stop' : gape! < 1 ? 'caution' : undefined)
    }
  })

  it('a head of 12L14 yields from 0.0475 mm of interference on, whatever is smoothed', () => {
    // σ_v at the bore = p·√(3·D⁴ + d⁴)/(D² − d²) = 60 ksi; δ = p·2.4662e-4.
    const [d, D] = [20, 46]
    const p = (413.685 * (D ** 2 - d ** 2)) / Math.sqrt(3 * D ** 4 + d ** 4)
    const onset = p * (d / 200e3) * ((D ** 2 + d ** 2) / (D ** 2 - d ** 2) + 1)
    expect(onset).toBeCloseTo(0.0475, 4)
    const yields = (most: number) => found(limits(0.03, most)).has('fit-stress:head')
    expect(yields(onset - 0.0001)).toBe(false)
    expect(yields(onset + 0.0001)).toBe(true)
  })

  it('an iron head holds at 0.036 mm and cracks at 0.040', () => {
    const iron = (ratio: number) =>
      found(ironHead, pinned('kind: matched', `interference-ratio: ${ratio}`)).get('fit-stress:head')?.level
    expect(iron(0.0015)).toBeUndefined()
    expect(iron(0.0017)).toBe('stop')
  })

  it('bit and set screws come out above 200 °C, an aluminium head stands 150 °C', () => {
    // T = 20 + (δ + 0.02)/(α·20): 200 °C at δ = 0.0214 mm in steel, 150 °C at 0.04136 mm in aluminium.
    const hot = (most: number, ...more: Change[]) => [...found(limits(0.01, most, 'assembly: heat'), ...more).keys()]
    expect(hot(0.0213)).not.toContain('fit-assembly:beside-hardened')
    expect(hot(0.0215)).toContain('fit-assembly:beside-hardened')
    expect(hot(0.0413, aluminiumHead)).not.toContain('fit-assembly:too-hot')
    expect(hot(0.0414, aluminiumHead)).toContain('fit-assembly:too-hot')
  })

  it('a level face is a seat, a vent or a hollow arbor lets the air out', () => {
    const level: Change = ['angle: 7 deg', 'angle: 0 deg']
    expect(found(level, pinned('kind: matched', 'assembly: press')).has('fit-assembly:angled-face')).toBe(false)
    const hollow: Change = ['spigot-length: 22', 'bore-through: 5\n  spigot-length: 22']
    expect(found(['vent: hole', 'vent: none'], hollow).has('fit-assembly:vent')).toBe(false)
    expect(found(['vent: hole', 'vent: flat']).has('fit-assembly:vent')).toBe(false)
  })

  it('a thread that tightens in the cut stays on', () => {
    expect(found(threaded('right')).has('fit-thread:hand')).toBe(false)
    expect(found(...anticlockwise, threaded('left')).has('fit-thread:hand')).toBe(false)
  })
})

describe('what heat does not do', () => {
  it('is told with the clearance that is left, or line to line', () => {
    const told = (least: number) =>
      found(limits(least, 0.01, 'assembly: heat')).get('fit-assembly:heat-adds-nothing')!.text
    expect(told(-0.019)).toContain('there is a clearance of 0.019 mm,')
    expect(told(0)).toContain('spigot and bore are line to line,')
  })
})

describe('what a fit leaves', () => {
  it('25H7/s6 keeps about 4 µm after smoothing, and u6 yields a cold-drawn head', () => {
    const at25: Change[] = [
      ['diameter: 20', 'diameter: 25'],
      ['shoulder-diameter: 32', 'shoulder-diameter: 36'],
      ['material: steel-12l14', 'material: steel-1018'],
    ]
    const s6 = headFrom('parameters', ...at25, pinned('kind: iso-286', 'code: H7/s6'))
    expect(jointOfHead(s6)!.least.effective).toBeCloseTo(0.0039, 4)
    expect(found(...at25, pinned('kind: iso-286', 'code: H7/u6')).has('fit-stress:head')).toBe(true)
  })

  it('FN2 in the inch head is short of safety for the cut at one end and yields it at the other', () => {
    const head = headFrom('parameters-inch', joined('kind: ansi-b4-1', 'class: FN2', 'catch: pin'))
    const ids = rules.flatMap((rule) => rule.findings(head)).map((f) => `${f.level} ${f.id}`)
    expect(ids).toContain('caution fit-grip:cut')
    expect(ids).toContain('caution fit-stress:head')
  })
})

describe('remedies', () => {
  const remedyOf = (id: string, ...changes: Change[]) =>
    judged(flyCutterHead, headFrom('parameters', ...changes), true).find((f) => f.id === id)?.remedy

  it('a pressed joint that is short of safety is shrunk on instead', () => {
    const design = headFrom('parameters', limits(0.02, 0.03))
    const { least } = jointOfHead(design)!
    const loss = 0.8 * 0.0126
    const interference = loss + ((0.02 - loss) * 1.5) / least.pressed.slip!
    expect(remedyOf('fit-grip:cut', limits(interference, 0.03))).toMatchObject({ path: 'fit.assembly', to: 'heat' })
  })

  it('a loose code gives way to the next tighter one that carries the cut', () => {
    const remedy = remedyOf('fit-grip:none', pinned('kind: iso-286', 'code: H7/p6'))
    expect(remedy).toMatchObject({ path: 'fit.code', to: 'H7/s6' })
  })

  it('line to line is cured by more interference, to a number that was solved', () => {
    const matched = joined('kind: matched', 'interference-ratio: 0.0003', 'assembly: heat', 'catch: pin')
    const { path, to } = remedyOf('fit-grip:none', matched)!
    expect(path).toBe('fit.interference-ratio')
    // (ratio − 0.0003)·20 must be more than the 0.01008 mm that smoothing takes, and half of the change would not do.
    expect(to).toBeGreaterThan(0.000804)
    expect(((to as number) + 0.0003) / 2).toBeLessThan(0.000804)
  })

  it('a fit that yields the head gets a smaller spread or ratio', () => {
    const remedy = remedyOf('fit-stress:head', pinned('kind: matched', 'interference-ratio: 0.0022'))!
    expect(remedy.path).toBe('fit.interference-spread')
    expect((0.0022 + (remedy.to as number)) * 20).toBeLessThan(0.0475)
  })

  it('a missing vent is drilled', () => {
    expect(remedyOf('fit-assembly:vent', ['vent: hole', 'vent: none'])).toMatchObject({ path: 'bore.vent', to: 'hole' })
  })

  it('limits too loose by themselves are moved together, and keep the tolerance of the spigot', () => {
    const loose = pinned(
      'kind: limits',
      'bore-smallest: 20',
      'bore-largest: 20.021',
      'spigot-smallest: 20',
      'spigot-largest: 20.005',
    )
    for (const id of ['fit-grip:none', 'never-exceed']) {
      const { path, to, also } = remedyOf(id, loose)!
      expect(path).toBe('fit.spigot-smallest')
      expect(also).toEqual([{ path: 'fit.spigot-largest', to: expect.closeTo((to as number) + 0.005, 9) }])
      expect(shownRemedy(headFrom('parameters', loose), id)).toContain('and fit.spigot-largest to 20.')
    }
  })

  it('a code that yields the head gives way to one a grade finer, which still carries', () => {
    expect(remedyOf('fit-stress:head', pinned('kind: iso-286', 'code: H7/u6'))).toMatchObject({ to: 'H6/s5' })
  })

  it('a bore too rough for its limits is matched by measuring it first, which leaves the limits out of the file', () => {
    const rough = pinned(
      'kind: limits',
      'bore-smallest: 20',
      'bore-largest: 20.15',
      'spigot-smallest: 20',
      'spigot-largest: 20.005',
    )
    const remedy = remedyOf('fit-grip:none', rough)!
    expect(remedy).toMatchObject({ path: 'fit.kind', to: 'matched' })
    expect(remedy.text).toBe(
      'set fit.kind to matched (now limits), and leave out bore-smallest, bore-largest, spigot-smallest, spigot-largest',
    )
    expect(shownRemedy(headFrom('parameters', rough), 'fit-grip:none')).toBe(remedy.text)
  })

  it('a drawbar is fitted, a spindle that reverses is kept from it', () => {
    expect(remedyOf('shank:drawbar', ['drawbar: true', 'drawbar: false'])).toMatchObject({
      path: 'machine.drawbar',
      to: true,
    })
    expect(
      remedyOf('fit-thread:reversed-or-braked', ['reverse: false', 'reverse: true'], threaded('right')),
    ).toMatchObject({ path: 'machine.reverse', to: false })
  })

  it('a straight arbor gets a shank with a shoulder that seats on the head', () => {
    expect(remedyOf('shank:no-shoulder', straightArbor)!.text).toBe(
      'set arbor.kind to shank (now straight) and arbor.shank to straight-20 and arbor.shoulder-diameter to 32 mm and arbor.shoulder-thickness to 6 mm, and leave out length-above',
    )
  })

  it('a thread of the wrong hand is cut the other way', () => {
    expect(remedyOf('fit-thread:hand', threaded('left'))).toMatchObject({ path: 'fit.hand', to: 'right' })
  })
})

describe('a head that is screwed on', () => {
  it('has no press joint, and its spigot and bore are dimensioned by their thread', () => {
    const design = headFrom('parameters', threaded('left'))
    expect(jointOfHead(design)).toBeUndefined()
    expect(jointInputOf(design)).toBeUndefined()
    const dimension = (part: string, id: string) =>
      [...design.part(part).stock, ...design.part(part).cuts].flatMap((f) => f.dimensions).find((d) => d.id === id)
    expect(dimension('arbor', 'spigot.diameter')).toMatchObject({ kind: 'thread', thread: 'M20 LH' })
    expect(dimension('body', 'bore.diameter')).toMatchObject({ kind: 'thread', thread: 'M20 LH' })
    expect(dimension('body', 'bore.tap-drill')).toMatchObject({ kind: 'diameter', value: 17.5 })
  })
})

/** Rows above that no single change clears. */
const noSingleChange: readonly string[] = [
  // Nothing in the set is wrong: figures are missing from a table.
  'an arbor of which no strength is published',
  'a thread of a head whose strength is not known',
]

everyFindingAbove(
  mistakes.map(([name, changes, id]) => [name, changes, id]),
  noSingleChange,
)

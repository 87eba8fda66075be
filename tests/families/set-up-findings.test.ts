import { describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { heatingOf } from '../../src/families/fly-cutter-head/making/joining.ts'
import { laidSetUp } from '../../src/families/fly-cutter-head/making/laid-set-up.ts'
import { comesNear, sineStack } from '../../src/families/fly-cutter-head/making/sine-stack.ts'
import { tiltNotes } from '../../src/families/fly-cutter-head/making/tilt-notes.ts'
import { tiltedSetUp } from '../../src/families/fly-cutter-head/making/tilted-set-up.ts'
import { setUp } from '../../src/families/fly-cutter-head/rules/set-up.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { judged } from '../../src/families/variants.ts'
import { headFrom, tables, templateText } from './random-heads.ts'

type Change = [string | RegExp, string]

const found = (design: HeadDesign) =>
  judged({ ...flyCutterHead, rules: [setUp] }, design, true).map(({ id, level, figure, limit, remedy }) => ({
    id,
    level,
    figure: figure?.value,
    limit: limit?.value,
    remedy: remedy?.text,
  }))

const shortHead: Change[] = [
  ['depth-on-axis: 41', 'depth-on-axis: 24'],
  ['depth: 24', 'depth: 9'],
  ['spigot-length: 22', 'spigot-length: 7'],
]

describe('findings about the set-ups', () => {
  it.each(['parameters', 'parameters-inch'] as const)('has nothing else to say about %s', (name) => {
    expect(found(headFrom(name))).toEqual([])
  })

  it('names the drill for the reamed pin hole that the list lacks, or that is too short for it', () => {
    const says = (...changes: Change[]) =>
      setUp.findings(headFrom('parameters', ...changes)).filter(({ id }) => /pin/.test(id))
    expect(says([/ {4}- \{ diameter: 4.8, .*\n/, ''])).toMatchObject([
      { id: 'set-up:pin-drill', level: 'note', text: expect.stringMatching(/get one of 4.8 mm\.$/) },
    ])
    expect(setUp.findings(headFrom('parameters-inch', [/ {4}- \{ diameter: 15\/64, .*\n/, '']))).toMatchObject([
      { text: expect.stringMatching(/get one of 15\/64 in\.$/) },
    ])
    expect(says()).toEqual([])
    // 46 + 2.4·cot 59° + 0.5 to break through and 1 of clearance.
    expect(says(['diameter: 4.8, reach: 52', 'diameter: 4.8, reach: 40'])).toMatchObject([
      { id: 'set-up:reach-pin', level: 'caution', figure: { value: 40 }, limit: { value: expect.closeTo(48.942, 3) } },
    ])
    // A list without drills does not say which drills there are, and a head without a pin wants none.
    expect(says([/ {4}- \{ .*kind: drill \}\n/g, ''])).toEqual([])
    expect(says(['catch: pin', 'catch: none'])).toEqual([])
  })

  it('says when too little is left to grip, by the formula worked by hand, and the height that clears it', () => {
    // Packed to just clear the step: 11.5 stands out. 24·cos 7° − (46/√3/2)·sin 7° − 11.5 = 23.821 − 1.618 − 11.5
    const grip = found(headFrom('parameters', ...shortHead)).find((f) => f.id === 'set-up:grip')
    expect(grip).toMatchObject({ id: 'set-up:grip', level: 'caution', limit: 12 })
    expect(grip!.figure).toBeCloseTo(10.703, 3)
    // 12 of grip want 25.307 on the axis.
    expect(grip!.remedy).toBe('set face.depth-on-axis to 26 mm (now 24 mm)')
  })

  it('stops where less than half of the wanted grip is left', () => {
    const design = headFrom('parameters', ['depth-on-axis: 41', 'depth-on-axis: 18'], ...shortHead.slice(1))
    expect(found(design).find((f) => f.id === 'set-up:grip')?.level).toBe('stop')
  })

  it('says what jaw height needs no packing, where no pair of parallels holds the head low enough', () => {
    const design = headFrom('parameters', ['parallels: [10, 14, 18, 22, 26, 30]', 'parallels: [28, 30]'])
    const [finding] = found(design)
    // 43.931 below the face is the lowest edge; 11.5 must stand out: 32.431 of jaw.
    expect(finding).toMatchObject({ id: 'set-up:parallels', level: 'caution', figure: 34 })
    expect(finding!.limit).toBeCloseTo(32.431, 3)
    expect(finding!.remedy).toBe('set machine.vise.jaw-height to 32 mm (now 34 mm)')
    // Without a list nobody knows what is in the drawer: only the height is told.
    const unknown = found(headFrom('parameters', ['parallels: [10, 14, 18, 22, 26, 30]', 'parallels: []']))
    expect(unknown).toMatchObject([{ id: 'set-up:parallels', level: 'note' }])
  })

  it('stops at a vise that does not open far enough, and at a head that is too long for it laid down', () => {
    expect(found(headFrom('parameters', ['jaw-opening: 105', 'jaw-opening: 40']))).toMatchObject([
      {
        id: 'set-up:opening',
        level: 'stop',
        figure: 46,
        limit: 40,
        remedy: 'set machine.vise.jaw-opening to 50 mm (now 40 mm)',
      },
      { id: 'set-up:laid-opening', level: 'caution' },
    ])
  })

  it('says which cutter of the list is too short for its cut, and how far it should stand out', () => {
    const short = (from: string, to: string) => found(headFrom('parameters', [from, to]))
    // The step, 10.5 deep, with 1 of clearance, and 11.6 wide: every end mill of the list too short.
    expect(
      found(headFrom('parameters', [/reach: (16|22|28|38) \}/g, 'reach: 11 }'])).filter((f) => f.id.includes('step')),
    ).toMatchObject([
      { id: 'set-up:reach-step', figure: 11, limit: 11.5, remedy: expect.stringContaining('set step.depth to') },
    ])
    expect(short('{ diameter: 5, reach: 52, kind: drill }', '{ diameter: 5, reach: 20, kind: drill }')).toMatchObject([
      { id: 'set-up:reach-drill', figure: 20, limit: expect.closeTo(23.602, 3) },
    ])
    expect(
      found(
        headFrom('parameters', ['    - { diameter: 6, reach: 16 }\n', ''], ['    - { diameter: 8, reach: 22 }\n', '']),
      ),
    ).toMatchObject([{ id: 'set-up:slot-cutter', level: 'note' }])
  })

  it('says when nothing sets the angle, and when the blocks do not come near enough', () => {
    const bare = headFrom('parameters', ['  sine-bar: 100\n', ''])
    expect(found(bare)).toMatchObject([{ id: 'set-up:angle', level: 'note' }])
    const coarse = headFrom('parameters', [/gauge-blocks: \[[^\]]*\]/, 'gauge-blocks: [5, 6]'])
    // 11 of 100 is 6°18.9′, 41′ off 7°; wanted to 3.75′.
    const [stack] = found(coarse)
    expect(stack).toMatchObject({ id: 'set-up:stack', level: 'caution' })
    expect((stack!.figure! * 180 * 60) / Math.PI).toBeCloseTo(41.1, 0)
    expect((stack!.limit! * 180 * 60) / Math.PI).toBeCloseTo(3.75, 9)
  })

  it('holds table travel and headroom against what the cuts need, worked by hand', () => {
    const design = headFrom(
      'parameters',
      ['machine:\n', 'machine:\n  table-travel: 60\n  headroom: 90\n'],
      ['jaw-height: 34\n', 'jaw-height: 34\n    bed-height: 45\n'],
    )
    const [room, travel] = found(design)
    // The widest cutter of the list goes over the face: 2·26.758 + 2·(2 + 10) = 77.515, more than slot and step.
    expect(travel).toMatchObject({ id: 'set-up:table-travel', limit: 60 })
    expect(travel!.figure).toBeCloseTo((2 * 46) / Math.sqrt(3) / Math.cos((7 * Math.PI) / 180) + 24, 6)
    // 45 + 34 + 19.931 + 28 of cutter.
    expect(room).toMatchObject({ id: 'set-up:headroom', level: 'stop', limit: 90 })
    expect(room!.figure).toBeCloseTo(126.931, 3)
  })

  it('knows what holds a head that is joined before the tilt', () => {
    const first: Change = ['join: after-face', 'join: before-tilt']
    expect(found(headFrom('parameters', first))).toEqual([])
    const taper = found(headFrom('parameters', first, ['shank: straight-20', 'shank: morse-2']))
    expect(taper).toContainEqual(
      expect.objectContaining({
        id: 'set-up:tapered-shank',
        remedy: 'set making.join to after-face (now before-tilt)',
      }),
    )
    const walks = headFrom(
      'parameters',
      ['turned-in: lathe', 'turned-in: mill-spindle'],
      ['drawbar: true', 'drawbar: false'],
    )
    expect(found(walks)).toMatchObject([{ id: 'set-up:no-drawbar' }])
  })

  it('presses without a cup where the joint is made before the tilt', () => {
    const press: Change = ['assembly: heat', 'assembly: press']
    const says = (...changes: Change[]) =>
      judged(flyCutterHead, headFrom('parameters', press, ...changes), true).find((f) => f.id.endsWith('angled-face'))
    expect(says()?.remedy?.text).toBe('set making.join to before-tilt (now after-face)')
    expect(says(['join: after-face', 'join: before-tilt'])).toBeUndefined()
  })

  it('costs microseconds', () => {
    const design = headFrom('parameters')
    const times = Array.from({ length: 50 }, () => {
      const built = flyCutterHead.build(design.parameters, tables)
      if (!built.ok) throw new Error('no design')
      const start = performance.now()
      setUp.findings(built.value)
      return performance.now() - start
    }).toSorted((a, b) => a - b)
    // The quickest: how slow the others are is for the machine's other work to say.
    expect(times[0]).toBeLessThan(0.5)
  })
})

describe('the figures of the set-ups', () => {
  it('stack the blocks of the shop’s own set under the sine bar: 100·sin 7° = 12.187', () => {
    const stack = sineStack(headFrom('parameters'))!
    expect(stack.blocks.reduce((sum, b) => sum + b, 0)).toBeCloseTo(stack.height, 9)
    // The set has no thousandths but 1.005: 12.185 is as near as four of its blocks come, a fortieth of a minute off.
    expect(stack.height).toBeCloseTo(12.187, 2)
    expect(Math.sin(stack.angle) * 100).toBeCloseTo(stack.height, 9)
    expect(tiltNotes(headFrom('parameters')).join(' ')).toContain(`= ${Number(stack.height.toFixed(4))})`)
  })

  it('tell at a glance what a search through all stacks of three finds', () => {
    const blocks = [1.005, 1.1, 1.4, 2, 3, 5, 10, 20]
    const sums = blocks.flatMap((a, i) => [
      a,
      ...blocks.slice(i + 1).flatMap((b, k) => [a + b, ...blocks.slice(i + k + 2).map((c) => a + b + c)]),
    ])
    for (let height = 0.5; height < 36; height += 0.0371) {
      const nearest = Math.min(...sums.map((sum) => Math.abs(sum - height)))
      for (const within of [0.01, 0.1, 0.5]) expect(comesNear(blocks, height, within)).toBe(nearest <= within)
    }
    expect(comesNear([], 12, 0.1)).toBe(false)
  })

  it('add angle blocks up where they come to the angle, and take the sine bar where they do not', () => {
    const set = (blocks: string) =>
      tiltedSetUp(headFrom('parameters', ['sine-bar: 100', `sine-bar: 100\n  angle-blocks: [${blocks}]`])).setting
    const degrees = (setting: ReturnType<typeof set>) =>
      setting.by === 'angle-block' ? setting.blocks.map((b) => Math.round((b * 180) / Math.PI)) : setting.by
    expect(degrees(set('5 deg, 2 deg, 1 deg'))).toEqual([5, 2])
    expect(degrees(set('7 deg, 5 deg, 2 deg'))).toEqual([7])
    expect(degrees(set('5 deg, 1 deg'))).toBe('sine-bar')
  })

  it('lay the head down so that the drilled face stands clear of the jaws', () => {
    const set = laidSetUp(headFrom('parameters'))
    // 23 + 11.4 on parallels of 10, jaws 34: 10.4 above them, 24 held.
    expect(set.drilledFace).toBeCloseTo(34.4, 9)
    expect([set.under, set.onParallels]).toEqual([10, true])
    expect(set.stickUp).toBeCloseTo(10.4, 9)
    expect(set.grip).toBeCloseTo(24, 9)
    // 41 + 26.558·tan 7°
    expect(set.opening).toBeCloseTo(44.261, 3)
  })

  it('heat the head as far as the joint says, in a time that goes with its mass', () => {
    const heating = heatingOf(headFrom('parameters'))!
    expect(heating.head).toBeLessThan(heating.limit)
    expect(heating.oven).toBeLessThanOrEqual(heating.limit)
    expect(heating.toReach! / 60).toBeGreaterThan(15)
    expect(heating.toReach! / 60).toBeLessThan(90)
    expect(heating.toSlipIn!).toBeLessThan(heating.toReach!)
    expect(heatingOf(headFrom('parameters', ['assembly: heat', 'assembly: press']))).toBeUndefined()
  })

  it('are the same whichever way the tool turns', () => {
    const [a, b] = [
      tiltedSetUp(headFrom('parameters')),
      tiltedSetUp(headFrom('parameters', ['rotation: clockwise', 'rotation: anticlockwise'])),
    ]
    expect(a).toEqual(b)
  })
})

describe('bad input about the making', () => {
  const problems = (...changes: [string, string][]) => {
    let text = templateText('parameters')
    for (const [from, to] of changes) {
      if (!text.includes(from)) throw new Error(`nothing to change: ${from}`)
      text = text.replace(from, to)
    }
    const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
    return read.ok ? [] : read.problems.map(({ code, where, remedy }) => [code, where.path, remedy])
  }

  it.each([
    [
      'a join that is none',
      ['join: after-face', 'join: after-faces'],
      'unknown-choice',
      'making.join',
      'write after-face',
    ],
    [
      'a place to bore that is none',
      ['bored-in: lathe', 'bored-in: press'],
      'unknown-choice',
      'making.bored-in',
      undefined,
    ],
    ['an unknown key', ['bored-in: lathe', 'bore-in: lathe'], 'unknown-key', 'making.bore-in', undefined],
    ['a pass of no depth', ['bored-in: lathe', 'slot-pass: 0'], 'out-of-range', 'making.slot-pass', undefined],
    ['cutters without teeth', ['bored-in: lathe', 'flutes: 0'], 'out-of-range', 'making.flutes', undefined],
    ['text for a length', ['bored-in: lathe', 'left-to-finish: some'], undefined, 'making.left-to-finish', undefined],
    [
      'a cutter of no kind known',
      ['kind: drill', 'kind: dril'],
      'unknown-choice',
      'shop.cutters.4.kind',
      'write drill',
    ],
    [
      'a bed below the table',
      ['jaw-height: 34', 'jaw-height: 34\n    bed-height: -1'],
      'out-of-range',
      'machine.vise.bed-height',
      undefined,
    ],
  ] as [string, [string, string], string | undefined, string, string | undefined][])(
    'refuses %s where it stands',
    (_, change, code, path, remedy) => {
      const [first] = problems(change)
      expect(first![1]).toBe(path)
      if (code !== undefined) expect(first![0]).toBe(code)
      if (remedy !== undefined) expect(first![2]).toBe(remedy)
    },
  )
})

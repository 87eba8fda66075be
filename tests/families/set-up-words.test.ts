import { describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { jawClearance } from '../../src/families/fly-cutter-head/making/jaw-clearance.ts'
import { heatingOf } from '../../src/families/fly-cutter-head/making/joining.ts'
import { laidSetting } from '../../src/families/fly-cutter-head/making/laid-set-up.ts'
import { headRoute } from '../../src/families/fly-cutter-head/making/route.ts'
import { headSetUps } from '../../src/families/fly-cutter-head/making/set-ups.ts'
import { tiltSetting } from '../../src/families/fly-cutter-head/making/tilt-setting.ts'
import { tiltedSetUp } from '../../src/families/fly-cutter-head/making/tilted-set-up.ts'
import { bodyNotes } from '../../src/families/fly-cutter-head/sheets/body-notes.ts'
import { setUpNotes } from '../../src/families/fly-cutter-head/sheets/set-up-notes.ts'
import { formatLength } from '../../src/quantity/format-length.ts'
import { formatQuantity } from '../../src/quantity/format-quantity.ts'
import { headFrom } from './random-heads.ts'

type Change = [string | RegExp, string]
const square: Change[] = [
  ['shape: hexagon ', 'shape: square '],
  ['  slot-runs: point-to-point    # the jaws then hold the flats beside the slot\n', ''],
]
const round: Change[] = [['shape: hexagon ', 'shape: round '], square[1]!]
const flats: Change[] = [['slot-runs: point-to-point', 'slot-runs: flat-to-flat']]
const first: Change = ['join: after-face', 'join: before-tilt']
const step = (design: HeadDesign, id: string) => headRoute(design).find((o) => o.id === id)!
const setUp = (design: HeadDesign, id: string) => headSetUps(design).find((s) => s.id === id)!

describe('the skew cut of the saw', () => {
  it('is scribed where the blank has metal: 38.7 high on one side, out at the end 2.2 short of the other', () => {
    // 41 + 26.558·tan 7° + 1/cos 7° = 45.269 on a blank of 45: 0.269/tan 7° = 2.19.
    expect(step(headFrom('parameters'), 'saw-wedge').steps[0]).toBe(
      'Scribe the cut: 38.7 mm from the mounting face on the side away from the bit; it runs out at the end of the blank 2.2 mm short of the bit side.',
    )
    const long = step(headFrom('parameters', ['  shape: hexagon', '  length: 60\n  shape: hexagon']), 'saw-wedge')
    expect(long.steps[0]).toContain('45.3 mm on the bit side.')
  })

  it('tips the blank where its jaws hold the flats beside the slot, and swivels the vise where they hold the others', () => {
    expect(setUp(headFrom('parameters'), 'wedge').held).toMatch(/jaws square, the blank tipped/)
    for (const shape of [square, round, flats]) {
      expect(setUp(headFrom('parameters', ...shape), 'wedge').held).toMatch(/the vise swivelled by the face angle/)
    }
  })
})

describe('the bore', () => {
  const read = (...changes: Change[]) => setUp(headFrom('parameters', ...changes), 'mounting').notes.join(' ')

  it('stands on the middle of the flats within 0.05 mm, for slot and step are set from the jaws that hold them', () => {
    expect(read()).toMatch(/^Run the bar true within 0.05 mm by an indicator, opposite flats.*shim under a jaw/)
    expect(read(...round)).toMatch(/within 0.05 mm by an indicator, read at both ends: place of the slot/)
    expect(read(['bored-in: lathe', 'bored-in: mill'])).toContain('Find the middle within 0.05 mm')
    expect(setUp(headFrom('parameters-inch'), 'mounting').notes.join(' ')).toContain('within 0.002 in')
  })

  it('is asked for there by the sheet of the head too, and square to the face that it is bored with', () => {
    const said = (...changes: Change[]) => bodyNotes(headFrom('parameters', ...changes)).lines.join(' ')
    expect(said()).toContain('B on the middle of the flats within 0.05 mm, and square to A')
    expect(said(...round)).toContain('B on the middle of the bar within 0.05 mm')
    expect(bodyNotes(headFrom('parameters-inch')).lines.join(' ')).toContain('within 0.002 in, and square')
  })
})

describe('what a tilted head stands on', () => {
  it('is one parallel under a point, and a pair under an edge', () => {
    const stands = (...changes: Change[]) => setUp(headFrom('parameters', ...changes), 'tilted').notes.join(' ')
    for (const pointed of [[], round])
      expect(stands(...pointed)).toMatch(
        /lowest point .* stands on one parallel of 10 mm, midway between the jaws\. That is the stop for the height; it carries no cut/,
      )
    for (const edged of [square, flats]) expect(stands(...edged)).toMatch(/lowest edge .* stands on parallels of/)
  })

  it('may be any height between what the cuts need and what the jaws still hold: 1.569 to 15.58 mm', () => {
    const set = tiltedSetUp(headFrom('parameters'))
    // 34 + 11.5 − 43.931 and 19.145 + 10 − 13.565.
    expect(set.underNeeded).toBeCloseTo(1.569, 3)
    expect(set.underMost).toBeCloseTo(15.58, 2)
    expect(setUp(headFrom('parameters'), 'tilted').notes.join(' ')).toContain(
      'Any height from 1.569 mm to 15.58 mm will do',
    )
  })

  it('on its shank too: as much grip as a third of what then stands out', () => {
    const set = tiltedSetUp(headFrom('parameters', first))
    const stickUp = set.underMost + set.lowest - set.jawHeight
    expect(set.stickUp + set.grip - stickUp).toBeCloseTo(stickUp / 3, 9)
  })

  it('does not set the height of the head: that is measured from the mounting face, whatever it is held by', () => {
    for (const changes of [[], [first]]) {
      const face = step(headFrom('parameters', ...changes), 'face')
      expect(face.steps.join(' ')).toContain('43.931 mm above the lowest point of the mounting face')
    }
  })
})

describe('the angle of a tilted head', () => {
  const drawer = 'sine-bar: 100'
  const ways: [string, Change[], RegExp][] = [
    [
      'angle blocks',
      [[drawer, `${drawer}\n  angle-blocks: [5 deg, 2 deg]`]],
      /^Angle blocks of 5° \+ 2°: turn the head/,
    ],
    [
      'a sine bar',
      [],
      /^Sine bar of 100 mm on 12.187 mm .* makes 7°: on the surface plate set .* block or a bevel to it/,
    ],
    ['a protractor', [[`  ${drawer}\n`, '']], /^Turn the head .* protractor of 7°/],
  ]

  it.each(ways)(
    'is gauged by %s, which carries nothing while a stop gives the height, and held by the jaws alone',
    (_, changes, has) => {
      const [stop, gauge, tight] = setUp(headFrom('parameters', ...changes), 'tilted').notes
      expect(stop).toMatch(/the stop for the height; it carries no cut/)
      expect(gauge).toMatch(has)
      expect(gauge).toMatch(/on that stop until .* brought up from the bed to the mounting face, shows no light/)
      expect(tight).toMatch(
        /Then the parallel may come out or stay loose: an edge is no seat, and the jaws alone hold the head/,
      )
      expect([stop, gauge, tight].join(' ')).not.toMatch(/put that under|under the mounting face/)
    },
  )

  it('is looked at again with the jaws tight, down the side of the bar: 10·tan 7° = 1.228 in 10 mm', () => {
    const again = (...changes: Change[]) => setUp(headFrom('parameters', ...changes), 'tilted').notes[2]
    expect(again()).toContain(
      'on the corner of the bar towards the bit reads the same 10 mm further down with X 1.228 mm less',
    )
    expect(again(...square)).toContain('on the side of the bar')
    // Where less stands above the jaws, half of that.
    expect(again(['parallels: [10, 14, 18, 22, 26, 30]', 'parallels: []'])).toContain(
      '5 mm further down with X 0.614 mm less',
    )
  })

  it('of a shank is gauged on the block that holds it', () => {
    expect(setUp(headFrom('parameters', first), 'tilted').notes[1]).toMatch(
      /Turn V-block and shank .* between a square on the bed and the side of the V-block/,
    )
  })

  it('and its height are told by the sheet in the words of the report', () => {
    for (const changes of [[], square, flats, round, [first], [['angle: 7 deg', 'angle: 0 deg']] as Change[]]) {
      const design = headFrom('parameters', ...changes)
      const sheet = setUpNotes(design).flatMap(({ lines }) => lines.map((line) => line.replace(/^\d+\. /, '')))
      const report = [...setUp(design, 'tilted').notes, ...setUp(design, 'laid').notes]
      for (const note of tiltSetting(design, (value) => formatLength(value, 'mm'))) {
        expect(sheet).toContain(note)
        expect(report).toContain(note)
      }
      for (const note of laidSetting(design)) {
        expect(sheet).toContain(note)
        expect(report).toContain(note)
      }
    }
  })
})

describe('the head laid down', () => {
  const notes = (...changes: Change[]) => setUp(headFrom('parameters', ...changes), 'laid').notes.join(' ')

  it('has its wedge slid to where it is thick enough again after saw and cutter', () => {
    expect(notes()).toMatch(
      /Slide the wedge along the face towards the bit side until it bears on jaw and face: what saw/,
    )
    expect(notes(['angle: 7 deg', 'angle: 1 deg'])).toMatch(/until it bears on jaw and face\./)
    expect(notes(['angle: 7 deg', 'angle: 0 deg'])).not.toContain('wedge')
  })

  it('is squared by the jaw that its mounting face lies on, or by that face itself where no jaw holds it', () => {
    expect(notes()).toMatch(/Indicate the fixed jaw along the table's X; the mounting face flat on it/)
    expect(notes(first)).toMatch(/the mounting face along the table's X, before it is strapped down/)
  })
})

describe('cutters at the tilt', () => {
  it('pass over the jaw on the side of the step: 19.931 − 10.5 above it', () => {
    const nearest = jawClearance(headFrom('parameters'))!
    expect(nearest.operation).toBe('step')
    expect(nearest.clear).toBeCloseTo(9.431, 3)
    // Axis 17.4 off the middle and 0.2 more while it roughs, cutter of 12, jaw at 23.
    expect(nearest.beside).toBeCloseTo(23 - 17.6 - 6, 9)
  })

  it('rough the step 0.2 mm off its wall and finish it in a last pass along the wall', () => {
    const { places, steps } = step(headFrom('parameters'), 'step')
    expect(places.filter(({ name }) => name.endsWith('start')).map(({ name, y }) => [name, y])).toEqual([
      ['roughing, cutter, start', expect.closeTo(-17.6, 9)],
      ['along the wall, cutter, start', expect.closeTo(-17.4, 9)],
    ])
    expect(steps[0]).toContain('leave 0.2 mm on the wall')
    expect(steps[1]).toMatch(/^Then one pass along the wall at full depth/)
  })

  it('finish the slot by one pass on the floor and one on either wall, which no depth is divided by', () => {
    const { steps, passes } = step(headFrom('parameters'), 'slot-walls')
    expect(passes).toBeUndefined()
    expect(steps[0]).toMatch(
      /full depth of 9.5 mm: one pass along the floor, then one along the trailing wall.* one along the leading wall/,
    )
  })

  it('of a wide step take lanes that leave no strip between them, whatever the cutter', () => {
    for (const diameter of [4, 5, 6.3, 8, 10, 11.5, 12]) {
      const design = headFrom('parameters', [
        '    - { diameter: 6, reach: 16 }\n    - { diameter: 8, reach: 22 }\n    - { diameter: 12, reach: 28 }\n    - { diameter: 20, reach: 38 }\n',
        `    - { diameter: ${diameter}, reach: 30 }\n`,
      ])
      const ys = step(design, 'step')
        .places.filter(({ name }) => name.endsWith('start'))
        .map(({ y }) => y!)
        .toSorted((a, b) => a - b)
      expect(ys[0]! - diameter / 2).toBeLessThanOrEqual(-23 + 1e-9)
      expect(ys.at(-1)! + diameter / 2).toBeCloseTo(-11.4, 9)
      ys.slice(1).forEach((y, i) => void expect(y - ys[i]!).toBeLessThanOrEqual(0.75 * diameter + 1e-9))
    }
  })

  it('stop in a stopped slot, and the table with them: 26.558 + 14 less the radius, and nothing beyond', () => {
    const stopped: Change = ['runs: through', 'runs: stopped\n  beyond-axis: 14']
    const rough = step(headFrom('parameters', ['angle: 7 deg', 'angle: 0 deg'], stopped), 'slot-rough')
    expect(rough.travel!.cut).toBeCloseTo(26.558 + 14 - 4, 3)
    expect(rough.travel!.overrun).toBe(0)
    expect(rough.places.at(-1)!.x).toBeCloseTo(-10, 9)
    const walls = step(headFrom('parameters', stopped), 'slot-walls')
    expect(walls.steps.join(' ')).toContain('4 mm for 5.02 mm drawn')
  })

  it('have nothing to take off a level face that was faced to length before', () => {
    const level = step(headFrom('parameters', ['angle: 7 deg', 'angle: 0 deg']), 'face')
    expect([level.title, level.tool, level.depth]).toEqual(['Look at the face', undefined, undefined])
    const longer = ['angle: 7 deg', 'angle: 0 deg'] as Change
    const cut = step(headFrom('parameters', longer, ['  shape: hexagon', '  length: 45\n  shape: hexagon']), 'face')
    // 45 sawn, 1 faced off each end, 41 wanted.
    expect(cut.depth).toBeCloseTo(2, 9)
    expect(cut.title).toBe('Mill the face')
  })
})

describe('a head that is shrunk on', () => {
  const join = (name: 'parameters' | 'parameters-inch', ...changes: Change[]) =>
    step(headFrom(name, ...changes), 'join')

  it('is held by tongs and gloves, lies on a dry fire brick, and leaves only seconds once it touches', () => {
    const steps = join('parameters').steps.join(' ')
    expect(steps).toMatch(/Heat-proof gloves, .* tongs that hold the head by its outside/)
    expect(steps).toMatch(/Nothing near that burns/)
    expect(steps).toContain('lies on a dry fire brick')
    expect(steps).toMatch(/stays wide enough for about \d+ min; once it touches the arbor you have only seconds\./)
  })

  it('is heated to what the report says, not to a rounded °C turned into °F', () => {
    const design = headFrom('parameters-inch')
    const { head, limit, oven } = heatingOf(design)!
    const words = join('parameters-inch').steps.join(' ')
    for (const value of [head, limit, oven]) expect(words).toContain(formatQuantity('temperature', value, 'in'))
  })

  it('comes down on an arbor that stands upright, whenever it is joined', () => {
    for (const changes of [[], [first], [['angle: 7 deg', 'angle: 0 deg']] as Change[]]) {
      expect(setUp(headFrom('parameters', ...changes), 'joining').held).toMatch(/^The arbor upright/)
    }
    expect(setUp(headFrom('parameters', first, ['assembly: heat', 'assembly: press']), 'joining').held).toMatch(
      /^The head on its square end/,
    )
  })
})

describe('the cup that an angled face is pressed in', () => {
  it('is half a millimetre wider than the bar over its corners, and holds a third of the short side', () => {
    const words = step(headFrom('parameters', ['assembly: heat', 'assembly: press']), 'join').steps.join(' ')
    // 2·46/√3 + 0.5; a third of 41 − 46/√3·tan 7°.
    expect(words).toContain('Bore a cup ⌀53.6 mm in soft stock')
    expect(words).toContain('milled to 7°, 12.6 mm deep')
  })
})

describe('the catch pin', () => {
  const pin = (name: 'parameters' | 'parameters-inch', ...changes: Change[]) =>
    step(headFrom(name, ...changes), 'catch')
  /** Another drill in the place of the one that the list has for it. */
  const drill = (size: string): Change => ['diameter: 4.8, reach: 52', `diameter: ${size}, reach: 80`]

  it('is drilled 0.2 mm under size and reamed, the drill coming out on the far side: 46 + 2.4·cot 59° + 0.5 + 1', () => {
    const { tool, depth, steps, places } = pin('parameters')
    expect(tool!.diameter).toBe(4.8)
    expect(depth).toBeCloseTo(47.942, 3)
    expect(places[0]!.z).toBe(depth)
    expect(tool!.reachNeeded).toBeCloseTo(depth! + 1, 9)
    expect(steps[0]).toMatch(/spot, drill ⌀4.8 mm right through/)
    expect(steps.join(' ')).toMatch(/Ream to 5 mm at half that speed/)
  })

  it('leaves the reamer 0.1 to 0.4 mm, with a drill of the shop that does or the usual one that the list lacks', () => {
    const size = (by: string) => pin('parameters', drill(by)).tool!.diameter
    expect(size('4.7')).toBe(4.7)
    expect(size('4.9')).toBe(4.9)
    // 0.5 mm chokes a reamer of 5, 0.05 mm is rubbed.
    expect(size('4.5')).toBe(4.8)
    expect(size('4.95')).toBe(4.8)
    // The 0.213 in of the inch list would leave 0.94 mm; 15/64 leaves 0.397.
    const without: Change = [/ {4}- \{ diameter: 15\/64, .*\n/, '']
    expect(pin('parameters-inch', without).tool!.name).toBe('drill ⌀15/64 in')
    // 0.205 lies 0.05 mm over 13/64: the next tenth of a millimetre, 5.0, leaves 0.207.
    expect(pin('parameters-inch', without, ['catch: pin ', 'pin-diameter: 0.205\n  catch: pin ']).tool!.diameter).toBe(
      5,
    )
  })

  it('turns no faster than the harder of head and arbor lets it: 1045 at 90 ft/min and not 12L14 at 120', () => {
    const { speed } = pin('parameters-inch')
    expect(speed!.surface).toBeLessThanOrEqual((90 * 304.8) / 60 + 1e-6)
    const soft = pin('parameters-inch', ['material: steel-1045', 'material: steel-12l14'])
    expect(soft.speed!.turns).toBeGreaterThan(speed!.turns)
  })

  it('is pecked: a hole of 46 mm is nine diameters deep', () => {
    expect(pin('parameters').steps[1]).toMatch(/^More than 9 diameters deep: peck/)
  })
})

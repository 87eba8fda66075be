import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { judged } from '../../src/families/variants.ts'
import { forRandomHeads, headFrom } from './random-heads.ts'
import { everyFindingAbove } from './shown-remedy.ts'

type Change = [string | RegExp, string]

const found = (...changes: Change[]) =>
  new Map(findingsOf(flyCutterHead.rules, headFrom('parameters', ...changes)).map((f) => [f.id, f]))

describe('the templates', () => {
  it.each(['parameters', 'parameters-inch'] as const)('%s has no finding that stops the job', (name) => {
    const stops = findingsOf(flyCutterHead.rules, headFrom(name)).filter((f) => f.level === 'stop')
    expect(stops.map((f) => f.text)).toEqual([])
  })
})

/** Mistakes of the shop: what is changed in a good set, the finding it must give, how bad it is, its figure. */
const mistakes: [string, Change[], string, 'stop' | 'caution' | 'note', number?][] = [
  ['a bore drilled into the slot', [['depth: 24', 'depth: 33']], 'wall:slot/bore', 'stop', 0],
  ['a bore that leaves half a millimetre', [['depth: 24', 'depth: 29.7']], 'wall:slot/bore', 'stop'],
  ['a bore that leaves 2 mm', [['depth: 24', 'depth: 28.2']], 'wall:slot/bore', 'caution'],
  [
    'a tool for the wrong way round on a spindle without reverse',
    [['rotation: clockwise', 'rotation: anticlockwise']],
    'hand',
    'stop',
  ],
  ['a swing that strikes the column', [['largest-swing: 165', 'largest-swing: 106']], 'swing:clears-machine', 'stop'],
  ['a swing short of the work', [['width: 92', 'width: 120']], 'swing:covers-work', 'caution'],
  ['a swing that just covers the work', [['width: 92', 'width: 100']], 'swing:covers-work', 'note'],
  ['screws too high for the bit', [['height: 6', 'height: 8']], 'bit:screw-height', 'stop'],
  ['screw holes that run past the slot floor', [['height: 6', 'height: 7.5']], 'screws:above-floor', 'stop', 10],
  ['screws that no key reaches over the step floor', [['depth: 10.5', 'depth: 8']], 'screws:entry', 'stop', 8],
  ['screw holes that break out of the face', [['height: 6', 'height: 2']], 'wall:face/screw-hole-1', 'stop', 0],
  [
    'a screw too near the end of its wall',
    [['first-from-corner: 14.5', 'first-from-corner: 11']],
    'screws:outer-end',
    'caution',
  ],
  ['screws too close together', [['spacing: 24', 'spacing: 12']], 'screws:spacing', 'caution', 12],
  ['a wall too thin for the thread', [['wall-thickness: 9', 'wall-thickness: 5']], 'screws:engagement', 'caution'],
  ['a bit too short for its screws', [['length: 78', 'length: 50']], 'bit:off-screw-2', 'stop'],
  ['a bit that hangs out of the far side', [['length: 78', 'length: 100']], 'bit:tail-out', 'caution'],
  ['a bit that is hardly in the slot', [['length: 78', 'length: 36']], 'bit:grip', 'stop'],
  [
    'a stopped slot shorter than the bit',
    [['runs: through', 'runs: stopped\n  beyond-axis: 18']],
    'bit:hits-stop',
    'stop',
  ],
  [
    'a slot so deep that the head rubs',
    [
      ['  depth: 9.5', '  depth: 15'],
      ['depth: 10.5', 'depth: 16'],
    ],
    'body-clearance',
    'stop',
  ],
  ['a blank sawn too short', [['slot-runs: point', 'length: 45\n  slot-runs: point']], 'stock-length', 'stop', 45],
  [
    'a hub that the fit would burst',
    [
      ['diameter: 20', 'diameter: 32'],
      ['shoulder-diameter: 32', 'shoulder-diameter: 40'],
    ],
    'hub-wall',
    'stop',
  ],
  ['a thin hub', [['diameter: 20', 'diameter: 27']], 'hub-wall', 'caution'],
  [
    'a spigot that bottoms before its shoulder seats',
    [['spigot-length: 22', 'spigot-length: 24.5']],
    'spigot-seat:bottoms',
    'stop',
    24.5,
  ],
  [
    'a shoulder that falls into the chamfer',
    [['shoulder-diameter: 32', 'shoulder-diameter: 21.5']],
    'spigot-seat:no-seat',
    'stop',
    21.5,
  ],
  [
    'a hexagon slotted from flat to flat',
    [
      ['slot-runs: point-to-point', 'slot-runs: flat-to-flat'],
      ['length: 78', 'length: 70'],
    ],
    'jaw-hold',
    'caution',
  ],
  ['round bar in plain jaws', [['shape: hexagon', 'shape: round']], 'jaw-hold', 'note'],
  [
    'a step on the trailing side, where a screw hole comes out of the hexagon',
    [['side: leading', 'side: trailing']],
    'wall:screw-hole-1/outside',
    'caution',
  ],
  ['bar that no dealer has', [['size: 46 ', 'size: 46.3 ']], 'stock-size:bar', 'note'],
]

describe('a check finds', () => {
  it.each(mistakes)('%s', (_, changes, id, level, figure) => {
    const finding = found(...changes).get(id)
    expect(finding).toBeDefined()
    expect(finding!.level).toBe(level)
    if (figure !== undefined) expect(finding!.figure!.value).toBeCloseTo(figure, 6)
    expect(found().has(id)).toBe(false)
  })
})

describe('words of a finding', () => {
  it('say a place on the wrong side as what it is, and no distance is negative', () => {
    const near = found(
      ['first-from-corner: 14.5', 'first-from-corner: 0'],
      ['slot-runs: point-to-point', 'slot-runs: flat-to-flat'],
    )
    expect(near.get('screws:outer-end')!.text).toMatch(
      /^The first screw stands (only )?[\d.]+ mm (from|beyond) the outer end of its wall\.$/,
    )
    forRandomHeads(40, (design) => {
      for (const { text } of findingsOf(flyCutterHead.rules, design))
        expect(text).not.toMatch(/(^|[^\d])[-−]\d[\d.]* (mm|in)\b/)
    })
  })

  it('keep the capitals of a title within a sentence', () => {
    const alloy = found(['material: aluminium', 'material: alloy-steel']).get('angles:axial-rake')!
    expect(alloy.text).toContain('alloy steel, quenched and tempered to about 300 HB wants')
  })
})

describe('a break-through', () => {
  it('is told with the size of the opening and what clears it, solved and not guessed', () => {
    // Bore 33 deep, drill point: its tip stands well into the slot, so that the limit less the figure (3 mm) is no remedy.
    const design = headFrom('parameters', ['depth: 24', 'depth: 31'], ['bottom: flat', 'bottom: drill-point'])
    const finding = judged(flyCutterHead, design, true).find((f) => f.id === 'wall:slot/bore')!
    expect(finding.level).toBe('stop')
    expect(finding.text).toMatch(/opening of [\d.]+ mm × [\d.]+ mm × [\d.]+ mm/)
    const { remedy } = finding
    expect(remedy?.path).toBe('bore.depth')
    // By hand: (h − b − r/tan 59°)·cos a − d ≥ 3 gives b ≤ 41 − 10·0.60086 − 12.5/cos 7° = 22.40.
    expect(remedy!.to).toBeLessThanOrEqual(22.398)
    expect(remedy!.to).toBeGreaterThan(22.398 - 0.3 * (31 - 22.398))
    expect(31 - 3).toBeGreaterThan(remedy!.to as number)
  })
})

/** Rows above that no single change clears. */
const noSingleChange: readonly string[] = [
  // The bit that reaches so far is no longer under its second screw.
  'a swing short of the work',
]

everyFindingAbove(
  mistakes.map(([name, changes, id]) => [name, changes, id]),
  noSingleChange,
)

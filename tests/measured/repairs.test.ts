import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { asMade } from '../../src/measured/as-made.ts'
import { headFrom } from '../families/random-heads.ts'

type Head = ReturnType<typeof headFrom>
type Size = readonly [part: string, id: string, mm: number]

const head = headFrom('parameters')
const made = (design: Head, ...sizes: readonly Size[]) => {
  const values = sizes.map(([part, id, value]) => ({ part, id, value, where: { file: 'sheet' } }))
  const found = asMade(flyCutterHead, design, values)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return found.value
}
const repair = (design: Head, id: string, ...sizes: readonly Size[]) =>
  made(design, ...sizes).repairs.find((r) => r.id === id)!

/** A head whose spigot came out loose: something else has to hold it. */
const loose: readonly Size[] = [
  ['body', 'bore.diameter', 20.02],
  ['arbor', 'spigot.diameter', 20.01],
]

describe('a joint as it was made, by hand: bore 20.018, spigot 20.034', () => {
  it('carries μ·π·d²·L·p/2 of what smoothing leaves of 16 µm', () => {
    const m = made(head, ['body', 'bore.diameter', 20.018], ['arbor', 'spigot.diameter', 20.034])
    const figure = (id: string) => m.changed.find((c) => c.made?.id === id)!.made!.value
    // 0.8 of both Rz of 6.3 µm goes: 5.92 µm are left. Hub 46 across flats round a solid spigot of the same steel, E 200 GPa:
    // p = δ·E·(D² − d²)/(2·d·D²); dry and shrunk on, μ = 0.15.
    const [d, hub] = [20.018, 46]
    const left = 0.016 - (0.8 * 2 * 6.3) / 1000
    const pressure = (left * 200_000 * (hub ** 2 - d ** 2)) / (2 * d * hub ** 2)
    expect(figure('fit.pressure.least')).toBeCloseTo(pressure, 2)
    const length = m.changed.find((c) => c.made?.id === 'fit.length')?.made?.value ?? lengthOf(m.design)
    expect(figure('fit.capacity.torque')).toBeCloseTo((0.15 * Math.PI * d ** 2 * length * pressure) / 2, -2)
  })

  const lengthOf = (design: Head) => flyCutterHead.figures.find((f) => f.id === 'fit.length')!.of(design)!
})

describe('use as it is', () => {
  it('with a lower never-exceed speed where the tool came out less balanced: it falls with the root of the unbalance', () => {
    const m = made(head, ['body', 'step.wall', 8])
    const of = (id: string, design: Head) => flyCutterHead.figures.find((f) => f.id === id)!.of(design)!
    const ratio = Math.sqrt(of('balance.unbalance', head) / of('balance.unbalance', m.design))
    const turns = (rad: number) => Math.round((rad * 30) / Math.PI)
    const [before, now] = [of('speed.never-exceed', head), of('speed.never-exceed', m.design)].map(turns) as [
      number,
      number,
    ]
    // Both go down to whole turns.
    expect(Math.abs(now - before * ratio)).toBeLessThanOrEqual(1)
    expect(now).toBeLessThan(before)
    const as = m.repairs[0]!
    expect(as).toMatchObject({ id: 'as-it-is', would: 'do' })
    expect(as.says).toBe(`Stamp it with the lower never-exceed speed: ${now} rev/min, not ${before} rev/min.`)
    expect(as.cautions[0]).toContain('Mend the figure on the drawing')
  })

  it('with a lower speed even where that is a single turn less: it is a safety limit', () => {
    expect(repair(head, 'as-it-is', ['body', 'slot.depth', 10.5]).says).toContain('1094 rev/min, not 1095 rev/min')
  })

  it('knows what has become worse: a joint that carries the cut less often than wanted', () => {
    const as = repair(head, 'as-it-is', ['body', 'bore.diameter', 20.018], ['arbor', 'spigot.diameter', 20.031])
    expect(as.would).toBe('do')
    expect(as.cautions.join(' ')).toMatch(/joint/)
  })
})

describe('a way to hold a loose head would do, or not, by what it carries and what it needs', () => {
  const verdict = (id: string, ...changes: readonly (readonly [string, string])[]) =>
    repair(headFrom('parameters', ...changes.map(([a, b]): [string, string] => [a, b])), id, ...loose)

  it('a fresh arbor: turned to the bore as it is', () => {
    expect(verdict('fresh-arbor').would).toBe('do')
  })

  it('a pin: of 5 mm, and not of 2 mm, whose two sections carry 4/25 of that', () => {
    const [thick, thin] = [verdict('cross-pin'), verdict('cross-pin', ['catch: pin', 'catch: pin\n  pin-diameter: 2'])]
    expect([thick.would, thin.would]).toEqual(['do', 'not do'])
    const carried = (says: string) => Number(/carries ([\d.]+) N·m/.exec(says)![1])
    expect(carried(thin.says) / carried(thick.says)).toBeCloseTo(4 / 25, 2)
  })

  it('a key: beside a catch that keeps the head on, and not alone', () => {
    expect(verdict('keyed')).toMatchObject({
      would: 'do',
      says: expect.stringContaining('Along the axis it holds nothing'),
    })
    expect(verdict('keyed', ['catch: pin', 'catch: none'])).toMatchObject({
      would: 'not do',
      says: expect.stringContaining('does not keep it on'),
    })
  })

  it('a weld: of plain low-carbon steel, and not of one made for free cutting', () => {
    expect(verdict('weld').would).toBe('not do')
    const plain = verdict(
      'weld',
      ['material: steel-12l14', 'material: steel-1018'],
      ['material: steel-1045', 'material: steel-1018'],
    )
    expect(plain.would).toBe('do')
    expect(plain.cautions.join(' ')).toMatch(/last resort.*phosgene/)
  })

  it('a thread: against the shoulder of its shank', () => {
    expect(verdict('threaded').would).toBe('do')
  })

  it('a sleeve: where the hub is thick enough for a larger bore, and not where the slot is in the way', () => {
    expect(verdict('sleeve').would).toBe('do')
    const deep = repair(head, 'sleeve', ...loose, ['body', 'slot.depth', 14.6])
    expect(deep.would).toBe('not do')
  })

  it('screw and washer: beside a joint, never instead of one', () => {
    expect(verdict('screw-and-washer').would).toBe('not do')
  })

  it('what carries the cut and not a jam says so', () => {
    const weak = verdict('cross-pin', ['catch: pin', 'catch: pin\n  pin-diameter: 2.5'])
    expect(weak.would).toBe('do')
    expect(weak.cautions[0]).toMatch(
      /^Should the bit jam, the spindle gives [\d.]+ N·m: it gives before the motor does\.$/,
    )
    expect(verdict('cross-pin').cautions.join(' ')).not.toContain('jam')
  })
})

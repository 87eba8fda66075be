import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { figuresOf } from '../../src/figures/figure.ts'
import { asMade } from '../../src/measured/as-made.ts'
import { askedLines, inspectionSheet } from '../../src/measured/inspection-sheet.ts'
import type { MeasuredValue } from '../../src/measured/measured-value.ts'
import { readValues } from '../../src/measured/read-values.ts'
import { asMadeReport, asMadeSchema } from '../../src/report/as-made.ts'
import { asMadeHtml, asMadeMarkdown } from '../../src/report/as-made-page.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'

const head = headFrom('parameters')
const value = (part: string, id: string, mm: number): MeasuredValue => ({
  part,
  id,
  value: mm,
  where: { file: 'sheet' },
})
const made = (...values: MeasuredValue[]) => {
  const found = asMade(flyCutterHead, head, values)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return found.value
}
const bore = (mm: number) => value('body', 'bore.diameter', mm)
const spigot = (mm: number) => value('arbor', 'spigot.diameter', mm)
const repair = (m: ReturnType<typeof made>, id: string) => m.repairs.find((r) => r.id === id)!
const figure = (m: ReturnType<typeof made>, id: string) => m.changed.find((c) => (c.made ?? c.designed)!.id === id)

describe('inspection.csv', () => {
  const sheet = inspectionSheet(askedLines(flyCutterHead.measuring(head)), 'a1b2c3d4', 'mm')

  it('asks for every named size of head, arbor and bit once, walls in the metal aside, with limits and a way to measure it', () => {
    const rows = sheet.trim().split('\r\n').slice(1)
    const wanted = ['body', 'arbor', 'bit'].flatMap((id) => {
      const part = head.part(id)
      return [...part.stock, ...part.cuts].flatMap((f) =>
        f.dimensions.filter((d) => !d.id.startsWith('bore.wall-')).map((d) => `${id},${d.id}`),
      )
    })
    expect(rows.map((r) => r.split(',').slice(1, 3).join(','))).toEqual(wanted)
    for (const row of rows) expect(row.split(',')[4], row).not.toBe('')
    expect(rows.every((r) => r.startsWith('a1b2c3d4,') && r.endsWith(','))).toBe(true)
  })

  it('filled with its own nominal figures is read back as a tool that is as designed', () => {
    const rows = sheet.trim().split('\r\n')
    const cells = (row: string) =>
      [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((m) => m[1] ?? m[2] ?? '')
    const filled = rows.map((row, i) => (i === 0 ? row : `${row}${cells(row)[6]}`)).join('\r\n')
    const sizes = askedLines(flyCutterHead.measuring(head))
    const read = readValues(filled, 'sheet.csv', { sizes, units: 'mm', revision: 'a1b2c3d4', anyRevision: false })
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    // The spigot's nominal size is the bore's, which is no size to turn it to.
    const m = made(...read.value.filter((v) => v.id !== 'spigot.diameter'))
    expect(m.lines.filter((l) => l.verdict !== 'good' && l.verdict !== 'no limits')).toEqual([])
    expect(m.findings.new).toEqual([])
    expect(Math.abs(m.design.swing - head.swing)).toBeLessThan(2e-3)
  })

  it('gives what the tool shows where the size itself cannot be reached: over a pin in the screw hole', () => {
    // The wall of 9 mm begins at the slot, 2.4 mm from the axis: its outermost corner. There the hexagon of 46 ends
    // (46 − 2.4)/√3 from the axis, along the slope of 7° (46 − 2.4)/√3/cos 7°; the pin is the 5 mm tap drill.
    const line = askedLines(flyCutterHead.measuring(head)).find((l) => l.id === 'screw-hole-1.x')!
    const end = (46 - 2.4) / Math.sqrt(3) / Math.cos((7 * Math.PI) / 180)
    expect(line.nominal).toBeCloseTo(end - head.layout.screws.xs[0]! + 2.5, 9)
    expect(line.to! - line.from!).toBeCloseTo(0.4, 9)
  })
})

describe('a tool as it was made', () => {
  it('is judged size by size, to the very limit', () => {
    const verdict = (mm: number) => made(value('body', 'slot.depth', mm)).lines[0]!.verdict
    expect([9.4, 9.6, 9.61, 9.39].map(verdict)).toEqual(['good', 'good', 'too large', 'too small'])
    expect(made(value('body', 'slot.depth', 9.64)).lines[0]!.beyond).toBeCloseTo(0.04, 9)
  })

  it('takes measured values for nominal ones: by hand, a slot 0.34 mm too deep leaves that much less wall and moves the tip', () => {
    const m = made(value('body', 'slot.depth', 9.84))
    const wall = figure(m, 'wall.slot-bore')!
    // Bore and slot floor: the least metal lies at the rim of the bore, square to the sloping floor.
    expect(wall.designed!.value - wall.made!.value).toBeCloseTo(0.34, 6)
    expect(m.design.layout.bit.tip[2] - head.layout.bit.tip[2]).toBeCloseTo(0.34 * Math.cos((7 * Math.PI) / 180), 9)
  })

  it('judges the spigot by the bore as measured, and the fit by both: bore 20.031, spigot 20.012', () => {
    const m = made(bore(20.031), spigot(20.012))
    const line = m.lines.find((l) => l.asked.id === 'spigot.diameter')!
    // Interference of 0.0015 ± 0.0003 of the diameter: 0.0240 to 0.0361 over 20.031, rounded inwards to 0.001.
    expect(line.asked.from).toBeCloseTo(20.056, 9)
    expect(line.asked.to).toBeCloseTo(20.067, 9)
    expect(line.verdict).toBe('too small')
    expect(line.beyond).toBeCloseTo(0.044, 9)
    expect(m.design.layout.fit!.interference.least).toBeCloseTo(-0.019, 9)
    expect(m.findings.new.map((f) => [f.id, f.level])).toContainEqual(['fit-grip:none', 'stop'])
  })

  it('judges the slot by the bit as measured: 10.12 is right for a bit of 10.08, and too wide for one of 10', () => {
    const slot = { part: 'body', id: 'slot.width', value: 10.12, where: { file: 'sheet.csv' } }
    const bit = (value: number) => ({ part: 'bit', id: 'bit.width', value, where: { file: 'sheet.csv' } })
    const verdict = (...values: Parameters<typeof asMade>[2][number][]) =>
      made(...values).lines.find((l) => l.asked.id === 'slot.width')!.verdict
    expect(verdict(slot, bit(10.08))).toBe('good')
    expect(verdict(slot, bit(10))).toBe('too large')
    expect(verdict(slot)).toBe('too large')
    // Not milled yet, it will be milled to the bit.
    expect(made(bit(10.08)).design.layout.slot.width).toBeCloseTo(10.12, 9)
  })

  it('knows that heat makes no interference, and gives the size of a fresh arbor to the bore as measured', () => {
    const m = made(bore(20.031), spigot(20.012))
    expect(repair(m, 'as-it-is').would).toBe('not do')
    expect(repair(m, 'heat')).toMatchObject({
      would: 'not do',
      says: expect.stringContaining('Heat makes no interference'),
    })
    expect(repair(m, 'fresh-arbor')).toMatchObject({
      would: 'do',
      says: expect.stringContaining('20.056 mm to 20.067 mm'),
    })
    expect(m.repairs.map((r) => r.id)).toEqual([
      'as-it-is',
      'heat',
      'fresh-arbor',
      'retaining-compound',
      'cross-pin',
      'sleeve',
      'screw-and-washer',
      'threaded',
      'keyed',
      'weld',
    ])
  })

  it('takes compound in the clearance that is there, or has the spigot turned to one that it fills', () => {
    const compound = (...of: Parameters<typeof made>) => repair(made(...of), 'retaining-compound')
    expect(compound(bore(20.06), spigot(20))).toMatchObject({
      would: 'do',
      says: expect.stringContaining('The spigot as it is, 0.06 mm under the bore'),
    })
    expect(compound(bore(20.031), spigot(20.012)).says).toContain('Spigot turned 0.02 mm to 0.1 mm under the bore')
  })

  it('has its bore behind it: a spigot not turned yet is turned to the bore as measured, not to a zone round it', () => {
    // (0.0015 ± 0.0003) · 20.03 over 20.03, rounded inwards: by hand 20.0540 to 20.0661.
    const m = made(bore(20.03))
    expect(repair(m, 'fresh-arbor').says).toContain('20.055 mm to 20.066 mm for a bore of 20.03 mm')
    const { bore: b, spigot: s, interference } = m.design.layout.fit!
    expect([b.smallest, b.largest]).toEqual([20.03, 20.03])
    expect([s.smallest, s.largest].map((mm) => Number(mm.toFixed(6)))).toEqual([20.055, 20.066])
    expect(interference.least).toBeCloseTo(0.025, 9)
    expect(interference.most).toBeCloseTo(0.036, 9)
    expect(repair(made(value('body', 'slot.depth', 9.5)), 'fresh-arbor').says).toContain(
      '0.024 mm to 0.036 mm over it, once it is measured',
    )
  })

  it('takes a thread that the bore leaves metal for: 20 mm is too wide for M20, and the drill of M24 is 21 mm', () => {
    expect(repair(made(bore(20.03)), 'threaded').says).toMatch(/^M24, right-hand.*through a hole of 21 mm/)
  })

  it('whose step wall came out thin is helped by a gentler screw, and by nothing that mends the joint', () => {
    const m = made(value('body', 'step.wall', 4.4), value('body', 'slot.depth', 12))
    const change = repair(m, 'change')
    expect(change.would).toBe('do')
    expect(change.says).toMatch(/^Set screws\.tightening-torque to [\d.]+ N·m/)
    for (const r of m.repairs) if (!['change', 'as-it-is'].includes(r.id)) expect(r.would, r.id).not.toBe('do')
    expect(repair(m, 'fresh-arbor').cautions[0]).toContain('mends the joint alone')
  })

  it('that nothing mends is scrap: a slot milled into the bore', () => {
    const m = made(value('body', 'slot.depth', 19))
    expect(m.repairs.filter((r) => r.would === 'do').map((r) => r.id)).toEqual(['make-again'])
  })

  it('is not asked again whether its bar and its blank can be bought', () => {
    const m = made(value('body', 'stock.size', 45.93), value('bit', 'bit.width', 10.02))
    expect(m.findings.new.filter((f) => f.id.startsWith('stock-size'))).toEqual([])
  })

  it('leaves no size that was asked for without a meaning: it moves a figure, or has words of its own beyond its limits', () => {
    for (const shank of ['straight-20', 'morse-3', 'r8']) {
      const other: [string, string][] = shank === 'straight-20' ? [] : [['shank: straight-20', `shank: ${shank}`]]
      const design = headFrom('parameters', ...other)
      const figures = (d: typeof design) => JSON.stringify(figuresOf(flyCutterHead.figures, d))
      for (const asked of askedLines(flyCutterHead.measuring(design))) {
        if (asked.measuring.dimension.kind === 'thread' || asked.to === undefined) continue
        const reading = asked.to + 0.05 * Math.abs(asked.to)
        const found = asMade(flyCutterHead, design, [value(asked.part, asked.id, reading)])
        if (!found.ok) continue
        const said = [repair(found.value, 'as-it-is')].map((r) => r.says + r.cautions.join(' ')).join('')
        const moves = figures(found.value.design) !== figures(design)
        expect(moves || /Shank|taper|tap drill/i.test(said), `${shank}: ${asked.part} ${asked.id}`).toBe(true)
      }
    }
  })

  it('judges a tap drill by the thread it leaves: 76.98·(6 − drill)/1 % of M6', () => {
    const drilled = (mm: number) => repair(made(value('body', 'screw-hole-1.tap-drill', mm)), 'as-it-is')
    expect(drilled(5.6)).toMatchObject({ would: 'not do', says: expect.stringContaining('leaves 31 % of the thread') })
    expect(drilled(5.3)).toMatchObject({ would: 'do' })
    expect(drilled(5.3).cautions.join(' ')).toContain('leaves 54 % of the thread')
    expect(drilled(4.7).cautions.join(' ')).toContain('open the hole')
    expect(drilled(5.05).cautions).toEqual([])
  })

  it('tells what a shank beyond its limits means, though no figure rests on it', () => {
    const shank = (mm: number) => repair(made(value('arbor', 'shank.diameter', mm)), 'as-it-is')
    expect(shank(19.9).cautions.join(' ')).toContain('closes on it at one end only')
    expect(shank(20.1)).toMatchObject({ would: 'not do', says: expect.stringContaining('0.1 mm too large') })
    expect(shank(20).cautions).toEqual([])
  })

  it('as designed needs nothing', () => {
    const m = made(bore(20.01), spigot(20.04))
    expect(m.lines.map((l) => l.verdict)).toEqual(['good', 'good'])
    expect(repair(m, 'as-it-is').would).toBe('do')
  })

  it('takes the face from whichever of angle and side heights was measured', () => {
    const rise = (head.layout.across / 2) * Math.tan(head.layout.faceAngle)
    // The long side is read square to the face.
    const cos = Math.cos(head.layout.faceAngle)
    const both = made(
      value('body', 'face.long-side', (41.5 + rise) * cos),
      value('body', 'face.short-side', 41.5 - rise),
    )
    expect(both.design.layout.depthOnAxis).toBeCloseTo(41.5, 9)
    expect(both.design.layout.faceAngle).toBeCloseTo(head.layout.faceAngle, 9)
    const steep = made(value('body', 'face.angle', (8 * Math.PI) / 180))
    const corner =
      steep.design.layout.depthOnAxis + (steep.design.layout.across / 2) * Math.tan(steep.design.layout.faceAngle)
    expect(corner).toBeCloseTo(41 + rise, 9)
  })

  it('refuses a slot that is narrower than its bit, where that value stands', () => {
    const found = asMade(flyCutterHead, head, [value('body', 'slot.width', 9.98)])
    expect(found.ok ? [] : found.problems).toMatchObject([
      { code: 'contradiction', where: { file: 'sheet', path: 'body slot.width' } },
    ])
  })

  it('is told in a report that JSON, Markdown and HTML have alike', () => {
    const report = asMadeReport(made(bore(20.031), spigot(20.012)), head.parameters, {
      revision: 'a1b2c3d4',
      asMade: 'ffff0000',
    })
    expect(asMadeSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report)
    for (const page of [asMadeMarkdown(report), asMadeHtml(report)]) {
      expect(page).toContain('TOO SMALL by 0.044 mm')
      expect(page).toContain('A fresh arbor, turned to the bore as measured')
      expect(page).not.toMatch(/NaN|undefined|null/)
    }
  })

  it('can be worked out for any head of which every size came out a little off, up or down', () => {
    forRandomHeads(8, (design) => {
      for (const off of [0.004, -0.004]) {
        const values = askedLines(flyCutterHead.measuring(design))
          .filter((l) => l.from !== undefined && l.kind === 'length')
          .map((l): MeasuredValue => ({ part: l.part, id: l.id, value: l.nominal + off, where: { file: 'sheet' } }))
        const found = asMade(flyCutterHead, design, values)
        if (!found.ok) {
          expect(found.problems.map((p) => p.code)).toEqual(['contradiction'])
          continue
        }
        const report = asMadeReport(found.value, design.parameters, { revision: 'a1b2c3d4', asMade: 'ffff0000' })
        expect(JSON.stringify(report)).not.toMatch(/null,"made":null/)
      }
    })
  })
})

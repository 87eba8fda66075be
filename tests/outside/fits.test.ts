import { describe, expect, it } from 'vitest'
import { classFit } from '../../src/mechanics/fit/class-fit.ts'
import { isoFit } from '../../src/mechanics/fit/iso-fit.ts'
import type { Limits } from '../../src/mechanics/fit/limits.ts'
import { zoneLimits } from '../../src/mechanics/fit/zone.ts'
import { loadTables } from '../../src/package/load-tables.ts'
import { cell, figure, readReference } from './reference/read-reference.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error('no tables')
const { iso286, ansiB41 } = loaded.value

const inch = 25.4

const micrometres = (nominal: number, { smallest, largest }: Limits) =>
  [smallest, largest].map((size) => Number(((size - nominal) * 1000).toFixed(3)))

const zone = (code: string, of: 'hole' | 'shaft', nominal: number) => {
  const limits = zoneLimits(code, of, nominal, iso286)
  if (!limits.ok) throw new Error(JSON.stringify(limits.problems))
  return micrometres(nominal, limits.value)
}

describe('ISO 286 codes in worked examples: limits and interference in µm, clearance negative', () => {
  it.each([
    ['50H7/s6', 50, [0, 25], [43, 59], 18, 59, 'Design of Machine Elements, example 3.3 p.70'],
    ['40H7/s6', 40, [0, 25], [43, 59], 18, 59, 'Mechanical Engineering Design 8th ed., solutions, problem 3-64'],
    ['40H7/u6', 40, [0, 25], [60, 76], 35, 76, 'Mechanical Engineering Design 8th ed., solutions, problem 3-66'],
    ['25H7/r6', 25, [0, 21], [28, 41], 7, 41, 'Machine Design, example 4-2 p.112; letter inferred from the limits'],
    ['50H8/g7', 50, [0, 39], [-34, -9], -73, -9, 'Machine Design, example 4-3 p.113'],
    ['25H7/s6', 25, [0, 21], [35, 48], 14, 48, 'public data set of DIN EN ISO 286'],
    ['50H7/p6', 50, [0, 25], [26, 42], 1, 42, 'public data set of DIN EN ISO 286'],
  ])('%s', (code, size, hole, shaft, least, most, _source) => {
    const fit = isoFit(code.slice(String(size).length), size, iso286)
    if (!fit.ok) throw new Error(JSON.stringify(fit.problems))
    expect(micrometres(size, fit.value.bore)).toEqual(hole)
    expect(micrometres(size, fit.value.spigot)).toEqual(shaft)
    expect(fit.value.interference.least * 1000).toBeCloseTo(least, 6)
    expect(fit.value.interference.most * 1000).toBeCloseTo(most, 6)
  })

  // Test cases of the public data set's repository.
  it.each([
    ['H7', 'hole', [0, 25]],
    ['m6', 'shaft', [9, 25]],
    ['k8', 'shaft', [0, 39]],
    ['js8', 'shaft', [-19.5, 19.5]],
  ] as const)('45%s', (code, of, limits) => {
    expect(zone(code, of, 45)).toEqual(limits)
  })
})

describe('every zone of the public data set of DIN EN ISO 286', () => {
  const grades = [5, 6, 7, 8, 9, 10, 11]
  const widths = readReference('iso286-it')

  it.each(readReference('iso286-deviations'))('shafts and holes over $over_mm up to $to_mm', (reference) => {
    const widthRow = widths.find(({ over_mm, to_mm }) => over_mm === reference.over_mm && to_mm === reference.to_mm)
    if (widthRow === undefined) throw new Error('no grades')
    const [over, upTo] = [figure(reference, 'over_mm'), figure(reference, 'to_mm')]
    // The upper end belongs to the step, the lower end does not.
    for (const nominal of [over + 0.001, (over + upTo) / 2, upTo]) {
      for (const grade of grades) {
        const width = figure(widthRow, `IT${grade}`)
        expect(zone(`H${grade}`, 'hole', nominal)).toEqual([0, width])
        expect(zone(`js${grade}`, 'shaft', nominal)).toEqual([-width / 2, width / 2])
        expect(zone(`JS${grade}`, 'hole', nominal)).toEqual([-width / 2, width / 2])
        for (const letter of ['f', 'g', 'h']) {
          const upper = figure(reference, letter)
          expect(zone(`${letter}${grade}`, 'shaft', nominal)).toEqual([upper - width, upper])
        }
        for (const letter of ['F', 'G']) {
          const lower = -figure(reference, letter.toLowerCase())
          expect(zone(`${letter}${grade}`, 'hole', nominal)).toEqual([lower, lower + width])
        }
        for (const letter of ['m', 'n', 'p', 'r', 's', 'u', 'x']) {
          const lower = figure(reference, letter)
          expect(zone(`${letter}${grade}`, 'shaft', nominal)).toEqual([lower, lower + width])
        }
        const k = grade <= 7 ? figure(reference, 'k_IT4to7') : 0
        expect(zone(`k${grade}`, 'shaft', nominal)).toEqual([k, k + width])
        const t = zoneLimits(`t${grade}`, 'shaft', nominal, iso286)
        if (cell(reference, 't') === '') {
          expect(t.ok ? [] : t.problems.map(({ code, remedy }) => [code, remedy])).toEqual([
            ['not-in-table', `write u${grade}`],
          ])
        } else {
          expect(zone(`t${grade}`, 'shaft', nominal)).toEqual([figure(reference, 't'), figure(reference, 't') + width])
        }
      }
    }
  })
})

describe('holes that press on a shaft of nominal size, ISO 286-2 from memory, µm', () => {
  it.each([
    ['K6', 25, [-11, 2]],
    ['K7', 25, [-15, 6]],
    ['K8', 25, [-23, 10]],
    ['M6', 25, [-17, -4]],
    ['M7', 25, [-21, 0]],
    ['M8', 25, [-29, 4]],
    ['N6', 25, [-24, -11]],
    ['N7', 25, [-28, -7]],
    ['N8', 25, [-36, -3]],
    ['N9', 25, [-52, 0]],
    ['P6', 25, [-31, -18]],
    ['P7', 25, [-35, -14]],
    ['P8', 25, [-55, -22]],
    ['P9', 25, [-74, -22]],
    ['R7', 25, [-41, -20]],
    ['S7', 25, [-48, -27]],
    ['T7', 25, [-54, -33]],
    ['U7', 25, [-61, -40]],
    ['K7', 3, [-10, 0]],
    ['M7', 3, [-12, -2]],
    ['N7', 3, [-14, -4]],
    ['P7', 3, [-16, -6]],
    ['K7', 50, [-18, 7]],
    ['N7', 50, [-33, -8]],
    ['P7', 50, [-42, -17]],
    ['S7', 60, [-72, -42]],
    ['P7', 100, [-59, -24]],
  ])('%s at %d mm', (code, size, limits) => {
    expect(zone(code, 'hole', size)).toEqual(limits)
  })
})

describe('ANSI B4.1 classes', () => {
  const thou = (nominal: number, { smallest, largest }: Limits) =>
    [smallest, largest].map((size) => Number((((size - nominal) / inch) * 1000).toFixed(2)))

  it.each(readReference('ansi-b4-1'))('$class over $over_in up to $to_in in', (reference) => {
    const [over, upTo] = [figure(reference, 'over_in'), figure(reference, 'to_in')]
    for (const size of [over + 0.0001, (over + upTo) / 2, upTo]) {
      const fit = classFit(cell(reference, 'class'), size * inch, ansiB41)
      if (!fit.ok) throw new Error(JSON.stringify(fit.problems))
      const { bore, spigot, interference } = fit.value
      expect(thou(size * inch, bore)).toEqual([figure(reference, 'hole_lo'), figure(reference, 'hole_hi')])
      expect(thou(size * inch, spigot)).toEqual([figure(reference, 'shaft_lo'), figure(reference, 'shaft_hi')])
      // The table prints clearance; a thousandth is 25.4 µm, and limits come out to the nanometre.
      expect((interference.most / inch) * 1000).toBeCloseTo(-figure(reference, 'fit_min'), 3)
      expect((interference.least / inch) * 1000).toBeCloseTo(-figure(reference, 'fit_max'), 3)
    }
  })

  // Size in inches; interference in thousandths, clearance negative.
  it.each([
    ['FN2', 7 / 8, [0, 0.8], [1.4, 1.9], 0.6, 1.9, "Machinery's Handbook 27th ed. p.663 Table 11"],
    ['FN1', 7 / 8, [0, 0.5], [0.7, 1.1], 0.2, 1.1, "Machinery's Handbook 27th ed. p.663 Table 11"],
    ['LN2', 1, [0, 0.8], [0.8, 1.3], 0, 1.3, "Machinery's Handbook 31st ed. p.660 Table 12"],
    ['LC2', 1, [0, 0.8], [-0.5, 0], -1.3, 0, 'ANSI B4.1, from memory'],
  ])('%s at %d in', (name, size, hole, shaft, least, most, _source) => {
    const fit = classFit(name, size * inch, ansiB41)
    if (!fit.ok) throw new Error(JSON.stringify(fit.problems))
    expect(thou(size * inch, fit.value.bore)).toEqual(hole)
    expect(thou(size * inch, fit.value.spigot)).toEqual(shaft)
    expect((fit.value.interference.least / inch) * 1000).toBeCloseTo(least, 4)
    expect((fit.value.interference.most / inch) * 1000).toBeCloseTo(most, 4)
  })

  it('FN3 is not defined up to 0.95 in, and FN2 is named instead', () => {
    for (const [size, defined] of [
      [0.95, false],
      [0.951, true],
    ] as const) {
      const fit = classFit('FN3', size * inch, ansiB41)
      expect(fit.ok).toBe(defined)
      if (!fit.ok) expect(fit.problems[0]?.remedy).toBe('write FN2')
    }
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Problem, Result } from '../../../src/input/problem.ts'
import { classFit } from '../../../src/mechanics/fit/class-fit.ts'
import { isoFit } from '../../../src/mechanics/fit/iso-fit.ts'
import { sizeStep } from '../../../src/mechanics/fit/size-step-of.ts'
import { readZone, zoneDeviations, zoneLimits, zoneName } from '../../../src/mechanics/fit/zone.ts'
import { loadTables } from '../../../src/package/load-tables.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error('no tables')
const { iso286, ansiB41 } = loaded.value
const inch = 25.4

function problemsOf(result: Result<unknown>): readonly Problem[] {
  if (result.ok) throw new Error('was accepted')
  return result.problems
}

const said = (result: Result<unknown>) => problemsOf(result).map(({ code, remedy }) => [code, remedy])

describe('a zone', () => {
  it.each([
    ['H7', 'hole'],
    ['JS6', 'hole'],
    ['F8', 'hole'],
    ['s6', 'shaft'],
    ['js5', 'shaft'],
    ['x11', 'shaft'],
    [' h6 ', 'shaft'],
  ] as const)('%j is a %s', (text, of) => {
    const zone = readZone(text, of)
    expect(zone.ok && zoneName(zone.value)).toBe(text.trim())
  })

  it.each([
    ['h7', 'hole', [['unknown-choice', 'write H7']]],
    ['Js7', 'hole', [['unknown-choice', 'write JS7']]],
    ['S6', 'shaft', [['unknown-choice', 'write s6']]],
    // A letter of the standard that the tables do not hold, or a letter that the standard does not have.
    ['e8', 'shaft', [['not-in-table', 'write f8']]],
    ['j6', 'shaft', [['not-in-table', 'write js6']]],
    ['v6', 'shaft', [['not-in-table', 'write x6']]],
    ['ZC7', 'hole', [['not-in-table', 'write X7']]],
    ['D10', 'hole', [['not-in-table', 'write F10']]],
    ['o6', 'shaft', [['unknown-choice', 'write p6']]],
    ['q6', 'shaft', [['unknown-choice', 'write r6']]],
    ['HH7', 'hole', [['unknown-choice', 'write H7']]],
    ['H4', 'hole', [['not-in-table', 'write H5']]],
    ['H0', 'hole', [['not-in-table', 'write H5']]],
    ['s12', 'shaft', [['not-in-table', 'write s11']]],
    ['H07', 'hole', [['not-in-table', 'write H7']]],
    [
      'w3',
      'shaft',
      [
        ['unknown-choice', 'write x5'],
        ['not-in-table', 'write x5'],
      ],
    ],
    ['', 'hole', [['wrong-kind', undefined]]],
    ['H', 'hole', [['wrong-kind', undefined]]],
    ['7H', 'hole', [['wrong-kind', undefined]]],
    [
      'FN2',
      'hole',
      [
        ['unknown-choice', 'write F5'],
        ['not-in-table', 'write F5'],
      ],
    ],
    ['H7.5', 'hole', [['wrong-kind', undefined]]],
    ['__proto__', 'shaft', [['wrong-kind', undefined]]],
    ['s-6', 'shaft', [['wrong-kind', 'write s6']]],
  ] as const)('%j is no %s', (text, of, expected) => {
    expect(said(readZone(text, of))).toEqual(expected)
  })
})

describe('a zone that the standard or the table does not have', () => {
  const refused = (code: string, of: 'hole' | 'shaft', size: number) => said(zoneLimits(code, of, size, iso286))

  it('t is not defined up to 24 mm: u is named', () => {
    expect(refused('t6', 'shaft', 24)).toEqual([['not-in-table', 'write u6']])
    expect(refused('T7', 'hole', 20)).toEqual([['not-in-table', 'write U7']])
    expect(zoneLimits('t6', 'shaft', 24.01, iso286).ok).toBe(true)
  })

  it('holes K stop at grade 8, and holes K to X begin at grade 6, whose neighbour the table holds', () => {
    expect(refused('K9', 'hole', 25)).toEqual([['not-in-table', 'write K8']])
    expect(refused('P5', 'hole', 25)).toEqual([['not-in-table', 'write P6']])
    expect(refused('K5', 'hole', 25)).toEqual([['not-in-table', 'write K6']])
    // Up to 3 mm the rule takes no finer grade.
    expect(zoneLimits('P5', 'hole', 3, iso286)).toEqual({ ok: true, value: { smallest: 2.99, largest: 2.994 } })
  })

  it('no size is carried on past the table', () => {
    for (const size of [0, -5, 180.001, 500]) {
      const [problem, ...more] = problemsOf(zoneLimits('H7', 'hole', size, iso286))
      expect(more).toEqual([])
      expect([problem?.code, problem?.where.path]).toEqual(['out-of-range', 'nominal'])
      expect(problem?.allowed).toBe('over 0 mm up to 180 mm, which the table holds')
    }
    expect(zoneLimits('H7', 'hole', 180, iso286).ok).toBe(true)
    expect(() => zoneLimits('H7', 'hole', Number.NaN, iso286)).toThrow(RangeError)
    expect(() => sizeStep([], 25, 'nominal')).toThrow(RangeError)
  })

  it('30 mm belongs to 18 to 30 (24 to 30 for the letters that are split), 30.01 mm to the next', () => {
    const u = (size: number) => {
      const zone = readZone('u6', 'shaft')
      if (!zone.ok) throw new Error('no zone')
      const found = zoneDeviations(zone.value, size, iso286)
      return found.ok ? Math.round(found.value.lower * 1000) : undefined
    }
    expect([24, 24.01, 30, 30.01].map(u)).toEqual([41, 48, 48, 60])
    // 0.71 in is a bound of the inch table whichever way it was multiplied out.
    for (const size of [0.71 * inch, 18.034, 18.034 + 1e-13]) {
      const fit = classFit('FN2', size, ansiB41)
      expect(fit.ok && ((fit.value.spigot.largest - size) / inch) * 1000).toBeCloseTo(1.6, 3)
    }
  })
})

describe('a fit code', () => {
  it.each([
    ['H7s6', 'write H7/s6'],
    ['H7-s6', 'write H7/s6'],
    ['H7 s6', 'write H7/s6'],
    ['25H7/s6', 'write H7/s6'],
    ['⌀25 mm H7/s6', 'write H7/s6'],
    ['s6/H7', 'write H7/s6'],
    ['H7', 'write hole and shaft, such as H7/s6'],
    ['', 'write hole and shaft, such as H7/s6'],
    ['H7/s6/x7', 'write hole and shaft, such as H7/s6'],
    ['tight', 'write hole and shaft, such as H7/s6'],
    ['25', 'write hole and shaft, such as H7/s6'],
  ])('%j is not one: %s', (code, remedy) => {
    expect(said(isoFit(code, 25, iso286))).toEqual([['wrong-kind', remedy]])
  })

  it('reads spaces round the slash', () => {
    const fit = isoFit(' H7 / s6 ', 25, iso286)
    expect(fit.ok && fit.value.name).toBe('H7/s6')
  })

  it('says what is wrong with hole, shaft and size together', () => {
    const problems = problemsOf(isoFit('H3/w6', 200, iso286))
    expect(problems.map(({ code, remedy }) => [code, remedy])).toEqual([
      ['not-in-table', 'write H5'],
      ['unknown-choice', 'write x6'],
      ['out-of-range', 'give the limits of bore and spigot outright'],
    ])
    expect(said(isoFit('K9/t6', 20, iso286))).toEqual([
      ['not-in-table', 'write K8'],
      ['not-in-table', 'write u6'],
    ])
  })

  it('every remedy that names a zone names one that is accepted', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 4 }),
      fc
        .tuple(fc.stringMatching(/^[A-Za-z]{1,2}$/), fc.integer({ min: 0, max: 20 }))
        .map(([letter, grade]) => letter + grade),
    )
    fc.assert(
      fc.property(text, fc.constantFrom('hole', 'shaft'), (code, of) => {
        const zone = readZone(code, of)
        if (zone.ok) return
        for (const { remedy, allowed } of zone.problems) {
          expect(allowed).not.toBe('')
          if (remedy !== undefined) expect(readZone(remedy.replace(/^write /, ''), of).ok, remedy).toBe(true)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('a hole and shaft of the same letter press or clear alike, whichever of the two is on nominal size', () => {
    // ISO 286-1: H7/s6 and S7/h6 give the same interference over 3 mm.
    fc.assert(
      fc.property(
        fc.double({ min: 3.001, max: 180, noNaN: true }),
        fc.constantFrom('p', 'r', 's', 'u', 'x', 'f', 'g', 'k', 'm', 'n'),
        (size, letter) => {
          const hole = isoFit(`H7/${letter}6`, size, iso286)
          const shaft = isoFit(`${letter.toUpperCase()}7/h6`, size, iso286)
          if (!hole.ok || !shaft.ok) throw new Error('refused')
          expect(shaft.value.interference.least).toBeCloseTo(hole.value.interference.least, 5)
          expect(shaft.value.interference.most).toBeCloseTo(hole.value.interference.most, 5)
        },
      ),
    )
  })

  it('names the standard it comes from', () => {
    const fit = isoFit('H7/s6', 25, iso286)
    expect(fit.ok && fit.value.source).toMatch(/ISO 286/)
  })
})

describe('a class of ANSI B4.1', () => {
  it.each([
    ['fn2', 'write FN2'],
    ['FN 2', 'write FN2'],
    ['FN6', 'write FN5'],
    ['RC5', 'write LC5'],
    ['H7/s6', undefined],
    ['', undefined],
  ])('%j is not one (%s)', (name, remedy) => {
    const [problem] = problemsOf(classFit(name, inch, ansiB41))
    expect([problem?.code, problem?.where.path, problem?.remedy]).toEqual(['not-in-table', 'class', remedy])
    expect(problem?.allowed).toContain('FN2')
  })

  it('names what is defined at a size where the class is not', () => {
    const [problem] = problemsOf(classFit('LC7', 2 * inch, ansiB41))
    expect(problem?.remedy).toBe('write LC5')
    expect(problem?.allowed).not.toContain('LC7')
    expect(problem?.where.path).toBe('class')
  })

  it('is not carried on past the table', () => {
    for (const size of [0.4, 3.151, 0, -1]) {
      const [problem] = problemsOf(classFit('FN2', size * inch, ansiB41))
      expect([problem?.code, problem?.where.path]).toEqual(['out-of-range', 'nominal'])
      expect(problem?.allowed).toBe('over 0.4 in up to 3.15 in, which the table holds')
    }
    expect(classFit('FN2', 3.15 * inch, ansiB41).ok).toBe(true)
  })
})

import { describe, expect, it } from 'vitest'
import type { AskedSize } from '../../src/measured/measured-value.ts'
import { readValues } from '../../src/measured/read-values.ts'

const deg = Math.PI / 180
const sizes: readonly AskedSize[] = [
  { part: 'body', id: 'bore.diameter', label: 'bore', kind: 'length', nominal: 20 },
  { part: 'body', id: 'slot.depth', label: 'slot depth', kind: 'length', nominal: 9.5 },
  { part: 'body', id: 'face.angle', label: 'face angle', kind: 'angle', nominal: 7 * deg },
  { part: 'arbor', id: 'spigot.diameter', label: 'spigot', kind: 'length', nominal: 20 },
]
const wanted = { sizes, units: 'mm', revision: 'a1b2c3d4', anyRevision: false } as const
const read = (text: string, file = 'sheet.csv', other = {}) => readValues(text, file, { ...wanted, ...other })
const values = (...args: Parameters<typeof read>) => {
  const found = read(...args)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return found.value.map((v) => [v.part, v.id, Number(v.value.toFixed(9))])
}
const problem = (...args: Parameters<typeof read>) => {
  const found = read(...args)
  if (found.ok) throw new Error('nothing wrong')
  expect(found.problems.length).toBeGreaterThan(0)
  return found.problems[0]!
}

const header = 'revision,part,size,what,unit,measured'
const sheet = (...rows: string[]) => `${[header, ...rows].join('\r\n')}\r\n`

describe('a filled-in sheet', () => {
  it('is read as spreadsheets save it: commas, semicolons or tabs, with or without a byte order mark', () => {
    const right = [
      ['body', 'bore.diameter', 20.012],
      ['body', 'slot.depth', 9.62],
    ]
    expect(
      values(sheet('a1b2c3d4,body,bore.diameter,bore,mm,20.012', 'a1b2c3d4,body,slot.depth,slot,mm,9.62')),
    ).toEqual(right)
    const other = sheet('a1b2c3d4,body,bore.diameter,"bore, H7",mm,20.012', 'a1b2c3d4,body,slot.depth,slot,mm,9.62')
    expect(values(`\ufeff${other}`)).toEqual(right)
    const semicolons = sheet('a1b2c3d4,body,bore.diameter,bore,mm,20P012', 'a1b2c3d4,body,slot.depth,slot,mm,9P62')
      .replaceAll(',', ';')
      .replaceAll('P', ',')
    expect(values(semicolons)).toEqual(right)
    const tabs = sheet('a1b2c3d4,body,bore.diameter,bore,mm,20P012', 'a1b2c3d4,body,slot.depth,slot,mm,9P62')
      .replaceAll(',', '\t')
      .replaceAll('P', ',')
    expect(values(tabs.replaceAll('\r\n', '\n'))).toEqual(right)
  })

  it('takes a decimal comma in quotation marks, and asks where it could be thousands', () => {
    expect(values(sheet('a1b2c3d4,body,slot.depth,slot,mm,"9,62"'))).toEqual([['body', 'slot.depth', 9.62]])
    expect(problem(sheet('a1b2c3d4,body,slot.depth,slot,mm,"9,620"'))).toMatchObject({
      code: 'not-a-quantity',
      where: { file: 'sheet.csv', line: 2, column: 34 },
    })
  })

  it('takes the unit of its row, another one written beside the value, degrees and minutes', () => {
    expect(values(sheet('a1b2c3d4,body,slot.depth,slot,in,0.375'))).toEqual([['body', 'slot.depth', 9.525]])
    expect(values(sheet('a1b2c3d4,body,slot.depth,slot,mm,0.375 in'))).toEqual([['body', 'slot.depth', 9.525]])
    const [[, , angle]] = values(sheet("a1b2c3d4,body,face.angle,face,°,7°06'")) as [[string, string, number]]
    expect(angle).toBeCloseTo(7.1 * deg, 9)
  })

  it('may leave rows empty, have its columns in another order and more of them', () => {
    const text =
      'measured;note;size;part;revision\n;not yet;slot.depth;body;a1b2c3d4\n20,01;good;bore.diameter;body;a1b2c3d4\n'
    expect(values(text)).toEqual([['body', 'bore.diameter', 20.01]])
  })

  it('may say in its first line what stands between its cells, as some spreadsheets do', () => {
    const text = sheet('a1b2c3d4;body;slot.depth;slot, milled;mm;9,62').replaceAll(
      'revision,part,size,what,unit,',
      'revision;part;size;what;unit;',
    )
    expect(values(`\ufeffsep=;\r\n${text}`)).toEqual([['body', 'slot.depth', 9.62]])
    expect(values(`sep=,\r\n${sheet('a1b2c3d4,body,slot.depth,slot,mm,9.62')}`)).toEqual([['body', 'slot.depth', 9.62]])
    expect(problem(`sep=;\n${text.replace('9,62', 'good')}`).where).toMatchObject({ line: 3, column: 42 })
  })

  it('may be YAML', () => {
    const text =
      'revision: a1b2c3d4\nbody:\n  slot.depth: 9.62\n  face.angle: 7 deg 6 min\narbor:\n  spigot.diameter: 0.7883 in\n'
    expect(values(text, 'values.yaml')).toEqual([
      ['body', 'slot.depth', 9.62],
      ['body', 'face.angle', Number((7.1 * deg).toFixed(9))],
      ['arbor', 'spigot.diameter', 20.02282],
    ])
  })
})

describe('a sheet that cannot be right is refused, with the place', () => {
  it.each([
    ['a missing column', 'revision,part,measured\na1b2c3d4,body,9.6\n', 'missing-key', { line: 1 }],
    ['an empty file', '  \n', 'file-empty', {}],
    ['no value in any row', sheet('a1b2c3d4,body,slot.depth,slot,mm,'), 'file-empty', {}],
    ['text for a number', sheet('a1b2c3d4,body,slot.depth,slot,mm,good'), 'not-a-quantity', { line: 2, column: 34 }],
    ['a unit of another kind', sheet('a1b2c3d4,body,slot.depth,slot,mm,9.6 N'), 'wrong-unit', { line: 2 }],
    ['a sheet without a revision', 'part,size,measured\nbody,slot.depth,9.6\n', 'missing-key', {}],
    [
      'a sheet of another revision',
      sheet('ffff0000,body,slot.depth,slot,mm,9.6'),
      'contradiction',
      { line: 2, column: 1 },
    ],
    ['an open quotation mark', sheet('a1b2c3d4,body,slot.depth,slot,mm,"9.6'), 'not-text', {}],
    ['control characters', sheet('a1b2c3d4,body,slot.depth,slot,mm,9.6\u0000'), 'not-text', { line: 2 }],
  ])('%s', (_, text, code, where) => {
    expect(problem(text)).toMatchObject({ code, where: { file: 'sheet.csv', ...where } })
  })

  it('names the nearest size for one that nobody asked for', () => {
    const found = problem(sheet('a1b2c3d4,body,slot.deph,slot,mm,9.6'))
    expect(found).toMatchObject({ code: 'unknown-key', found: 'slot.deph', remedy: 'write slot.depth' })
    expect(found.where).toMatchObject({ line: 2, column: 15 })
    const part = problem(sheet('a1b2c3d4,bdoy,slot.depth,slot,mm,9.6'))
    expect(part).toMatchObject({ found: 'the part bdoy', allowed: 'body, arbor', remedy: 'write body' })
    const other = problem(sheet('a1b2c3d4,arbor,slot.depth,slot,mm,9.6'))
    expect(other).toMatchObject({ allowed: 'a size of arbor: spigot.diameter', remedy: 'that is a size of body' })
  })

  it('quotes a cell as it is written, and says what to make of it', () => {
    const cell = (text: string, separator = ',') => {
      const rows = `a1b2c3d4,body,bore.diameter,bore,mm,\n`.replaceAll(',', separator)
      const { found, remedy } = problem(`${header.replaceAll(',', separator)}\n${rows.replace('\n', `${text}\n`)}`)
      return [found, remedy]
    }
    expect(cell('"20,014"')).toEqual(['20,014', 'write 20.014 or 20014: a comma can be read either way'])
    expect(cell('1.234,5', ';')).toEqual(['1.234,5', 'write 1234,5, without a mark between thousands'])
    expect(cell("1'234.5 mm", ';')).toEqual(["1'234.5 mm", 'write 1234.5, without a mark between thousands'])
    expect(cell('-', ';')).toEqual(['-', 'leave it empty where nothing was measured'])
  })

  it('names an angle that no design leans by', () => {
    const found = problem(sheet('a1b2c3d4,body,face.angle,face,°,95 deg'))
    expect(found).toMatchObject({ code: 'out-of-range', found: '95 deg', allowed: 'less than 90 deg' })
  })

  it('asks about a value that looks like a slip of the unit or the point, and takes it with its unit', () => {
    for (const slip of ['0.374', '950', '95', '0.95', '242']) {
      const found = problem(sheet(`a1b2c3d4,body,slot.depth,slot,mm,${slip}`))
      expect(found).toMatchObject({ code: 'out-of-range', where: { line: 2 } })
      expect(found.remedy).toContain('with its unit')
      expect(values(sheet(`a1b2c3d4,body,slot.depth,slot,mm,${slip} mm`))).toEqual([
        ['body', 'slot.depth', Number(slip)],
      ])
    }
    // A slot half as deep again is bad work, not a slip of the pen.
    expect(values(sheet('a1b2c3d4,body,slot.depth,slot,mm,14.2'))).toEqual([['body', 'slot.depth', 14.2]])
  })

  it('refuses two values for one size and says where the first is', () => {
    const found = problem(sheet('a1b2c3d4,body,slot.depth,slot,mm,9.6', 'a1b2c3d4,body,slot.depth,slot,mm,9.7'))
    expect(found).toMatchObject({ code: 'duplicate-key', where: { line: 3 } })
    expect(found.allowed).toContain('line 2')
  })

  it('knows its revision mark again where a spreadsheet took it for a number', () => {
    const sheet = (mark: string) => `revision;part;size;measured\r\n${mark};body;bore.diameter;20,01\r\n`
    const isTaken = (mark: string, revision: string) => readValues(sheet(mark), 'a.csv', { ...wanted, revision }).ok
    expect(isTaken('123456', '00123456')).toBe(true)
    expect(isTaken('123457', '00123456')).toBe(false)
    expect(isTaken('1,23E+16', '12345e12')).toBe(true)
    expect(isTaken('1,2345E+16', '12345e12')).toBe(true)
    expect(isTaken('1,24E+16', '12345e12')).toBe(false)
    expect(isTaken('1,23E+16', 'a2b3c4d5')).toBe(false)
  })

  it('takes another revision when told to', () => {
    expect(values(sheet('ffff0000,body,slot.depth,slot,mm,9.6'), 'sheet.csv', { anyRevision: true })).toHaveLength(1)
  })

  it('says everything that is wrong at once', () => {
    const found = read(sheet('a1b2c3d4,body,slot.deph,slot,mm,9.6', 'a1b2c3d4,body,slot.depth,slot,mm,good'))
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual(['unknown-key', 'not-a-quantity'])
  })
})

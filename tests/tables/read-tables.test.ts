import { describe, expect, it } from 'vitest'
import { readTables } from '../../src/tables/read-tables.ts'
import { type TableName, tableNames } from '../../src/tables/table-name.ts'
import { edited, positionOf, problemsOf, shippedText, textsWith } from './shipped-texts.ts'

describe('the shipped tables', () => {
  const result = readTables(textsWith({}))
  const tables = result.ok ? result.value : undefined

  it('are good', () => {
    expect(problemsOf({})).toEqual([])
  })

  it('have the rows that the rest of the program counts on', () => {
    const names = (rows: readonly { name: string }[] | undefined) => rows?.map((row) => row.name)
    expect(names(tables?.materials)).toEqual([
      'steel-1018',
      'steel-12l14',
      'steel-1045',
      'steel-4140-prehard',
      'steel-structural',
      'aluminium-6061',
      'grey-iron',
      'hss',
      'alloy-steel',
    ])
    expect(names(tables?.workMaterials)).toEqual([
      'mild-steel',
      'medium-carbon-steel',
      'alloy-steel',
      'tool-steel',
      'stainless-steel',
      'grey-iron',
      'aluminium',
      'brass',
      'bronze',
      'copper',
      'plastic',
    ])
    expect(names(tables?.shanks)).toEqual([
      ...['straight-3/8', 'straight-1/2', 'straight-5/8', 'straight-3/4', 'straight-7/8', 'straight-1'],
      ...['straight-10', 'straight-12', 'straight-16', 'straight-20', 'straight-25'],
      ...['morse-1', 'morse-2', 'morse-3', 'morse-4', 'morse-5', 'r8', '7-24-30', '7-24-40', '7-24-50'],
    ])
    expect(names(tables?.setScrews)).toEqual(
      expect.arrayContaining(['M3', 'M12', 'No.4-40', '1/4-20', '1/4-28', '1/2-13']),
    )
    expect(names(tables?.threads)).toEqual(expect.arrayContaining(['M3', 'M24', 'No.4-40', '1-8']))
  })

  it('give every row a source of its own words', () => {
    for (const rows of Object.values(tables ?? {})) {
      for (const row of rows) expect(row.source).toMatch(/[a-z]{4}/i)
    }
    expect(Object.keys(tables ?? {})).toHaveLength(tableNames.length)
  })

  it('say where figures come from, without sending anyone to "each row" that is silent', () => {
    for (const name of tableNames) {
      const { source, rows } = JSON.parse(shippedText(name))
      if (source !== 'see each row') continue
      for (const row of rows) expect(row, name).toHaveProperty('source')
    }
  })

  it('are JSON with one row a line, so that a shop can edit them', () => {
    for (const name of tableNames) {
      const text = shippedText(name)
      const { rows } = JSON.parse(text)
      expect(text.split('\n').filter((line) => line.startsWith('    { ')).length, name).toBe(rows.length)
    }
  })

  it('keep set screws inside their threads and lengths in order', () => {
    for (const screw of tables?.setScrews ?? []) {
      expect(screw.keySize).toBeLessThan(screw.majorDiameter)
      expect(screw.lengths).toEqual(screw.lengths.toSorted((a, b) => a - b))
    }
  })

  it('give a shank profile whose pieces meet or step down', () => {
    for (const { profile, gaugeDiameter, length } of tables?.shanks ?? []) {
      expect(profile[0]?.from).toBe(gaugeDiameter)
      expect(profile.reduce((sum, piece) => sum + piece.length, 0)).toBeCloseTo(length, 9)
      for (const [at, piece] of profile.entries()) {
        expect(piece.from).toBeLessThanOrEqual(profile[at - 1]?.to ?? Number.POSITIVE_INFINITY)
        expect(piece.to).toBeLessThanOrEqual(piece.from)
      }
    }
  })
})

describe('a broken table is reported like bad user input', () => {
  it('names file, line, column, what was found and what is allowed: a negative size', () => {
    const text = edited(
      'threads',
      '"name": "M6", "series": "metric coarse", "majorDiameter": "6 mm"',
      '"name": "M6", "series": "metric coarse", "majorDiameter": "-6 mm"',
    )
    const [problem, ...others] = problemsOf({ threads: text })
    expect(others).toEqual([])
    expect(problem).toMatchObject({
      code: 'out-of-range',
      found: '"-6 mm"',
      allowed: 'more than 0 mm and at most 500 mm',
    })
    expect(problem?.where).toEqual({
      file: 'threads.json',
      path: 'rows.3.majorDiameter',
      ...positionOf(text, '"M6"', '"-6 mm"'),
    })
  })

  it('reads bare numbers in the unit of the file', () => {
    const text = edited(
      'threads',
      '"majorDiameter": "6 mm", "pitch": "1 mm", "tapDrill": "5 mm"',
      '"majorDiameter": 6, "pitch": 1, "tapDrill": 5',
    )
    expect(problemsOf({ threads: text })).toEqual([])
  })

  it('an unknown key, with the nearest one', () => {
    const text = edited('threads', '"tapDrill": "5 mm"', '"tapdril": "5 mm"')
    expect(problemsOf({ threads: text })).toEqual([
      expect.objectContaining({ code: 'missing-key', where: expect.objectContaining({ path: 'rows.3.tapDrill' }) }),
      expect.objectContaining({
        code: 'unknown-key',
        found: 'tapdril',
        remedy: 'did you mean tapDrill?',
        where: { file: 'threads.json', path: 'rows.3.tapdril', ...positionOf(text, 'tapdril', '"tapdril"') },
      }),
    ])
  })

  it('a length written as a torque', () => {
    const text = edited('set-screws', '"seatingTorque": "7.2 N m"', '"seatingTorque": "7.2 mm"')
    expect(problemsOf({ 'set-screws': text })).toMatchObject([
      { code: 'wrong-unit', found: '"7.2 mm"', where: { path: 'rows.3.seatingTorque' } },
    ])
  })

  it('units that are neither mm nor in', () => {
    const text = edited('threads', '"units": "mm"', '"units": "cm"')
    expect(problemsOf({ threads: text })).toMatchObject([{ code: 'unknown-choice', found: '"cm"', allowed: 'mm, in' }])
  })

  it.each(tableNames)('an empty %s table', (name) => {
    const { rows: _, ...head } = JSON.parse(shippedText(name))
    const problems = problemsOf({ [name]: JSON.stringify({ ...head, rows: [] }) })
    expect(problems).toMatchObject([{ code: 'out-of-range', where: { file: `${name}.json`, path: 'rows' } }])
  })

  it.each(tableNames)('a %s table that is no text, no JSON, or nothing', (name) => {
    for (const text of ['', '{ "title": ', '[]', 'null', '\u0000']) {
      const problems = problemsOf({ [name]: text })
      expect(problems.length).toBeGreaterThan(0)
      expect(problems.map((problem) => problem.where.file)).toEqual(problems.map(() => `${name}.json`))
    }
  })

  it('all tables in one run', () => {
    const broken = Object.fromEntries(tableNames.map((name) => [name, shippedText(name).replace('"title"', '"titel"')]))
    const files = problemsOf(broken).flatMap(({ code, where }) => (code === 'unknown-key' ? [where.file] : []))
    expect(files.toSorted()).toEqual(tableNames.map((name) => `${name}.json`).toSorted())
  })

  it('all problems of one table, in the order of its lines', () => {
    const text = shippedText('threads').replaceAll('"series": "UNF"', '"series": "UNIF"')
    const problems = problemsOf({ threads: text })
    expect(problems.length).toBe(shippedText('threads').split('"series": "UNF"').length - 1)
    expect(problems.every(({ remedy }) => remedy === 'write UNF')).toBe(true)
    const lines = problems.map(({ where }) => where.line ?? 0)
    expect(lines).toEqual(lines.toSorted((a, b) => a - b))
  })

  it.each(tableNames)('each required key of the first row of %s, when it is left out', (name) => {
    const table = JSON.parse(shippedText(name))
    for (const key of Object.keys(table.rows[0])) {
      const { [key]: _, ...rest } = table.rows[0]
      const problems = problemsOf({ [name]: JSON.stringify({ ...table, rows: [rest, ...table.rows.slice(1)] }) })
      const mayMiss = optionalKeys[name].includes(key)
      expect(
        problems.map(({ code, where }) => [code, where.file]),
        key,
      ).toEqual(mayMiss ? [] : [['missing-key', `${name}.json`]])
    }
  })
})

/** Keys in the first rows that may be left out; all others must be there. */
const optionalKeys: Record<TableName, readonly string[]> = {
  threads: ['source'],
  'set-screws': ['keyEngagement', 'seatingTorque', 'source'],
  'bit-blanks': [],
  'bar-stock': ['source'],
  shanks: ['source'],
  materials: ['yieldStrength', 'ultimateStrength', 'threadEngagement', 'workMaterial', 'source'],
  'work-materials': ['vdi3323', 'carbideSpeed', 'hssAngles', 'source'],
  'iso-286': [],
  'ansi-b4-1': ['shaftZone'],
  'gauge-blocks': [],
  'angle-blocks': [],
  'gauge-pins': ['source'],
}

describe('values that contradict each other', () => {
  it('two rows of one name', () => {
    const text = edited('bar-stock', '"name": "round-25"', '"name": "round-22"')
    expect(problemsOf({ 'bar-stock': text })).toMatchObject([
      {
        code: 'contradiction',
        found: '"round-22"',
        remedy: expect.stringMatching(/^row \d+ is already round-22/),
        where: positionOf(text, '"25 mm"', '"round-22"'),
      },
    ])
  })

  it.each([
    ['4.9 mm', 'below the minor diameter 4.917 mm of M6'],
    ['6 mm', 'at the major diameter'],
  ])('a tap drill of %s, %s', (drill) => {
    const text = edited('threads', '"tapDrill": "5 mm"', `"tapDrill": "${drill}"`)
    expect(problemsOf({ threads: text })).toMatchObject([
      {
        code: 'contradiction',
        found: `"${drill}"`,
        allowed: 'at least the minor diameter 4.917 mm and below the major diameter 6 mm',
        where: { path: 'rows.3.tapDrill', ...positionOf(text, '"M6"', `"${drill}" }`) },
      },
    ])
  })

  it('a thread with pitch and threads per inch, with neither, or with a pitch that leaves no core', () => {
    const pitch = '"majorDiameter": "6 mm", "pitch": "1 mm"'
    const both = edited('threads', pitch, `${pitch}, "threadsPerInch": 20`)
    expect(problemsOf({ threads: both })).toMatchObject([{ code: 'contradiction', remedy: 'remove threadsPerInch' }])
    const neither = edited('threads', pitch, '"majorDiameter": "6 mm"')
    expect(problemsOf({ threads: neither })).toMatchObject([
      { code: 'missing-key', allowed: 'pitch or threadsPerInch' },
    ])
    const coarse = edited('threads', pitch, '"majorDiameter": "6 mm", "pitch": "6 mm"')
    expect(problemsOf({ threads: coarse })).toMatchObject([
      { code: 'contradiction', allowed: 'a pitch that leaves a core' },
    ])
  })

  it('a set screw whose thread or material is in no table', () => {
    const text = edited(
      'set-screws',
      '"threads": ["M6"], "material": "alloy-steel"',
      '"threads": ["1/4-21"], "material": "aloy-steel"',
    )
    expect(problemsOf({ 'set-screws': text })).toMatchObject([
      { code: 'not-in-table', found: '"1/4-21"', remedy: 'write 1/4-20, or add the row to threads.json' },
      { code: 'not-in-table', found: '"aloy-steel"', remedy: 'write alloy-steel, or add the row to materials.json' },
    ])
  })

  it('a set screw with a key as wide as itself', () => {
    const text = edited('set-screws', '"keySize": "3 mm"', '"keySize": "6 mm"')
    expect(problemsOf({ 'set-screws': text })).toMatchObject([
      { code: 'contradiction', where: { path: 'rows.3.keySize' }, allowed: 'a size below the major diameter' },
    ])
  })

  it('a broken thread table is not held against the set screws and shanks that use it', () => {
    const text = edited('threads', '"tapDrill": "5 mm"', '"tapDrill": "50 mm"')
    expect(problemsOf({ threads: text }).map(({ where }) => where.file)).toEqual(['threads.json'])
  })

  it('but what else is wrong in those is still found', () => {
    const problems = problemsOf({
      threads: edited('threads', '"tapDrill": "5 mm"', '"tapDrill": "50 mm"'),
      shanks: edited('shanks', '"to": "0.572 in"', '"to": "0.672 in"'),
    })
    expect(problems.map(({ where }) => where.file)).toEqual(['threads.json', 'shanks.json'])
  })

  it('a blank of a material that is in no table', () => {
    const text = shippedText('bit-blanks').replaceAll('"material": "hss"', '"material": "hs"')
    const problems = problemsOf({ 'bit-blanks': text })
    expect(problems.length).toBe(JSON.parse(text).rows.length)
    expect(problems[0]).toMatchObject({ code: 'not-in-table', found: '"hs"' })
  })

  it('a material cut as a work material that is in no table, and a yield above the ultimate', () => {
    const text = edited('materials', '"yieldStrength": "54 ksi"', '"yieldStrength": "74 ksi"').replace(
      '"medium-carbon-steel"',
      '"mediumcarbon"',
    )
    expect(problemsOf({ materials: text })).toMatchObject([
      { code: 'contradiction', found: '"74 ksi"', where: { path: 'rows.0.yieldStrength' } },
      { code: 'not-in-table', found: '"mediumcarbon"', where: { path: 'rows.2.workMaterial' } },
    ])
  })

  it('a swapped range and a force without its exponent', () => {
    const text = edited(
      'work-materials',
      '"low": "70 ft/min", "high": "120 ft/min"',
      '"low": "120 ft/min", "high": "70 ft/min"',
    ).replace('"forceExponent": 0.22, ', '')
    expect(problemsOf({ 'work-materials': text })).toMatchObject([
      { code: 'contradiction', found: 'low above high', where: { path: 'rows.0.hssSpeed' } },
      { code: 'missing-key', found: 'specificForce alone', where: { path: 'rows.1' } },
    ])
  })

  it('ISO 286 steps with a gap, and a grade finer than the one before', () => {
    const text = edited('iso-286', '"over": 30, "upTo": 40', '"over": 31, "upTo": 40').replace(
      '"IT6": 6, ',
      '"IT6": 3, ',
    )
    expect(problemsOf({ 'iso-286': text })).toMatchObject([
      { code: 'contradiction', found: '3', allowed: 'more than IT5, 4', where: { path: 'rows.0.grades.IT6' } },
      { code: 'contradiction', found: '31', allowed: '30 mm, where the step before ends' },
    ])
  })

  it('ANSI B4.1 limits that are swapped, steps that overlap, an unknown class', () => {
    const first = '"class": "FN1", "over": 0.4, "upTo": 0.56'
    const overlap = edited('ansi-b4-1', first, '"class": "FN1", "over": 0.4, "upTo": 0.6')
    expect(problemsOf({ 'ansi-b4-1': overlap })).toMatchObject([
      { code: 'contradiction', found: '0.56', allowed: '0.6 in, where the step before ends' },
    ])
    const swapped = shippedText('ansi-b4-1').replace(
      '"hole": {"lower": 0, "upper": 0.4}',
      '"hole": {"lower": 0.4, "upper": 0}',
    )
    expect(problemsOf({ 'ansi-b4-1': swapped })).toMatchObject([
      { code: 'contradiction', where: { path: 'rows.0.hole' } },
    ])
    const unknown = edited('ansi-b4-1', first, '"class": "FM1", "over": 0.4, "upTo": 0.56')
    expect(problemsOf({ 'ansi-b4-1': unknown })).toMatchObject([{ code: 'unknown-choice', found: '"FM1"' }])
  })
})

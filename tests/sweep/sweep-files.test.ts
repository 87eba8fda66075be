import { describe, expect, it } from 'vitest'
import { families } from '../../src/families/families.ts'
import { sweptOn } from '../../src/package/sweep-threads.ts'
import { contour } from '../../src/sweep/html/contours.ts'
import { sweepPage } from '../../src/sweep/html/sweep-page.ts'
import { ticksIn } from '../../src/sweep/html/ticks.ts'
import { plainNumber } from '../../src/sweep/steady-number.ts'
import { sweepCsv } from '../../src/sweep/sweep-csv.ts'
import { sweepJson } from '../../src/sweep/sweep-json.ts'
import { csvRows, readHead, swept } from './workbench.ts'

const mixed = swept(['screws.thread=M5,M7,M8', 'slot.depth=8..12:3'])

describe('sweep.csv', () => {
  it('read back has every set with its values, level, stops and figures, and units in the head line', () => {
    const [head, ...rows] = csvRows(sweepCsv(mixed))
    expect(head?.slice(0, 8)).toEqual([
      'revision',
      'screws.thread',
      'slot.depth [mm]',
      'level',
      'stops',
      'problems',
      'swing [mm]',
      'wall.slot-bore [mm]',
    ])
    expect(head).toContain('speed.never-exceed [rev/min]')
    expect(rows).toHaveLength(9)
    rows.forEach((row, at) => {
      const set = mixed.sets[at]!
      expect(row.slice(0, 5)).toEqual([
        mixed.revision,
        set.at[0]!.shown,
        String(set.at[1]!.shown),
        set.level,
        set.stops.join(' '),
      ])
      expect(row.slice(6).map((cell) => (cell === '' ? null : Number(cell)))).toEqual(set.figures)
    })
    expect(rows[3]?.slice(3, 7)).toEqual(['impossible', '', 'not-in-table screws.thread', ''])
    expect(rows.flat().every((cell) => !/^-?\d+(\.\d+)?e/i.test(cell))).toBe(true)
  })

  it('quotes what needs it', () => {
    const name = swept(['title=Cover "A"; left'], 'swing')
    expect(sweepCsv(name)).toContain(',"Cover ""A""; left",')
    expect(csvRows(sweepCsv(name))[1]?.[1]).toBe('Cover "A"; left')
  })

  it('has numbers with nine digits and no exponent, whatever their size', () => {
    expect([0, 1e-12, 0.000123456789123, 1234567.891234, -0.5, 1e15].map(plainNumber)).toEqual([
      '0',
      '0',
      '0.000123456789',
      '1234567.89',
      '-0.5',
      '1000000000000000',
    ])
  })
})

describe('sweep.html', () => {
  const pages = [
    swept(['slot.depth=8..13:9']),
    swept(['screws.thread=M5,M7,M8']),
    mixed,
    swept(['slot.depth=8..13:10', 'bore.depth=20..34:8'], 'swing,wall.slot-bore'),
    swept(['title=<b>&"x"', 'slot.depth=9..9:1'], 'wall.slot-bore'),
  ].map((sweep) => ({ sweep, page: sweepPage(sweep) }))

  it('is one file with the revision mark, without script, and nothing of the user’s is markup in it', () => {
    for (const { sweep, page } of pages) {
      expect(page).toContain(sweep.revision)
      expect(page).not.toMatch(/<script|<b>|(?:src|href)="(?!#)|NaN|undefined|Infinity/)
      const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id)
      expect(new Set(ids).size).toBe(ids.length)
      const named = [...page.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id)
      for (const id of ['dots-note', 'hatch-caution', 'hatch-stop', 'hatch-impossible', 'hatch-over']) {
        expect(ids).toContain(id)
        expect(named).toContain(id)
      }
      const opened = [...page.matchAll(/<([a-z0-9]+)(?:\s[^<>]*[^/])?>/g)].map(([, tag]) => tag)
      const closed = [...page.matchAll(/<\/([a-z0-9]+)>/g)].map(([, tag]) => tag)
      expect(closed.toSorted()).toEqual(opened.toSorted())
    }
  })

  it('has a picture for each figure, the place of the file, levels in words, and every set in a table', () => {
    for (const { sweep, page } of pages.slice(0, 4)) {
      for (const at of sweep.figures.keys()) expect(page).toContain(`<title id="figure-${at}-title">`)
      expect(page).toContain('file: ')
      const words = {
        none: 'no findings',
        note: 'note',
        caution: 'caution',
        stop: 'STOP',
        impossible: 'cannot be built',
      }
      for (const { level } of sweep.sets) expect(page).toContain(`>${words[level]}</text>`)
      expect(page.match(/<tr>/g)!.length).toBeGreaterThan(sweep.sets.length)
    }
    expect(pages[0]?.page).toContain('slot.depth from 8.625 mm to 13 mm')
    expect(pages[0]?.page).toContain('class="own"')
    expect(pages[1]?.page).toContain('cannot be built')
  })

  it('shades the region without stops over just the values that have none', () => {
    // Nine values 0.625 apart on 124 mm: the first alone is stopped, so the border lies a ninth of the way across.
    const { sweep, page } = pages[0]!
    expect(sweep.sets.map(({ level }) => level === 'stop')).toEqual([true, ...Array(8).fill(false)])
    expect(page).toContain(`<path class="free" d="M69.78 6H180V38H69.78Z"/>`)
    expect(page).toContain(`<path class="stopped-region" d="M56 6H69.78V38H56Z"/>`)
  })
})

describe('the JSON of a sweep', () => {
  it('has what the tables have', () => {
    const json = JSON.parse(JSON.stringify(sweepJson(mixed)))
    expect(json).toMatchObject({
      revision: mixed.revision,
      units: 'mm',
      vary: [{ path: 'screws.thread', inFile: 'M6' }, { values: [8, 10, 12] }],
    })
    expect(json.sets[3]).toMatchObject({
      values: { 'screws.thread': 'M7', 'slot.depth': 8 },
      level: 'impossible',
      problems: [{ code: 'not-in-table' }],
    })
    expect(json.sets[1].figures.swing).toBe(mixed.sets[1]?.figures[0])
    expect(json.withoutStops).toBe(
      mixed.sets.filter(({ level }) => level === 'note' || level === 'caution' || level === 'none').length,
    )
  })
})

describe('on two threads', () => {
  const { design, family } = readHead()
  const { axes } = swept(['slot.depth=8..13:8', 'bore.depth=20..34:3'])
  const job = {
    family: family.name,
    parameters: design.parameters,
    tables: design.tables,
    axes,
    figures: ['swing', 'wall.slot-bore'],
  }

  it('a sweep comes to the same, set by set, as on one', async () => {
    const told: number[] = []
    const one = await sweptOn(1, job, (sets) => told.push(sets))
    const two = await sweptOn(2, job, () => undefined)
    expect(one).toHaveLength(24)
    expect(two).toEqual(one)
    expect(told).toEqual([8, 16, 24])
  })

  it('a set that brings out a defect ends all of it, and is named', async () => {
    const broken = {
      ...job,
      axes: [{ path: 'title.x', points: [1, 2].map((value) => ({ value, shown: value })) }],
    }
    await expect(sweptOn(1, broken, () => undefined)).rejects.toThrow(/^in the set title.x = 1: /)
    await expect(sweptOn(2, broken, () => undefined)).rejects.toThrow(/^in the set title.x = 1: /)
  })
})

describe('contours', () => {
  it('of a slope are straight lines where it has that height', () => {
    const x = [0, 10, 20]
    const values = x.map((a) => [0, 10, 20].map((b) => a + b))
    for (const [p, q] of contour(values, x, x, 15)) for (const [a, b] of [p, q]) expect(a + b).toBeCloseTo(15, 12)
    expect(contour(values, x, x, 15)).toHaveLength(3)
  })

  it('of a saddle join the corners that hang together, and stop where there is no value', () => {
    expect(
      contour(
        [
          [1, 0],
          [0, 1],
        ],
        [0, 1],
        [0, 1],
        0.4,
      ),
    ).toHaveLength(2)
    expect(
      contour(
        [
          [1, 0],
          [0, null],
        ],
        [0, 1],
        [0, 1],
        0.5,
      ),
    ).toEqual([])
  })
})

it('ticks are round numbers within the range', () => {
  expect(ticksIn(8, 13, 5)).toEqual([8, 9, 10, 11, 12, 13])
  expect(ticksIn(0.031, 0.074, 4)).toEqual([0.04, 0.06])
  expect(ticksIn(3, 3, 4)).toEqual([3])
})

it('families are found again by name in a thread', () => {
  expect(families.map(({ name }) => name)).toContain(readHead().family.name)
})

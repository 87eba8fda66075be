import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadTables } from '../../src/package/load-tables.ts'
import { edited, shippedText } from './shipped-texts.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tables-'))
})
afterEach(() => {
  rmSync(folder, { recursive: true, force: true })
})

const problems = () => {
  const result = loadTables(folder)
  return result.ok ? [] : result.problems
}
const barNames = () => {
  const result = loadTables(folder)
  return result.ok ? result.value.barStock.map((row) => row.name) : []
}

const ownBars = JSON.stringify({
  title: 'What lies in our rack',
  source: 'measured in the rack',
  units: 'in',
  rows: [{ name: 'rack-1', shape: 'round', size: '1-1/2' }],
})

describe("a shop's own folder", () => {
  it('replaces the tables it holds and leaves the others ours', () => {
    writeFileSync(join(folder, 'bar-stock.json'), ownBars)
    const result = loadTables(folder)
    const own = loadTables()
    expect(result.ok && result.value.barStock).toEqual([
      { name: 'rack-1', shape: 'round', size: 38.1, source: 'measured in the rack' },
    ])
    expect(result.ok && result.value.shanks).toEqual(own.ok && own.value.shanks)
  })

  it('may be empty, and hidden files in it do not matter', () => {
    writeFileSync(join(folder, '.keep'), '')
    const own = loadTables()
    expect(own.ok).toBe(true)
    expect(loadTables(folder)).toEqual(own)
  })

  it('is checked together with our tables', () => {
    writeFileSync(join(folder, 'threads.json'), edited('threads', '"name": "7/16-20"', '"name": "7/16-99"'))
    expect(problems()).toMatchObject([
      { code: 'not-in-table', found: '"7/16-20"', where: { file: 'seeds/set-screws.json' } },
      { code: 'not-in-table', found: '"7/16-20"', where: { file: 'seeds/shanks.json' } },
    ])
  })

  it('a misspelled table is a problem, with the nearest name, beside the problems of the good names', () => {
    writeFileSync(join(folder, 'barstock.json'), ownBars)
    writeFileSync(join(folder, 'notes.txt'), 'mine')
    writeFileSync(join(folder, 'shanks.json'), shippedText('shanks').replace('"r8"', '"morse-1"'))
    expect(problems()).toMatchObject([
      { code: 'unknown-choice', found: 'barstock.json', remedy: 'rename it to bar-stock.json' },
      { code: 'unknown-choice', found: 'notes.txt', remedy: 'move it out of this folder' },
      { code: 'contradiction', where: { file: join(folder, 'shanks.json') } },
    ])
    expect(barNames()).toEqual([])
  })

  it('a file that cannot be read as a table', () => {
    mkdirSync(join(folder, 'threads.json'))
    writeFileSync(join(folder, 'shanks.json'), Buffer.from([0x7b, 0xff, 0x7d]))
    expect(problems()).toMatchObject([
      { code: 'not-a-file', where: { file: join(folder, 'threads.json') } },
      { code: 'not-text', where: { file: join(folder, 'shanks.json') } },
    ])
  })

  it('a folder that is not there, or is a file', () => {
    writeFileSync(join(folder, '.file'), '')
    const missing = loadTables(join(folder, 'nowhere'))
    const file = loadTables(join(folder, '.file'))
    expect(missing.ok ? [] : missing.problems).toMatchObject([
      { code: 'file-missing', where: { file: join(folder, 'nowhere') } },
    ])
    expect(file.ok ? [] : file.problems).toMatchObject([{ code: 'wrong-kind', found: 'a file' }])
  })
})

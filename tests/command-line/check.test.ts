import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { reportSchema } from '../../src/report/report-schema.ts'
import { folderState } from '../package/folder-state.ts'
import { projectRoot } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { deepBore, headFile, headText, typed } from './workshop.ts'

const folder = temporaryFolder()
const type = (...args: string[]) => typed(folder(), args)

describe('check', () => {
  it('of a sound head prints its figures, writes nothing and ends with 0', async () => {
    headFile(folder())
    const { exit, out, err } = await type('check', 'head.yaml')
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(out).toMatch(/^Facing head for pump covers: fly-cutter-head, revision [0-9a-f]{8}\n\n/)
    expect(out).toMatch(/\n0 stops, 0 cautions, \d notes?\.\n/)
    expect(out).toMatch(/\n {2}Swing: .* {2}[\d.]+ mm {2}\(at most 165 mm\)/)
    expect(Object.keys(folderState(folder()) ?? {})).toEqual(['head.yaml'])
  })

  it('of a bore that breaks into the slot ends with 1, and says by how much and what clears it', async () => {
    headFile(folder(), headText(deepBore))
    const { exit, out, err } = await type('check', 'head.yaml')
    expect({ exit, err }).toEqual({ exit: 1, err: '' })
    expect(out).toContain('stop  Slot for the bit and bore break into each other')
    expect(out).toContain('    figure  0 mm against 3 mm: metal between bore and slot (rule of thumb)')
    const [, to] = /remedy {2}set bore\.depth to ([\d.]+) mm \(now 33 mm\)/.exec(out) ?? []
    expect(out).toMatch(/\n[1-9] stops?, \d cautions?, \d notes?\.\n/)
    // And the number does clear it.
    headFile(folder(), headText(['depth: 24', `depth: ${to}`]))
    expect((await type('check', 'head.yaml')).exit).toBe(0)
  })

  it('without remedies says the same but for them', async () => {
    headFile(folder(), headText(deepBore))
    const [full, short] = [await type('check', 'head.yaml'), await type('check', 'head.yaml', '--no-remedies')]
    expect(short.exit).toBe(1)
    expect(short.out).toBe(full.out.replaceAll(/ {4}remedy .*\n/g, ''))
    expect(short.out).not.toBe(full.out)
  })

  it('prints a report of the documented shape, and nothing else, for programs', async () => {
    headFile(folder(), headText(deepBore))
    const { exit, out, err } = await type('check', 'head.yaml', '--json')
    expect({ exit, err }).toEqual({ exit: 1, err: '' })
    const report = reportSchema.parse(JSON.parse(out))
    expect(report.stops).toBe(report.findings.filter(({ level }) => level === 'stop').length)
    expect(report.findings[0]?.remedy?.path).toBe('bore.depth')
    const without = JSON.parse((await type('check', 'head.yaml', '--json', '--no-remedies')).out)
    expect(without.findings[0]).not.toHaveProperty('remedy')
  })

  it('reads standard input, and takes a byte order mark and the line ends of Windows', async () => {
    headFile(folder())
    const file = await type('check', 'head.yaml')
    expect(await typed(folder(), ['check', '-'], { input: headText() })).toEqual(file)
    const windows = `\ufeff${headText().replaceAll('\n', '\r\n')}`
    expect(await typed(folder(), ['check', '-'], { input: windows })).toEqual(file)
    const { err } = await typed(folder(), ['check', '-'], { input: 'family: fly-cuter-head\n' })
    expect(err).toBe(
      '(standard input):1:9: family: found fly-cuter-head; allowed: fly-cutter-head. Write fly-cutter-head.\n' +
        '  family: fly-cuter-head\n          ^\n',
    )
  })
})

describe("the shop's own tables", () => {
  const seed = (name: string) => readFileSync(join(projectRoot, 'seeds', `${name}.json`), 'utf8')

  it('are drawn on: a lighter steel makes a lighter head', async () => {
    headFile(folder())
    mkdirSync(join(folder(), 'ours'))
    const materials = JSON.parse(seed('materials'))
    for (const row of materials.rows) if (row.name === 'steel-12l14') row.density = '7000 kg/m³'
    writeFileSync(join(folder(), 'ours', 'materials.json'), JSON.stringify(materials))
    const mass = async (...args: string[]) => {
      const { out, err } = await type('check', 'head.yaml', '--json', ...args)
      expect(err).toBe('')
      const { figures } = reportSchema.parse(JSON.parse(out))
      return figures.find(({ id }) => id === 'mass.body')?.value ?? 0
    }
    const { density } = JSON.parse(seed('materials')).rows.find((row: { name: string }) => row.name === 'steel-12l14')
    expect((await mass('--tables', 'ours')) / (await mass())).toBeCloseTo(7000 / Number.parseFloat(density), 6)
  })

  it('that are broken are told as the user names them, with the line, beside what is wrong with the file', async () => {
    mkdirSync(join(folder(), 'ours'))
    writeFileSync(join(folder(), 'ours', 'materials.json'), seed('materials').replace('"density"', '"densty"'))
    writeFileSync(join(folder(), 'ours', 'bolts.json'), '{}')
    const { exit, out, err } = await type('check', 'nowhere.yaml', '--tables', 'ours')
    expect({ exit, out }).toEqual({ exit: 2, out: '' })
    expect(err).toMatch(/^nowhere\.yaml: found nothing; allowed: a parameter file\.$/m)
    expect(err).toMatch(/^ours\/bolts\.json: found bolts\.json;/m)
    expect(err).toMatch(
      /^ours\/materials\.json:\d+:\d+: rows\.0\.densty: found densty;.*Did you mean density\?\n.*"densty".*\n *\^$/m,
    )
    expect((await type('check', 'nowhere.yaml', '--tables', 'theirs')).err).toContain('theirs: found nothing')
  })
})

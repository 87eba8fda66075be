import { mkdirSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { headText } from '../command-line/workshop.ts'
import { folderState } from '../package/folder-state.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { broken, corpus } from './corpus.ts'
import { oddTexts } from './odd-texts.ts'
import { ran, refused } from './refusal.ts'
import { expectTold } from './told.ts'

const folder = temporaryFolder()
const put = (content: string | Uint8Array, name = 'head.yaml') => writeFileSync(join(folder(), name), content)
const all = corpus('parameters')
const check = ['check', 'head.yaml', '--no-remedies']

describe('a parameter set with', () => {
  it.each(all.filter((c) => c.code !== undefined))('$what is refused, with code and place', async (entry) => {
    const text = broken(headText(), entry)
    put(text.text)
    expectTold(await refused(folder(), check), 'head.yaml', entry, text)
  })

  it.each(all.filter((c) => c.accepted))('$what is fine', async (entry) => {
    put(broken(headText(), entry).text)
    expect(await ran(folder(), check)).toMatchObject({ exit: 0, err: '' })
  })

  it.each(all.filter((c) => c.stop))('$what is no tool: check says what stops it', async (entry) => {
    put(broken(headText(), entry).text)
    const { exit, out, err } = await ran(folder(), check)
    expect({ exit, err }).toEqual({ exit: 1, err: '' })
    expect(out).toMatch(/^stop {2}/m)
    expect(out).toContain(`    check   ${entry.stop}\n`)
  })
})

describe('make', () => {
  /** The first entry of each code: where `check` and `make` part, it is by code. */
  const samples = all.filter((c, i) => c.code !== undefined && all.findIndex(({ code }) => code === c.code) === i)

  it('refuses what check refuses, in the same words, and writes nothing', async () => {
    expect(samples.length).toBeGreaterThan(12)
    for (const entry of samples) {
      put(broken(headText(), entry).text)
      const checked = await refused(folder(), check)
      expect(await refused(folder(), ['make', 'head.yaml']), entry.what).toEqual(checked)
    }
  })

  it('writes a title as it is, whatever it says, and nothing outside its folder', async () => {
    const title = String.raw`../../%%c \U+00B0 <b>&"x"</b> 50 %% Đắk Фреза Ω ⌀ ½`
    put(headText(['Facing head for pump covers', JSON.stringify(title)], ['WS-0417', 'W'.repeat(80)]))
    expect(await ran(folder(), ['make', 'head.yaml'])).toMatchObject({ exit: 0, err: '' })
    expect(Object.keys(folderState(folder()) ?? {})).toEqual(['head', 'head.yaml'])
    const files = folderState(join(folder(), 'head')) ?? {}
    const utf8 = (name: string) => Buffer.from(files[name] ?? '', 'latin1').toString('utf8')
    expect(JSON.parse(utf8('report.json')).title).toBe(title)
    expect(utf8('report.html')).not.toContain('<b>&')
    expect(utf8('body.dxf')).toContain(String.raw`../../% %c \U+005CU+00B0`)
  })

  it('has drawings even where a bit is far wider than its head', async () => {
    put(headText(['width: 10 ', 'width: 99 ']))
    expect(await ran(folder(), ['make', 'head.yaml', '--out', 'wide'])).toMatchObject({ exit: 1, err: '' })
    rmSync(join(folder(), 'wide'), { recursive: true })
  })
})

describe('a parameter file of', () => {
  it.each(oddTexts(headText()))('$what', async ({ content, problem, says = '' }) => {
    put(content)
    if (problem === undefined) {
      expect(await ran(folder(), check)).toMatchObject({ exit: 0, err: '' })
      return
    }
    const { problems, err } = await refused(folder(), check)
    expect(problems[0]).toMatchObject({ ...problem, where: { file: 'head.yaml', ...problem.where } })
    expect(err).toContain(says)
    expect(err.length).toBeLessThan(20_000)
  })

  it('50 MB is refused without being read to its end', async () => {
    put('#')
    truncateSync(join(folder(), 'head.yaml'), 50_000_000)
    const before = performance.now()
    const { problems } = await ran(folder(), check)
    expect(problems).toMatchObject([{ code: 'file-too-large', found: 'more than 4000000 bytes' }])
    expect(performance.now() - before).toBeLessThan(5000)
    rmSync(join(folder(), 'head.yaml'))
  })

  it('no kind: a folder, a link that leads to itself, nothing, a name of no disk', async () => {
    mkdirSync(join(folder(), 'drawer'))
    symlinkSync('loop.yaml', join(folder(), 'loop.yaml'))
    for (const [name, code, said] of [
      ['drawer', 'not-a-file', 'drawer: found a folder; allowed: a parameter file.'],
      ['loop.yaml', 'file-not-readable', "loop.yaml: found the system's answer ELOOP"],
      ['lop.yaml', 'file-missing', 'Did you mean loop.yaml?'],
      ['drawer/head.yaml', 'file-missing', 'found nothing'],
      ['head.yaml/head.yaml', 'file-missing', 'found nothing'],
      [`${'x'.repeat(300)}.yaml`, 'file-not-readable', 'ENAMETOOLONG'],
      ['a\0b', 'file-not-readable', 'a\\u{0}b'],
    ] as const) {
      const { problems, err } = await refused(folder(), ['check', name])
      expect(problems, name).toMatchObject([{ code }])
      expect(err).toContain(said)
    }
  })
})

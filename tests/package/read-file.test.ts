import { execFileSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { decodeText } from '../../src/package/decode-text.ts'
import { readTextFile, readTextStream } from '../../src/package/read-file.ts'
import { systemError } from './failing-disk.ts'
import { temporaryFolder } from './temporary-folder.ts'

const folder = temporaryFolder()
const problemAt = (name: string) => {
  const read = readTextFile(join(folder(), name), name)
  return read.ok ? undefined : read.problems[0]
}
const bytesOf = (text: string, encoding: BufferEncoding) => new Uint8Array(Buffer.from(text, encoding))
const refusal = (bytes: Uint8Array) => {
  const read = decodeText(bytes, 'a.yaml')
  return read.ok ? undefined : read.problems[0]
}

describe('the text of a file', () => {
  it('comes as it is, with byte order mark, line ends and signs of all kinds', () => {
    for (const text of ['', '\ufefftitle: x\r\n', 'title: ⌀ 12 Fräskopf 𝛼\n']) {
      expect(decodeText(bytesOf(text, 'utf8'), 'a.yaml')).toEqual({ ok: true, value: text })
    }
  })

  it('a wrong byte is named, with line and column as an editor counts them', () => {
    const latin = bytesOf('family: x\r\ntitle: Fräskopf\n', 'latin1')
    expect(refusal(latin)).toMatchObject({
      code: 'not-text',
      where: { file: 'a.yaml', line: 2, column: 10 },
      found: 'the byte E4 (hexadecimal)',
      remedy: 'save the file as UTF-8 in your editor',
    })
    const afterMark = new Uint8Array([...bytesOf('\ufeff⌀ab', 'utf8'), 0xff])
    expect(refusal(afterMark)?.where).toMatchObject({ line: 1, column: 4 })
    const cutShort = bytesOf('⌀', 'utf8').subarray(0, 2)
    expect(refusal(cutShort)).toMatchObject({ where: { line: 1, column: 1 }, found: 'the byte E2 (hexadecimal)' })
  })

  it('text in two or four bytes a letter is called by its name', () => {
    const little = bytesOf('\ufefffamily: x', 'utf16le')
    expect(refusal(little)?.found).toBe('UTF-16 text')
    expect(refusal(new Uint8Array(Buffer.from(little).swap16()))?.found).toBe('UTF-16 text')
    expect(refusal(Uint8Array.of(0xff, 0xfe, 0, 0, 0x66, 0, 0, 0))?.found).toBe('UTF-32 text')
    expect(refusal(Uint8Array.of(0, 0, 0xfe, 0xff, 0, 0, 0, 0x66))?.found).toBe('UTF-32 text')
  })
})

describe('a file that cannot be read', () => {
  it('is missing, and one of a near name is there', () => {
    writeFileSync(join(folder(), 'head.yaml'), '')
    expect(problemAt('haed.yaml')).toEqual({
      code: 'file-missing',
      where: { file: 'haed.yaml' },
      found: 'nothing',
      allowed: 'a parameter file',
      remedy: 'did you mean head.yaml?',
    })
    expect(problemAt('quite-another.yaml')).not.toHaveProperty('remedy')
    expect(problemAt('nowhere/head.yaml')?.code).toBe('file-missing')
    expect(problemAt('head.yaml/x')?.code).toBe('file-missing')
  })

  it('is a folder, or has a name that no disk takes', () => {
    mkdirSync(join(folder(), 'head.yaml'))
    expect(problemAt('head.yaml')).toMatchObject({ code: 'not-a-file', found: 'a folder' })
    expect(problemAt('x'.repeat(300))).toMatchObject({ code: 'file-not-readable' })
    expect(problemAt('a\0b')).toMatchObject({ code: 'file-not-readable' })
  })

  it.skipIf(process.platform === 'win32')('is a pipe on the disk, at which one would wait for ever', () => {
    execFileSync('mkfifo', [join(folder(), 'pipe.yaml')])
    expect(problemAt('pipe.yaml')).toMatchObject({ code: 'not-a-file', found: 'something that is no file' })
    // What the system hands in by name is read.
    expect(readTextFile('/dev/null', '/dev/null')).toEqual({ ok: true, value: '' })
  })

  it('is too large: it is not read to the end', () => {
    writeFileSync(join(folder(), 'large.yaml'), Buffer.alloc(4_000_001, 'a'))
    expect(problemAt('large.yaml')).toMatchObject({ code: 'file-too-large', found: 'more than 4000000 bytes' })
    writeFileSync(join(folder(), 'large.yaml'), Buffer.alloc(4_000_000, 'a'))
    expect(problemAt('large.yaml')).toBeUndefined()
  })
})

describe('a stream', () => {
  const read = (chunks: Iterable<Uint8Array | string>) => readTextStream(Readable.from(chunks), '(standard input)')

  it('is read to its end, letters cut in two included', async () => {
    const bytes = bytesOf('title: ⌀ 12', 'utf8')
    expect(await read([bytes.subarray(0, 8), bytes.subarray(8)])).toEqual({ ok: true, value: 'title: ⌀ 12' })
    expect(await read([])).toEqual({ ok: true, value: '' })
  })

  it('without an end is not waited for', async () => {
    let chunks = 0
    function* endless() {
      for (;;) {
        chunks++
        yield Buffer.alloc(65_536, 'a')
      }
    }
    const result = await read(endless())
    expect(result.ok ? [] : result.problems).toMatchObject([{ code: 'file-too-large' }])
    expect(chunks).toBeLessThan(100)
  })

  it('that breaks off is a problem of the input, a fault of ours is not', async () => {
    async function* broken(error: Error) {
      yield 'title: x'
      throw error
    }
    const result = await readTextStream(broken(systemError('EISDIR')), '(standard input)')
    expect(result.ok ? [] : result.problems).toMatchObject([{ code: 'not-a-file' }])
    await expect(readTextStream(broken(new TypeError('ours')), '(standard input)')).rejects.toThrow('ours')
  })
})

import type { ProblemCode } from '../../src/input/problem.ts'

/** A file that no list of changes can describe: its bytes, and what has to be said. Without a problem it is fine. */
export interface OddText {
  readonly what: string
  readonly content: string | Uint8Array
  readonly problem?: {
    readonly code: ProblemCode
    readonly where?: { readonly line: number; readonly column: number }
    readonly found?: string
  }
  readonly says?: string
}

/** Odd forms of a good YAML text, and files that are none. */
export function oddTexts(good: string): OddText[] {
  const lines = good.split('\n')
  const title = lines.findIndex((line) => line.startsWith('title:')) + 1
  const withUmlaut = good.replace('title: ', 'title: Fräskopf ')
  const nested = (level: string, end = '') => `a: ${level.repeat(10_000)}${end.repeat(10_000)}\n`
  const stairs = Array.from({ length: 200 }, (_, level) => `${' '.repeat(level)}a:\n`).join('')
  const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]', ...lol('bcdefghi')].join('\n')
  const bytes = (text: string, encoding: BufferEncoding) => new Uint8Array(Buffer.from(text, encoding))
  const big = bytes(`\ufeff${good}`, 'utf16le').slice()
  const swapped = new Uint8Array(Buffer.from(big).swap16())
  return [
    { what: 'UTF-8 with a byte order mark', content: `\ufeff${good}` },
    { what: 'lines as Windows ends them', content: good.replaceAll('\n', '\r\n') },
    { what: 'lines as Windows ends them, with a byte order mark', content: `\ufeff${good.replaceAll('\n', '\r\n')}` },
    { what: 'no line end at its end', content: good.trimEnd() },
    { what: 'a thousand empty lines before and behind', content: '\n'.repeat(1000) + good + '\n'.repeat(1000) },
    {
      what: 'lines as they ended on old computers',
      content: good.replaceAll('\n', '\r'),
      problem: { code: 'not-text', where: { line: 1, column: (lines[0] ?? '').length + 1 }, found: 'character U+000D' },
      says: 'Save the file with the line ends of Linux or Windows.',
    },
    {
      what: 'Latin-1',
      content: bytes(withUmlaut, 'latin1'),
      problem: { code: 'not-text', where: { line: 5, column: 10 }, found: 'the byte E4 (hexadecimal)' },
      says: 'Save the file as UTF-8',
    },
    ...[
      ['UTF-16', big],
      ['UTF-16 the other way round', swapped],
    ].map(([what, content]) => ({
      what: what as string,
      content: content as Uint8Array,
      problem: { code: 'not-text' as const, found: 'UTF-16 text' },
      says: 'Save the file as UTF-8',
    })),
    {
      what: 'UTF-32',
      content: Uint8Array.from([0xff, 0xfe, 0, 0, ...[...good].flatMap((c) => [c.charCodeAt(0) & 255, 0, 0, 0])]),
      problem: { code: 'not-text', found: 'UTF-32 text' },
    },
    {
      what: 'UTF-16 without its mark',
      content: bytes(good, 'utf16le'),
      problem: { code: 'not-text', found: 'UTF-16 text' },
    },
    {
      what: 'a letter cut in two at its end',
      content: bytes(`${good}# ä`, 'utf8').slice(0, -1),
      problem: { code: 'not-text', where: { line: lines.length, column: 3 }, found: 'the byte C3 (hexadecimal)' },
    },
    { what: 'nothing', content: '', problem: { code: 'file-empty', found: 'nothing' } },
    { what: 'a byte order mark alone', content: '\ufeff', problem: { code: 'file-empty' } },
    { what: 'spaces and line ends', content: ' \r\n\n  ', problem: { code: 'file-empty' } },
    { what: 'comments', content: '# later\n', problem: { code: 'file-empty' } },
    { what: 'three dashes', content: '---\n', problem: { code: 'file-empty' } },
    { what: 'null', content: 'null\n', problem: { code: 'wrong-kind', where: { line: 1, column: 1 }, found: 'null' } },
    { what: 'a number', content: '42\n', problem: { code: 'wrong-kind', where: { line: 1, column: 1 }, found: '42' } },
    {
      what: 'a list',
      content: '- a\n',
      problem: { code: 'wrong-kind', where: { line: 1, column: 1 }, found: 'a list' },
    },
    { what: 'zeros', content: new Uint8Array(1000), problem: { code: 'not-text', where: { line: 1, column: 1 } } },
    {
      what: 'a packed folder',
      content: Uint8Array.of(0x50, 0x4b, 3, 4, 0x14, 0, 0, 0),
      problem: { code: 'not-text', where: { line: 1, column: 3 }, found: 'character U+0003' },
    },
    {
      what: 'HTML',
      content: '<!doctype html>\n<html lang="en">\n<p>404: no such file</p>\n',
      problem: { code: 'not-yaml' },
    },
    { what: 'a megabyte and a bit', content: '#'.repeat(1_000_001), problem: { code: 'file-too-large' } },
    { what: 'one line of 900 000 letters', content: `a: ${'x'.repeat(900_000)}\n`, problem: { code: 'missing-key' } },
    {
      what: 'ten thousand unknown keys',
      content: good + Array.from({ length: 10_000 }, (_, i) => `k${i}: 1\n`).join(''),
      problem: { code: 'unknown-key', where: { line: lines.length, column: 1 }, found: 'k0' },
    },
    { what: 'an alias bomb', content: bomb, problem: { code: 'alias-not-allowed', where: { line: 1, column: 4 } } },
    ...(
      [
        ['ten thousand opening brackets', nested('['), 68],
        ['ten thousand brackets', nested('[', ']'), 68],
        ['ten thousand braces', nested('{a: ', '}'), 260],
        ['ten thousand list marks', nested('\n- ').replaceAll('\n- ', '- '), undefined],
      ] as const
    ).map(([what, content, column]) => ({
      what,
      content,
      problem: { code: 'too-deep' as const, ...(column !== undefined && { where: { line: 1, column } }) },
      says: 'at most 32 levels',
    })),
    { what: 'two hundred sections within each other', content: stairs, problem: { code: 'too-deep' } },
    {
      what: 'a byte order mark in the title',
      content: good.replace('title: ', 'title: \ufeff'),
      problem: { code: 'not-text', where: { line: title, column: 8 }, found: 'character U+FEFF' },
    },
  ]
}

const lol = (names: string): string[] =>
  [...names].map((name, n) => `${name}: &${name} [${`*${'abcdefghi'[n]}, `.repeat(9)}]`)

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ProblemCode } from '../../src/input/problem.ts'
import { readDocument } from '../../src/input/read-document.ts'

type Placed = [ProblemCode, number | undefined, number | undefined]

const problemsOf = (text: string) => {
  const result = readDocument(text, 'a.yaml')
  return result.ok ? [] : result.problems.map(({ code, where }) => [code, where.line, where.column] as Placed)
}
const documentOf = (text: string) => {
  const result = readDocument(text, 'a.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

describe('a sound document', () => {
  const text = `# a head
units: mm
swing: 60.50   # as measured
screws:
  count: 3
  size: "M5"
speeds: [90, 160, 250]
bits:
  - width: 8
    height: 8
  - width: 6
note:
`
  const document = documentOf(text)

  it('gives plain values', () => {
    expect(document.raw).toEqual({
      units: 'mm',
      swing: 60.5,
      screws: { count: 3, size: 'M5' },
      speeds: [90, 160, 250],
      bits: [{ width: 8, height: 8 }, { width: 6 }],
      note: null,
    })
  })

  it('knows what was written', () => {
    expect(document.has(['screws', 'count'])).toBe(true)
    expect(document.has(['bits', 1, 'width'])).toBe(true)
    expect(document.has([])).toBe(true)
    expect(document.has(['note'])).toBe(true)
    expect(document.has(['bits', 1, 'height'])).toBe(false)
    expect(document.has(['screws', 'toString'])).toBe(false)
    expect(document.has(['swing', 'x'])).toBe(false)
  })

  it('locates keys and values', () => {
    expect(document.locate(['screws', 'count'], 'key')).toEqual({ line: 5, column: 3 })
    expect(document.locate(['screws', 'count'], 'value')).toEqual({ line: 5, column: 10 })
    expect(document.locate(['speeds', 1], 'value')).toEqual({ line: 7, column: 14 })
    expect(document.locate(['bits', 1, 'width'], 'value')).toEqual({ line: 11, column: 12 })
    expect(document.locate(['note'], 'key')).toEqual({ line: 12, column: 1 })
  })

  it('locates what is missing at the section it belongs in', () => {
    expect(document.locate(['screws', 'pitch'], 'value')).toEqual({ line: 4, column: 1 })
    expect(document.locate(['bits', 1, 'height'], 'value')).toEqual({ line: 11, column: 5 })
    expect(document.locate(['tilt'], 'value')).toEqual({ line: 2, column: 1 })
  })

  it('quotes what was written, not what it came to', () => {
    expect(document.writtenAt(['swing'])).toBe('60.50')
    expect(document.writtenAt(['screws', 'size'])).toBe('"M5"')
    expect(document.writtenAt(['screws'])).toBe('a section')
    expect(document.writtenAt(['speeds'])).toBe('a list')
    expect(document.writtenAt(['note'])).toBe('nothing')
    expect(document.writtenAt(['tilt'])).toBe('nothing')
  })

  it('reads the same with a byte order mark and with the line ends of another system', () => {
    const other = documentOf(`\ufeff${text.replaceAll('\n', '\r\n')}`)
    expect(other.raw).toEqual(document.raw)
    expect(other.locate(['units'], 'key')).toEqual({ line: 2, column: 1 })
    expect(other.locate(['screws', 'count'], 'value')).toEqual({ line: 5, column: 10 })
    expect(other.writtenAt(['screws', 'size'])).toBe('"M5"')
  })

  it('reads JSON with positions', () => {
    const json = documentOf('{\n  "source": "a\\/b",\n  "rows": [\n    {"size": "M5", "pitch": 0.8}\n  ]\n}\n')
    expect(json.raw).toEqual({ source: 'a/b', rows: [{ size: 'M5', pitch: 0.8 }] })
    expect(json.locate(['rows', 0, 'pitch'], 'value')).toEqual({ line: 4, column: 29 })
  })

  it('takes commas without spaces where a program wrote JSON, and where no digit stands on one of their sides', () => {
    expect(documentOf('{"speeds":[95,180,1400],"units":"mm"}').raw).toEqual({ speeds: [95, 180, 1400], units: 'mm' })
    expect(documentOf('a: [M5,M6,"1",2 ,3,\n  4]').raw).toEqual({ a: ['M5', 'M6', '1', 2, 3, 4] })
  })

  it('leaves words such as yes and no, times and fractions alone', () => {
    expect(documentOf('a: yes\nb: no\nc: 1:30\nd: 1/2 in\ne: 1/2"\nf: 12,5\ng: 8 deg').raw).toEqual({
      ...{ a: 'yes', b: 'no', c: '1:30', d: '1/2 in', e: '1/2"', f: '12,5', g: '8 deg' },
    })
  })

  it('takes the keys of the prototype for keys like any other', () => {
    const { raw, has } = documentOf('__proto__: {x: 1}\nconstructor: 2\n')
    expect(Object.keys(raw as object)).toEqual(['__proto__', 'constructor'])
    expect(Object.getPrototypeOf(raw)).toBe(Object.prototype)
    expect(has(['__proto__', 'x'])).toBe(true)
    expect(({} as Record<string, unknown>).x).toBeUndefined()
  })

  it('has no negative zero', () => {
    expect(Object.is((documentOf('a: -0').raw as { a: number }).a, 0)).toBe(true)
  })

  it('shortens long text when it is quoted', () => {
    expect(documentOf(`a: ${'x'.repeat(5000)}`).writtenAt(['a']).length).toBeLessThan(70)
    expect(documentOf('a: |\n  one\n  two\n').writtenAt(['a'])).toBe('| …')
  })
})

describe('a document is refused, with code, line and column', () => {
  it.each<[string, string, Placed[]]>([
    ['nothing', '', [['file-empty', undefined, undefined]]],
    ['comments only', '# one\n# two\n', [['file-empty', undefined, undefined]]],
    ['an empty document', '---\n', [['file-empty', undefined, undefined]]],
    ['a list at the top', '\n- a\n', [['wrong-kind', 2, 1]]],
    ['a word at the top', 'swing', [['wrong-kind', 1, 1]]],
    ['null at the top', 'null', [['wrong-kind', 1, 1]]],
    ['two documents', 'a: 1\n---\nb: 2\n', [['not-yaml', 2, 1]]],
    ['a tab for indentation', 'a:\n\tb: 1\n', [['not-yaml', 2, 1]]],
    ['two values on a line', 'a: b: c\n', [['not-yaml', 1, 4]]],
    ['an open bracket', 'a: [1, 2\n', [['not-yaml', 2, 1]]],
    ['an open quote', 'a: 1\nb: "x\n', [['not-yaml', 2, 4]]],
    ['a reserved sign', 'a: @x\n', [['not-yaml', 1, 4]]],
    [
      'two slips on two lines',
      'a: @x\nb: `y`\n',
      [
        ['not-yaml', 1, 4],
        ['not-yaml', 2, 4],
      ],
    ],
    ['a YAML directive', '%YAML 1.1\n---\na: yes\n', [['not-yaml', 1, 1]]],
    ['an unknown directive', '%X y\n---\na: 1\n', [['not-yaml', 1, 1]]],
    ['an anchor without a key', '? &x \n', [['alias-not-allowed', 1, 6]]],
    ['a tag', 'a: 1\nb: !!binary aGk=\n', [['not-yaml', 2, 4]]],
    ['a tag of a language', 'a: !!js/function x\n', [['not-yaml', 1, 4]]],
    ['a tag on a section', 'a: !x\n  b: 1\n', [['not-yaml', 1, 4]]],
    [
      'an anchor and its alias',
      'a: &x 1\nb: *x\n',
      [
        ['alias-not-allowed', 1, 4],
        ['alias-not-allowed', 2, 4],
      ],
    ],
    ['an alias to nothing', 'a: *x\n', [['alias-not-allowed', 1, 4]]],
    [
      'an alias as key',
      'a: &x b\n*x : 1\n',
      [
        ['alias-not-allowed', 1, 4],
        ['alias-not-allowed', 2, 1],
      ],
    ],
    ['a merge key', 'a: 1\n<<: {b: 2}\n', [['alias-not-allowed', 2, 1]]],
    ['a repeated key', 'a: 1\nb: 2\na: 3\n', [['duplicate-key', 3, 1]]],
    ['a repeated key below', 's:\n  a: 1\n  "a": 3\n', [['duplicate-key', 3, 3]]],
    ['a number as key', '1: a\n', [['wrong-kind', 1, 1]]],
    ['a list as key', '? [a]\n: 1\n', [['wrong-kind', 1, 3]]],
    ['a number split by its comma', 'a: [95, 1,400]\n', [['not-a-quantity', 1, 10]]],
    ['the same in JSON by hand', '{ "a": [95, 1,400] }\n', [['not-a-quantity', 1, 14]]],
    [
      'numbers split by their commas',
      'a: [10,5, 1,2,3]\n',
      [
        ['not-a-quantity', 1, 7],
        ['not-a-quantity', 1, 12],
      ],
    ],
    ['a number split into a value and a key', 'a: { b: 20,014 }\n', [['not-a-quantity', 1, 11]]],
    ['an open quote that another one seems to close', "a: 'x\nb: 1 # don't\nc: 2\n", [['not-yaml', 1, 4]]],
    ['no key', ': 1\n', [['wrong-kind', 1, 1]]],
    ['not-a-number', 'a: .nan\n', [['not-a-quantity', 1, 4]]],
    ['infinity', 'a: 1\nb: -.inf\n', [['not-a-quantity', 2, 4]]],
    ['a number beyond all', 'a: 1e400\n', [['not-a-quantity', 1, 4]]],
    ['a hexadecimal number', 'a: 0x10\n', [['not-a-quantity', 1, 4]]],
    ['an octal number', 'a: [1, 0o17]\n', [['not-a-quantity', 1, 8]]],
    ['a NUL', 'a: 1\nb: \u0000\n', [['not-text', 2, 4]]],
    ['a carriage return alone', 'a: 1\rb: 2\n', [['not-text', 1, 5]]],
    ['an escape sequence', 'a: \u001b[31m\n', [['not-text', 1, 4]]],
    ['what was not UTF-8', 'a: 1\nb: \ufffd\n', [['not-text', 2, 4]]],
    ['a direction override', 'a: x\u202ey\n', [['not-text', 1, 5]]],
    ['half a character', 'a: \ud800\n', [['not-text', 1, 4]]],
    ['an escaped control character', 'a: "x\\e[2J"\n', [['not-text', 1, 4]]],
    ['brackets 40 deep', `a: ${'['.repeat(40)}${']'.repeat(40)}\n`, [['too-deep', 1, 36]]],
    [
      'sections 40 deep',
      Array.from({ length: 40 }, (_, at) => `${' '.repeat(at)}a:`).join('\n'),
      [['too-deep', 34, 34]],
    ],
    ['more than a million characters', `a: ${'x'.repeat(1_000_000)}`, [['file-too-large', undefined, undefined]]],
  ])('%s', (_, text, expected) => {
    expect(problemsOf(text)).toEqual(expected)
  })

  it('a repeated key names both places', () => {
    const result = readDocument('a: 1\nb: 2\na: 3\n', 'a.yaml')
    expect(result).toMatchObject({
      ok: false,
      problems: [{ where: { line: 3, path: 'a' }, found: expect.stringContaining('line 1, column 1') }],
    })
  })

  it('all that is wrong is reported together, twenty at most', () => {
    expect(problemsOf('a: .nan\nb: 0x1\na: 1\n').length).toBe(3)
    expect(problemsOf(Array.from({ length: 99 }, (_, at) => `k${at}: .nan`).join('\n')).length).toBe(20)
    expect(problemsOf(Array.from({ length: 99 }, (_, at) => `k${at}: @`).join('\n')).length).toBe(20)
  })
})

describe('a hostile document', () => {
  // Measured: half a million brackets took the process down inside the library, which no catch can stop.
  it.each([
    ['opening brackets', `a: ${'['.repeat(900_000)}`],
    ['opening braces', '{a: '.repeat(200_000)],
    ['list marks', '- '.repeat(400_000)],
    ['question marks', '? '.repeat(400_000)],
    ['ever deeper lines', Array.from({ length: 1300 }, (_, at) => `${' '.repeat(at)}a:`).join('\n')],
  ])('of %s is refused as too deep', (_, text) => {
    expect(problemsOf(text).map(([code]) => code)).toEqual(['too-deep'])
  })

  it('of a hundred thousand keys is read in the time of a long file', () => {
    const start = performance.now()
    expect(problemsOf(`${Array.from({ length: 100_000 }, (_, at) => `k${at}: 1`).join('\n')}\nk0: 2`)).toEqual([
      ['duplicate-key', 100_001, 1],
    ])
    expect(performance.now() - start).toBeLessThan(20_000)
  })

  it('of aliases that would grow without end is refused before it grows', () => {
    const lines = Array.from({ length: 25 }, (_, at) => `a${at + 1}: &a${at + 1} [*a${at}, *a${at}, *a${at}, *a${at}]`)
    expect(new Set(problemsOf(`a0: &a0 x\n${lines.join('\n')}`).map(([code]) => code))).toEqual(
      new Set(['alias-not-allowed']),
    )
  })

  it('of any text gives a document or problems with a place in it', () => {
    const pieces = fc.constantFrom(
      'a',
      ': ',
      '\n',
      '  ',
      '- ',
      '[',
      ']',
      '{',
      '}',
      ',',
      '"',
      "'",
      '#',
      '&',
      '*',
      '!',
      '|',
      '>',
      '\t',
      '1',
      '?',
      '---\n',
      '%',
      '@',
      '\\',
      '\r\n',
    )
    const texts = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(pieces, { maxLength: 30 }).map((all) => all.join('')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const result = readDocument(text, 'a.yaml')
        if (result.ok) return
        expect(result.problems.length).toBeGreaterThan(0)
        for (const { where, found, allowed } of result.problems) {
          if (where.line !== undefined) expect(where.line).toBeLessThanOrEqual(text.split('\n').length)
          expect(where.line ?? 1).toBeGreaterThan(0)
          expect(where.column ?? 1).toBeGreaterThan(0)
          expect(found).not.toBe('')
          expect(allowed).not.toBe('')
        }
      }),
      { numRuns: 3000 },
    )
  })
})

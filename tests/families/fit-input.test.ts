import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { edited, problemsOf } from '../tables/shipped-texts.ts'
import { tables, templateText } from './random-heads.ts'

type Change = [string | RegExp, string]

const problems = (...changes: Change[]) => {
  const text = changes.reduce((before, [from, to]) => {
    const after = before.replace(from, to)
    if (after === before) throw new Error(`nothing to change: ${from}`)
    return after
  }, templateText('parameters'))
  const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
  return read.ok ? [] : read.problems
}

const joined = (...lines: string[]): Change => [
  /fit:\n(?: {2}.*\n)+/,
  `fit:\n  catch: pin\n${lines.map((l) => `  ${l}\n`).join('')}`,
]
const code = (text: string) => joined('kind: iso-286', `code: ${text}`)
const limits = (bore: string, spigot: string) => {
  const [b, s] = [bore.split(' '), spigot.split(' ')]
  return joined(
    'kind: limits',
    `bore-smallest: ${b[0]}`,
    `bore-largest: ${b[1]}`,
    `spigot-smallest: ${s[0]}`,
    `spigot-largest: ${s[1]}`,
  )
}
const bigHead = (bore: number): Change[] => [
  ['diameter: 20', `diameter: ${bore}`],
  ['size: 46 ', 'size: 400 '],
  ['shoulder-diameter: 32', `shoulder-diameter: ${bore + 20}`],
]
const settings = (text: string): Change => ['work:\n', `settings:\n  fit: { ${text} }\nwork:\n`]

const refused: [string, Change[], string, string, string?][] = [
  [
    'a shaft hollow beyond its outside',
    [['spigot-length: 22', 'bore-through: 21\n  spigot-length: 22']],
    'contradiction',
    'arbor.bore-through',
  ],
  ['a bore as wide as the flats', [['diameter: 20', 'diameter: 46']], 'contradiction', 'bore.diameter'],
  ['a hub smaller than its bore', [['diameter: 20', 'diameter: 60']], 'contradiction', 'bore.diameter'],
  ['a fit code with a size in it and no such shaft', [code('25H7/q99')], 'wrong-kind', 'fit.code', 'write H7/r6'],
  ['a shaft that ISO 286 does not have', [code('H7/q9')], 'unknown-choice', 'fit.code', 'write r9'],
  ['a code without a shaft', [code('H7')], 'wrong-kind', 'fit.code'],
  ['a code that stands the wrong way round', [code('s6/H7')], 'wrong-kind', 'fit.code', 'write H7/s6'],
  ['t below the sizes it is for', [code('H7/t6')], 'not-in-table', 'fit.code', 'write u6'],
  ['a code beyond the sizes of its table', [...bigHead(190), code('H7/s6')], 'out-of-range', 'bore.diameter'],
  ['a matched bore beyond the sizes of its zone', bigHead(190), 'out-of-range', 'bore.diameter'],
  [
    'a class that the inch standard does not have',
    [joined('kind: ansi-b4-1', 'class: FN9')],
    'not-in-table',
    'fit.class',
    'write FN5',
  ],
  [
    'a class that is not defined at this size',
    [joined('kind: ansi-b4-1', 'class: FN3')],
    'not-in-table',
    'fit.class',
    'write FN2',
  ],
  [
    'a class beyond the sizes of the inch standard',
    [...bigHead(90), joined('kind: ansi-b4-1', 'class: FN2')],
    'out-of-range',
    'bore.diameter',
  ],
  [
    'a zone that no bore has',
    [joined('kind: matched', 'bore-zone: Q7')],
    'unknown-choice',
    'fit.bore-zone',
    'write R7',
  ],
  ['reversed limits of the bore', [limits('20.021 20', '20.03 20.04')], 'contradiction', 'fit.bore-smallest'],
  ['reversed limits of the spigot', [limits('20 20.021', '20.04 20.03')], 'contradiction', 'fit.spigot-smallest'],
  ['limits of another bore', [limits('20 20.021', '20.03 25.04')], 'contradiction', 'fit.spigot-largest'],
  [
    'an interference ratio in percent',
    [joined('kind: matched', 'interference-ratio: 0.15')],
    'out-of-range',
    'fit.interference-ratio',
  ],
  ['zero friction', [settings('friction-pressed: 0')], 'out-of-range', 'settings.fit.friction-pressed'],
  ['zero friction of a shrunk joint', [settings('friction-shrunk: 0')], 'out-of-range', 'settings.fit.friction-shrunk'],
  [
    'pressing with less friction than it holds by',
    [settings('friction-pressing: 0.05')],
    'contradiction',
    'settings.fit.friction-pressing',
  ],
  ['a safety below one', [settings('safety-factor: 0.5')], 'out-of-range', 'settings.fit.safety-factor'],
  ['a shop beyond any weather', [settings('ambient: 200 °C')], 'out-of-range', 'settings.fit.ambient'],
  ['a negative roughness', [joined('kind: matched', 'bore-roughness: -1 um')], 'out-of-range', 'fit.bore-roughness'],
  ['a pin as thick as the spigot', [joined('kind: matched', 'pin-diameter: 20')], 'contradiction', 'fit.pin-diameter'],
  ['a thread that is not in the table', [joined('kind: threaded', 'thread: M21')], 'not-in-table', 'fit.thread'],
  [
    'a thread of another size than the bore',
    [joined('kind: threaded', 'thread: M22')],
    'contradiction',
    'bore.diameter',
    'write 22 mm',
  ],
  [
    'an arbor of a material that is in no table',
    [['material: steel-1045', 'material: steel-1046']],
    'not-in-table',
    'arbor.material',
    'write steel-1045',
  ],
]

describe('a parameter set is refused that has', () => {
  it.each(refused)('%s', (_, changes, problem, path, remedy) => {
    const hit = problems(...changes).find((p) => p.where.path === path && p.code === problem)
    expect(hit).toBeDefined()
    expect(hit!.where.line).toBeGreaterThan(1)
    expect(hit!.allowed).not.toBe('')
    if (remedy !== undefined) expect(hit!.remedy).toBe(remedy)
  })

  it('as one problem where its code is wrong in several ways', () => {
    expect(problems(code('25H7/q99')).map((p) => p.found)).toEqual(['25H7/q99'])
    expect(problems(code('H7/q99')).map((p) => p.remedy)).toEqual(['write H7/r6'])
  })

  it('nothing of the sort', () => {
    expect(problems()).toEqual([])
  })
})

describe('a table of materials is refused that has', () => {
  it('a Poisson ratio of 0.7, which no material has', () => {
    const text = edited('materials', '"poissonRatio": 0.211', '"poissonRatio": 0.7')
    const [problem] = problemsOf({ materials: text })
    expect(problem?.code).toBe('out-of-range')
    expect(problem?.where.path).toMatch(/poissonRatio$/)
  })
})

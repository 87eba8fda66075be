import { describe, expect, it } from 'vitest'
import { families } from '../../src/families/families.ts'
import { chosenFigures } from '../../src/sweep/chosen-figures.ts'
import { axisOf, problemsOf, readHead } from './workbench.ts'

const shown = (vary: string) => axisOf(vary).points.map((point) => point.shown)

describe('the values of a sweep', () => {
  it('are as many as STEPS says, both ends among them, evenly spaced in the unit of the file', () => {
    expect(shown('slot.depth=8..12:5')).toEqual([8, 9, 10, 11, 12])
    expect(shown('slot.depth=12..8:3')).toEqual([12, 10, 8])
    expect(shown('slot.depth=8..9:4')).toEqual([8, 8.33333333, 8.66666667, 9])
    expect(shown('slot.depth=9..9:1')).toEqual([9])
    expect(shown('slot.ahead-of-centre=-2..2:3')).toEqual([-2, 0, 2])
    expect(shown('screws.count=1..3:3')).toEqual([1, 2, 3])
  })

  it('are read as the parameter itself is read, each end with its own unit if it likes', () => {
    expect(shown('slot.depth=1/4 in..12.5 mm:2')).toEqual([6.35, 12.5])
    expect(shown('face.angle=7 deg 30 min..8:2')).toEqual([7.5, 8])
    expect(shown('work.cutting-speed=30 m/min..100 ft/min:2')).toEqual([30, 30.48])
    expect(shown('screws.tightening-torque=5..64 in·lbf:2')).toEqual([5, 7.23102906])
    expect(axisOf('slot.depth=1/4 in..1/2 in:2').points.map((p) => p.value)).toEqual([6.35, 12.7])
    expect(axisOf('machine.power=0.75..1.5:2').points.map((p) => p.value)).toEqual([750, 1500])
  })

  it('are lists too, of choices, names, flags and numbers', () => {
    expect(shown('step.side=leading,trailing')).toEqual(['leading', 'trailing'])
    expect(shown('screws.thread=M5, M6')).toEqual(['M5', 'M6'])
    expect(axisOf('machine.reverse=true,false').points.map((p) => p.value)).toEqual([true, false])
    expect(shown('slot.depth=8,9.5,12')).toEqual([8, 9.5, 12])
    expect(shown('machine.speeds.0=60,80,100')).toEqual([60, 80, 100])
    expect(shown('screws.count=1,2')).toEqual([1, 2])
  })

  it('stand beside what the file has: given, a default, worked out, or nothing', () => {
    expect(axisOf('slot.depth=8..12:5').own?.shown).toBe(9.5)
    expect(axisOf('settings.hub.least=1.5..2:2').own?.shown).toBe(1.5)
    expect(axisOf('bit.swing=100..110:2').own?.shown).toBeCloseTo(106.653, 2)
    expect(axisOf('machine.headroom=300..400:2').own).toBeUndefined()
    expect(axisOf('settings.hub.least=1.5..2:2').unit).toBe('')
    expect(axisOf('slot.depth=8..12:5').unit).toBe('mm')
  })
})

describe('a --vary that means nothing is told so', () => {
  it.each([
    ['slot.dept=8..12:5', 'unknown-key', 'did you mean slot.depth?'],
    ['depth=8..12:5', 'unknown-key', 'did you mean slot.depth, or step.depth, or bore.depth?'],
    ['slot.beyond-axis=1..3:2', 'unknown-key', 'it goes with slot.runs: stopped'],
    ['__proto__.x=1..2:2', 'unknown-key', undefined],
    ['slot=1..2:2', 'wrong-kind', undefined],
    ['machine.speeds=100,200,300', 'wrong-kind', undefined],
    ['slot.runs=through,stopped', 'wrong-kind', 'make a file for each, and sweep those'],
    ['units=mm,in', 'wrong-kind', 'make a file for each, and sweep those'],
    ['slot.depth=8..8:3', 'bad-command', 'write slot.depth=8..8:1, or another end'],
    ['slot.depth=8..12:1', 'bad-command', 'write slot.depth=8..12:2'],
    ['slot.depth=8..12:0', 'bad-command', expect.stringContaining('slot.depth=8..12:5')],
    ['slot.depth=8..12:-3', 'bad-command', expect.stringContaining('the number of values')],
    ['slot.depth=8..12:0.5', 'bad-command', expect.stringContaining('slot.depth=8..12:9')],
    ['slot.depth=8..12:10001', 'bad-command', expect.stringContaining('the number of values')],
    ['slot.depth=8..12', 'bad-command', expect.stringContaining('slot.depth=8..12:5')],
    ['slot.depth=8...12:5', 'bad-command', expect.stringContaining('two dots')],
    ['slot.depth=8-12:5', 'not-a-quantity', expect.stringContaining('slot.depth=FROM..TO:STEPS')],
    ['slot.depth=9,5', 'bad-command', expect.stringContaining('9.5')],
    ['slot.depth=8..9,5:4', 'not-a-quantity', 'write 9.5, with a point'],
    ['slot.depth=8,9,8', 'bad-command', 'write each value once'],
    ['slot.depth=8..8.0000000001:3', 'bad-command', expect.anything()],
    ['slot.depth=8 kg..12:5', 'wrong-unit', 'that is a unit of mass'],
    ['slot.depth=NaN..12:5', 'not-a-quantity', undefined],
    ['face.angle=5..45:5', 'out-of-range', undefined],
    ['slot.depth=0..9:5', 'out-of-range', undefined],
    ['screws.count=1..4:3', 'wrong-kind', 'write screws.count=1..4:4'],
    ['screws.count=1..2.5:3', 'wrong-kind', undefined],
    ['step.side=leadin,trailing', 'unknown-choice', 'write leading'],
    ['screws.point=flat..cup:2', 'wrong-kind', expect.stringContaining('screws.point=A,B')],
    ['machine.reverse=yes', 'wrong-kind', 'write true'],
    ['slot.depth', 'bad-command', expect.anything()],
    ['=3', 'bad-command', expect.anything()],
    ['slot.depth=', 'bad-command', expect.anything()],
    ['slot.depth=8,,9', 'bad-command', expect.anything()],
    ['slot.depth=..9:3', 'bad-command', undefined],
  ])('%s', (vary, code, remedy) => {
    const [problem, ...others] = problemsOf(vary)
    expect(others).toEqual([])
    expect(problem).toMatchObject({ code, where: { file: '(command line)' } })
    expect(problem?.allowed).not.toBe('')
    if (remedy === undefined) expect(problem?.remedy ?? '').not.toMatch(/undefined|NaN/)
    else expect(problem?.remedy).toEqual(remedy)
  })

  it('as are none, three, the same one twice, and more sets than a spreadsheet bears', () => {
    expect(problemsOf()).toMatchObject([{ found: 'no --vary' }])
    expect(problemsOf('slot.depth=8..9:2', 'bore.depth=8..9:2', 'step.depth=8..9:2')).toMatchObject([
      { found: '3 times --vary', allowed: 'one or two parameters to vary' },
    ])
    expect(problemsOf('slot.depth=8..9:2', 'slot.depth=8..10:2')).toMatchObject([{ found: 'the same parameter twice' }])
    expect(problemsOf('slot.depth=8..9:201', 'bore.depth=20..30:100')).toMatchObject([{ found: '20100 sets' }])
  })

  it('and figures that are not known, or are named twice', () => {
    const { figures } = readHead().family
    const of = (ids: string) => chosenFigures(ids, [], figures)
    const problemOf = (result: ReturnType<typeof of>) => (result.ok ? undefined : result.problems[0])!
    expect(of('swin,swing,swing')).toMatchObject({
      ok: false,
      problems: [
        { code: 'unknown-choice', found: 'swin', remedy: 'did you mean swing?' },
        { code: 'bad-command', found: 'swing twice' },
      ],
    })
    const beginnings = problemOf(of('xyzzy')).allowed.split(', ')
    const ids = figures.map(({ id }) => id)
    for (const name of beginnings) {
      expect(name.endsWith('.…') ? ids.some((id) => id.startsWith(name.slice(0, -1))) : ids.includes(name)).toBe(true)
    }
    expect(
      of(
        figures
          .slice(0, 13)
          .map(({ id }) => id)
          .join(','),
      ),
    ).toMatchObject({ ok: false })
    expect(of('speed.advised, swing')).toMatchObject({ ok: true, value: [{ id: 'speed.advised' }, { id: 'swing' }] })
  })
})

it('every family names figures for its sweeps that it has', () => {
  for (const { sweepFigures, figures } of families) {
    expect(sweepFigures.length).toBeGreaterThan(0)
    expect(chosenFigures(undefined, sweepFigures, figures)).toMatchObject({ ok: true })
  }
})

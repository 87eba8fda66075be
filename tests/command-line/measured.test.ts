import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { dimensionsIn } from '../outside/dxf-dimensions.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { headFile, typed } from './workshop.ts'

const folder = temporaryFolder()

it('a size beyond its limits is told with them: a spigot is turned to the bore as measured, not to the nominal size', async () => {
  headFile(folder())
  const values = 'body:\n  bore.diameter: 20.014\narbor:\n  spigot.diameter: 20.005\n'
  writeFileSync(join(folder(), 'values.yaml'), values)
  const { exit, out } = await typed(folder(), ['measured', 'head.yaml', 'values.yaml', '--any-revision'])
  expect(exit).toBe(1)
  expect(out).toContain('  arbor spigot.diameter: too small, 20.005 mm for 20.039 to 20.05\n')
})

it('from template to package to filled sheet to as-made report and drawing, as the README goes', async () => {
  const home = folder()
  const ran = async (...args: string[]) => {
    const { exit, err, out } = await typed(home, args)
    expect({ args, err }).toEqual({ args, err: '' })
    return { exit, out }
  }
  await ran('new', 'fly-cutter-head', 'my-head.yaml')
  expect((await ran('check', 'my-head.yaml')).exit).toBe(0)
  await ran('make', 'my-head.yaml', '--out', 'my-head')
  // The sheet of the package, filled in and saved with semicolons and decimal commas.
  const sheet = readFileSync(join(home, 'my-head', 'inspection.csv'), 'utf8')
  const read = { 'slot.depth': '9,84', 'bore.diameter': '20,03' } as Record<string, string>
  const filled = sheet.split('\r\n').map((line) => {
    const cells = [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map((m) => m[1]!)
    cells.length = sheet.split('\r\n')[0]!.split(',').length
    const size = cells[2] ?? ''
    return line === '' ? '' : [...cells.slice(0, -1), read[size] ?? (size === 'size' ? 'measured' : '')].join(';')
  })
  writeFileSync(join(home, 'measured.csv'), `\uFEFF${filled.join('\r\n')}`)
  const before = readFileSync(join(home, 'my-head', 'report.json'), 'utf8')
  const { exit, out } = await ran('measured', 'my-head.yaml', 'measured.csv')
  expect(exit).toBe(0)
  expect(out).toContain('2 sizes measured, 2 outside their limits')
  expect(readFileSync(join(home, 'my-head', 'report.json'), 'utf8')).toBe(before)
  const made = (name: string) => readFileSync(join(home, 'my-head-as-made', name), 'utf8')
  const drawn = new Map(dimensionsIn(made('as-made.dxf')).map((d) => [d.name, d.value]))
  expect(drawn.get('slot.depth')).toBeCloseTo(9.84, 9)
  expect(drawn.get('bore.diameter')).toBeCloseTo(20.03, 9)
  expect(drawn.get('step.depth')).toBeCloseTo(10.5, 9)
  expect(made('as-made.md')).toContain('20.055 mm to 20.066 mm for a bore of 20.03 mm')
})

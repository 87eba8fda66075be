import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { typed } from '../../command-line/workshop.ts'
import { admeshFaults } from '../admesh.ts'
import { dimensionsIn, measured } from '../dxf-dimensions.ts'
import { needs } from '../installed.ts'

/** A size as report.json lists it. */
interface Listed {
  readonly part: string
  readonly id: string
  readonly value: number
  readonly unit: string
}

let folder = ''
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'made-'))
  for (const name of ['parameters', 'parameters-inch']) {
    copyFileSync(templateFile(name), join(folder, `${name}.yaml`))
    const { exit, err } = await typed(folder, ['make', `${name}.yaml`])
    if (exit !== 0) throw new Error(err)
  }
})
afterAll(() => rmSync(folder, { recursive: true }))

const templateFile = (name: string) => new URL(`../../../templates/fly-cutter-head/${name}.yaml`, import.meta.url)

describe.each([
  ['parameters', 'mm'],
  ['parameters-inch', 'in'],
] as const)('what make writes for %s', (name, unit) => {
  const file = (written: string) => join(folder, name, written)
  const files = (ending: string) => readdirSync(join(folder, name)).filter((f) => f.endsWith(ending))
  const sizesIn = (written: string) => dimensionsIn(readFileSync(file(written), 'utf8'))
  const report = () => JSON.parse(readFileSync(file('report.json'), 'utf8')) as { readonly dimensions: Listed[] }

  it('has every DIMENSION of every drawing as long as its points lie apart, and as report.json lists it', () => {
    const { dimensions } = report()
    const drawn: string[] = []
    for (const dxf of files('.dxf')) {
      const part = dxf.replace('.dxf', '')
      for (const d of sizesIn(dxf)) {
        const which = `${part} ${d.name}`
        drawn.push(which)
        // Both points are written to six places.
        expect(Math.abs(measured(d) - d.value), which).toBeLessThan(2.5e-6)
        const listed = dimensions.filter((l) => l.part === part && l.id === d.name)
        expect(
          listed.map((l) => l.unit),
          which,
        ).toEqual([d.type === 2 ? '°' : unit])
        const inFile = d.type === 2 ? (listed[0]!.value * Math.PI) / 180 : listed[0]!.value
        expect(d.value, which).toBeCloseTo(inFile, 6)
      }
    }
    for (const part of ['body', 'arbor', 'assembly']) {
      const wanted = dimensions.filter((l) => l.part === part).map((l) => `${part} ${l.id}`)
      expect(wanted.length).toBeGreaterThan(5)
      expect(drawn.filter((d) => d.startsWith(`${part} `)).sort()).toEqual(wanted.sort())
    }
  })

  it('has no fault in any STL by admesh: the parts, all in place, and the mock-up (Debian admesh)', (test) => {
    needs(test, 'admesh')
    const solids = files('.stl')
    expect(solids.sort()).toEqual(['arbor.stl', 'assembly.stl', 'bit.stl', 'body.stl', 'mock-up.stl'])
    for (const stl of solids) expect(admeshFaults(file(stl)), stl).toEqual([])
  })
})

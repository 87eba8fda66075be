import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { box, cellOf, rod } from '../../src/geometry/cell.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import { solidOf } from '../../src/part/part.ts'
import { flatsFor } from '../../src/solid/facets.ts'
import { jscadSolid, jscadVolume } from '../../src/solid/jscad.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { readStl, stlFaults, stlOf } from '../../src/solid/stl.ts'
import { volumeOf } from '../../src/solid/volume.ts'
import { headFrom } from '../families/random-heads.ts'
import { admeshFaults } from '../outside/admesh.ts'
import { needs } from '../outside/installed.ts'
import { jscadBooleanBody } from './jscad-booleans.ts'

const names = { wall: 'wall', start: 'start', end: 'end' }
const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const

function meshed(solid: Parameters<typeof meshOf>[0], tolerance = 0.02) {
  const mesh = meshOf(solid, tolerance, 'test')
  if (!mesh.ok) throw new Error(JSON.stringify(mesh.problems))
  return mesh.value
}

describe('flats of a round face', () => {
  it('follow from radius and chord tolerance: their sagitta is within it, with four fewer it is not', () => {
    for (const radius of [0.5, 2.5, 10, 60]) {
      for (const tolerance of [0.005, 0.02, 0.1]) {
        const n = flatsFor(radius, tolerance)
        expect(n % 4).toBe(0)
        expect(radius * (1 - Math.cos(Math.PI / n))).toBeLessThanOrEqual(tolerance + 1e-12)
        if (n > 8) expect(radius * (1 - Math.cos(Math.PI / (n - 4)))).toBeGreaterThan(tolerance)
      }
    }
  })
  it('have their corners on the round face', () => {
    const { points } = meshed({ stock: [rod(names, [0, 0, 0], [0, 0, 1], 30, 12)], cuts: [] })
    for (let i = 0; i < points.length; i += 3) expect(Math.hypot(points[i]!, points[i + 1]!)).toBeCloseTo(12, 6)
  })
})

describe('the volume of round bodies', () => {
  it('is that of the formula, not of the flats', () => {
    const cone = cellOf(
      coneThrough('cone', [0, 0, 0], 10, [0, 0, 20], 4),
      plane('below', [0, 0, 0], [0, 0, -1]),
      plane('above', [0, 0, 20], [0, 0, 1]),
    )
    const frustum = ((Math.PI * 20) / 3) * (100 + 40 + 16)
    expect(volumeOf({ stock: [cone], cuts: [] }).volume / frustum).toBeCloseTo(1, 6)
    const tube = {
      stock: [rod(names, [0, 0, 0], [0, 0, 1], 30, 12)],
      cuts: [cellOf(cylinder('bore', [0, 0, 0], [0, 0, 1], 7))],
    }
    expect(volumeOf(tube).volume / (Math.PI * 30 * (144 - 49))).toBeCloseTo(1, 6)
  })
  it('of two equal cylinders that cross is 16/3·r³ (Steinmetz solid)', () => {
    const both = cellOf(cylinder('a', [0, 0, 0], [1, 0, 0], 9), cylinder('b', [0, 0, 0], [0, 1, 0], 9))
    const inBox = cellOf(...both.surfaces, ...box(sides, [-20, -20, -20], [20, 20, 20]).surfaces)
    expect(volumeOf({ stock: [inBox], cuts: [] }).volume / ((16 / 3) * 9 ** 3)).toBeCloseTo(1, 4)
  })
  it('of a bar cut aslant has its centroid where the integral has it', () => {
    // z̄ of a cylinder under a plane z = h + x·tan a: h/2 + (r²·tan² a)/(8·h); x̄ = r²·tan a/(4·h).
    const [r, h, slope] = [8, 25, Math.tan(0.2)]
    const cell = cellOf(
      cylinder('bar', [0, 0, 0], [0, 0, 1], r),
      plane('below', [0, 0, 0], [0, 0, -1]),
      plane('aslant', [0, 0, h], [-slope, 0, 1]),
    )
    const { volume, centroid } = volumeOf({ stock: [cell], cuts: [] })
    expect(volume / (Math.PI * r * r * h)).toBeCloseTo(1, 6)
    expect(centroid[0]).toBeCloseTo((r * r * slope) / (4 * h), 4)
    expect(centroid[2]).toBeCloseTo(h / 2 + (r * r * slope * slope) / (8 * h), 4)
  })
})

describe('the JSCAD solid of the demo head', () => {
  const design = headFrom('parameters')
  it('has the volume that JSCAD’s own booleans give for the same cuts', () => {
    const theirs = jscadVolume(jscadBooleanBody())
    const ours = jscadVolume(jscadSolid(meshed(solidOf(design.part('body')))))
    expect(ours / theirs).toBeCloseTo(1, 3)
  })
  it('lies along X to the bit’s side and turns the way it is told: the tip leads on −Y when clockwise', () => {
    const tip = (d: typeof design) => d.layout.bit.tip
    expect(tip(design)[0]).toBeGreaterThan(0)
    expect(tip(design)[1]).toBeLessThan(0)
    expect(tip(headFrom('parameters', ['rotation: clockwise', 'rotation: anticlockwise']))[1]).toBeGreaterThan(0)
  })
})

describe('a binary STL', () => {
  const mesh = meshed(solidOf(headFrom('parameters').part('body')))
  const made = stlOf([mesh], 'body', 'cutterwright body')
  const bytes = made.ok ? made.value : new Uint8Array()
  it('is an 80-byte header, a count and 50 bytes a facet (binary STL format pages, FF-1 of the check values)', () => {
    expect(bytes.length).toBe(84 + 50 * (mesh.triangles.length / 3))
    expect(new TextDecoder().decode(bytes.subarray(0, 17))).toBe('cutterwright body')
    expect(() => stlOf([mesh], 'body', 'solid body')).toThrow(RangeError)
  })
  it('has its corners anticlockwise seen from outside: its volume is positive', () => {
    const volume = readStl(bytes).reduce((sum, [a, b, c]) => {
      const cross = [b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2], b[0] * c[1] - b[1] * c[0]]
      return sum + (a[0] * cross[0]! + a[1] * cross[1]! + a[2] * cross[2]!) / 6
    }, 0)
    expect(volume / jscadVolume(jscadSolid(mesh))).toBeCloseTo(1, 4)
  })
  it('with a facet missing is not taken for closed', () => {
    const holed = bytes.slice(0, bytes.length - 50)
    new DataView(holed.buffer).setUint32(80, mesh.triangles.length / 3 - 1, true)
    expect(stlFaults(holed).open).toBe(3)
  })
})

describe('admesh', () => {
  it.for(['parameters', 'parameters-inch'] as const)('finds no fault in any STL of %s', (name, test) => {
    needs(test, 'admesh')
    const folder = mkdtempSync(join(tmpdir(), 'stl-'))
    const design = headFrom(name)
    for (const { part } of design.scene.parts) {
      const stl = stlOf([meshed(solidOf(part))], part.id)
      if (!stl.ok) throw new Error(part.id)
      const file = join(folder, `${part.id}.stl`)
      writeFileSync(file, stl.value)
      expect(admeshFaults(file), part.id).toEqual([])
    }
  })
})

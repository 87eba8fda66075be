import { readFileSync } from 'node:fs'
import type { ManifoldToplevel } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { isInside, solidIntervals } from '../../src/geometry/solid.ts'
import { along, unit, type Vec3 } from '../../src/geometry/vector.ts'
import { loadTables } from '../../src/package/load-tables.ts'
import { type Part, solidOf } from '../../src/part/part.ts'
import { Walls } from '../../src/part/wall.ts'
import { jscadSolid, jscadVolume } from '../../src/solid/jscad.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { volumeOf } from '../../src/solid/volume.ts'
import { kernelCell, kernelSolid, loadKernel } from './manifold-cell.ts'
import { boringBar, turnedArbor } from './sample-parts.ts'

/** Every part, of whatever kind, keeps to one contract: rays, volume, walls and mesh read the same surfaces. */
const parts: Part[] = [turnedArbor, boringBar, ...demoParts()]

function demoParts(): Part[] {
  const tables = loadTables()
  if (!tables.ok) throw new Error('tables')
  return ['parameters', 'parameters-inch'].flatMap((name) => {
    const file = new URL(`../../templates/fly-cutter-head/${name}.yaml`, import.meta.url)
    const read = readDesign(flyCutterHead, readFileSync(file, 'utf8'), name, tables.value)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    return read.value.design.scene.parts
      .map(({ part }) => part)
      .filter(({ id }) => ['body', 'arbor', 'bit'].includes(id))
      .map((part) => ({ ...part, label: `${name} ${part.label}` }))
  })
}

let kernel: ManifoldToplevel
beforeAll(async () => {
  kernel = await loadKernel()
})

const tolerance = 0.02

describe.each(parts.map((part) => ({ name: part.label, part })))('$name keeps the contract', ({ part }) => {
  const solid = solidOf(part)
  const mesh = () => {
    const made = meshOf(solid, tolerance, part.id)
    if (!made.ok) throw new Error(JSON.stringify(made.problems))
    return made.value
  }

  it('has a mesh that an independent kernel takes for a closed manifold of the same volume', () => {
    const judged = kernelSolid(kernel, mesh())
    expect(judged.status()).toBe('NoError')
    expect(judged.volume()).toBeCloseTo(jscadVolume(jscadSolid(mesh())), 1)
    // Round faces are made of flats: the mesh may differ by the chord tolerance over its surface, no more.
    expect(Math.abs(judged.volume() - volumeOf(solid).volume)).toBeLessThan(tolerance * judged.surfaceArea())
  })

  it('has the volume that the kernel finds from the same cells, between flats inside and flats outside', () => {
    const build = (flatsOfStock: 'inside' | 'outside', flatsOfCuts: 'inside' | 'outside') => {
      const { Manifold } = kernel
      const stock = Manifold.union(solid.stock.map((c) => kernelCell(kernel, c, flatsOfStock)))
      if (solid.cuts.length === 0) return stock.volume()
      return stock.subtract(Manifold.union(solid.cuts.map((c) => kernelCell(kernel, c, flatsOfCuts)))).volume()
    }
    const { volume } = volumeOf(solid)
    expect(volume).toBeGreaterThanOrEqual(build('inside', 'outside') * (1 - 1e-6))
    expect(volume).toBeLessThanOrEqual(build('outside', 'inside') * (1 + 1e-6))
  })

  it('is pierced by rays where its mesh is', () => {
    const { points, triangles } = mesh()
    const low: number[] = [Infinity, Infinity, Infinity]
    const high: number[] = [-Infinity, -Infinity, -Infinity]
    points.forEach((v, i) => {
      low[i % 3] = Math.min(low[i % 3]!, v)
      high[i % 3] = Math.max(high[i % 3]!, v)
    })
    const random = sequence(7)
    let compared = 0
    for (let n = 0; n < 150; n++) {
      const origin = [0, 1, 2].map((k) => low[k]! + random() * (high[k]! - low[k]!)) as unknown as Vec3
      const direction = unit([random() - 0.5, random() - 0.5, random() - 0.5])
      const exact = solidIntervals(solid, { origin, direction })
      const metal = exact.reduce((sum, i) => sum + i.end - i.start, 0)
      const meshed = lengthInMesh(points, triangles, origin, direction)
      // A ray that grazes a round face may run in the gap between face and flats for a good way: at most 2·√(2·r·t).
      const graze = 2 * Math.sqrt(2 * 30 * tolerance)
      expect(Math.abs(metal - meshed)).toBeLessThan(graze)
      compared += Math.abs(metal - meshed) < 0.25 ? 1 : 0
      for (const { start, end } of exact) {
        expect(isInside(solid, along(origin, direction, (start + end) / 2))).toBe(true)
      }
    }
    expect(compared).toBeGreaterThan(140)
  })

  const walls = new Walls(part)
  if (walls.pairs().some(([, b]) => b !== 'outside'))
    it('has walls that the kernel finds too, between flats inside and flats outside', () => {
      const cellsOf = (id: string, flats: 'inside' | 'outside') => {
        const { Manifold } = kernel
        const stock = Manifold.union(solid.stock.map((c) => kernelCell(kernel, c, flats)))
        const cut = part.cuts.find((f) => f.id === id)!
        return Manifold.union(cut.cells.map((c) => kernelCell(kernel, c, flats))).intersect(stock)
      }
      for (const [a, b] of walls.pairs()) {
        if (b === 'outside') continue
        const wall = walls.between(a, b)
        const near = cellsOf(a, 'outside').minGap(cellsOf(b, 'outside'), 100)
        const far = cellsOf(a, 'inside').minGap(cellsOf(b, 'inside'), 100)
        expect(wall, `${a}/${b}`).toBeDefined()
        // The kernel works in single precision.
        expect(wall!.distance, `${a}/${b}`).toBeGreaterThan(near - 1e-4)
        expect(wall!.distance, `${a}/${b}`).toBeLessThan(far + 1e-4)
      }
    })
})

/** Length of a ray inside a closed mesh: crossings by Möller and Trumbore, summed with their sign. */
function lengthInMesh(points: Float64Array, triangles: Uint32Array, origin: Vec3, d: Vec3): number {
  let total = 0
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const i = triangles[t + k]! * 3
      return [points[i]! - origin[0], points[i + 1]! - origin[1], points[i + 2]! - origin[2]]
    }) as [number[], number[], number[]]
    const e1 = [b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!]
    const e2 = [c[0]! - a[0]!, c[1]! - a[1]!, c[2]! - a[2]!]
    const p = [d[1] * e2[2]! - d[2] * e2[1]!, d[2] * e2[0]! - d[0] * e2[2]!, d[0] * e2[1]! - d[1] * e2[0]!]
    const det = e1[0]! * p[0]! + e1[1]! * p[1]! + e1[2]! * p[2]!
    if (det === 0) continue
    const u = -(a[0]! * p[0]! + a[1]! * p[1]! + a[2]! * p[2]!) / det
    if (u < 0 || u > 1) continue
    const q = [
      -(a[1]! * e1[2]! - a[2]! * e1[1]!),
      -(a[2]! * e1[0]! - a[0]! * e1[2]!),
      -(a[0]! * e1[1]! - a[1]! * e1[0]!),
    ]
    const v = (d[0] * q[0]! + d[1] * q[1]! + d[2] * q[2]!) / det
    if (v < 0 || u + v > 1) continue
    const at = (e2[0]! * q[0]! + e2[1]! * q[1]! + e2[2]! * q[2]!) / det
    // Leaving through a face that looks along the ray (det < 0) ends a stretch, entering begins one.
    total += det < 0 ? at : -at
  }
  return total
}

/** A repeatable sequence of numbers from 0 to 1 (mulberry32). */
function sequence(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

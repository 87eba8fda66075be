import { describe, expect, it } from 'vitest'
import { arcLength, pointAt } from '../../src/edges/curve.ts'
import { type Edge, edgesOf, outwards } from '../../src/edges/edges-of.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import { cross, dot, subtract, unit, type Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { forRandomHeads } from '../families/random-heads.ts'
import { boringBar, turnedArbor } from '../part/sample-parts.ts'

type Segment = readonly [Vec3, Vec3]
const chord = 0.004

/**
 * Edges of the mesh at which flats meet at more than `least` rad, and all of them at more than 0.02. Round faces of 1 mm radius
 * and up are made of flats that turn by less than 0.2 rad at this chord.
 */
function cornersOf(s: Solid, least: number): Segment[] {
  const mesh = meshOf(s, chord, 'part')
  if (!mesh.ok) throw new Error(JSON.stringify(mesh.problems))
  const { points, triangles } = mesh.value
  const at = (i: number): Vec3 => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]
  const beside = new Map<string, Vec3[]>()
  const out: Segment[] = []
  for (let t = 0; t < triangles.length; t += 3) {
    const ids = [0, 1, 2].map((k) => triangles[t + k]!) as [number, number, number]
    const [a, b, c] = ids.map(at) as [Vec3, Vec3, Vec3]
    const n = cross(subtract(b, a), subtract(c, a))
    // Slivers have no direction to speak of.
    if (Math.hypot(...n) < 1e-4) continue
    ids.forEach((i, k) => {
      const j = ids[(k + 1) % 3]!
      const key = `${Math.min(i, j)} ${Math.max(i, j)}`
      const known = beside.get(key) ?? []
      known.push(unit(n))
      beside.set(key, known)
      if (known.length === 2 && dot(known[0]!, known[1]!) < Math.cos(least)) out.push([at(i), at(j)])
    })
  }
  return out
}

function pointsOf(edges: readonly Edge[], spacing: number): Vec3[] {
  return edges.flatMap(({ curve, from, to }) => {
    const n = Math.max(2, Math.ceil(arcLength(curve, from, to) / spacing))
    return Array.from({ length: n + 1 }, (_, i) => pointAt(curve, from + ((to - from) * i) / n))
  })
}

function farFrom(points: readonly Vec3[], segments: readonly Segment[], reach: number): Vec3[] {
  return points.filter(
    (p) =>
      !segments.some(([a, b]) => {
        if (Math.min(a[0], b[0]) - reach > p[0] || Math.max(a[0], b[0]) + reach < p[0]) return false
        const [d, v] = [subtract(b, a), subtract(p, a)]
        const size = dot(d, d)
        const t = size > 0 ? Math.max(0, Math.min(1, dot(v, d) / size)) : 0
        return Math.hypot(v[0] - t * d[0], v[1] - t * d[1], v[2] - t * d[2]) < reach
      }),
  )
}

const segmentsOf = (edges: readonly Edge[]): Segment[] =>
  edges.flatMap((e) => {
    const points = pointsOf([e], 0.3)
    return points.slice(1).map((p, i): Segment => [points[i]!, p])
  })

function expectSameCorners(s: Solid): void {
  const edges = edgesOf(s)
  const corners = cornersOf(s, 0.45)
  const middles = corners.flatMap(([a, b]): Vec3[] =>
    [0.25, 0.5, 0.75].map((k) => [a[0] + k * (b[0] - a[0]), a[1] + k * (b[1] - a[1]), a[2] + k * (b[2] - a[2])]),
  )
  expect(farFrom(middles, segmentsOf(edges), 0.05)).toEqual([])
  const sharp = edges.filter(({ curve, from, to, faces }) =>
    [0.01, 0.25, 0.5, 0.75, 0.99].every((k) => {
      const p = pointAt(curve, from + k * (to - from))
      return dot(outwards(faces[0], p), outwards(faces[1], p)) < Math.cos(0.7)
    }),
  )
  expect(farFrom(pointsOf(sharp, 1), cornersOf(s, 0.3), 0.05)).toEqual([])
}

describe('the exact edges', () => {
  it('are the corners of the mesh, within 0.05 mm both ways', () => {
    for (const part of [turnedArbor, boringBar]) expectSameCorners(solidOf(part))
    forRandomHeads(8, (design) => {
      expectSameCorners(solidOf(design.scene.parts[0]!.part))
    })
  })
})

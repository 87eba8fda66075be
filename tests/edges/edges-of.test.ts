import { describe, expect, it } from 'vitest'
import { arcLength, isClosed, pointAt } from '../../src/edges/curve.ts'
import { type Edge, edgesOf } from '../../src/edges/edges-of.ts'
import { cellFrom, cellOf } from '../../src/geometry/cell.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import { isInside } from '../../src/geometry/solid.ts'
import { coneThrough, cylinder, depthOf, outwardAt, plane } from '../../src/geometry/surface.ts'
import { add, along, distance, dot, unit, type Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads } from '../families/random-heads.ts'
import { boringBar, turnedArbor } from '../part/sample-parts.ts'
import { bar, block, hexagon, solid, up } from './solids.ts'

const total = (edges: readonly Edge[]) => edges.reduce((sum, e) => sum + arcLength(e.curve, e.from, e.to), 0)
const kinds = (edges: readonly Edge[]) => edges.map((e) => e.curve.kind).join(' ')
const between = (edges: readonly Edge[], a: string, b: string) =>
  edges.filter(({ faces }) => [`${a}|${b}`, `${b}|${a}`].includes(faces.map((f) => f.surface.name).join('|')))

describe('the edges of a solid', () => {
  it('of a block are twelve lines', () => {
    const edges = edgesOf(solid([block([0, 0, 0], [2, 3, 4])]))
    expect(edges).toHaveLength(12)
    expect(total(edges)).toBeCloseTo(36, 9)
    expect(edges.every((e) => e.curve.kind === 'line' && !e.smooth)).toBe(true)
  })

  it('of a hexagonal bar are eighteen lines', () => {
    const edges = edgesOf(solid([hexagon]))
    expect(edges).toHaveLength(18)
    // Side 24/√3, twice round, and six lines of 10 mm.
    expect(total(edges)).toBeCloseTo(12 * (24 / Math.sqrt(3)) + 60, 9)
  })

  it('of a round bar are its two end circles, whole', () => {
    const edges = edgesOf(solid([bar([1, 2, 3], unit([1, 1, 0]), 20, 5)]))
    expect(kinds(edges)).toBe('ellipse ellipse')
    for (const e of edges) expect([e.from, e.to]).toEqual([0, 2 * Math.PI])
    expect(total(edges)).toBeCloseTo(20 * Math.PI, 9)
  })

  it('leave out what two cells share: blocks side by side have the edges of one', () => {
    const pair = edgesOf(solid([block([0, 0, 0], [2, 3, 4]), block([2, 0, 0], [5, 3, 4])]))
    expect(pair).toHaveLength(12)
    expect(total(pair)).toBeCloseTo(4 * (5 + 3 + 4), 9)
    const overlapping = edgesOf(solid([block([0, 0, 0], [3, 3, 4]), block([2, 0, 0], [5, 3, 4])]))
    expect(total(overlapping)).toBeCloseTo(48, 9)
  })

  it('leave out the seam between two cuts with one floor', () => {
    const cuts = [block([2, -1, 5], [4, 11, 12]), block([4, 3, 5], [8, 6, 12])]
    const edges = edgesOf(solid([block([0, 0, 0], [10, 10, 10])], cuts))
    // On the floor z = 5: no line at x = 4 from y = 3 to 6, where the pocket runs into the slot.
    const seam = edges.filter(({ curve, from, to }) => {
      const p = pointAt(curve, (from + to) / 2)
      return Math.abs(p[0] - 4) < 1e-9 && Math.abs(p[2] - 5) < 1e-9 && p[1] > 3.1 && p[1] < 5.9
    })
    expect(seam).toHaveLength(0)
    // Block 120 less two slot mouths of 2; the slot's two ends, 2·5 + 2 each; its long lines, 10 or 10 − 3; the pocket's
    // mouth and floor 4 + 4 + 3 each and four upright lines.
    expect(total(edges)).toBeCloseTo(120 - 4 + 24 + 2 * (10 + 7) + 2 * 11 + 4 * 5, 9)
  })

  it('of a turned arbor are circles, with none where stock cells merely touch', () => {
    const edges = edgesOf(solidOf(turnedArbor))
    expect(edges).toHaveLength(11)
    expect(between(edges, 'seat', 'spigot')).toHaveLength(1)
    expect(between(edges, 'seat', 'shoulder')).toHaveLength(1)
    expect(between(edges, 'taper', 'top')).toHaveLength(1)
    // A hole of 2.5 mm radius through a taper: two curves a little longer than its circumference.
    const mouths = between(edges, 'cross hole', 'taper')
    expect(mouths).toHaveLength(2)
    expect(total(mouths)).toBeGreaterThan(10 * Math.PI)
    expect(total(mouths)).toBeLessThan(10.3 * Math.PI)
    const circles = [9, 9, 8, 3.1, 17, 17, 12.1, 9.3, 3.1].reduce((sum, r) => sum + 2 * Math.PI * r, 0)
    expect(total(edges) - total(mouths)).toBeCloseTo(circles, 8)
  })

  it('are smooth where a round end runs into straight walls', () => {
    // A slot 6 wide and 4 deep, round at x = 10.
    const slot = [
      cellOf(
        plane('a', [0, 3, 0], [0, 1, 0]),
        plane('b', [0, -3, 0], [0, -1, 0]),
        plane('end', [10, 0, 0], [1, 0, 0]),
        plane('floor', [0, 0, 6], [0, 0, -1]),
      ),
      cellOf(cylinder('round', [10, 0, 0], up, 3), plane('floor', [0, 0, 6], [0, 0, -1])),
    ]
    const edges = edgesOf(solid([block([0, -8, 0], [20, 8, 10])], slot))
    const smooth = edges.filter((e) => e.smooth)
    expect(smooth).toHaveLength(2)
    for (const e of smooth) {
      expect(e.faces.map((f) => f.surface.name)).toContain('round')
      expect(arcLength(e.curve, e.from, e.to)).toBeCloseTo(4, 9)
    }
    const arcs = edges.filter((e) => e.curve.kind === 'ellipse')
    expect(arcs).toHaveLength(2)
    expect(total(arcs)).toBeCloseTo(6 * Math.PI, 9)
  })

  it('tell what they are between and on which side the air is', () => {
    const edges = edgesOf(solid([block([-10, -10, 0], [10, 10, 10])], [cellOf(cylinder('bore', [0, 0, 0], up, 4))]))
    const mouths = edges.filter((e) => e.curve.kind === 'ellipse')
    expect(mouths).toHaveLength(2)
    for (const { faces } of mouths) {
      expect(faces.find((f) => f.surface.name === 'bore')!.side).toBe(-1)
      expect(faces.find((f) => f.surface.name !== 'bore')!.side).toBe(1)
    }
  })

  it('do not depend on where the solid stands', () => {
    const here = solidOf(boringBar)
    const x = unit([1, 2, 3])
    const z = unit([3, 0, -1])
    const y: Vec3 = [x[2] * z[1] - x[1] * z[2], x[0] * z[2] - x[2] * z[0], x[1] * z[0] - x[0] * z[1]]
    const frame = { origin: [31, -7, 12] as Vec3, x, y: [-y[0], -y[1], -y[2]] as Vec3, z }
    const there: Solid = {
      stock: here.stock.map((c) => cellFrom(frame, c)),
      cuts: here.cuts.map((c) => cellFrom(frame, c)),
    }
    expect(edgesOf(there)).toHaveLength(edgesOf(here).length)
    expect(total(edgesOf(there))).toBeCloseTo(total(edgesOf(here)), 6)
  })

  it('stand where two stretches touch only in a line', () => {
    const edges = edgesOf(solid([block([0, 0, 0], [1, 1, 1]), block([1, 1, 0], [2, 2, 1])]))
    // The shared upright edge is one edge of four faces.
    expect(edges).toHaveLength(23)
    expect(total(edges)).toBeCloseTo(23, 9)
  })

  it('stand where tangent faces leave a sliver that runs out to nothing', () => {
    // A pocket with a round end, and behind its straight wall a hole that takes away what the wall would have been.
    const block1 = block([-20, -20, 0], [20, 20, 10])
    const floor = plane('floor', [0, 0, 4], [0, 0, -1])
    const pocket = [
      cellOf(
        plane('a', [0, 3, 0], [0, 1, 0]),
        plane('b', [0, -3, 0], [0, -1, 0]),
        plane('end', [0, 0, 0], [-1, 0, 0]),
        floor,
      ),
      cellOf(cylinder('round', [0, 0, 0], up, 3), floor),
      cellOf(
        plane('face', [0, 3, 0], [0, -1, 0]),
        plane('left', [-2, 0, 0], [-1, 0, 0]),
        plane('right', [9, 0, 0], [1, 0, 0]),
        floor,
      ),
    ]
    const edges = edgesOf(solid([block1], pocket))
    const cusp = between(edges, 'round', 'face')
    expect(cusp).toHaveLength(1)
    expect(cusp[0]!.smooth).toBe(false)
    expect(arcLength(cusp[0]!.curve, cusp[0]!.from, cusp[0]!.to)).toBeCloseTo(6, 9)
    expect(pointAt(cusp[0]!.curve, cusp[0]!.from).slice(0, 2)).toEqual([expect.closeTo(0, 9), expect.closeTo(3, 9)])
  })

  it('of a bolt head are hyperbolas where its chamfer meets the flats', () => {
    const head = {
      surfaces: [...hexagon.surfaces, coneThrough('chamfer', [0, 0, 10], 11.5, [0, 0, 8], 11.5 + 2 * Math.sqrt(3))],
    }
    const edges = edgesOf(solid([head]))
    const chamfered = edges.filter(({ faces }) => faces.some((f) => f.surface.name === 'chamfer'))
    expect(chamfered.filter((e) => e.curve.kind === 'meeting')).toHaveLength(6)
    expect(chamfered.filter((e) => e.curve.kind === 'ellipse')).toHaveLength(1)
    for (const e of chamfered.filter((c) => c.curve.kind === 'meeting')) {
      // It ends on the corners, 24/√3 from the axis, and is highest in the middle of the flat.
      const [a, m, b] = [e.from, (e.from + e.to) / 2, e.to].map((t) => pointAt(e.curve, t)) as [Vec3, Vec3, Vec3]
      for (const p of [a, b]) expect(Math.hypot(p[0], p[1])).toBeCloseTo(24 / Math.sqrt(3), 8)
      expect(Math.hypot(m[0], m[1])).toBeCloseTo(12, 8)
    }
  })
})

const eps = 1e-4

/** What holds for every edge of any solid. */
function expectSound(s: Solid): void {
  const edges = edgesOf(s)
  const ends: Vec3[] = []
  for (const { curve, from, to, faces, smooth } of edges) {
    expect(to).toBeGreaterThan(from)
    for (const k of [0.02, 0.31, 0.5, 0.77, 0.98]) {
      const p = pointAt(curve, from + k * (to - from))
      for (const f of faces) expect(Math.abs(depthOf(f.surface, p))).toBeLessThan(1e-7)
    }
    const p = pointAt(curve, from + 0.43 * (to - from))
    const [n, m] = faces.map((f) => unit(outwardAt(f.surface, p).map((v) => v * f.side) as unknown as Vec3)) as [
      Vec3,
      Vec3,
    ]
    // Air in the sector that both faces look into, metal opposite: it is on the skin.
    // Faces back to back, tangent, with a sliver between them: no direction leads out of both.
    const sum = add(n, m)
    if (Math.hypot(...sum) < 1e-3) continue
    const out = unit(sum)
    expect(isInside(s, along(p, out, eps / 100))).toBe(false)
    expect(isInside(s, along(p, out, -eps / 100))).toBe(true)
    expect(dot(n, m) > Math.cos(eps)).toBe(smooth)
    if (!(isClosed(curve) && to - from > 2 * Math.PI - 1e-9)) ends.push(pointAt(curve, from), pointAt(curve, to))
  }
  // No edge ends in nothing: another one ends there, or passes there between other faces.
  ends.forEach((p, i) => {
    const met = ends.some((q, k) => k !== i && distance(p, q) < 1e-4)
    const passed = () =>
      edges.filter(({ curve, from, to }) => {
        for (let k = 0; k <= 400; k++)
          if (distance(pointAt(curve, from + ((to - from) * k) / 400), p) < arcLength(curve, from, to) / 400)
            return true
        return false
      }).length > 1
    expect(met || passed()).toBe(true)
  })
}

describe('every edge', () => {
  it('lies on both its faces and on the skin, and ends where others meet it', () => {
    for (const part of [turnedArbor, boringBar]) expectSound(solidOf(part))
  })

  it('does so on any head', () => {
    forRandomHeads(15, (design) => {
      for (const { part } of design.scene.parts) expectSound(solidOf(part))
    })
  })
})

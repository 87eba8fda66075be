import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { pointAt } from '../../src/edges/curve.ts'
import { outwards } from '../../src/edges/edges-of.ts'
import {
  type ArcEntity,
  type CircleEntity,
  type EllipseEntity,
  type Entity,
  lengthOf,
  pointOf,
  rangeOf,
} from '../../src/edges/entity.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import { type Piece, seenStretches } from '../../src/edges/visibility.ts'
import { cellOf } from '../../src/geometry/cell.ts'
import { solidIntervals } from '../../src/geometry/solid.ts'
import { cylinder, plane } from '../../src/geometry/surface.ts'
import { along, type Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'
import { boringBar, turnedArbor } from '../part/sample-parts.ts'
import { bar, block, eyeAt, hexagon, obliqueViews, solid, standardViews, up } from './solids.ts'

const total = (entities: readonly Entity[]) => entities.reduce((sum, e) => sum + lengthOf(e), 0)
const kinds = (entities: readonly Entity[]) =>
  entities
    .map((e) => e.kind)
    .sort()
    .join(' ')
const front = eyeAt([0, -1, 0])
const top = eyeAt(up, [0, 1, 0])
const piece = (...args: Parameters<typeof solid>) => pieceOf('part', solid(...args))

describe('a view', () => {
  it('of a block from the front is its outline, each line once', () => {
    const view = viewOf([piece([block([0, 0, 0], [2, 3, 4])])], front)
    expect(kinds(view.visible)).toBe('line line line line')
    expect(total(view.visible)).toBeCloseTo(12, 9)
    expect(view.hidden).toEqual([])
    expect(view.smooth).toEqual([])
  })

  it('of a block from a corner has nine lines in sight and three behind', () => {
    const view = viewOf([piece([block([0, 0, 0], [2, 3, 4])])], eyeAt([1, -1, 1]))
    expect(view.visible).toHaveLength(9)
    expect(view.hidden).toHaveLength(3)
    // Every side is foreshortened by √(2/3) in the isometric view.
    expect(total(view.visible)).toBeCloseTo(27 * Math.sqrt(2 / 3), 9)
    expect(total(view.hidden)).toBeCloseTo(9 * Math.sqrt(2 / 3), 9)
  })

  it('of a round bar across its axis has its outlines, along its axis one circle', () => {
    const round = [piece([bar([0, 0, 0], up, 20, 5)])]
    const side = viewOf(round, front)
    expect(kinds(side.visible)).toBe('line line line line')
    expect(total(side.visible)).toBeCloseTo(60, 9)
    expect(side.hidden).toEqual([])
    const end = viewOf(round, top)
    expect(end).toMatchObject({ visible: [{ kind: 'circle', radius: 5 }], hidden: [], smooth: [] })
  })

  it('of a round bar at a slant hides the far half of its far end: semi-axes r and r·sin of the tilt', () => {
    const tilt = Math.PI / 6
    const view = viewOf([piece([bar([0, 0, 0], up, 20, 5)])], eyeAt([0, -Math.cos(tilt), Math.sin(tilt)]))
    expect(kinds(view.visible)).toBe('ellipse ellipse line line')
    expect(kinds(view.hidden)).toBe('ellipse')
    for (const e of [...view.visible, ...view.hidden]) {
      if (e.kind !== 'ellipse') continue
      expect(Math.hypot(...e.major)).toBeCloseTo(5, 10)
      expect(e.ratio).toBeCloseTo(Math.sin(tilt), 10)
    }
    const half = view.hidden[0] as EllipseEntity
    expect(half.end - half.start).toBeCloseTo(Math.PI, 8)
    expect(total(view.visible.filter((e) => e.kind === 'line'))).toBeCloseTo(40 * Math.cos(tilt), 9)
  })

  it('square to a slanting face shows its bore mouth as an ellipse with axes r and r/cos a, or true size as it is bored', () => {
    const a = (7 * Math.PI) / 180
    const face = plane('face', [0, 0, 0], [-Math.sin(a), 0, -Math.cos(a)])
    const head = [cellOf(...block([-20, -20, -30], [20, 20, 30]).surfaces, face)]
    const bored = [piece(head, [cellOf(cylinder('bore', [0, 0, 0], up, 6))])]
    const square = viewOf(bored, { ...eyeAt(face.normal, [0, 1, 0]) })
    const mouth = square.visible.find((e) => e.kind === 'ellipse' && e.end - e.start > 6.28) as EllipseEntity
    expect(Math.abs(Math.hypot(...mouth.major) - 6 / Math.cos(a))).toBeLessThan(1e-9)
    expect(Math.abs(Math.hypot(...mouth.major) * mouth.ratio - 6)).toBeLessThan(1e-9)
    const axial = viewOf(bored, eyeAt([0, 0, -1], [0, 1, 0]))
    const circle = axial.visible.find((e) => e.kind === 'circle') as CircleEntity
    expect(circle.radius).toBe(6)
    expect(axial.hidden.filter((e) => e.kind !== 'line')).toEqual([])
  })

  it('shows a blind hole from the side as hidden lines, from the end in sight', () => {
    const drilled = [
      piece(
        [block([-10, -10, -20], [10, 10, 0])],
        [cellOf(cylinder('hole', [0, 0, 0], up, 3), plane('bottom', [0, 0, -12], [0, 0, -1]))],
      ),
    ]
    const side = viewOf(drilled, front)
    expect(kinds(side.hidden)).toBe('line line line')
    expect(total(side.hidden)).toBeCloseTo(12 + 12 + 6, 9)
    expect(viewOf(drilled, top).hidden).toEqual([])
    expect(viewOf(drilled, eyeAt([0, 0, -1], [0, 1, 0])).hidden).toMatchObject([{ kind: 'circle', radius: 3 }])
  })

  it('draws tangent lines thin, and as outlines where the round face turns away there', () => {
    const rounded = [
      cellOf(
        plane('a', [0, 3, 0], [0, 1, 0]),
        plane('b', [0, -3, 0], [0, -1, 0]),
        plane('c', [0, 0, 0], [-1, 0, 0]),
        plane('d', [10, 0, 0], [1, 0, 0]),
        plane('e', [0, 0, 5], up),
        plane('f', [0, 0, 0], [0, 0, -1]),
      ),
      bar([10, 0, 0], up, 5, 3),
    ]
    const slanted = viewOf([piece(rounded)], eyeAt([0.5, -1, 0.4]))
    expect(slanted.smooth).toHaveLength(1)
    expect(lengthOf(slanted.smooth[0]!)).toBeLessThan(5)
    const level = viewOf([piece(rounded)], eyeAt([0, -1, 0]))
    // From straight in front the tangent line is seen at x = 10, the outline at x = 13.
    expect(level.smooth).toMatchObject([{ kind: 'line' }])
    expect(total(level.visible)).toBeCloseTo(2 * 13 + 2 * 5, 9)
    const along = viewOf([piece(rounded)], eyeAt([1, 0, 0]))
    expect(along.smooth).toEqual([])
    expect(total(along.visible)).toBeCloseTo(2 * (6 + 5), 9)
  })

  it('hides one part behind another, and lines of parts that touch are drawn once', () => {
    const plate = pieceOf('plate', solid([block([-10, -10, 0], [10, 10, 2])]))
    const pin = pieceOf('pin', solid([bar([0, 0, 2], up, 6, 3)]))
    const above = viewOf([plate, pin], top)
    expect(kinds(above.visible)).toBe('circle line line line line')
    expect(above.hidden).toEqual([])
    const below = viewOf([plate, pin], eyeAt([0, 0, -1], [0, 1, 0]))
    expect(below.hidden).toMatchObject([{ kind: 'circle', radius: 3 }])
    const side = viewOf([plate, pin], front)
    expect(total(side.visible)).toBeCloseTo(2 * (20 + 2) + 2 * 6 + 6, 9)
    expect(side.hidden).toEqual([])
  })

  it('hides what lies inside another part', () => {
    const host = pieceOf('host', solid([block([-10, -10, -10], [10, 10, 10])]))
    const screw = pieceOf('screw', solid([bar([0, 0, -4], up, 20, 3)]))
    const side = viewOf([host, screw], front)
    expect(total(side.hidden)).toBeCloseTo(2 * 14 + 6, 9)
    expect(total(side.visible)).toBeCloseTo(80 + 2 * 6 + 6, 9)
  })

  it('sees a cross hole along its axis as an exact circle, and its mouths from the side as arcs on their curve', () => {
    const shaft = [piece([bar([0, 0, -20], up, 40, 10)], [cellOf(cylinder('hole', [0, 0, 0], [1, 0, 0], 4))])]
    const through = viewOf(shaft, eyeAt([1, 0, 0]))
    const circle = through.visible.find((e) => e.kind === 'circle') as CircleEntity
    expect(circle.radius).toBeCloseTo(4, 12)
    expect(through.hidden).toEqual([])
    const side = viewOf(shaft, front)
    const arcs = side.visible.filter((e): e is ArcEntity => e.kind === 'arc')
    expect(arcs.length).toBeGreaterThan(2)
    for (const e of arcs) {
      for (const k of [0.1, 0.4, 0.5, 0.8]) {
        const [x, z] = pointOf(e, e.start + k * (e.end - e.start))
        // On the shaft: x² + y² = 100 where y² = 16 − z².
        expect(Math.abs(Math.abs(x) - Math.sqrt(100 - (16 - z * z)))).toBeLessThan(0.005)
      }
    }
    // The far half of a mouth is hidden exactly behind the near half: nothing left to draw but the hole's own outlines.
    expect(kinds(side.hidden)).toBe('line line')
  })

  it('keeps a hexagon bar true: three flats in sight from the front of a corner, two from the front of a flat', () => {
    const hex = [piece([hexagon])]
    expect(total(viewOf(hex, front).visible)).toBeCloseTo(2 * (48 / Math.sqrt(3)) + 4 * 10, 9)
    expect(total(viewOf(hex, eyeAt([1, 0, 0])).visible)).toBeCloseTo(2 * 24 + 3 * 10, 9)
  })
})

const pointsOn = (e: Entity, n: number) => {
  const [from, to] = rangeOf(e)
  return Array.from({ length: n }, (_, i) => pointOf(e, from + ((to - from) * (i + 0.5)) / n))
}

function expectHonest(pieces: readonly Piece[], z: Vec3, view: Parameters<typeof viewOf>[1]): number {
  let judged = 0
  for (const s of seenStretches(pieces, view)) {
    for (const k of [0.07, 0.5, 0.91]) {
      const t = s.from + k * (s.to - s.from)
      const p = pointAt(s.curve, t)
      const normals = s.faces.map((f) => outwards(f, p))
      const out = normals.reduce<Vec3>((sum, n) => [sum[0] + n[0], sum[1] + n[1], sum[2] + n[2]], [0, 0, 0])
      // A sliver between tangent faces: no direction leads out of both.
      if (Math.hypot(...out) < 1e-3) continue
      const sees = (step: number) =>
        pieces.every(({ lines }) => {
          const metal = solidIntervals(lines.skin.solid, { origin: along(p, out, step), direction: z })
          return (metal[metal.length - 1]?.end ?? -1) < 1e-6
        })
      // Beside a border within the probe's reach the ray may be told either way; three steps that agree decide.
      const told = [2e-6, 1e-5, 1e-4].map(sees)
      if (told[0] !== told[1] || told[1] !== told[2]) continue
      judged++
      expect(told[0]).toBe(s.visible)
    }
  }
  return judged
}

describe('every stretch of a view', () => {
  it('that is seen has a free way to the eye at other places too, and a hidden one has none', () => {
    let judged = 0
    for (const part of [turnedArbor, boringBar]) {
      const pieces = [pieceOf(part.id, solidOf(part))]
      for (const [, view] of [...standardViews, ...obliqueViews]) judged += expectHonest(pieces, view.z, view)
    }
    forRandomHeads(12, (design) => {
      const pieces = [pieceOf('body', solidOf(design.scene.parts[0]!.part))]
      for (const [, view] of [standardViews[0]!, standardViews[2]!, ...obliqueViews])
        judged += expectHonest(pieces, view.z, view)
    })
    expect(judged).toBeGreaterThan(5000)
  })

  it('is drawn once: no point of a hidden or thin line lies on a line in sight', () => {
    const on = (e: Entity, [x, y]: readonly [number, number]) => {
      if (e.kind === 'line') {
        const [dx, dy] = [e.to[0] - e.from[0], e.to[1] - e.from[1]]
        const t = ((x - e.from[0]) * dx + (y - e.from[1]) * dy) / (dx * dx + dy * dy)
        return t > 0 && t < 1 && Math.hypot(x - e.from[0] - t * dx, y - e.from[1] - t * dy) < 1e-7
      }
      return false
    }
    const scene = headFrom('parameters').scene
    const pieces = scene.parts.map(({ part }) => pieceOf(part.id, solidOf(part)))
    for (const [, view] of [...standardViews, ...obliqueViews]) {
      const { visible, smooth, hidden } = viewOf(pieces, view)
      for (const e of [...smooth, ...hidden].filter((l) => l.kind === 'line')) {
        // Crossings aside: at least two of five places would lie on it.
        const covered = pointsOn(e, 5).filter((p) => visible.some((v) => on(v, p)))
        expect(covered.length).toBeLessThan(2)
      }
    }
  })

  it('is the same on every run, to the last digit', () => {
    const made = () => {
      const pieces = headFrom('parameters-inch').scene.parts.map(({ part }) => pieceOf(part.id, solidOf(part)))
      return JSON.stringify(obliqueViews.map(([, view]) => viewOf(pieces, view)))
    }
    expect(made()).toBe(made())
  })

  it('does not know of the chord tolerance', () => {
    // The line work reads nothing of the mesh: none of its files imports from the solid model.
    const folder = new URL('../../src/edges/', import.meta.url)
    for (const name of readdirSync(folder)) {
      expect(readFileSync(new URL(name, folder), 'utf8')).not.toMatch(/\.\.\/solid\/|chordTolerance/)
    }
  })
})

import type { ManifoldToplevel } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { clipped, partialView } from '../../src/edges/clip.ts'
import { apart2, type Entity, endsOf, lengthOf, pointOf, rangeOf } from '../../src/edges/entity.ts'
import { type CutFace, sectionOf, viewSquareTo } from '../../src/edges/section.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import { cellOf } from '../../src/geometry/cell.ts'
import { cylinder, type Plane } from '../../src/geometry/surface.ts'
import { solidOf } from '../../src/part/part.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'
import { kernelSolid, loadKernel } from '../part/manifold-cell.ts'
import { boringBar, turnedArbor } from '../part/sample-parts.ts'
import { expectClosed } from './cut-faces.ts'
import { bar, block, eyeAt, solid, up } from './solids.ts'

let kernel: ManifoldToplevel
beforeAll(async () => {
  kernel = await loadKernel()
})

const front = eyeAt([0, -1, 0])
const cut = (s: ReturnType<typeof solid>, view = front) => sectionOf([{ id: 'part', solid: s, cut: true }], view)
const around = (f: CutFace) => f.loops.flatMap((l) => l.steps).reduce((sum, s) => sum + lengthOf(s.entity), 0)

describe('a section', () => {
  it('of a bored block along the bore is two rectangles, across it a square with a round hole', () => {
    const s = solid([block([-10, -10, -20], [10, 10, 0])], [cellOf(cylinder('bore', [0, 0, 0], up, 4))])
    const lengthwise = cut(s).faces[0]!
    expect(lengthwise.loops.map((l) => l.area)).toEqual([expect.closeTo(120, 9), expect.closeTo(120, 9)])
    expect(around(lengthwise)).toBeCloseTo(2 * (40 + 12), 9)
    const across = cut(s, eyeAt(up, [0, 1, 0], [0, 0, -7])).faces[0]!
    expect(across.loops.map((l) => l.area).sort((a, b) => a - b)).toEqual([
      expect.closeTo(-16 * Math.PI, 9),
      expect.closeTo(400, 9),
    ])
    expect(across.area).toBeCloseTo(400 - 16 * Math.PI, 9)
    expectClosed([lengthwise, across])
  })

  it('of a round bar at a slant is one ellipse of area πr²/cos a', () => {
    const a = 0.6
    const view = eyeAt([0, -Math.sin(a), Math.cos(a)], [0, 1, 0], [0, 0, 30])
    const { faces } = cut(solid([bar([0, 0, 0], up, 60, 7)]), view)
    expect(faces[0]!.loops).toHaveLength(1)
    expect(faces[0]!.area).toBeCloseTo((49 * Math.PI) / Math.cos(a), 8)
  })

  it('shows what lies behind the cut and nothing of what lay before it', () => {
    const s = solid([
      block([-10, -10, -20], [10, 10, 0]),
      block([-2, -10, 0], [2, -8, 5]),
      block([6, 8, 0], [8, 10, 3]),
    ])
    const { lines } = cut(s)
    const top = Math.max(...lines.visible.flatMap((e) => endsOf(e).map((p) => p[1])))
    expect(top).toBeCloseTo(3, 9)
    expect(lines.hidden).toEqual([])
  })

  it('leaves a pin whole that is not to be cut, in front of the cut face', () => {
    const host = {
      id: 'host',
      solid: solid([block([-10, -10, -20], [10, 10, 0])], [cellOf(cylinder('bore', [0, 0, 0], up, 4))]),
      cut: true,
    }
    const pin = { id: 'pin', solid: solid([bar([0, 0, -25], up, 40, 4)]), cut: false }
    const { faces, lines } = sectionOf([host, pin], front)
    expect(faces.map((f) => f.id)).toEqual(['host'])
    expect(faces[0]!.area).toBeCloseTo(240, 9)
    // The pin's own outline, 40 long on each side, in full.
    const sides = lines.visible.filter(
      (e) => e.kind === 'line' && Math.abs(Math.abs(e.from[0]) - 4) < 1e-9 && Math.abs(e.from[0] - e.to[0]) < 1e-9,
    )
    expect(sides.reduce((sum, e) => sum + lengthOf(e), 0)).toBeCloseTo(80, 9)
  })

  it('has closed outlines and the area that a mesh kernel finds, at any height of any head', () => {
    const compare = (s: ReturnType<typeof solidOf>, heights: number[], name: string) => {
      const mesh = meshOf(s, 0.01, name)
      if (!mesh.ok) throw new Error(name)
      const judge = kernelSolid(kernel, mesh.value)
      for (const z of heights) {
        const { faces } = cut(s, eyeAt(up, [0, 1, 0], [0, 0, z]))
        expectClosed(faces)
        const slice = judge.slice(z)
        const area = faces[0]?.area ?? 0
        // Flats stand off by 0.01 mm at most, half as much again where the section runs slanting through them.
        expect(Math.abs(area - slice.area())).toBeLessThan(0.015 * (faces[0] ? around(faces[0]) : 1) + 1e-3)
        slice.delete()
      }
      judge.delete()
    }
    compare(solidOf(turnedArbor), [-20.4, -7, 3.3, 25, 30.9, 38.2, 41, 60], 'arbor')
    compare(solidOf(boringBar), [-7.5, -3.3, 1.7, 4.2, 7], 'bar')
    forRandomHeads(8, (design) => {
      const { parameters: p } = design
      const h = p.face['depth-on-axis']
      compare(
        solidOf(design.scene.parts[0]!.part),
        [0.11, 0.47, 0.83].map((k) => -k * h),
        'body',
      )
    })
  })
})

describe('a true-size view', () => {
  it('of the angled face shows the slot as wide as it is milled and the bore squeezed', () => {
    const part = headFrom('parameters').scene.parts[0]!.part
    const face = part.cuts.find((f) => f.role === 'tool-face')!.cells[0]!.surfaces[0] as Plane
    const view = viewSquareTo(face, part.cuts[0]!.frame.origin, -1, [1, 0, 0])
    // The cut's plane faces into the metal; seen from the air the eye looks against it.
    expect(view.z[2]).toBeLessThan(0)
    const { visible } = viewOf([pieceOf('body', solidOf(part))], view)
    const level = visible.filter(
      (e): e is Extract<Entity, { kind: 'line' }> => e.kind === 'line' && Math.abs(e.from[1] - e.to[1]) < 1e-9,
    )
    const heights = [...new Set(level.map((e) => Math.round(e.from[1] * 1e6) / 1e6))].sort((a, b) => a - b)
    // Leading wall 2.4 ahead, 10 + clearance wide: two lines that far apart.
    const width = part.cuts.find((f) => f.role === 'bit-seat')!.dimensions.find((d) => d.id === 'slot.width')!.value
    expect(heights.some((a) => heights.some((b) => Math.abs(b - a - width) < 1e-6))).toBe(true)
    expect(() => viewSquareTo(face, [0, 0, 0], 1, face.normal)).toThrow(RangeError)
  })
})

describe('a partial view', () => {
  const lines = (): Entity[] => [
    { kind: 'line', from: [-10, 1], to: [10, 1] },
    { kind: 'circle', centre: [0, 0], radius: 5 },
    { kind: 'ellipse', centre: [0, 0], major: [6, 0], ratio: 0.5, start: 0, end: 2 * Math.PI },
  ]

  it('ends at its border, and what is left lies on the same lines and circles', () => {
    const [line, ...arcs] = clipped(lines(), { kind: 'rectangle', low: [0, -20], high: [4, 20] })
    expect(line).toMatchObject({ from: [expect.closeTo(0, 12), 1], to: [expect.closeTo(4, 12), 1] })
    // Circle: from x = 4 to x = 0 above and below; the ellipse likewise.
    expect(arcs.map((e) => e.kind)).toEqual(['arc', 'arc', 'ellipse', 'ellipse'])
    const angle = Math.acos(0.8)
    expect(lengthOf(arcs[0]!)).toBeCloseTo(5 * (Math.PI / 2 - angle), 9)
    for (const e of arcs)
      for (const p of endsOf(e)) expect(Math.min(Math.abs(p[0]), Math.abs(p[0] - 4))).toBeLessThan(1e-9)
  })

  it('may be round', () => {
    const window = { kind: 'circle', centre: [5, 0], radius: 3 } as const
    const view = partialView({ visible: lines(), smooth: [], hidden: lines() }, window)
    expect(view.hidden).toEqual(view.visible)
    expect(lengthOf(view.visible[0]!)).toBeCloseTo(2 * Math.sqrt(8), 9)
    for (const e of view.visible) {
      const [from, to] = rangeOf(e)
      for (const k of [0, 0.3, 0.7, 1]) {
        const p = pointOf(e, from + k * (to - from))
        expect(Math.hypot(p[0] - 5, p[1])).toBeLessThan(3 + 1e-9)
      }
    }
  })

  it('leaves alone what is well inside and drops what is outside', () => {
    const all = { kind: 'rectangle', low: [-20, -20], high: [20, 20] } as const
    expect(clipped(lines(), all)).toEqual(lines())
    expect(clipped(lines(), { ...all, low: [12, -20] })).toEqual([])
  })
})

describe('the section through the bore of the demo head', () => {
  it('shows the wall between bore and slot as it is worked out by hand', () => {
    const { faces } = sectionOf(
      [{ id: 'body', solid: solidOf(headFrom('parameters').scene.parts[0]!.part), cut: true }],
      eyeAt([0, -1, 0]),
    )
    expectClosed(faces)
    const points = faces[0]!.loops.flatMap((l) => l.steps.flatMap((s) => endsOf(s.entity)))
    const find = (x: number, z: number) => Math.min(...points.map((p) => apart2(p, [x, z])))
    const t = Math.tan((7 * Math.PI) / 180)
    // Bore bottom 24 deep and 20 wide; slot floor 9.5 above the face, square to it, 41 deep on the axis.
    expect(find(-10, -24)).toBeLessThan(1e-9)
    const floor = (x: number): [number, number] => [x, -41 + 9.5 / Math.cos((7 * Math.PI) / 180) - x * t]
    for (const x of [-46 / Math.sqrt(3), 46 / Math.sqrt(3)]) expect(find(...floor(x))).toBeLessThan(1e-9)
  })
})

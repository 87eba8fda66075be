import { describe, expect, it } from 'vitest'
import { breakLines } from '../../src/edges/break-line.ts'
import { partialView, type Window } from '../../src/edges/clip.ts'
import { clippedFace } from '../../src/edges/clip-face.ts'
import { apart2, type EllipseEntity, endsOf, lengthOf, type Vec2 } from '../../src/edges/entity.ts'
import { type SectionPart, sectionOf, viewSquareTo } from '../../src/edges/section.ts'
import { type SectionPath, straightPath } from '../../src/edges/section-path.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { pointFrom } from '../../src/geometry/frame.ts'
import { isInside, solidIntervals } from '../../src/geometry/solid.ts'
import { plane } from '../../src/geometry/surface.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'
import { seededRandom } from '../outside/brep/seeded-random.ts'
import { expectClosed, isByBorder, isHatched, polygonsOf } from './cut-faces.ts'
import { bar, block, eyeAt, obliqueViews, solid, standardViews } from './solids.ts'

const depthAt = ({ direction: [dx, dy], depth, steps }: SectionPath, [x, y]: Vec2): number =>
  steps.reduce((d, s) => (x * dx + y * dy > s.at ? s.depth : d), depth)

describe('the hatch of a section', () => {
  it('covers every place where metal is cut and no part stands before it, and no other, in any head', () => {
    const random = seededRandom(7)
    let told = 0
    forRandomHeads(6, (design) => {
      const h = design.layout.depthOnAxis
      const reach = 0.7 * design.layout.across
      const { slot } = design.layout
      const parts = design.scene.parts.map(
        ({ part }): SectionPart => ({ id: part.id, solid: solidOf(part), cut: part.id === 'body' }),
      )
      const front = eyeAt([0, -1, 0])
      const middle = (slot.leading + slot.trailing) / 2
      const slanting = { direction: [Math.cos(0.3), Math.sin(0.3)], depth: 2, steps: [] } as const
      const cuts: [typeof front, SectionPath][] = [
        [front, straightPath],
        [{ ...eyeAt([0, 1, 0]), origin: [0, middle, 0] }, straightPath],
        [eyeAt([0.3, -1, 0.2]), straightPath],
        [front, { direction: [0, 1], depth: -middle, steps: [{ at: -0.6 * h, depth: 0 }] }],
        [
          eyeAt([1, 0, 0]),
          {
            ...slanting,
            steps: [
              { at: -9, depth: -3.3 },
              { at: 5.5, depth: Number.POSITIVE_INFINITY },
            ],
          },
        ],
      ]
      for (const [view, path] of cuts) {
        const { faces, pieces } = sectionOf(parts, view, path)
        expectClosed(faces)
        const polygons = faces.flatMap(polygonsOf)
        const standing = parts.filter((p) => !p.cut && pieces.some(({ id }) => id === p.id))
        const gone = parts.filter((p) => !pieces.some(({ id }) => id === p.id))
        for (let i = 0; i < 120; i++) {
          const at: Vec2 = [(random() - 0.5) * 2 * reach, -random() * 1.1 * h]
          if (isByBorder(polygons, at, 0.02)) continue
          const depth = depthAt(path, at)
          const place = (z: number) => pointFrom(view, [at[0], at[1], z])
          const before = (s: SectionPart['solid'], z: number) =>
            solidIntervals(s, { origin: place(0), direction: view.z }).some((m) => m.end > z)
          const cut = depth < Number.POSITIVE_INFINITY
          const astride = cut && [1e-4, -1e-4].every((z) => isInside(parts[0]!.solid, place(depth + z)))
          const hidden = cut && standing.some((p) => before(p.solid, depth + 1e-4))
          expect(isHatched(polygons, at), `${at}`).toBe(astride && !hidden)
          // What is left out lies nowhere behind the plane.
          for (const p of gone) {
            const metal = solidIntervals(p.solid, { origin: place(0), direction: view.z })
            expect(metal.every((m) => m.start > depth - 1e-4)).toBe(true)
          }
          told++
        }
      }
    })
    expect(told).toBeGreaterThan(3000)
  })

  it('is cut off at the border of a detail, closed along it', () => {
    const s = solid([block([-10, -10, 0], [10, 10, 20])], [bar([0, -11, 10], [0, 1, 0], 22, 4)])
    const [face] = sectionOf([{ id: 'a', solid: s, cut: true }], eyeAt([0, -1, 0])).faces
    const round = clippedFace(face!, { kind: 'circle', centre: [10, 10], radius: 5 })!
    expectClosed([round])
    expect(round.area).toBeCloseTo(12.5 * Math.PI, 9)
    const square = clippedFace(face!, { kind: 'rectangle', low: [-3, 10], high: [11, 11] })!
    expectClosed([square])
    // Right of the hole, and above it nothing: the hole's arc from y = 10 to 11.
    const hole = 0.5 * Math.sqrt(15) + 8 * Math.asin(0.25)
    expect(square.area).toBeCloseTo(10 - hole, 9)
    const half = clippedFace(face!, { kind: 'rectangle', low: [0, -Infinity], high: [Infinity, Infinity] })!
    expectClosed([half])
    expect(half.area).toBeCloseTo(200 - 8 * Math.PI, 9)
    expect(clippedFace(face!, { kind: 'circle', centre: [0, 10], radius: 3 })).toBeUndefined()
    const all = clippedFace(face!, { kind: 'circle', centre: [0, 10], radius: 30 })!
    expect(all.area).toBeCloseTo(face!.area, 9)
  })
})

describe('a partial view', () => {
  const piece = pieceOf('plate', solid([block([-10, -10, 0], [10, 10, 2])], [bar([4, 0, -1], [0, 0, 1], 4, 2)]))
  const view = eyeAt([0, 0, 1], [0, 1, 0])
  const lines = viewOf([piece], view)

  it('breaks off where its border runs over the part, and is open where it does not', () => {
    const corner: Window = { kind: 'rectangle', low: [4, -15], high: [15, 0] }
    const breaks = breakLines([piece], view, lines, corner)
    // Along x = 4 from the edge at y = −10 to the hole, along y = 0 from the hole to the edge.
    const ends = breaks.map((e) => endsOf(e).map((p) => p.map((v) => Math.round(v * 1e6) / 1e6 + 0)))
    expect(ends.map((e) => e.sort((a, b) => a[0]! + a[1]! - b[0]! - b[1]!))).toEqual([
      [
        [6, 0],
        [10, 0],
      ],
      [
        [4, -10],
        [4, -2],
      ],
    ])
    // Each break ends on a line of the view.
    const shown = partialView(lines, corner).visible.flatMap(endsOf)
    for (const p of breaks.flatMap(endsOf)) expect(Math.min(...shown.map((q) => apart2(p, q)))).toBeLessThan(1e-9)
  })

  it('has a round break line for a detail, all round where it lies within the part', () => {
    const within = breakLines([piece], view, lines, { kind: 'circle', centre: [-5, 0], radius: 3 })
    expect(within).toMatchObject([{ kind: 'circle', radius: 3 }])
    const across = breakLines([piece], view, lines, { kind: 'circle', centre: [10, 10], radius: 3 })
    expect(across.map((e) => e.kind)).toEqual(['arc'])
    expect(lengthOf(across[0]!)).toBeCloseTo(1.5 * Math.PI, 9)
  })

  it('of half a part ends at its middle with a straight border', () => {
    const half: Window = { kind: 'rectangle', low: [-Infinity, -Infinity], high: [Infinity, 0] }
    const breaks = breakLines([piece], view, lines, half)
    expect(breaks.map((e) => lengthOf(e)).sort()).toEqual([expect.closeTo(12, 9), expect.closeTo(4, 9)])
    expect(
      partialView(lines, half)
        .visible.flatMap(endsOf)
        .every((p) => p[1] < 1e-9),
    ).toBe(true)
  })
})

describe('line work of a head', () => {
  it('is the same to the last digit when the chord tolerance is halved', () => {
    const made = (tolerance: string) => {
      const design = headFrom('parameters', [/$/, `\n${tolerance}`])
      const pieces = design.scene.parts.map(({ part }) => pieceOf(part.id, solidOf(part)))
      const section = sectionOf(
        design.scene.parts.map(({ part }) => ({ id: part.id, solid: solidOf(part), cut: part.id === 'body' })),
        eyeAt([0, -1, 0]),
      )
      return {
        tolerance: design.parameters.settings['chord-tolerance'],
        lines: JSON.stringify([
          [...standardViews.slice(0, 3), ...obliqueViews].map(([, view]) => viewOf(pieces, view)),
          section.lines,
          section.faces,
        ]),
      }
    }
    const [whole, half] = ['0.02 mm', '0.01 mm'].map((t) => made(`settings: { chord-tolerance: ${t} }`)) as [
      ReturnType<typeof made>,
      ReturnType<typeof made>,
    ]
    expect([whole.tolerance, half.tolerance]).toEqual([0.02, 0.01])
    expect(half.lines).toBe(whole.lines)
  })

  it('shows a bore in the angled face as an ellipse with axes r and r/cos a, within 1e-9 mm, from 0 to 30°', () => {
    let seen = 0
    forRandomHeads(60, (design) => {
      const { bore, face } = design.parameters
      const { depthOnAxis, faceAngle } = design.layout
      if (bore.kind !== 'through' || face.angle === 0) return
      const frame = faceFrame(faceAngle, depthOnAxis)
      const square = viewSquareTo(
        plane('face', frame.origin, [-frame.z[0], -frame.z[1], -frame.z[2]]),
        frame.origin,
        1,
        [1, 0, 0],
      )
      const { visible } = viewOf([pieceOf('body', solidOf(design.part('body')))], square)
      const mouths = visible.filter((e): e is EllipseEntity => e.kind === 'ellipse')
      for (const { major, ratio } of mouths) {
        const [long, short] = [Math.hypot(...major), Math.hypot(...major) * ratio]
        // The rim at the mounting side, seen through the bore, has r as its longer axis.
        if (Math.abs(short - bore.diameter / 2) > 1e-6) continue
        expect(Math.abs(short - bore.diameter / 2)).toBeLessThan(1e-9)
        expect(Math.abs(long - bore.diameter / 2 / Math.cos(face.angle))).toBeLessThan(1e-9)
        seen++
      }
    })
    expect(seen).toBeGreaterThan(5)
  })
})

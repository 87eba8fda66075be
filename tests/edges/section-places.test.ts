import { describe, expect, it } from 'vitest'
import { apart2, type Entity, endsOf, lengthOf } from '../../src/edges/entity.ts'
import { type CutFace, sectionOf } from '../../src/edges/section.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { cellOf } from '../../src/geometry/cell.ts'
import { pointFrom } from '../../src/geometry/frame.ts'
import { cone, coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { headFrom } from '../families/random-heads.ts'
import { expectClosed, kindsOf } from './cut-faces.ts'
import { bar, block, eyeAt, solid, up } from './solids.ts'

const front = eyeAt([0, -1, 0])
const cut = (s: ReturnType<typeof solid>, view = front) => sectionOf([{ id: 'part', solid: s, cut: true }], view)
const total = (entities: readonly Entity[]) => entities.reduce((sum, e) => sum + lengthOf(e), 0)
const corners = (f: CutFace) => f.loops.flatMap((l) => l.steps.flatMap((s) => endsOf(s.entity)))

describe('a cutting plane in the plane of a face', () => {
  it('does not cut where the metal lies only behind it: the face is drawn, not hatched, and the hatch ends in a line', () => {
    // A notch whose back wall lies in the plane y = 0.
    const s = solid([block([-10, -10, 0], [10, 10, 10])], [block([0, -11, 5], [11, 0, 11])])
    const { faces, lines } = cut(s)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(150, 9)
    expect(faces[0]!.loops[0]!.steps).toHaveLength(6)
    // The whole outline, and the border of the notch: 10 along its floor, 5 up its side.
    expect(total(lines.visible)).toBeCloseTo(60 + 15, 9)
    expect(lines.smooth).toEqual([])
  })

  it('does not cut where the metal lies only before it, either: the view goes on to what is behind', () => {
    const s = solid([block([-10, -10, 0], [10, 10, 10])], [block([0, 0, 5], [11, 11, 11])])
    const { faces, lines } = cut(s)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(150, 9)
    expect(total(lines.visible)).toBeCloseTo(60, 9)
  })

  it('lays nothing bare of a part that it only touches', () => {
    for (const [y0, y1] of [
      [0, 10],
      [-10, 0],
    ] as const) {
      expect(cut(solid([block([-10, y0, 0], [10, y1, 10])])).faces).toEqual([])
    }
  })

  it('cuts two pieces of stock that meet in it as one', () => {
    const s = solid([block([-10, -10, 0], [10, 0, 10]), block([-10, 0, 0], [10, 10, 10])])
    expect(cut(s).faces[0]!.area).toBeCloseTo(200, 9)
    expect(cut(s).faces[0]!.loops).toHaveLength(1)
  })

  it('that touches a bore from outside cuts a whole face', () => {
    const s = solid([block([-10, -10, 0], [10, 10, 10])], [cellOf(cylinder('bore', [0, 4, 0], up, 4))])
    const { faces } = cut(s)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(200, 6)
  })
})

describe('a section through an axis', () => {
  const tan = Math.tan((59 * Math.PI) / 180)

  it('shows a drilled hole with its point and chamfer as straight lines, to the last digit', () => {
    const s = solid(
      [block([-10, -10, -30], [10, 10, 0])],
      [
        cellOf(cylinder('hole', [0, 0, 0], up, 4), plane('depth', [0, 0, -12], [0, 0, -1])),
        cellOf(cone('point', [0, 0, -12 - 4 / tan], up, (59 * Math.PI) / 180), plane('shoulder', [0, 0, -12], up)),
        cellOf(coneThrough('chamfer', [0, 0, -1], 4, [0, 0, 0], 5)),
      ],
    )
    const { faces } = cut(s)
    expectClosed(faces)
    expect(kindsOf(faces[0]!.loops.flatMap((l) => l.steps.map((x) => x.entity)))).toBe(Array(11).fill('line').join(' '))
    expect(faces[0]!.area).toBeCloseTo(600 - 8 * 12 - 16 / tan - 1, 9)
    for (const [x, z] of [
      [0, -12 - 4 / tan],
      [4, -12],
      [-4, -1],
      [5, 0],
    ] as const) {
      expect(Math.min(...corners(faces[0]!).map((p) => apart2(p, [x, z])))).toBeLessThan(1e-9)
    }
  })

  it('of a tapped hole is as wide as the tap drill: the hatch goes up to the thread’s crests, as ISO 6410 has it', () => {
    const design = headFrom('parameters')
    const { screws, step, slot, faceAngle, depthOnAxis } = design.layout
    const face = faceFrame(faceAngle, depthOnAxis)
    const x = screws.xs[0]!
    const frame = { origin: pointFrom(face, [x, 0, 0] satisfies Vec3), x: face.y, y: face.z, z: face.x }
    const { faces } = sectionOf([{ id: 'body', solid: solidOf(design.part('body')), cut: true }], frame)
    expectClosed(faces)
    for (const y of [step.wall, screws.seat === slot.leading ? slot.leading : slot.trailing]) {
      for (const side of [1, -1]) {
        const z = screws.height + (side * screws.thread.tapDrill) / 2
        expect(Math.min(...corners(faces[0]!).map((p) => apart2(p, [y, z])))).toBeLessThan(1e-6)
      }
    }
  })
})

describe('parts that are left whole', () => {
  const host = { id: 'host', solid: solid([block([-10, -10, 0], [10, 10, 20])]), cut: true }
  const pin = (from: number, to: number, x = 0) => ({
    id: 'pin',
    solid: solid([bar([x, from, 10], [0, 1, 0], to - from, 3)]),
    cut: false,
  })

  it('stand before the hatch, which ends at their outline', () => {
    const { faces, lines } = sectionOf([host, pin(-15, 5)], front)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(400 - 9 * Math.PI, 9)
    const hole = faces[0]!.loops.find((l) => l.area < 0)!
    expect(hole.steps).toMatchObject([{ entity: { kind: 'circle', radius: 3 }, reversed: true }])
    expect(lines.visible.filter((e) => e.kind === 'circle')).toHaveLength(1)
  })

  it('cover the border of the hatch where they reach over it', () => {
    const { faces } = sectionOf([host, pin(-15, 5, 10)], front)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(400 - 4.5 * Math.PI, 9)
    expect(kindsOf(faces[0]!.loops[0]!.steps.map((s) => s.entity))).toBe('arc line line line line line')
  })

  it('go with the metal that is taken away where they lie wholly in it, and stay where they lie wholly behind', () => {
    const gone = sectionOf([host, pin(-15, -1)], front)
    expect(gone.faces[0]!.area).toBeCloseTo(400, 9)
    expect(kindsOf(gone.lines.visible)).toBe('line line line line')
    const behind = sectionOf([host, pin(12, 30, 11)], front)
    expect(behind.faces[0]!.area).toBeCloseTo(400, 9)
    expect(kindsOf(behind.lines.visible)).toBe('arc line line line line')
  })

  it('may stand before one another: the hatch ends where the first of them begins', () => {
    const shank = { id: 'shank', solid: solid([bar([0, -12, 10], [0, 1, 0], 4, 5)]), cut: false }
    const through = { ...shank, solid: solid([...shank.solid.stock, bar([0, -12, 10], [0, 1, 0], 30, 1)]) }
    const { faces } = sectionOf([host, pin(-15, 5), through], front)
    expectClosed(faces)
    expect(faces[0]!.area).toBeCloseTo(400 - 25 * Math.PI, 9)
  })
})

describe('line work', () => {
  it('is worked out once for a solid, and is the same for views of what a section leaves of it', () => {
    const s = solidOf(headFrom('parameters').part('body'))
    const again = pieceOf('body', { stock: [...s.stock], cuts: [...s.cuts] })
    expect(again.lines).toBe(pieceOf('other name', s).lines)
    // A plane that takes nothing away leaves every line.
    const { lines } = cut(s, eyeAt([0.4, -1, -0.3], up, [0, -300, 0]))
    const whole = viewOf([again], eyeAt([0.4, -1, -0.3], up, [0, -300, 0]))
    expect(total(lines.visible)).toBeCloseTo(total(whole.visible), 6)
    expect(total(lines.hidden)).toBeCloseTo(total(whole.hidden), 6)
  })
})

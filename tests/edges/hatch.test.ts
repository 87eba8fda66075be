import { describe, expect, it } from 'vitest'
import type { EllipseEntity, Vec2 } from '../../src/edges/entity.ts'
import { type SectionPart, sectionOf, viewSquareTo } from '../../src/edges/section.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { pointFrom } from '../../src/geometry/frame.ts'
import { isInside, solidIntervals } from '../../src/geometry/solid.ts'
import { plane } from '../../src/geometry/surface.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'
import { seededRandom } from '../outside/brep/seeded-random.ts'
import { expectClosed, isByBorder, isHatched, polygonsOf } from './cut-faces.ts'
import { eyeAt, obliqueViews, standardViews } from './solids.ts'

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
      const cuts = [
        front,
        { ...eyeAt([0, 1, 0]), origin: [0, middle, 0] as const },
        eyeAt([0.3, -1, 0.2]),
        eyeAt([1, 0, 0]),
      ]
      for (const view of cuts) {
        const { faces, pieces } = sectionOf(parts, view)
        expectClosed(faces)
        const polygons = faces.flatMap(polygonsOf)
        const standing = parts.filter((p) => !p.cut && pieces.some(({ id }) => id === p.id))
        const gone = parts.filter((p) => !pieces.some(({ id }) => id === p.id))
        for (let i = 0; i < 150; i++) {
          const at: Vec2 = [(random() - 0.5) * 2 * reach, -random() * 1.1 * h]
          if (isByBorder(polygons, at, 0.02)) continue
          const place = (z: number) => pointFrom(view, [at[0], at[1], z])
          const before = (s: SectionPart['solid'], z: number) =>
            solidIntervals(s, { origin: place(0), direction: view.z }).some((m) => m.end > z)
          const astride = [1e-4, -1e-4].every((z) => isInside(parts[0]!.solid, place(z)))
          const hidden = standing.some((p) => before(p.solid, 1e-4))
          expect(isHatched(polygons, at), `${at}`).toBe(astride && !hidden)
          // What is left out lies nowhere behind the plane.
          for (const p of gone) {
            const metal = solidIntervals(p.solid, { origin: place(0), direction: view.z })
            expect(metal.every((m) => m.start > -1e-4)).toBe(true)
          }
          told++
        }
      }
    })
    expect(told).toBeGreaterThan(3000)
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

// Line work of the demo head beside a B-rep kernel's hidden-line projection of the same views.
import { sectionOf } from '../../src/edges/section.ts'
import { pieceOf, viewOf } from '../../src/edges/view.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import { solidOf } from '../../src/part/part.ts'
import { eyeAt, obliqueViews, standardViews } from '../edges/solids.ts'
import { headFrom, templateText } from '../families/random-heads.ts'
import { rawHead } from '../outside/brep/raw-head.ts'
import { projection } from '../outside/edges/judged-view.ts'

interface ViewTime {
  readonly what: string
  /** Medians, ms. */
  readonly ours: number
  readonly kernel: number | undefined
}

/** A solid whose edges are not known yet: new cells of the same surfaces. */
const anew = ({ stock, cuts }: Solid): Solid => ({
  stock: stock.map((c) => ({ ...c })),
  cuts: cuts.map((c) => ({ ...c })),
})

export function viewTimes(median: (times: number, run: () => unknown) => number): ViewTime[] {
  const design = headFrom('parameters')
  const solids = (['body', 'arbor', 'bit'] as const).map((id) => [id, solidOf(design.part(id))] as const)
  const raw = rawHead(templateText('parameters'))
  const frames = [...standardViews, ...obliqueViews].map(([, view]) => view)
  const times = solids.map(([id, solid]): ViewTime => {
    const shape = raw[id]()
    return {
      what: `${id}: edges and ${frames.length} views, replicad projection`,
      ours: median(30, () => {
        const piece = pieceOf(id, anew(solid))
        return frames.map((v) => viewOf([piece], v))
      }),
      kernel: median(3, () => frames.map((v) => projection(shape, v.z, v.x))),
    }
  })
  const body = solids[0]![1]
  const front = eyeAt([0, -1, 0])
  const sheet = [standardViews[0]!, standardViews[2]!, standardViews[4]!, obliqueViews[0]!].map(([, view]) => view)
  const face = eyeAt([Math.sin(design.layout.faceAngle), 0, -Math.cos(design.layout.faceAngle)], [0, 1, 0])
  const sections = [front, eyeAt([1, 0, 0], [0, 0, 1], [9, 0, 0])]
  return [
    ...times,
    {
      what: 'body sheet: edges, 5 views, 2 sections',
      ours: median(30, () => {
        const solid = anew(body)
        const piece = pieceOf('body', solid)
        return [
          [...sheet, face].map((v) => viewOf([piece], v)),
          sections.map((v) => sectionOf([{ id: 'body', solid, cut: true }], v)),
        ]
      }),
      kernel: undefined,
    },
    {
      what: 'assembly of 5 parts: a section and 3 views',
      ours: median(20, () => {
        const parts = design.scene.parts.map(({ part }) => ({
          id: part.id,
          solid: anew(solidOf(part)),
          cut: part.id === 'body',
        }))
        const pieces = parts.map((p) => pieceOf(p.id, p.solid))
        return [
          sectionOf(parts, front),
          [standardViews[0]!, standardViews[2]!, obliqueViews[0]!].map(([, v]) => viewOf(pieces, v)),
        ]
      }),
      kernel: undefined,
    },
  ]
}

import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import { coordinateChoices } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import { viewOf } from '../../../edges/view.ts'
import { type Body, datumAt, datumOf, datumOn, flatsFaceY, halfWide, left, right } from './body-views.ts'
import { threadEnd } from './thread-lines.ts'
import { pieceOfPart } from './views.ts'

/** From the spindle's side: the bar, and the bore that goes on the arbor. */
export function mountingView({ design, style, sizes, views }: Body): ViewPlan {
  const { parameters: p, layout: l } = design
  const s = views.bitSide
  const [long, wide] = [l.across / 2, halfWide(design)]
  const [flat, r] = [p.stock.size / 2, p.bore.diameter / 2]
  const round = p.stock.shape === 'round'
  const upright = flatsFaceY(p.stock)
  const [onBit, away] = s > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const across = (id: string, from: number, to: number, near: boolean, after?: string): DimensionRequest[] =>
    sizes.at(
      id,
      upright
        ? { kind: 'linear', direction: 'vertical', from: [0, from], to: [0, to], side: near ? onBit : away }
        : { kind: 'linear', direction: 'horizontal', from: [from, 0], to: [to, 0], side: near ? 'above' : 'below' },
      after === undefined ? {} : { after },
    )
  const hole = l.spigotThread ? l.spigotThread.tapDrill / 2 : r
  return {
    id: 'mounting',
    caption: ['mounting side, from above'],
    lines: [
      ...drawnView(viewOf([pieceOfPart(design, 'body')], views.above), false),
      ...(l.spigotThread ? threadEnd([0, 0], r) : []),
    ],
    choices: [
      coordinateChoices('X', [-s * long, 0], [s * long, 0], style),
      coordinateChoices('Y', [0, -s * wide], [0, s * wide], style),
    ],
    requests: [
      ...(round
        ? sizes.at('stock.size', { kind: 'diameter', center: [0, 0], radius: flat, toward: (3 * Math.PI) / 4 })
        : across('stock.size', -flat, flat, false, 'across flats')),
      ...across('bore.wall-to-outside', -flat, -r, true),
      ...(l.spigotThread
        ? [
            ...sizes.at(
              'bore.diameter',
              {
                kind: 'thread',
                from: [-r * Math.SQRT1_2, -r * Math.SQRT1_2],
                to: [r * Math.SQRT1_2, r * Math.SQRT1_2],
                toward: Math.PI / 4,
              },
              {
                thread: { designation: sizes.threadOf('bore.diameter') ?? l.spigotThread.name },
                ...(p.bore.kind === 'through' && { after: 'through' }),
              },
            ),
            ...sizes.at(
              'bore.tap-drill',
              { kind: 'diameter', center: [0, 0], radius: hole, toward: -Math.PI / 4 },
              { after: 'tap drill' },
            ),
          ]
        : sizes.at('bore.diameter', { kind: 'diameter', center: [0, 0], radius: r, toward: Math.PI / 4 })),
      ...(p.bore.kind === 'blind' && p.bore.vent === 'hole'
        ? sizes.at(
            'vent.diameter',
            { kind: 'diameter', center: [0, 0], radius: p.bore['vent-size'] / 2, toward: (-3 * Math.PI) / 4 },
            { after: 'vent' },
          )
        : []),
      datumAt('mounting', 'A', [-s * 0.5 * (long + r), 0.35 * (flat - r)], s > 0 ? 2.5 : 0.6, 'dot'),
      datumOf('mounting', 'B', 'bore.diameter', [r * Math.SQRT1_2, r * Math.SQRT1_2]),
      datumOn('mounting', 'C', [-s * long, 0], { along: s > 0 ? left : right }),
    ],
  }
}

import { axisMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import { viewOf } from '../../../edges/view.ts'
import { arborTop } from '../assembly-dimensions.ts'
import { type Assembly, itemMark } from './assembly-views.ts'
import { onView } from './views.ts'

/** From the step's side: all parts in place, how far the bit stands out, how long the tool is. */
export function assemblySide(assembly: Assembly): ViewPlan {
  const { design, sizes, views, pieces, inFace } = assembly
  const { layout: l, gripped, parameters: p } = design
  const frame = views.side
  const s = views.bitSide
  const [onBit, away] = s > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const tip = onView(frame, l.bit.tip)
  const top = arborTop(design)
  const half = l.across / 2
  const [xTip, , zTip] = l.bit.tipInFace
  const outward = s > 0 ? 0 : Math.PI
  // Clear of the rows of sizes on the bit side.
  const upward = outward + s * 1.1
  return {
    id: 'assembly-side',
    caption: ['side view, on the step'],
    lines: drawnView(viewOf(pieces, frame), false),
    marks: axisMark([0, top], [0, tip[1]]),
    requests: [
      ...sizes.at('assembly.tip-depth', {
        kind: 'linear',
        direction: 'vertical',
        from: [s * half, 0],
        to: tip,
        side: onBit,
      }),
      ...(p.arbor.kind === 'shank'
        ? sizes.at('assembly.below-shank', {
            kind: 'linear',
            direction: 'vertical',
            from: [s * (p.arbor['shoulder-diameter'] / 2), p.arbor['shoulder-thickness']],
            to: tip,
            side: onBit,
          })
        : []),
      ...sizes.at('assembly.length', { kind: 'linear', direction: 'vertical', from: [0, top], to: tip, side: away }),
      ...sizes.at(
        'assembly.stick-out',
        { kind: 'linear', direction: 'aligned', from: inFace(frame, [gripped.from, 0, zTip]), to: tip },
        { after: 'from the trailing wall' },
      ),
      ...itemMark(assembly, 'body', 'assembly-side', [-s * 0.6 * half, -0.35 * l.depthOnAxis], Math.PI - outward),
      ...itemMark(assembly, 'arbor', 'assembly-side', [0, 0.6 * top], Math.PI - outward),
      ...itemMark(
        assembly,
        'bit',
        'assembly-side',
        inFace(frame, [(xTip + l.corner) / 2, 0, (zTip + l.bit.back) / 2]),
        upward,
      ),
      ...itemMark(
        assembly,
        'screws',
        'assembly-side',
        inFace(frame, [l.screws.xs.at(-1)!, 0, l.screws.height]),
        -Math.PI / 2 - s * 0.6,
      ),
    ],
  }
}

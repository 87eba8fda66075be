import type { Entity } from '../../../drawing/entity.ts'
import { allMarks, crossMark, cutChoices, turningMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { LayerName } from '../../../drawing/style.ts'
import { viewOf } from '../../../edges/view.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { written } from '../words.ts'
import { type Assembly, sectionLetter } from './assembly-views.ts'

/** Circles closer than this are drawn as one, mm. */
const apart = 1e-6

/** From the work's side: the circles that tip and tool run on, and the pass under them. */
export function assemblyBelow({ design, style, sizes, views, pieces }: Assembly): ViewPlan {
  const { layout: l, parameters: p } = design
  const { passWidth, passes } = cuttingOf(design)
  const tip = l.bit.tipRadius
  const swept = design.sweptRadius
  const s = views.bitSide
  const away = s > 0 ? ('left' as const) : ('right' as const)
  const half = passWidth / 2
  // The work runs on past the tool on both sides.
  const long = 1.12 * swept
  const anticlockwise = p.rotation === 'clockwise'
  const work = `work ${written(design, 'length', p.work.width)} wide${passes === 1 ? ' in one pass' : `, in ${passes} passes`}`
  const circle = (radius: number): Entity<LayerName> => ({ kind: 'circle', layer: 'centre', center: [0, 0], radius })
  return {
    id: 'assembly-below',
    caption: [
      'from below',
      `turns ${anticlockwise ? 'anticlockwise' : 'clockwise'} seen so, ${p.rotation} seen from the spindle`,
      `${work}: the circle of the tip is ${formatNumber(design.swing / passWidth, 2)} times the pass`,
    ],
    lines: [
      ...drawnView(viewOf(pieces, views.below), false),
      circle(tip),
      ...(swept - tip > apart ? [circle(swept)] : []),
      ...[half, -half].map(
        (y): Entity<LayerName> => ({ kind: 'line', layer: 'phantom', from: [-long, y], to: [long, y] }),
      ),
    ],
    marks: allMarks(
      crossMark([0, 0], swept),
      turningMark([0, 0], swept, anticlockwise, style, anticlockwise ? 1.15 : Math.PI - 1.15),
    ),
    choices: cutChoices(sectionLetter, [-long, 0], [long, 0], [0, -1], style),
    requests: [
      ...sizes.at(
        'assembly.swing',
        { kind: 'diameter', center: [0, 0], radius: tip, toward: -0.7 },
        { after: 'swing' },
      ),
      ...sizes.at(
        'assembly.swept',
        { kind: 'diameter', center: [0, 0], radius: swept, toward: Math.PI + 0.7 },
        { after: 'swept' },
      ),
      ...sizes.at(
        'assembly.pass-width',
        { kind: 'linear', direction: 'vertical', from: [-s * long, -half], to: [-s * long, half], side: away },
        { after: 'pass' },
      ),
      ...sizes.at(
        'assembly.beyond-pass',
        {
          kind: 'linear',
          direction: 'vertical',
          from: [s * long, half],
          to: [0, tip],
          side: s > 0 ? 'right' : 'left',
        },
        { after: 'each side' },
      ),
    ],
  }
}

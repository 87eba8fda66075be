import type { Rotation, SwingPlan } from '../../figures/pictures.ts'
import type { Point, Polygon } from '../../geometry/polygon.ts'
import { callouts, wrapped } from './callouts.ts'
import { Drawing, textSize } from './drawing.ts'
import type { Picture } from './picture.ts'

/** The tool over the work as the spindle sees it, and a small one as the work sees it. */
export const planOfSwing: Picture<SwingPlan> = {
  title: 'Plan of the swing',
  readings: ({ tip, sweptRadius, workWidth, ahead }, make) => [
    make.length('swing', 'Circle of the tip', 2 * Math.hypot(...tip)),
    make.length('swept', 'Circle that everything stays within', 2 * sweptRadius),
    make.length('work-width', 'Width of the work', workWidth),
    make.length('ahead', `Leading wall of the slot ${ahead < 0 ? 'behind' : 'ahead of'} centre`, Math.abs(ahead)),
  ],
  draw(plan, show) {
    const drawing = new Drawing(180, 113)
    const { rotation, sweptRadius, workWidth } = plan
    const tipRadius = Math.hypot(...plan.tip)
    const centre: Point = [76, 57]
    const half = Math.min(workWidth / 2, 1.25 * sweptRadius)
    const scale = Math.min(44 / sweptRadius, 44 / half)
    const onPage = ([x, y]: Point): Point => [centre[0] + x * scale, centre[1] - y * scale]

    const isWider = workWidth / 2 > half
    const band: [number, number] = isWider ? [8, 100] : [centre[1] - half * scale, centre[1] + half * scale]
    drawing.polygon('work', [
      [2, band[0]],
      [134, band[0]],
      [134, band[1]],
      [2, band[1]],
    ])
    tool(drawing, plan, onPage, scale, 'above')
    drawing.line('axis', [centre[0] - sweptRadius * scale - 3, centre[1]], [134, centre[1]])
    drawing.line(
      'axis',
      [centre[0], centre[1] - sweptRadius * scale - 3],
      [centre[0], centre[1] + sweptRadius * scale + 3],
    )
    turn(drawing, centre, sweptRadius * scale + 4, rotation, 'above')
    drawing.text([2, 4.5], `${rotation}, seen from the spindle`, { strong: true })

    drawing.line('dimension', [6, band[0]], [6, band[1]], isWider ? undefined : 'arrows')
    const words = wrapped(`work ${show('work-width')} wide${isWider ? ', more than is drawn' : ''}`, 11)
    words.forEach((line, i) => {
      drawing.text([8, centre[1] - 3 - (words.length - 1 - i) * 1.25 * textSize], line)
    })
    drawing.line('turn', [134, centre[1] + 7], [124, centre[1] + 7], 'arrow')
    drawing.text([124, centre[1] + 5], 'feed')

    const column = { side: 'right', x: 140, width: 40, top: 2, bottom: 52 } as const
    const onCircle = (radius: number, angle: number) => onPage([radius * Math.cos(angle), radius * Math.sin(angle)])
    callouts(drawing, column, [
      { at: onCircle(sweptRadius, 1.05), words: `swept circle ${show('swept')}: machine and guard must clear it` },
      { at: onCircle(tipRadius, 0.75), words: `tip’s circle, the swing ${show('swing')}` },
    ])

    const farSide = Math.min(...plan.head.map(([x]) => x))
    const leading = onPage([farSide * 0.8, plan.ahead * sideOf(rotation)])
    drawing.line('leader', [24, 101], leading)
    drawing.circle('leader', leading, 0.35)
    const ahead = `leading wall of the slot ${show('ahead')} ${plan.ahead < 0 ? 'behind' : 'ahead of'} centre`
    wrapped(ahead, 18).forEach((line, i) => {
      drawing.text([2, 104 + i * 1.25 * textSize], line)
    })

    const small: Point = [158, 80]
    const smallScale = 17 / sweptRadius
    const fromBelow = ([x, y]: Point): Point => [small[0] + x * smallScale, small[1] + y * smallScale]
    tool(drawing, plan, fromBelow, smallScale, 'below')
    turn(drawing, small, 17 + 3, rotation, 'below')
    drawing.text([180, 105], opposite(rotation), { anchor: 'end', strong: true })
    drawing.text([180, 109], 'seen from below', { anchor: 'end', strong: true })
    const says =
      `The tool over the work, ${rotation} as seen from the spindle looking down. Dashed edges lie underneath the head. The work is fed ` +
      `from right to left and ${workWidth <= 2 * tipRadius ? 'is covered by the tip’s circle in one pass' : 'is wider than the tip’s circle: more than one pass'}. ` +
      `The small picture shows the same tool seen from below: there it turns ${opposite(rotation)}.`
    return { drawing, says }
  },
}

type Side = 'above' | 'below'

const opposite = (rotation: Rotation): Rotation => (rotation === 'clockwise' ? 'anticlockwise' : 'clockwise')

/** Motion at the bit side is along this · Y. */
const sideOf = (rotation: Rotation): number => (rotation === 'clockwise' ? -1 : 1)

function tool(drawing: Drawing, plan: SwingPlan, onPage: (p: Point) => Point, scale: number, from: Side): void {
  const centre = onPage([0, 0])
  const place = (polygon: Polygon) => polygon.map(onPage)
  drawing.circle('swept', centre, plan.sweptRadius * scale)
  drawing.circle('circle', centre, Math.hypot(...plan.tip) * scale)
  const below = plan.below.map(([p, q]): [Point, Point] => [onPage(p), onPage(q)])
  if (from === 'above') {
    drawing.polygon('bit', place(plan.bit))
    drawing.polygon('metal', place(plan.head))
    drawing.polygon('hidden', place(plan.bit))
    for (const screw of plan.screws) drawing.polygon('hidden', place(screw))
    drawing.segments('hidden', below)
    drawing.polygon('outline', place(plan.head))
  } else {
    drawing.polygon('metal', place(plan.head))
    drawing.polygon('thin', place(plan.head))
    for (const screw of plan.screws) drawing.polygon('hidden', place(screw))
    drawing.polygon('bit', place(plan.bit))
    drawing.segments('thin', below)
  }
  drawing.circle('turn', onPage(plan.tip), 0.6)
}

/** An arrow the way the tool turns, as this side sees it, away from the bit. */
function turn(drawing: Drawing, centre: Point, radius: number, rotation: Rotation, from: Side): void {
  const clockwise = (rotation === 'clockwise') === (from === 'above')
  const [a, b] = [(110 * Math.PI) / 180, (158 * Math.PI) / 180]
  drawing.arc('turn', centre, radius, clockwise ? b : a, clockwise ? a : b, 'arrow')
}

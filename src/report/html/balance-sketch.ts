import type { BalanceSketch } from '../../figures/pictures.ts'
import type { Point } from '../../geometry/polygon.ts'
import { callouts } from './callouts.ts'
import { Drawing } from './drawing.ts'
import type { Picture } from './picture.ts'

/** Where the heavy side lies and where to drill. */
export const balanceSketch: Picture<BalanceSketch> = {
  title: 'Balance',
  readings: ({ unbalance, heavySide, forces, drilling }, make) => [
    make.unbalance('unbalance', 'unbalance', Math.hypot(...unbalance)),
    ...(heavySide === undefined ? [] : [make.angle('heavy-side', 'heavy side from the bit side', Math.abs(heavySide))]),
    ...forces.map(({ id, label, force }) => make.of(id, label, 'force', force)),
    ...(drilling === undefined
      ? []
      : [
          make.of('holes', 'holes', 'ratio', drilling.holes.length),
          make.length('drill', 'drill', drilling.drill),
          make.length('circle', 'radius of their circle', drilling.circleRadius),
          make.length('depth', 'depth at full diameter', drilling.depth),
          make.unbalance('removes', 'takes out', drilling.removes),
          make.unbalance('remains', 'leaves', drilling.remains),
        ]),
  ],
  draw(sketch, show) {
    const { rotation, head, bit, unbalance, heavySide, forces, drilling, says } = sketch
    const drawing = new Drawing(180)
    const points = [...head, ...bit]
    const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])] as const
    const [left, right] = [Math.min(...xs), Math.max(...xs)]
    const half = Math.max(...ys.map(Math.abs))
    const scale = Math.min(86 / (right - left), 32 / half)
    const origin: Point = [4 - left * scale + (86 - (right - left) * scale) / 2, 10 + half * scale]
    const onPage = ([x, y]: Point): Point => [origin[0] + x * scale, origin[1] - y * scale]
    drawing.height = Math.max(50, 12 + 2 * half * scale)
    drawing.text([2, 4.5], `seen from the spindle; turns ${rotation}`, { strong: true })
    drawing.polygon('bit', bit.map(onPage))
    drawing.polygon('metal', head.map(onPage))
    drawing.polygon('hidden', bit.map(onPage))
    drawing.polygon('outline', head.map(onPage))
    drawing.line('axis', onPage([left, 0]), onPage([right, 0]))
    drawing.line('axis', onPage([0, -half]), onPage([0, half]))
    const holes = drilling?.holes ?? []
    for (const hole of holes) drawing.circle('hole', onPage(hole), (drilling!.drill / 2) * scale)
    const items: { at?: Point; words: string }[] = []
    if (heavySide !== undefined) {
      const size = Math.hypot(...unbalance)
      const reach = half * 0.9
      const end = onPage([(unbalance[0] / size) * reach, (unbalance[1] / size) * reach])
      drawing.line('heavy', origin, end, 'arrow')
      items.push({
        at: end,
        words: `heavy side: unbalance ${show('unbalance')}, ${show('heavy-side')} from the bit side${sense(heavySide)}`,
      })
    }
    if (drilling) {
      const count = holes.length === 1 ? 'drill one hole' : `drill ${show('holes')} holes`
      items.push({
        at: onPage(holes[0]!),
        words:
          `${count} ⌀ ${show('drill')}, ${show('depth')} deep, on a radius of ${show('circle')}: ` +
          `takes out ${show('removes')}, leaves ${show('remains')}`,
      })
    }
    for (const { id, label } of forces) items.push({ words: `${label} ${show(id)}` })
    callouts(drawing, { side: 'right', x: 104, width: 76, top: 8, bottom: drawing.height - 2 }, items)
    return { drawing, says: `${says} Static balance only: a couple between ends of the tool stays.` }
  },
}

/** Which way round the angle goes, as the spindle sees it. */
const sense = (angle: number): string => (angle === 0 ? '' : angle > 0 ? ' anticlockwise' : ' clockwise')

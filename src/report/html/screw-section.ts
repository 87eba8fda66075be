import type { ScrewSection } from '../../figures/pictures.ts'
import type { Point } from '../../geometry/polygon.ts'
import { callouts } from './callouts.ts'
import { Drawing } from './drawing.ts'
import type { Picture } from './picture.ts'
import { sectioned } from './wall-section.ts'

/** Section across the bit through its first clamping screw: which side the screw pushes from, and into what. */
export const screwSection: Picture<ScrewSection> = {
  title: 'Section through the first set screw',
  readings: ({ wallThickness, ahead, screwHeight }, make) => [
    make.length('wall', 'wall that the screw goes through', wallThickness),
    make.length('ahead', `leading wall ${ahead < 0 ? 'behind' : 'ahead of'} centre`, Math.abs(ahead)),
    make.length('screw-height', 'screw above the face, square to it', screwHeight),
  ],
  draw(section, show) {
    const { head, bit, screw, leadingWall, screwWall, faceAt, ahead, thread, rotation } = section
    const points = head.edges.flat().concat(bit.flat(), screw.flat())
    const [left, right] = [Math.min(...points.map(([y]) => y)), Math.max(...points.map(([y]) => y))]
    const [low, high] = [Math.min(...points.map(([, z]) => z)), Math.max(...points.map(([, z]) => z))]
    const scale = Math.min(84 / (right - left), 56 / (high - low))
    const drawing = new Drawing(180, Math.max(56, (high - low) * scale + 16))
    const onPage = ([y, z]: Point): Point => [90 + (y - (left + right) / 2) * scale, 5 + (high - z) * scale]
    sectioned(drawing, head, onPage, 'cut-metal')
    for (const piece of screw) drawing.polygon('inserted', piece.map(onPage))
    for (const piece of bit) drawing.polygon('bit', piece.map(onPage))
    drawing.line('axis', onPage([0, high + 2 / scale]), onPage([0, low - 4 / scale]))

    const under = onPage([0, low])[1] + 5
    const [from, to] = [onPage([screwWall.from, low]), onPage([screwWall.to, low])]
    drawing.line('dimension', [from[0], under], [to[0], under], 'arrows')
    drawing.line('thin', from, [from[0], under + 1])
    drawing.line('thin', to, [to[0], under + 1])
    const hand = rotation === 'clockwise' ? -1 : 1
    const motionAt = onPage([0, low])[1] + 9
    drawing.line('turn', [90 - hand * 4, motionAt], [90 + hand * 4, motionAt], 'arrow')
    drawing.text([90 + 6, motionAt + 1], 'motion')

    const middle = (polygons: readonly (readonly Point[])[]): Point => {
      const all = polygons.flat()
      return [all.reduce((sum, p) => sum + p[0], 0) / all.length, all.reduce((sum, p) => sum + p[1], 0) / all.length]
    }
    const items = [
      { at: [(from[0] + to[0]) / 2, under] as Point, words: `wall ${show('wall')}` },
      { at: onPage(middle(screw)), words: `set screw ${thread}, ${show('screw-height')} above the face` },
      ...(bit.length > 0 ? [{ at: onPage(middle(bit)), words: 'bit' }] : []),
      {
        at: onPage([leadingWall, faceAt + 1]),
        words: `leading wall ${show('ahead')} ${ahead < 0 ? 'behind' : 'ahead of'} centre`,
      },
    ]
    const isLeft = ({ at }: { at: Point }) => at[0] < onPage([0, 0])[0]
    const bottom = drawing.height - 2
    callouts(drawing, { side: 'left', x: 40, width: 38, top: 3, bottom }, items.filter(isLeft))
    callouts(
      drawing,
      { side: 'right', x: 140, width: 38, top: 3, bottom },
      items.filter((item) => !isLeft(item)),
    )
    return {
      drawing,
      says: `Section square to the bit, seen from the bit side towards the axis. The tool moves to the ${hand < 0 ? 'left' : 'right'} here; the cutting force pushes the bit the other way.`,
    }
  },
}

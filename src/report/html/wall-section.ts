import type { SectionedPart, WallSection } from '../../figures/pictures.ts'
import type { Point, Segment } from '../../geometry/polygon.ts'
import { angleMark } from './angle-mark.ts'
import { callouts } from './callouts.ts'
import { Drawing } from './drawing.ts'
import type { Picture } from './picture.ts'

/** Section along the spindle axis through seat and bore: what metal is left between them. */
export const wallSection: Picture<WallSection> = {
  title: 'Section along the spindle axis',
  readings: ({ face, seatDepth, bore, spigotLength, tip, walls, beside }, make) => {
    const rise = face.halfWidth * Math.tan(face.angle)
    return [
      make.length('long-side', 'height on the bit side', face.depthOnAxis + rise),
      make.length('short-side', 'height opposite the bit', face.depthOnAxis - rise),
      make.angle('face-angle', 'face angle', face.angle),
      make.length('seat-depth', 'slot floor, square to the face', seatDepth),
      make.length('bore', 'bore', bore.diameter),
      ...(bore.depth === undefined ? [] : [make.length('bore-depth', 'bore depth', bore.depth)]),
      make.length('spigot', 'spigot length', spigotLength),
      make.length('tip', 'tip below the mounting face', -tip[1]),
      ...walls.map(({ id, label, distance }) => make.length(`wall-${id}`, label, distance)),
      ...(beside === 0 ? [] : [make.length('beside', 'section beside the axis', Math.abs(beside))]),
    ]
  },
  draw(section, show) {
    const { head, arbor, bit, behind, face, walls, openings, bore, tip, beside } = section
    const points = [head, arbor].flatMap((part) => part.edges.flat()).concat(bit.flat(), behind.flat())
    const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))]
    const [low, high] = [Math.min(...points.map(([, z]) => z)), Math.max(...points.map(([, z]) => z))]
    const scale = Math.min(88 / (right - left), 74 / (high - low))
    const height = (high - low) * scale + 12
    const drawing = new Drawing(180, Math.max(78, height))
    const onPage = ([x, z]: Point): Point => [90 + (x - (left + right) / 2) * scale, 6 + (high - z) * scale]
    const place = (segments: readonly Segment[]) => segments.map(([p, q]): Segment => [onPage(p), onPage(q)])

    drawing.segments('thin', place(behind))
    sectioned(drawing, head, onPage, 'cut-metal')
    sectioned(drawing, arbor, onPage, 'inserted')
    for (const piece of bit) drawing.polygon('bit', piece.map(onPage))
    drawing.segments('outline', place(head.edges))
    drawing.line('axis', onPage([0, high + 3 / scale]), onPage([0, low - 3 / scale]))

    const { halfWidth, angle, depthOnAxis } = face
    const rise = halfWidth * Math.tan(angle)
    const side = (x: number, z: number, out: number): Point => {
      const [px, top] = onPage([x, 0])
      const [, bottom] = onPage([x, z])
      drawing.line('thin', [px, top], [px + out * 6, top])
      drawing.line('thin', [px, bottom], [px + out * 6, bottom])
      drawing.line('dimension', [px + out * 4.5, top], [px + out * 4.5, bottom], 'arrows')
      return [px + out * 4.5, top + (bottom - top) * 0.35]
    }
    const longSide = side(halfWidth, -(depthOnAxis + rise), 1)
    const shortSide = side(-halfWidth, -(depthOnAxis - rise), -1)
    const outer = onPage([-halfWidth, -(depthOnAxis - rise)])
    const run = 2 * halfWidth * scale
    const faceAngle =
      angle === 0
        ? onPage([-halfWidth * 0.4, -depthOnAxis])
        : angleMark(drawing, outer, [1, 0], [Math.cos(angle), Math.sin(angle)], {
            radius: run * 0.55,
            reach: run * 0.65,
          })
    const floor = (x: number): Point => {
      const z = section.seatDepth / Math.cos(angle)
      return onPage([x, -depthOnAxis - x * Math.tan(angle) + z])
    }
    const wallMarks = walls.map(({ id, from, to, label }) => {
      const [p, q] = [onPage(from), onPage(to)]
      drawing.line('heavy', p, q)
      return { at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2] as Point, words: `${label} ${show(`wall-${id}`)}` }
    })
    const openingMarks = openings.map(({ label, area }) => {
      drawing.polygon('heavy', area.map(onPage))
      return { at: onPage(area[0]!), words: label }
    })
    const boreAt = (share: number, z: number) => onPage([(bore.diameter / 2) * share, z])
    const boreDepth = bore.depth ?? section.spigotLength
    const items = [
      { at: longSide, words: `height on the bit side ${show('long-side')}` },
      { at: shortSide, words: `height opposite ${show('short-side')}` },
      { at: faceAngle, words: `face angle ${show('face-angle')}` },
      { at: floor(halfWidth * 0.75), words: `slot floor ${show('seat-depth')} deep, square to the face` },
      { at: onPage(tip), words: `tip ${show('tip')} below the mounting face` },
      { at: boreAt(-1, -boreDepth * 0.3), words: `bore ⌀ ${show('bore')}` },
      ...(bore.depth === undefined
        ? []
        : [{ at: boreAt(-0.6, -bore.depth), words: `bore ${show('bore-depth')} deep at full diameter` }]),
      { at: boreAt(0.5, -section.spigotLength), words: `spigot ${show('spigot')} long` },
      ...wallMarks,
      ...openingMarks,
    ]
    const isLeft = ({ at }: { at: Point }) => at[0] < onPage([0, 0])[0]
    const bottom = drawing.height - 2
    callouts(drawing, { side: 'left', x: 37, width: 36, top: 3, bottom }, items.filter(isLeft))
    callouts(
      drawing,
      { side: 'right', x: 144, width: 36, top: 3, bottom },
      items.filter((item) => !isLeft(item)),
    )
    const where =
      beside === 0 ? 'through the spindle axis' : `${show('beside')} beside the spindle axis, where the slot is`
    return {
      drawing,
      says: `Section ${where}, the bit reaching to the right. Hatched: the head. Heavy lines: the walls that must hold${openings.length > 0 ? ', and the openings where there is none' : ''}. Arbor and bit are shown uncut.`,
    }
  },
}

/** A cut part: metal filled, then what was taken out of it left blank, then its edges. */
export function sectioned(
  drawing: Drawing,
  part: SectionedPart,
  onPage: (p: Point) => Point,
  look: 'cut-metal' | 'inserted',
): void {
  for (const polygon of part.stock) drawing.polygon(look, polygon.map(onPage))
  for (const polygon of part.cuts) drawing.polygon('void', polygon.map(onPage))
  drawing.segments(
    'outline',
    part.edges.map(([p, q]): Segment => [onPage(p), onPage(q)]),
  )
}

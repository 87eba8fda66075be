import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'
import { arrowAt, drawnLine, type Paper, stepped } from './sketch.ts'

/** Where the text of a measured line stands along it: distance from `from` to the text's middle, mm. */
export interface TextPlace {
  readonly middle: number
  readonly width: number
}

/** Whether arrows fit between the ends, points outward; else they stand outside and point inward. */
export const arrowsInside = ({ style }: Paper, length: number): boolean => length >= 3 * style.arrowLength

/** How far the line runs past its ends where arrows stand outside. */
export const tailOf = ({ style }: Paper): number => 2 * style.arrowLength

/** Least and greatest coordinate along the line that it covers, with tails and the shelf under a text outside. */
export function extentOf(paper: Paper, length: number, text: TextPlace): readonly [number, number] {
  const tail = arrowsInside(paper, length) ? 0 : tailOf(paper)
  const half = text.width / 2
  const outside = text.middle - half < 0 || text.middle + half > length
  return outside
    ? [Math.min(-tail, text.middle - half), Math.max(length + tail, text.middle + half)]
    : [-tail, length + tail]
}

/** A dimension line with its arrows, from `from` along `direction` (rad). */
export function measuredLine(
  paper: Paper,
  from: Point,
  direction: number,
  length: number,
  text: TextPlace,
): Entity<LayerName>[] {
  const to = stepped(from, direction, length)
  const [low, high] = extentOf(paper, length, text)
  const inward = arrowsInside(paper, length) ? Math.PI : 0
  return [
    drawnLine(stepped(from, direction, low), stepped(from, direction, high)),
    arrowAt(paper, from, direction + inward),
    arrowAt(paper, to, direction + Math.PI + inward),
  ]
}

/** An extension line from a point of the view to just past the dimension line; nothing where they coincide. */
export function extensionLine({ style }: Paper, point: Point, at: Point): Entity<LayerName>[] {
  const distance = Math.hypot(at[0] - point[0], at[1] - point[1])
  if (distance < style.extensionGap) return []
  const direction = Math.atan2(at[1] - point[1], at[0] - point[0])
  return [drawnLine(stepped(point, direction, style.extensionGap), stepped(at, direction, style.extensionBeyond))]
}

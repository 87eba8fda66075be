import type { Axis } from '../axis.ts'
import { type AxisPlace, axisPlace } from './axis-place.ts'
import { line, text } from './svg.ts'
import { ownWords } from './value-words.ts'

/** All pictures of one parameter stand one below the other, on the same places across. mm */
export const frame = { width: 186, left: 56, right: 180 } as const

export const placesAcross = (axis: Axis): AxisPlace => axisPlace(axis, frame.left, frame.right, 8)

/** The side with the values of the parameter, below a picture that ends at `y`; it takes 10 mm. */
export function valuesBelow(axis: Axis, { ticks }: AxisPlace, y: number): string[] {
  return [
    line('grid', [frame.left, y], [frame.right, y]),
    ...ticks.flatMap(({ at, words }) => [
      line('thin', [at, y], [at, y + 1.2]),
      text([at, y + 4.4], words, { anchor: 'middle', size: 2.8 }),
    ]),
    text([frame.left - 3, y + 4.4], axis.unit === '' ? axis.path : `${axis.path}, ${axis.unit}`, {
      anchor: 'end',
      look: 'strong',
      size: 2.8,
    }),
  ]
}

/** The file's own value, as a line through the picture with words above it; it takes 4 mm above `top`. */
export function ownAcross(axis: Axis, { own }: AxisPlace, top: number, bottom: number): string[] {
  if (own === undefined) return []
  const anchor = own > frame.right - 24 ? 'end' : own < frame.left + 24 ? 'start' : 'middle'
  return [
    line('own', [own, top - 1], [own, bottom]),
    text([own, top - 1.8], `file: ${ownWords(axis)}`, { anchor, size: 2.8, look: 'strong' }),
  ]
}

import { numberText } from '../../report/amount-text.ts'
import { type Axis, isScale } from '../axis.ts'
import { ticksIn } from './ticks.ts'

/** Where the values of a parameter lie along one side of a picture. */
export interface AxisPlace {
  readonly isScale: boolean
  /** Numbers of the axis' points in the order in which they stand there. */
  readonly order: readonly number[]
  /** Their places in that order, and the borders of the cells about them: half way to the next value. */
  readonly centres: readonly number[]
  readonly borders: readonly number[]
  readonly ticks: readonly { readonly at: number; readonly words: string }[]
  /** Where the file's own value lies; absent where it lies outside. */
  readonly own?: number
}

/** Places between two ends of a side; `from` may be more than `to`. `about`: so many ticks. */
export function axisPlace(axis: Axis, from: number, to: number, about: number): AxisPlace {
  const { points, own } = axis
  const scale = isScale(axis)
  const order = points.map((_, at) => at)
  if (scale) order.sort((a, b) => Number(points[a]!.shown) - Number(points[b]!.shown))
  // Names stand side by side, in the order of the command.
  const values = order.map((at, place) => (scale ? Number(points[at]!.shown) : place))
  const gap = (at: number) => values[at + 1]! - values[at]!
  const last = values.length - 1
  const alone = Math.max(1e-6, Math.abs(values[0]!) / 20)
  const low = last === 0 ? values[0]! - alone : values[0]! - gap(0) / 2
  const high = last === 0 ? values[0]! + alone : values[last]! + gap(last - 1) / 2
  const place = (value: number) => from + ((value - low) / (high - low)) * (to - from)
  const inner = values.slice(1).map((value, at) => place((value + values[at]!) / 2))
  const ownValue = own && (scale ? Number(own.shown) : order.findIndex((at) => points[at]!.shown === own.shown))
  const isOn = ownValue !== undefined && (scale ? ownValue >= low && ownValue <= high : ownValue >= 0)
  const round = () => ticksIn(low, high, about).map((tick) => ({ at: place(tick), words: numberText(tick, axis.unit) }))
  const each = () => order.map((at, k) => ({ at: place(values[k]!), words: shownWords(axis, at) }))
  return {
    isScale: scale,
    order,
    centres: values.map(place),
    borders: [from, ...inner, to],
    ticks: scale && points.length > 8 ? round() : each(),
    ...(isOn && { own: place(ownValue) }),
  }
}

function shownWords({ points, unit }: Axis, at: number): string {
  const { shown } = points[at]!
  return typeof shown === 'number' ? numberText(shown, unit) : shown
}

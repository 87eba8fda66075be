import { amountText } from '../../report/amount-text.ts'
import type { Axis, AxisPoint } from '../axis.ts'

/** A value of a parameter with its unit. */
export const valueWords = ({ unit }: Pick<Axis, 'unit'>, { shown }: AxisPoint): string =>
  typeof shown === 'number' ? amountText(shown, unit) : shown

/** What the file has. */
export const ownWords = (axis: Axis): string => (axis.own === undefined ? 'nothing' : valueWords(axis, axis.own))

import { formatNumber } from '../../quantity/format-number.ts'

/** A place in a picture, in its own units (about 1 mm on paper), to a hundredth. */
export const coordinate = (value: number): string => formatNumber(value, 2, { trim: true })

import { parseQuantity } from '../quantity/parse-quantity.ts'

/**
 * Reads a taper the way the trade writes it and gives the change of diameter per length, a plain number:
 * `7:24` is 7/24, `0.59941 in/ft` is 0.59941/12, `16 deg 51 min` is an included angle a and gives 2 tan(a/2).
 * Undefined where the text is none of these, or the taper is not above 0 and below 2 (an included angle of 90 degrees).
 */
export function parseTaper(written: string): number | undefined {
  const taper = ratio(written) ?? inchesPerFoot(written) ?? includedAngle(written)
  return taper !== undefined && taper > 0 && taper < 2 ? taper : undefined
}

/** What `parseTaper` takes, in words, for a message. */
export const allowedTaper = 'a taper such as 7:24, 0.59941 in/ft (on the diameter) or 16 deg 51 min (included angle)'

const number = String.raw`(\d+(?:\.\d+)?)`

function ratio(written: string): number | undefined {
  const form = new RegExp(`^\\s*${number}\\s*:\\s*${number}\\s*$`).exec(written)
  return form === null ? undefined : Number(form[1]) / Number(form[2])
}

function inchesPerFoot(written: string): number | undefined {
  const form = new RegExp(`^\\s*${number}\\s*in\\s*/\\s*ft\\s*$`).exec(written)
  return form === null ? undefined : Number(form[1]) / 12
}

function includedAngle(written: string): number | undefined {
  // Without a unit, 7/24 or 0.29 would be read as degrees although a ratio was meant.
  if (!/[a-z°]/i.test(written)) return undefined
  const angle = parseQuantity('angle', written, 'mm')
  return angle.ok ? 2 * Math.tan(angle.value / 2) : undefined
}

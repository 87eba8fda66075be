import { type Fraction, fraction, fractionOfDecimal, negated, plus } from './fraction.ts'

/** A number at the start of a text and what stands behind it, or why there is none. */
export type NumberRead =
  | { readonly ok: true; readonly value: Fraction; readonly negative: boolean; readonly rest: string }
  | { readonly ok: false; readonly remedy?: string }

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** Typographic signs brought to the plain ones, so that text pasted from a drawing reads the same. */
export function plainSigns(written: string): string {
  return written
    .replace(
      /(\d?)([½¼¾⅛⅜⅝⅞])/g,
      (_, before: string, sign: string) => `${before === '' ? '' : `${before} `}${vulgar[sign]}`,
    )
    .replace(/[\u2212\u2012\u2013]/g, '-')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[\u2032\u2019]/g, "'")
    .replace(/[\u2033\u201d]/g, '"')
    .trim()
}

/** Longest run of digits that is read: more is a slip of the keyboard, not a measurement. */
const longest = 30
/** Powers of ten beyond this are no shop quantity in any of the units understood. */
const largestExponent = 30

/**
 * Reads the number a text starts with: `12.5`, `.5`, `5.`, `1e-3`, `1/2`, `2-1/4`, `2 1/4`, each with a sign if wanted.
 * Decimal commas, thousands separators, hexadecimal, `1/0`, mixed numbers whose fraction is 1 or more: not ok.
 */
export function readNumber(text: string): NumberRead {
  const comma = /^[+-]?(\d[\d,]*,\d+)(\.\d+)?/.exec(text)
  if (comma !== null) return { ok: false, remedy: commaRemedy(comma[1] ?? '', comma[2] ?? '') }
  const sign = /^[+-]/.exec(text)?.[0] ?? ''
  const negative = sign === '-'
  const unsigned = text.slice(sign.length)
  const withSign = (value: Fraction) => (negative ? negated(value) : value)

  const mixed = /^(\d+)(?:-| +)(\d+)\/(\d+)(?![\d.,/])/.exec(unsigned)
  if (mixed !== null) {
    const [all, whole = '', over = '', under = ''] = mixed
    if (all.length > longest || Number(under) === 0) return { ok: false }
    if (BigInt(over) >= BigInt(under)) return { ok: false, remedy: `write ${whole} and a fraction below 1` }
    return {
      ok: true,
      negative,
      value: withSign(plus(fraction(BigInt(whole)), fraction(BigInt(over), BigInt(under)))),
      rest: unsigned.slice(all.length).trim(),
    }
  }
  const simple = /^(\d+)\/(\d+)(?![\d.,/])/.exec(unsigned)
  if (simple !== null) {
    const [all, over = '', under = ''] = simple
    if (all.length > longest || Number(under) === 0) return { ok: false }
    return {
      ok: true,
      negative,
      value: withSign(fraction(BigInt(over), BigInt(under))),
      rest: unsigned.slice(all.length).trim(),
    }
  }
  const decimal = /^(?:\d+\.?\d*|\.\d+)(?:e([+-]?\d+))?/i.exec(unsigned)
  if (decimal === null) return { ok: false }
  const [all, exponent = '0'] = decimal
  const rest = unsigned.slice(all.length)
  if (all.length > longest || Math.abs(Number(exponent)) > largestExponent) {
    return { ok: false, remedy: 'write a number of a size that can be measured' }
  }
  // A digit, point or underscore straight behind the number: `1_000`, `1.2.3`, `0x10`, `1/2.5`.
  if (/^(?:[._]|x[\da-f]|o\d|b\d|\/\s*[\d.+-])/i.test(rest) && !/^\.?[a-z]+$/i.test(rest)) return { ok: false }
  return { ok: true, negative, value: withSign(fractionOfDecimal(all)), rest: rest.trim() }
}

function commaRemedy(digits: string, decimals: string): string {
  const grouped = /^\d{1,3}(?:,\d{3})+$/.test(digits)
  const joined = digits.replaceAll(',', '') + decimals
  if (grouped && (decimals !== '' || digits.split(',').length > 2)) return `write ${joined}`
  if (grouped) return `write ${digits.replace(',', '.')} or ${joined}: a comma can be read either way`
  return digits.split(',').length === 2 && decimals === ''
    ? `write ${digits.replace(',', '.')}, with a point`
    : 'write the number with a decimal point and no separators'
}

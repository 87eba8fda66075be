/** An exact fraction. The denominator is positive; nothing is reduced, the numbers stay short anyway. */
export interface Fraction {
  readonly over: bigint
  readonly under: bigint
}

/** Exact fraction from whole numbers; `under` above zero. */
export function fraction(over: bigint | number, under: bigint | number = 1n): Fraction {
  return { over: BigInt(over), under: BigInt(under) }
}

/** Exact value of a decimal as written, `-12.5`, `.5`, `5.` or `1e-3`. The caller has checked the form. */
export function fractionOfDecimal(written: string): Fraction {
  const [mantissa = '', exponent = '0'] = written.toLowerCase().split('e')
  const negative = mantissa.startsWith('-')
  const [whole = '', decimals = ''] = mantissa.replace(/^[+-]/, '').split('.')
  const digits = BigInt(`${whole}${decimals}` || '0')
  const shift = Number(exponent) - decimals.length
  const over = (negative ? -digits : digits) * (shift > 0 ? 10n ** BigInt(shift) : 1n)
  return { over, under: shift < 0 ? 10n ** BigInt(-shift) : 1n }
}

export function plus(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.under + b.over * a.under, under: a.under * b.under }
}

export function times(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.over, under: a.under * b.under }
}

/** `a` divided by `b`; `b` above zero. */
export function dividedBy(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.under, under: a.under * b.over }
}

export function negated(a: Fraction): Fraction {
  return { over: -a.over, under: a.under }
}

/**
 * The double nearest to the fraction, so that `1/2 in` is 12.7 mm to the last bit whatever way it was written.
 * Twenty-five digits are worked out and handed to the engine's decimal reader, which rounds correctly; a sticky
 * last digit keeps a remainder from being taken for a tie.
 */
export function toNumber(a: Fraction): number {
  if (a.over === 0n) return 0
  const size = a.over < 0n ? -a.over : a.over
  const shift = Math.max(0, 25 + a.under.toString().length - size.toString().length)
  const scaled = size * 10n ** BigInt(shift)
  const sticky = scaled % a.under === 0n ? '0' : '1'
  const value = Number(`${scaled / a.under}${sticky}e${-shift - 1}`)
  return a.over < 0n ? -value : value
}

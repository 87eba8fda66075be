import { normal } from './random.ts'

/**
 * How sizes lie between their limits; an assumption, not a measurement. `normal`: about the middle, limits three standard
 * deviations away, so that 0.27 % lie beyond them (common practice). `uniform`: as likely anywhere between them, for a size that
 * is only sorted by a gauge. `triangular`: likeliest in the middle, none beyond the limits, for a size aimed at by hand.
 */
export type Distribution = 'normal' | 'uniform' | 'triangular'

/** Variance of each for limits at −1 and 1: the closed forms 1/9, 1/3 and 1/6. */
export const variance: Readonly<Record<Distribution, number>> = { normal: 1 / 9, uniform: 1 / 3, triangular: 1 / 6 }

/** One variate of it for limits at −1 and 1, from uniform numbers above 0 and below 1. */
export function variate(distribution: Distribution, next: () => number): number {
  switch (distribution) {
    case 'normal':
      return normal(next) / 3
    case 'uniform':
      return 2 * next() - 1
    case 'triangular':
      return next() + next() - 1
  }
}

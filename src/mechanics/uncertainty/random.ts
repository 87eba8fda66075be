/**
 * Numbers from 0 to 1, 2⁻³² apart, from a 32-bit counter (step 0x6d2b79f5) put through two rounds of multiplying and shifting:
 * the generator known as mulberry32 (public domain, from memory). Whole-number arithmetic only, so that a seed gives the
 * same numbers on every machine. `seed`: any whole number.
 */
export function uniformNumbers(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/**
 * Normal variates with mean 0 and standard deviation 1 as the sum of twelve uniform ones less 6 (central limit theorem;
 * Irwin–Hall distribution): exact sums, no logarithm whose last digit differs between engines. Never beyond ±6; variance
 * exactly 1, kurtosis 2.9 where the normal distribution has 3.
 */
export function normalNumbers(seed: number): () => number {
  const next = uniformNumbers(seed)
  return () => {
    let sum = -6
    for (let i = 0; i < 12; i++) sum += next()
    return sum
  }
}

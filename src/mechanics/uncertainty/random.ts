/**
 * Whole numbers from 0 to 2³² − 1 by the Mersenne Twister MT19937 (M. Matsumoto and T. Nishimura, ACM Transactions on
 * Modeling and Computer Simulation 8, 1998; also in ISO/IEC 14882, header random). Whole-number arithmetic only, so that a
 * seed gives the same numbers on every machine. `seed`: a whole number, taken modulo 2³².
 */
export function wholeNumbers(seed: number): () => number {
  const state = new Uint32Array(size)
  state[0] = seed >>> 0
  for (let i = 1; i < size; i++) {
    const before = state[i - 1]!
    state[i] = Math.imul(1_812_433_253, before ^ (before >>> 30)) + i
  }
  let at = size
  return () => {
    if (at === size) {
      twist(state)
      at = 0
    }
    let y = state[at++]!
    y ^= y >>> 11
    y ^= (y << 7) & 0x9d2c5680
    y ^= (y << 15) & 0xefc60000
    return (y ^ (y >>> 18)) >>> 0
  }
}

const size = 624
const shift = 397

function twist(state: Uint32Array): void {
  for (let i = 0; i < size; i++) {
    const y = (state[i]! & 0x80000000) | (state[(i + 1) % size]! & 0x7fffffff)
    state[i] = state[(i + shift) % size]! ^ (y >>> 1) ^ (y & 1 ? 0x9908b0df : 0)
  }
}

/** Numbers above 0 and below 1, 2⁻³² apart and half of that from either end; exact. Seed as for `wholeNumbers`. */
export function uniformNumbers(seed: number): () => number {
  const next = wholeNumbers(seed)
  return () => (next() + 0.5) / 2 ** 32
}

/**
 * One normal variate, mean 0 and standard deviation 1, by C. F. F. Karney's algorithm N (Sampling exactly from the normal
 * distribution, ACM Transactions on Mathematical Software 42, 2016): the probabilities come about by comparing uniform numbers, after von
 * Neumann, so that no logarithm or cosine is needed, whose last digit differs between engines. The only operations are sums, products
 * and one quotient, each rounded once by IEEE 754: the same everywhere. Not cut off. `next` gives numbers above 0, below 1.
 */
export function normal(next: () => number): number {
  for (;;) {
    let k = 0
    while (halfExponential(next)) k++
    if (!all(k * (k - 1), () => halfExponential(next))) continue
    const x = next()
    if (!all(k + 1, () => slope(next, k, x))) continue
    return next() < 0.5 ? k + x : -(k + x)
  }
}

/** True with probability e^(−1/2): the falling run that starts below one half has an even length. */
function halfExponential(next: () => number): boolean {
  let last = 0.5
  for (let length = 0; ; length++) {
    const u = next()
    if (u >= last) return length % 2 === 0
    last = u
  }
}

/** True with probability e^(−x(2k + x)/(2k + 2)). */
function slope(next: () => number, k: number, x: number): boolean {
  const share = (2 * k + x) / (2 * k + 2)
  let last = x
  for (let length = 0; ; length++) {
    const z = next()
    if (z >= last || next() >= share) return length % 2 === 0
    last = z
  }
}

/** True where so many tries are all true; true for none. */
function all(tries: number, one: () => boolean): boolean {
  for (let i = 0; i < tries; i++) if (!one()) return false
  return true
}

const fullTurn = 2 * Math.PI

/** c0 + c1·cos t + s1·sin t + c2·cos 2t + s2·sin 2t: how a quadric runs round an ellipse. */
export type RoundFunction = readonly [c0: number, c1: number, s1: number, c2: number, s2: number]

const parts = 12
const [cosines, sines] = [Math.cos, Math.sin].map((f) =>
  Array.from({ length: parts + 1 }, (_, i) => f((i * fullTurn) / parts)),
) as [number[], number[]]

/**
 * All roots in one turn, ascending, and the places where the function comes within `touch` of 0 and turns back. Stretches
 * are halved until bounds on the derivatives say that there is one root, none, or one place to turn: none is missed.
 */
export function rootsRound(f: RoundFunction, touch: number): number[] {
  const size = Math.hypot(f[1], f[2])
  const second = Math.hypot(f[3], f[4])
  const search: Search = { f, touch, most2: size + 4 * second, most3: size + 8 * second, roots: [] }
  let before = value(f, 1, 0)
  for (let i = 1; i <= parts; i++) {
    const here = value(f, cosines[i]!, sines[i]!)
    searchIn(search, ((i - 1) * fullTurn) / parts, before, (i * fullTurn) / parts, here, 0)
    before = here
  }
  return search.roots
}

interface Search {
  readonly f: RoundFunction
  readonly touch: number
  /** Bounds of the second and third derivative. */
  readonly most2: number
  readonly most3: number
  readonly roots: number[]
}

/** Value, slope and second derivative where the cosine is k and the sine s. */
const value = (f: RoundFunction, k: number, s: number): number =>
  f[0] + f[1] * k + f[2] * s + f[3] * (k * k - s * s) + 2 * f[4] * k * s
const slope = (f: RoundFunction, k: number, s: number): number =>
  f[2] * k - f[1] * s + 2 * f[4] * (k * k - s * s) - 4 * f[3] * k * s
const bend = (f: RoundFunction, k: number, s: number): number =>
  -f[1] * k - f[2] * s - 4 * (f[3] * (k * k - s * s) + 2 * f[4] * k * s)

function searchIn(all: Search, a: number, fa: number, b: number, fb: number, depth: number): void {
  const { f, touch, most2, most3, roots } = all
  const h = b - a
  const crosses = fa > 0 !== fb > 0
  if (!crosses && Math.min(Math.abs(fa), Math.abs(fb)) > (most2 * h * h) / 8 + touch) return
  const m = (a + b) / 2
  const [k, s] = [Math.cos(m), Math.sin(m)]
  if (Math.abs(slope(f, k, s)) > (most2 * h) / 2) {
    monotone(all, a, fa, b, fb)
    return
  }
  if (Math.abs(bend(f, k, s)) > (most3 * h) / 2 || depth > 40) {
    // The slope has at most one root here: the function turns back at most once.
    const [da, db] = [slope(f, Math.cos(a), Math.sin(a)), slope(f, Math.cos(b), Math.sin(b))]
    if (da > 0 === db > 0) {
      monotone(all, a, fa, b, fb)
      return
    }
    const t = refined(f, slope, bend, a, b, db > da)
    const ft = value(f, Math.cos(t), Math.sin(t))
    if (ft > 0 !== fa > 0 && fa !== 0) roots.push(refined(f, value, slope, a, t, ft > fa))
    else if (Math.abs(ft) <= touch) roots.push(t)
    if (ft > 0 !== fb > 0 && fb !== 0) roots.push(refined(f, value, slope, t, b, fb > ft))
    return
  }
  const fm = value(f, k, s)
  searchIn(all, a, fa, m, fm, depth + 1)
  searchIn(all, m, fm, b, fb, depth + 1)
}

function monotone({ f, touch, roots }: Search, a: number, fa: number, b: number, fb: number): void {
  if (fa > 0 !== fb > 0) roots.push(refined(f, value, slope, a, b, fb > fa))
  else if (Math.abs(fa) <= touch) roots.push(a)
}

/** The root of a monotone stretch with a change of sign: Newton's method, kept between the ends. */
function refined(f: RoundFunction, of: typeof value, its: typeof value, a: number, b: number, rising: boolean): number {
  let [lo, hi] = [a, b]
  let t = (a + b) / 2
  for (let i = 0; i < 60; i++) {
    const [k, s] = [Math.cos(t), Math.sin(t)]
    const v = of(f, k, s)
    if (v === 0) return t
    if (v > 0 === rising) hi = t
    else lo = t
    const next = t - v / its(f, k, s)
    const step = next > lo && next < hi ? next : (lo + hi) / 2
    if (Math.abs(step - t) < 1e-15 * (1 + Math.abs(t)) || hi - lo < 1e-15) return step
    t = step
  }
  return t
}

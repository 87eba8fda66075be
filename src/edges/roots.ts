/**
 * Roots of a smooth function of one variable: sign changes between samples, and the dips between samples that reach or
 * touch 0 (within `touch`). Callers split curves at them, so a root too many does no harm.
 */
export function rootsOf(f: (t: number) => number, from: number, to: number, steps: number, touch: number): number[] {
  const ts: number[] = []
  const fs: number[] = []
  for (let i = 0; i <= steps; i++) {
    const t = from + ((to - from) * i) / steps
    ts.push(t)
    fs.push(f(t))
  }
  return rootsBetween(f, ts, fs, touch)
}

/** The same for samples that are known already. */
export function rootsBetween(
  f: (t: number) => number,
  ts: readonly number[],
  fs: readonly number[],
  touch: number,
): number[] {
  const roots: number[] = []
  const last = ts.length - 1
  for (let i = 0; i <= last; i++) {
    const here = fs[i]!
    if (Math.abs(here) <= 1e-13) {
      roots.push(ts[i]!)
      continue
    }
    const next = fs[i + 1]
    if (next !== undefined && Math.abs(next) > 1e-13 && here > 0 !== next > 0) {
      roots.push(crossing(f, ts[i]!, here, ts[i + 1]!, next))
    }
    const before = fs[i - 1]
    if (before === undefined || next === undefined) continue
    const size = Math.abs(here)
    if (size > Math.abs(before) || size > Math.abs(next)) continue
    if (before > 0 !== here > 0 || next > 0 !== here > 0) continue
    const bend = before - 2 * here + next
    const lowest = bend === 0 ? here : here - (next - before) ** 2 / (8 * bend)
    if (lowest > 0 === here > 0 && Math.abs(lowest) > 0.3 * size && Math.abs(lowest) > 10 * touch) continue
    const sign = here > 0 ? 1 : -1
    const [t, value] = lowestBetween((s) => sign * f(s), ts[i - 1]!, ts[i + 1]!)
    if (value < -1e-13) {
      roots.push(crossing(f, ts[i - 1]!, before, t, sign * value), crossing(f, t, sign * value, ts[i + 1]!, next))
    } else if (value <= touch) roots.push(t)
  }
  return roots
}

/** The root between a and b, where f has opposite signs: regula falsi in the Illinois manner, bisecting when slow. */
function crossing(f: (t: number) => number, a: number, fa: number, b: number, fb: number): number {
  let [lo, flo, hi, fhi] = [a, fa, b, fb]
  let side = 0
  for (let i = 0; i < 80; i++) {
    const t = i % 8 === 7 ? (lo + hi) / 2 : (lo * fhi - hi * flo) / (fhi - flo)
    if (!(t > lo && t < hi)) return Math.abs(flo) < Math.abs(fhi) ? lo : hi
    const v = f(t)
    if (v === 0 || hi - lo < 1e-15 * (1 + Math.abs(t))) return t
    if (v > 0 === fhi > 0) {
      hi = t
      fhi = v
      if (side === 1) flo /= 2
      side = 1
    } else {
      lo = t
      flo = v
      if (side === -1) fhi /= 2
      side = -1
    }
    if (Math.abs(v) < 1e-15) return t
  }
  return (lo + hi) / 2
}

const golden = (Math.sqrt(5) - 1) / 2

/** Where f is least between a and b, by golden section, and how low it is there. */
export function lowestBetween(f: (t: number) => number, a: number, b: number): [number, number] {
  let [lo, hi] = [a, b]
  let [s, t] = [hi - golden * (hi - lo), lo + golden * (hi - lo)]
  let [fs, ft] = [f(s), f(t)]
  for (let i = 0; i < 60 && hi - lo > 1e-10; i++) {
    if (fs < ft) {
      hi = t
      t = s
      ft = fs
      s = hi - golden * (hi - lo)
      fs = f(s)
    } else {
      lo = s
      s = t
      fs = ft
      t = lo + golden * (hi - lo)
      ft = f(t)
    }
  }
  return fs < ft ? [s, fs] : [t, ft]
}

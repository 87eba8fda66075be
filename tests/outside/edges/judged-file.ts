import type { JudgedEdge, JudgedView } from './judged-view.ts'

type Vec2 = readonly [number, number]

/** A judgment as it is kept: what was asked, of which kernel, and what it answered. */
export interface JudgedFile {
  readonly kernel: string
  readonly version: string
  /** The parameter file from whose bare numbers the kernel built the parts. */
  readonly parameters: string
  /** By part and view: `seen`, `tangent` and `hidden` edges, each list in one line of text. */
  readonly parts: Readonly<Record<string, Readonly<Record<string, KeptView>>>>
}

export interface KeptView {
  readonly seen: string
  readonly tangent: string
  readonly hidden: string
}

/**
 * Edges as text: semicolons between edges, blanks between figures, each in units of 1e-4 mm; a point as seen from the one
 * before it. `x y x y`: straight; `length x y x y x y …`, an odd number of figures: arcs, each through three points, the
 * last one of one being the first of the next; `c` before it: corners of chords.
 */
export const keptView = ({ visible, smooth, hidden }: JudgedView): KeptView => ({
  seen: visible.map(keptEdge).join(';'),
  tangent: smooth.map(keptEdge).join(';'),
  hidden: hidden.map(keptEdge).join(';'),
})

export const readView = ({ seen, tangent, hidden }: KeptView): JudgedView => ({
  visible: readEdges(seen),
  smooth: readEdges(tangent),
  hidden: readEdges(hidden),
})

/** What the answer loses when it is kept, mm: arcs lie this near to the points of the curve. */
const fit = 0.002

/** The first point, then each one as seen from the one before it. */
function figures(points: readonly Vec2[]): string {
  const whole = points.map(([x, y]) => [Math.round(x * 1e4), Math.round(y * 1e4)] as const)
  return whole.flatMap(([x, y], i) => (i === 0 ? [x, y] : [x - whole[i - 1]![0], y - whole[i - 1]![1]])).join(' ')
}

function pointsOf(read: readonly number[]): Vec2[] {
  let [x, y] = [0, 0]
  return Array.from({ length: read.length / 2 }, (_, i): Vec2 => {
    x += read[2 * i]!
    y += read[2 * i + 1]!
    return [x / 1e4, y / 1e4]
  })
}

function keptEdge({ points, length, chords }: JudgedEdge): string {
  if (points.length === 2) return figures(points)
  const long = Math.round(length * 1e4)
  return chords ? `c${long} ${figures(points)}` : `${long} ${figures(throughArcs(points))}`
}

/** First, middle and last point of arcs as long as they may be. */
function throughArcs(points: readonly Vec2[]): Vec2[] {
  const last = points.length - 1
  const kept: Vec2[] = [points[0]!]
  for (let from = 0; from < last; ) {
    let [good, bad] = [from + 2, last + 1]
    if (good > last) good = last
    // The longest one that fits, by halving; no arc goes on for more than half the curve.
    const fits = (to: number) => to - from <= Math.ceil(last / 2) && liesOnArc(points, from, to)
    for (let to = Math.min(last, from + Math.ceil(last / 2)); bad - good > 1; to = Math.floor((good + bad) / 2)) {
      if (to <= good) break
      if (fits(to)) good = to
      else bad = to
    }
    kept.push(points[Math.floor((from + good) / 2)]!, points[good]!)
    from = good
  }
  return kept
}

function liesOnArc(points: readonly Vec2[], from: number, to: number): boolean {
  const circle = circleThrough(points[from]!, points[Math.floor((from + to) / 2)]!, points[to]!)
  for (let i = from + 1; i < to; i++) {
    if (circle ? Math.abs(gap(points[i]!, circle)) > fit : straightGap(points[i]!, points[from]!, points[to]!) > fit) {
      return false
    }
  }
  return true
}

interface Circle {
  readonly centre: Vec2
  readonly radius: number
}

const gap = ([x, y]: Vec2, { centre, radius }: Circle): number => Math.hypot(x - centre[0], y - centre[1]) - radius

function straightGap([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number {
  const size = Math.hypot(bx - ax, by - ay)
  return size === 0 ? Math.hypot(x - ax, y - ay) : Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / size
}

/** Undefined for three points that are as good as straight. */
function circleThrough(a: Vec2, m: Vec2, b: Vec2): Circle | undefined {
  const [px, py, qx, qy] = [m[0] - a[0], m[1] - a[1], b[0] - a[0], b[1] - a[1]]
  const area = 2 * (px * qy - py * qx)
  if (Math.abs(area) < 1e-6) return undefined
  const [pp, qq] = [px * px + py * py, qx * qx + qy * qy]
  const [cx, cy] = [(qy * pp - py * qq) / area, (px * qq - qx * pp) / area]
  return { centre: [a[0] + cx, a[1] + cy], radius: Math.hypot(cx, cy) }
}

function readEdges(text: string): JudgedEdge[] {
  return text === '' ? [] : text.split(';').map(readEdge)
}

function readEdge(text: string): JudgedEdge {
  const chords = text.startsWith('c')
  const read = text
    .slice(chords ? 1 : 0)
    .split(' ')
    .map(Number)
  const long = read.length % 2 === 1 ? read.shift() : undefined
  const points = pointsOf(read)
  if (long === undefined) {
    const [[ax, ay], [bx, by]] = points as [Vec2, Vec2]
    return { points, length: Math.hypot(bx - ax, by - ay), chords }
  }
  return { points: chords ? points : alongArcs(points), length: long / 1e4, chords }
}

/** Points along the arcs, near enough for chords between them to lie within 0.002 mm of each. */
function alongArcs(kept: readonly Vec2[]): Vec2[] {
  const out: Vec2[] = [kept[0]!]
  for (let i = 2; i < kept.length; i += 2) {
    const [a, m, b] = [kept[i - 2]!, kept[i - 1]!, kept[i]!]
    const circle = circleThrough(a, m, b)
    if (circle) {
      const { centre, radius } = circle
      const angle = (p: Vec2) => Math.atan2(p[1] - centre[1], p[0] - centre[0])
      const turn = (from: number, to: number) => to - from - 2 * Math.PI * Math.round((to - from) / (2 * Math.PI))
      const [start, half] = [angle(a), turn(angle(a), angle(m))]
      const sweep = half + turn(angle(m), angle(b))
      const n = Math.max(2, Math.ceil(Math.abs(sweep) / (2 * Math.acos(Math.max(0, 1 - fit / radius)))))
      for (let k = 1; k < n; k++) {
        const t = start + (sweep * k) / n
        out.push([centre[0] + radius * Math.cos(t), centre[1] + radius * Math.sin(t)])
      }
    } else out.push(m)
    out.push(b)
  }
  return out
}

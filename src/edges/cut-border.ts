import { outwardAt, type Surface } from '../geometry/surface.ts'
import { cross, dot, type Vec3 } from '../geometry/vector.ts'
import { fullTurn, isClosed, pointAt, tangentAt } from './curve.ts'
import { cuttingPlane } from './cutting-plane.ts'
import { type LineWork, quadricsOf, sameCurve, splitAt } from './edges-of.ts'
import type { ViewFrame } from './entity.ts'
import { meetingsOf, type Stretch } from './meeting.ts'
import { metalAstride, Skin, sameSurface } from './skin.ts'

/**
 * A stretch of the border of what a cutting plane lays bare: metal just before and just behind the plane on one side of
 * the curve, not so on the other.
 */
export interface Border extends Stretch {
  /** The surface that ends the metal here, and on which side of it the metal is (1: inside, −1: outside). */
  readonly surface: Surface
  readonly side: 1 | -1
  /** Beyond it a face of the part lies in the very plane: no edge there, but a section shows where it ends to cut. */
  readonly flush: boolean
}

interface Candidate extends Stretch {
  /** Sheets of the skin that meet the plane in it. */
  readonly sheets: number[]
}

/** All borders of the cut faces of one part, exact. */
export function bordersOf({ skin }: LineWork, view: ViewFrame): Border[] {
  const blade = cuttingPlane(view)
  const quadrics = quadricsOf(skin)
  const skins = [skin, new Skin({ stock: [], cuts: [{ surfaces: [blade] }] })]
  const candidates: Candidate[] = []
  skin.surfaces.forEach((s, sheet) => {
    if (sameSurface(s, blade)) return
    for (const stretch of meetingsOf(blade, s)) {
      const same = candidates.find((c) => sameCurve(c.curve, stretch.curve))
      if (same) same.sheets.push(sheet)
      else candidates.push({ ...stretch, sheets: [sheet] })
    }
  })
  return candidates.flatMap(({ curve, from, to, sheets }) => {
    const found = splitAt(curve, from, to, quadrics).flatMap(([a, b]): Border[] => {
      const p = pointAt(curve, (a + b) / 2)
      if (!sheets.some((i) => skin.touches(i, p)) || !skin.nearSkin(p)) return []
      const tangent = tangentAt(curve, (a + b) / 2)
      const left = cross(view.z, tangent)
      const right: Vec3 = [-left[0], -left[1], -left[2]]
      const [l, r] = [left, right].map((way) => metalAstride(skins, p, tangent, way, view.z)) as [Astride, Astride]
      const [cutLeft, cutRight] = [l, r].map((m) => m.above && m.below)
      if (cutLeft === cutRight) return []
      const outwards = sheets.map((i) => dot(outwardAt(skin.surfaces[i]!, p), cutLeft ? left : right))
      const steepest = outwards.reduce((best, o, i) => (Math.abs(o) > Math.abs(outwards[best]!) ? i : best), 0)
      const surface = skin.surfaces[sheets[steepest]!]!
      const side = outwards[steepest]! < 0 ? 1 : -1
      return [{ curve, from: a, to: b, surface, side, flush: l.below && r.below }]
    })
    return joined(found)
  })
}

type Astride = ReturnType<typeof metalAstride>

/** Stretches of one curve that follow each other and are alike become one. */
function joined(borders: readonly Border[]): Border[] {
  const alike = (a: Border, b: Border) => a.surface === b.surface && a.side === b.side && a.flush === b.flush
  const out: Border[] = []
  for (const b of borders) {
    const last = out[out.length - 1]
    if (last && alike(last, b) && Math.abs(b.from - last.to) < 1e-9) out[out.length - 1] = { ...last, to: b.to }
    else out.push(b)
  }
  const [first, last] = [out[0], out[out.length - 1]]
  if (!first || !last || !isClosed(first.curve)) return out
  if (first === last) return last.to - last.from > fullTurn - 1e-9 ? [{ ...last, from: 0, to: fullTurn }] : out
  if (!alike(first, last) || Math.abs(first.from + fullTurn - last.to) > 1e-9) return out
  return [{ ...last, to: first.to + fullTurn }, ...out.slice(1, -1)]
}

import { borderOf, clipped, stretch, type Window } from './clip.ts'
import { crossings } from './curve.ts'
import { apart2, type Entity, endsOf, pointOf, rangeOf, type Vec2 } from './entity.ts'
import { curveOf, wallOf } from './flat-curve.ts'
import { type Loop, loopsOf, type Step } from './loop.ts'
import { flat } from './quadric.ts'
import type { CutFace } from './section.ts'

/** What of a cut face lies within a window, closed along its border; undefined where nothing does. */
export function clippedFace(face: CutFace, window: Window): CutFace | undefined {
  const steps = face.loops.flatMap((l) => l.steps)
  const kept = steps.flatMap(({ entity, reversed }) =>
    clipped([entity], window).map((e): Step => ({ entity: e, reversed })),
  )
  const along = borderOf(window).flatMap((border) =>
    stretchesOf(
      border,
      steps.map((s) => s.entity),
    )
      .filter((e) => isInFace(face.loops, middleOf(e)))
      .map((entity): Step => ({ entity, reversed: false })),
  )
  const loops = loopsOf([...kept, ...along])
  return loops.length > 0 ? { id: face.id, loops, area: loops.reduce((sum, l) => sum + l.area, 0) } : undefined
}

/** The pieces into which other line work cuts an entity. */
export function stretchesOf(entity: Entity, others: readonly Entity[]): Entity[] {
  const [from, to] = rangeOf(entity)
  const curve = curveOf(entity)
  const at = others.flatMap((o) => crossings(curve, wallOf(o), from, to)).sort((a, b) => a - b)
  // Round a circle there is no end: the last piece runs on into the first one.
  const ts = entity.kind === 'circle' && at.length > 0 ? [...at, at[0]! + (to - from)] : [from, ...at, to]
  return ts.slice(1).flatMap((t, i) => (t - ts[i]! > 1e-7 ? [stretch(entity, ts[i]!, t)] : []))
}

export const middleOf = (e: Entity): Vec2 => {
  const [from, to] = rangeOf(e)
  return pointOf(e, (from + to) / 2)
}

/** Whether a point lies within the loops: a ray from it leaves them an odd number of times. */
export function isInFace(loops: readonly Loop[], p: Vec2): boolean {
  const entities = loops.flatMap((l) => l.steps.map((s) => s.entity))
  // A ray through a corner would count it twice or not at all: then another one is taken.
  for (let turn = 0.7; ; turn += 0.1) {
    const d: Vec2 = [Math.cos(turn), Math.sin(turn)]
    const ray = flat([-d[1], d[0], 0], d[0] * p[1] - d[1] * p[0])
    const hits = entities.flatMap((e) => {
      const [from, to] = rangeOf(e)
      return crossings(curveOf(e), ray, from, to).map((t) => ({ at: pointOf(e, t), ends: endsOf(e) }))
    })
    if (turn < 6 && hits.some(({ at, ends }) => ends.some((q) => apart2(at, q) < 1e-7))) continue
    return hits.filter(({ at }) => (at[0] - p[0]) * d[0] + (at[1] - p[1]) * d[1] > 0).length % 2 === 1
  }
}

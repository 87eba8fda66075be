import type { Solid } from '../geometry/solid.ts'
import { outwardAt, type Plane, plane } from '../geometry/surface.ts'
import { along, dot, negate, type Vec3 } from '../geometry/vector.ts'
import { pointAt, samplesOf, turnFrom } from './curve.ts'
import { type Border, bordersOf } from './cut-border.ts'
import { cutLoops, type Standing } from './cut-face.ts'
import { knifeOf } from './cutting-plane.ts'
import { type LineWork, lineWorkCut, lineWorkOf } from './edges-of.ts'
import type { ViewFrame } from './entity.ts'
import type { Loop } from './loop.ts'
import type { Face } from './skin.ts'
import { through } from './tolerance.ts'
import { type ViewLines, viewOf } from './view.ts'
import type { Piece } from './view-item.ts'
import { itemsOf } from './visibility.ts'

export type { Loop, Step } from './loop.ts'

/** A part that a section may cut. Shafts, pins and screws are by convention (ISO 128) left whole along their axis. */
export interface SectionPart {
  readonly id: string
  readonly solid: Solid
  readonly cut: boolean
}

export interface Section {
  /** The outlines of the cut faces and all that lies beyond them. */
  readonly lines: ViewLines
  readonly faces: readonly CutFace[]
  /** What is left of the parts. */
  readonly pieces: readonly Piece[]
}

/** What is seen of the cut through one part, to be hatched. */
export interface CutFace {
  readonly id: string
  /** Without what parts that are left whole hide: hatch never runs over them. */
  readonly loops: readonly Loop[]
  /** mm² */
  readonly area: number
}

/**
 * The section along the plane z = 0 of the view: of the parts to be cut, all that is nearer to the eye is taken away, and
 * of those left whole the ones that lie wholly before it. A face that lies in the very plane is not cut: it is drawn, not
 * hatched.
 */
export function sectionOf(parts: readonly SectionPart[], view: ViewFrame): Section {
  const shown = parts.flatMap((p) => {
    const lines = lineWorkOf(p.solid)
    if (p.cut) return [cutPart(p.id, lines, view)]
    return isBefore(lines, view) ? [] : [{ piece: { id: p.id, lines }, uncut: undefined, borders: [] }]
  })
  const faces = cutFaces(shown, view)
  const pieces = shown.map((s) => s.piece)
  return { lines: viewOf(pieces, view), faces, pieces }
}

/** A part as the section shows it; `uncut`: what it was, where it is cut. */
interface Shown {
  readonly piece: Piece
  readonly uncut: Piece | undefined
  readonly borders: readonly Border[]
}

function cutPart(id: string, lines: LineWork, view: ViewFrame): Shown {
  const borders = bordersOf(lines, view)
  const cut = lineWorkCut(lines, knifeOf(view, 'front'))
  const bare: Face = { surface: plane('cut face', view.origin, view.z), side: 1 }
  const flush = borders
    .filter((b) => b.flush)
    .map(({ curve, from, to }) => ({ curve, from, to, faces: [bare, bare] as const, smooth: false }))
  return { piece: { id, lines: { ...cut, edges: [...cut.edges, ...flush] } }, uncut: { id, lines }, borders }
}

function cutFaces(shown: readonly Shown[], view: ViewFrame): CutFace[] {
  const back = knifeOf(view, 'back')
  const standing = shown
    .filter((s) => !s.uncut)
    .map(({ piece }): Standing => {
      const front = { id: piece.id, lines: lineWorkCut(piece.lines, back) }
      return { piece, items: itemsOf(view, front) }
    })
  return shown.flatMap(({ uncut, borders }): CutFace[] => {
    if (!uncut || borders.length === 0) return []
    const loops = cutLoops(uncut, borders, standing, view)
    return loops.length > 0 ? [{ id: uncut.id, loops, area: loops.reduce((sum, l) => sum + l.area, 0) }] : []
  })
}

/** Whether nothing of a part reaches behind the plane: no point of its edges does. */
function isBefore({ edges }: LineWork, view: ViewFrame): boolean {
  const height = dot(view.z, view.origin)
  return edges.every(({ curve, from, to }) => {
    const points =
      curve.kind === 'line' ? [from, to].map((t) => pointAt(curve, t)) : [...samplesOf(curve, from, to).points]
    if (curve.kind === 'ellipse') {
      const farthest = Math.atan2(-dot(curve.v, view.z), -dot(curve.u, view.z))
      if (from + turnFrom(from, farthest) < to) points.push(pointAt(curve, farthest))
    }
    return points.every((p) => dot(view.z, p) - height > -through)
  })
}

/** The frame that looks square at a flat face from outside: for true-size (auxiliary) views. `right` as near as may be. */
export function viewSquareTo(face: Plane, point: Vec3, side: 1 | -1, right: Vec3): ViewFrame {
  const n = outwardAt(face, point)
  const z = side > 0 ? n : negate(n)
  const flat = along(right, z, -dot(right, z))
  const size = Math.sqrt(dot(flat, flat))
  if (!(size > 1e-9)) throw new RangeError('viewSquareTo: that direction is not in the face')
  const x: Vec3 = [flat[0] / size, flat[1] / size, flat[2] / size]
  return { origin: point, x, y: [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]], z }
}

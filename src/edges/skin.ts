import { type Cell, cellDepth } from '../geometry/cell.ts'
import type { Solid } from '../geometry/solid.ts'
import { depthOf, outwardAt, type Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import {
  along,
  cross,
  distance,
  dot,
  length,
  middle,
  negate,
  scale,
  squareTo,
  subtract,
  type Vec3,
} from '../geometry/vector.ts'
import { probe, sameWay, through } from './tolerance.ts'

/** A face at an edge: its surface and on which side of it the air is (1: outside the surface, −1: inside, a cut). */
export interface Face {
  readonly surface: Surface
  readonly side: 1 | -1
}

/** A place of the skin's surfaces, each geometry once: coplanar faces of several cells are one. */
interface Sheet {
  readonly id: number
  readonly members: readonly { readonly surface: Surface; readonly cell: LocalCell }[]
}

interface LocalCell {
  readonly cell: Cell
  readonly cut: boolean
  /** Sheets of its surfaces, in their order. */
  readonly sheets: number[]
}

/** A face that leaves a curve. */
export interface Border {
  readonly face: Face
  readonly sheet: number
  /** Unit vector along the face, away from the curve. */
  readonly direction: Vec3
}

/** The surfaces of a solid, sorted out for looking at the neighbourhood of points. */
export class Skin {
  readonly solid: Solid
  readonly surfaces: readonly Surface[]
  private readonly sheets: Sheet[] = []
  private readonly cells: LocalCell[]

  constructor(solid: Solid) {
    this.solid = solid
    const members: { surface: Surface; cell: LocalCell }[][] = []
    this.cells = [...solid.stock, ...solid.cuts].map((cell, i): LocalCell => {
      const local: LocalCell = { cell, cut: i >= solid.stock.length, sheets: [] }
      for (const surface of cell.surfaces) {
        let id = members.findIndex((m) => sameSurface(m[0]!.surface, surface))
        if (id < 0) id = members.push([]) - 1
        members[id]!.push({ surface, cell: local })
        local.sheets.push(id)
      }
      return local
    })
    this.sheets = members.map((m, id) => ({ id, members: m }))
    this.surfaces = members.map((m) => m[0]!.surface)
  }

  /** Whether the point lies on a cell bounded by that sheet. */
  touches(sheet: number, p: Vec3): boolean {
    return this.sheets[sheet]!.members.some(({ cell }) => inClosure(cell.cell, p, through))
  }

  /** Whether the point may lie on the skin: on stock, and not well inside a cut. */
  nearSkin(p: Vec3): boolean {
    let stock = false
    for (const c of this.cells) {
      if (c.cut) {
        if (isDeep(c.cell, p)) return false
      } else stock ||= inClosure(c.cell, p, through)
    }
    return stock
  }

  inMetal(p: Vec3): boolean {
    return metalAmong(this.cells, p)
  }

  /** Cells that a point near `p` can lie in. */
  around(p: Vec3): LocalCell[] {
    return this.cells.filter((c) => inClosure(c.cell, p, 3 * probe))
  }

  sheetOf(id: number): Sheet {
    return this.sheets[id]!
  }
}

const metalAmong = (cells: readonly LocalCell[], p: Vec3): boolean =>
  cells.some((c) => !c.cut && cellDepth(c.cell, p) > 0) && !cells.some((c) => c.cut && cellDepth(c.cell, p) > 0)

function inClosure(cell: Cell, p: Vec3, slack: number): boolean {
  for (const s of cell.surfaces) if (depthOf(s, p) < -slack) return false
  return true
}

function isDeep(cell: Cell, p: Vec3): boolean {
  for (const s of cell.surfaces) if (depthOf(s, p) < through) return false
  return true
}

/** A sheet that runs through a point, among those of several skins. */
interface Through {
  readonly skin: Skin
  readonly sheet: number
  readonly normal: Vec3
}

/** The sectors round a point of a curve, in order round it; sector i follows ray i. */
interface Sectors {
  readonly rays: readonly { readonly angle: number; readonly sheets: readonly Through[] }[]
  readonly metal: readonly boolean[]
  /** How wide sector i is, rad. */
  gap(i: number): number
  towards(angle: number): Vec3
}

/** Walks round a curve at one of its points: sectors between the surfaces through the point, each of them metal or air. */
function sectorsAround(skins: readonly Skin[], p: Vec3, tangent: Vec3): Sectors {
  const local = skins.map((skin) => ({ skin, cells: skin.around(p) }))
  const inMetal = (q: Vec3) => local.some(({ cells }) => metalAmong(cells, q))
  const sheets: Through[] = []
  for (const { skin, cells } of local) {
    for (const { cell, sheets: ids } of cells) {
      cell.surfaces.forEach((s, i) => {
        const sheet = ids[i]!
        if (Math.abs(depthOf(s, p)) > through || sheets.some((h) => h.skin === skin && h.sheet === sheet)) return
        const n = outwardAt(s, p)
        const flat = along(n, tangent, -dot(n, tangent))
        const size = length(flat)
        if (size > sameWay) sheets.push({ skin, sheet, normal: scale(flat, 1 / size) })
      })
    }
  }
  const e1 = sheets[0]?.normal ?? squareTo(tangent)
  const e2 = cross(tangent, e1)
  const towards = (angle: number): Vec3 => {
    const [k, s] = [Math.cos(angle), Math.sin(angle)]
    return [k * e1[0] + s * e2[0], k * e1[1] + s * e2[1], k * e1[2] + s * e2[2]]
  }
  if (sheets.length === 0) return { rays: [], metal: [inMetal(p)], gap: () => 2 * Math.PI, towards }
  const rays: { angle: number; sheets: Through[] }[] = []
  for (const sheet of sheets) {
    const angle = Math.atan2(dot(sheet.normal, e2), dot(sheet.normal, e1))
    for (const turned of [angle + Math.PI / 2, angle - Math.PI / 2]) {
      const ray = turned < 0 ? turned + 2 * Math.PI : turned
      const near = rays.find((r) => {
        const d = Math.abs(r.angle - ray)
        return d < sameWay || d > 2 * Math.PI - sameWay
      })
      if (near) near.sheets.push(sheet)
      else rays.push({ angle: ray, sheets: [sheet] })
    }
  }
  rays.sort((a, b) => a.angle - b.angle)
  const gap = (i: number) => (i + 1 < rays.length ? rays[i + 1]!.angle : rays[0]!.angle + 2 * Math.PI) - rays[i]!.angle
  const metal = rays.map((r, i) => inMetal(along(p, towards(r.angle + gap(i) / 2), probe)))
  return { rays, metal, gap, towards }
}

/**
 * The faces that separate metal from air at a point of a curve, in order round it: none within metal or air, two at an
 * edge or on a plain face. `skins`: more than one where parts touch; their metal counts as one.
 */
export function bordersAround(skins: readonly Skin[], p: Vec3, tangent: Vec3): Border[] {
  const { rays, metal, towards } = sectorsAround(skins, p, tangent)
  const count = rays.length
  const borders: Border[] = []
  rays.forEach((ray, i) => {
    const [before, after] = [metal[(i + count - 1) % count]!, metal[i]!]
    if (before === after) {
      borders.push(...cuspBorders(ray.sheets, p, towards(ray.angle), inside(skins), before))
      return
    }
    const direction = towards(ray.angle)
    const ahead = towards(ray.angle + Math.PI / 2)
    const out = after ? negate(ahead) : ahead
    const { skin, sheet } = owner(ray.sheets, p, direction)
    borders.push({ face: faceOf(skin, sheet, p, direction, out), sheet, direction })
  })
  return borders
}

/** Unit vectors into the middle of each sector of air round a point of a curve; `skins` as above. */
export function airAround(skins: readonly Skin[], p: Vec3, tangent: Vec3): Vec3[] {
  const { rays, metal, gap, towards } = sectorsAround(skins, p, tangent)
  if (rays.length === 0) return metal[0] ? [] : [towards(0)]
  return airSectors(rays, metal, gap).map(towards)
}

/**
 * Whether there is metal just above and just below a plane that holds the point and the tangent, on the side `way` of
 * the curve; `way`: unit vector in the plane, square to the tangent; `up`: its normal. The plane must be among the
 * surfaces of one of the skins.
 */
export function metalAstride(
  skins: readonly Skin[],
  p: Vec3,
  tangent: Vec3,
  way: Vec3,
  up: Vec3,
): { above: boolean; below: boolean } {
  const { rays, metal, towards } = sectorsAround(skins, p, tangent)
  const count = rays.length
  for (let i = 0; i < count; i++) {
    const { angle } = rays[i]!
    if (dot(towards(angle), way) < 1 - sameWay * sameWay) continue
    const [before, after] = [metal[(i + count - 1) % count]!, metal[i]!]
    const ahead = dot(towards(angle + Math.PI / 2), up) > 0
    return ahead ? { above: after, below: before } : { above: before, below: after }
  }
  throw new RangeError('metalAstride: no surface of the skins is that plane')
}

const inside =
  (skins: readonly Skin[]) =>
  (q: Vec3): boolean =>
    skins.some((skin) => skin.inMetal(q))

/**
 * Tangent faces that part on one side of the curve may leave a sliver of metal or air between them, too thin at the curve
 * itself to be a sector: a cutter's round end that runs out into a wall which a hole has taken away.
 */
function cuspBorders(
  sheets: readonly Through[],
  p: Vec3,
  direction: Vec3,
  inMetal: (q: Vec3) => boolean,
  around: boolean,
): Border[] {
  if (sheets.length < 2) return []
  for (const step of [0.02, 0.002]) {
    const feet = sheets.map((t) => ({ ...t, foot: footOn(t, along(p, direction, step)) }))
    for (const [i, a] of feet.entries()) {
      for (const b of feet.slice(i + 1)) {
        const gap = distance(a.foot, b.foot)
        if (gap < 1e-8) continue
        const between = middle(a.foot, b.foot)
        if (inMetal(between) === around) continue
        return [a, b].map((t) => {
          const out = scale(subtract(t.foot, between), (around ? -2 : 2) / gap)
          return { face: faceOf(t.skin, t.sheet, p, direction, out), sheet: t.sheet, direction }
        })
      }
    }
  }
  return []
}

/** The place of a sheet nearest to a point close to it. */
function footOn({ skin, sheet }: Through, p: Vec3): Vec3 {
  const s = skin.surfaces[sheet]!
  let q = p
  for (let k = 0; k < 2; k++) q = along(q, outwardAt(s, q), depthOf(s, q))
  return q
}

/** Middles of the runs of sectors that are air. */
function airSectors(
  rays: readonly { angle: number }[],
  metal: readonly boolean[],
  gap: (i: number) => number,
): number[] {
  const count = rays.length
  if (!metal.includes(true)) return rays.map((r, i) => r.angle + gap(i) / 2)
  const middles: number[] = []
  rays.forEach(({ angle }, i) => {
    if (metal[i] || !metal[(i + count - 1) % count]) return
    let run = 0
    for (let k = i; !metal[k % count]; k++) run += gap(k % count)
    middles.push(angle + run / 2)
  })
  return middles
}

/** Which of several tangent sheets is the skin in that direction: looked at farther out, where they have parted. */
function owner(sheets: readonly Through[], p: Vec3, direction: Vec3): Through {
  if (sheets.length === 1) return sheets[0]!
  for (const step of [0.02, 0.002, 0.0005]) {
    const found = sheets.filter((t) => {
      const { skin, sheet } = t
      const q = footOn(t, along(p, direction, step))
      const n = outwardAt(skin.surfaces[sheet]!, q)
      const eps = Math.min(1e-6, step * step * 1e-3)
      return skin.inMetal(along(q, n, eps)) !== skin.inMetal(along(q, n, -eps))
    })
    if (found.length === 1) return found[0]!
  }
  return sheets[0]!
}

/** The face of a sheet in a direction, by the surface of the cell that bounds the metal there. */
function faceOf(skin: Skin, sheet: number, p: Vec3, direction: Vec3, out: Vec3): Face {
  const { members } = skin.sheetOf(sheet)
  const beside = along(p, direction, probe)
  const facing = members.map(({ surface, cell }) => ({
    surface,
    cell,
    side: dot(outwardAt(surface, p), out) > 0 ? (1 as const) : (-1 as const),
  }))
  const found =
    facing.find((m) => m.side > 0 !== m.cell.cut && inClosure(m.cell.cell, beside, through)) ??
    facing.find((m) => m.side > 0 !== m.cell.cut) ??
    facing[0]!
  return { surface: found.surface, side: found.side }
}

/** Whether two surfaces are the same one, whichever way they face, within 1e-6 mm over a part. */
export function sameSurface(s: Surface, t: Surface): boolean {
  if (s.kind === 'plane') {
    if (t.kind !== 'plane') return false
    const way = dot(s.normal, t.normal) > 0 ? 1 : -1
    return Math.abs(s.offset - way * t.offset) < coincident && length(cross(s.normal, t.normal)) < 1e-9
  }
  if (s.kind === 'cylinder') {
    if (t.kind !== 'cylinder' || Math.abs(s.radius - t.radius) > coincident) return false
    const between: Vec3 = [s.point[0] - t.point[0], s.point[1] - t.point[1], s.point[2] - t.point[2]]
    return length(cross(s.axis, t.axis)) < 1e-9 && length(cross(s.axis, between)) < coincident
  }
  return (
    t.kind === 'cone' &&
    distance(s.apex, t.apex) < coincident &&
    Math.abs(s.slope - t.slope) < 1e-9 &&
    length(cross(s.axis, t.axis)) < 1e-9 &&
    dot(s.axis, t.axis) > 0
  )
}

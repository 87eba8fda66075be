import { type CappedCylinder, cappedCylinder, leastApart, reachOf } from '../geometry/capped-cylinder.ts'
import { cellDepth } from '../geometry/cell.ts'
import { leastDepth, type Region, reach, regionOf, separation } from '../geometry/region.ts'
import { sharedPoint } from '../geometry/shared-point.ts'
import { outwardAt, type Plane, type Surface } from '../geometry/surface.ts'
import { coincident, touching } from '../geometry/tolerance.ts'
import { along, negate, type Vec3 } from '../geometry/vector.ts'
import type { Feature } from './feature.ts'
import type { Part } from './part.ts'

/** Metal between two features, or between a feature and the outside of the stock. */
export interface Wall {
  /** Ids of two cuts, or of a cut and `outside`. */
  readonly between: readonly [string, string]
  /** Least distance inside the metal, mm; 0 where the two open into each other. */
  readonly distance: number
  /** Whether they are meant to open into each other. */
  readonly meant: boolean
  /** The nearest points, body frame; where the two overlap, a point they share. */
  readonly from: Vec3
  readonly to: Vec3
}

/** Size of the hole by which two features open into each other: extents along the axes of the first one's frame, mm. */
export type Opening = readonly [number, number, number]

/** What a cut takes out of one stock cell, and the round body that holds it all, where it is one. */
interface CutRegion extends Region {
  readonly round: CappedCylinder | undefined
}

/**
 * Walls of a part, each worked out when it is first asked for. Distances are taken inside the metal: between what the
 * two cuts take out of the stock, since cutting bodies run on past it.
 */
export class Walls {
  private readonly part: Part
  private readonly regions = new Map<string, CutRegion[]>()
  private readonly known = new Map<string, Wall | undefined>()

  constructor(part: Part) {
    this.part = part
  }

  /** Every pair of cuts, and every cut that is not open to it with the outside, in the order of the part. */
  pairs(): (readonly [string, string])[] {
    return this.part.cuts.flatMap((a, i, all) => [
      ...all.slice(i + 1).map((b) => [a.id, b.id] as const),
      ...(a.opensInto.includes('outside') ? [] : [[a.id, 'outside'] as const]),
    ])
  }

  all(): Wall[] {
    return this.pairs()
      .map(([a, b]) => this.between(a, b))
      .filter((w) => w !== undefined)
  }

  /** The wall between two features; undefined where one of them takes nothing out of the stock. */
  between(a: string, b: string): Wall | undefined {
    const key = `${a}|${b}`
    if (!this.known.has(key)) this.known.set(key, b === 'outside' ? this.toOutside(a) : this.measure(a, b))
    return this.known.get(key)
  }

  /** The wall between two features where it is thinner than `limit` mm; quicker to tell than how thick it is. */
  thinnerThan(a: string, b: string, wanted: number): Wall | undefined {
    const limit = wanted - exact
    const known = this.known.get(`${a}|${b}`)
    if (known) return known.distance < limit ? known : undefined
    const wall = b === 'outside' ? this.toOutside(a, limit) : this.measure(a, b, limit)
    return wall && wall.distance < limit ? wall : undefined
  }

  /** Whether two features are meant to open into each other. */
  isMeant(a: string, b: string): boolean {
    return this.feature(a).opensInto.includes(b) || (b !== 'outside' && this.feature(b).opensInto.includes(a))
  }

  /** Whether a feature takes out any metal at all. */
  cutsMetal(id: string): boolean {
    return this.regionsOf(id).length > 0
  }

  /** Extents of the opening between two features, or undefined where they do not overlap. */
  opening(a: string, b: string): Opening | undefined {
    const { frame } = this.feature(a)
    const low = [Infinity, Infinity, Infinity]
    const high = [-Infinity, -Infinity, -Infinity]
    for (const ra of this.regionsOf(a)) {
      for (const rb of this.regionsOf(b)) {
        const shared = regionOf([ra, rb], ra.within)
        if (!shared) continue
        ;[frame.x, frame.y, frame.z].forEach((axis, k) => {
          const back: Vec3 = [-axis[0], -axis[1], -axis[2]]
          high[k] = Math.max(high[k]!, reach(shared, axis).distance)
          low[k] = Math.min(low[k]!, -reach(shared, back).distance)
        })
      }
    }
    if (high[0]! < low[0]!) return undefined
    return [high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!]
  }

  private feature(id: string): Feature {
    const found = this.part.cuts.find((f) => f.id === id)
    if (!found) throw new RangeError(`part ${this.part.id} has no cut ${id}`)
    return found
  }

  /** What the feature takes out of each stock cell. */
  private regionsOf(id: string): CutRegion[] {
    const known = this.regions.get(id)
    if (known) return known
    const made: CutRegion[] = []
    const { cells, frame } = this.feature(id)
    for (const stock of this.part.stock.flatMap((f) => f.cells)) {
      for (const cell of cells) {
        const region = regionOf([cell, stock], frame.origin)
        if (region) made.push({ ...region, round: cappedCylinder(region.surfaces) })
      }
    }
    this.regions.set(id, made)
    return made
  }

  private measure(a: string, b: string, limit = Infinity): Wall | undefined {
    let best: Wall | undefined
    const meant = this.isMeant(a, b)
    for (const ra of this.regionsOf(a)) {
      for (const rb of this.regionsOf(b)) {
        if (limit < Infinity && surelyApart(ra, rb, limit)) continue
        const shared = sharedPoint(ra, rb)
        if (shared) return { between: [a, b], distance: 0, meant, from: shared, to: shared }
        const found = separation(ra, rb, best?.distance ?? limit)
        if (!found || (best && found.distance >= best.distance)) continue
        const distance = found.distance < touching ? 0 : found.distance
        best = { between: [a, b], distance, meant, from: found.from, to: found.to }
      }
    }
    return best
  }

  /**
   * Least metal between a feature and the outer faces of the stock that it does not open into. A face that another
   * stretch of stock covers at that place (a shoulder over a shank) is not the outside there.
   */
  private toOutside(id: string, limit = Infinity): Wall | undefined {
    const { opensInto } = this.feature(id)
    const stock = this.part.stock.flatMap((f) => f.cells)
    let best: Wall | undefined
    for (const cell of stock) {
      for (const region of this.regionsOf(id)) {
        if (!cell.surfaces.every((s) => region.surfaces.includes(s))) continue
        for (const surface of cell.surfaces) {
          if (opensInto.includes(surface.name)) continue
          if (limit < Infinity && surelyDeep(region, surface, limit)) continue
          const found = leastDepth(region, surface, undefined, best?.distance ?? limit)
          if (!found) continue
          const { depth, at } = found
          const out = outwardAt(surface, at)
          const to = along(at, out, depth)
          const beyond = along(to, out, 10 * coincident)
          if (stock.some((c) => c !== cell && cellDepth(c, beyond) > 0)) continue
          const distance = depth < touching ? 0 : depth
          if (!best || distance < best.distance)
            best = { between: [id, 'outside'], distance, meant: false, from: at, to }
        }
      }
    }
    return best
  }
}

/** What distances are exact to, mm: a wall that is too thin by less is not. */
const exact = 1e-9

/** Whether planes or the roundness of the two show at once that they are further apart than `limit`. */
function surelyApart(a: CutRegion, b: CutRegion, limit: number): boolean {
  if (a.round && b.round && leastApart(a.round, b.round) > limit) return true
  if (areBetweenWalls(a, b, limit)) return true
  return (
    (a.round !== undefined && isBeyond(a.round, b, limit)) || (b.round !== undefined && isBeyond(b.round, a, limit))
  )
}

/** Whether the two lie behind planes that look at each other from more than `limit` apart. */
const areBetweenWalls = (a: Region, b: Region, limit: number): boolean =>
  a.surfaces.some((p) => p.kind === 'plane' && b.surfaces.some((q) => q.kind === 'plane' && gap(p, q) > limit))

/** Of two planes that look straight at each other, mm; of others there is nothing to say. */
function gap({ normal: n, offset }: Plane, { normal: m, offset: other }: Plane): number {
  return n[0] === -m[0] && n[1] === -m[1] && n[2] === -m[2] ? -offset - other : -Infinity
}

/** Whether the whole round body lies further than `limit` outside one plane of the region. */
const isBeyond = (body: CappedCylinder, region: Region, limit: number): boolean =>
  region.surfaces.some((s) => s.kind === 'plane' && -reachOf(body, negate(s.normal)) - s.offset > limit)

/** Whether the whole region lies deeper than `limit` below a plane, by the round body that holds it. */
const surelyDeep = ({ round }: CutRegion, surface: Surface, limit: number): boolean =>
  surface.kind === 'plane' && round !== undefined && surface.offset - reachOf(round, surface.normal) > limit

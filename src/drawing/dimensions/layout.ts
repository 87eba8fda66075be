import type { Entity, Point, Text } from '../entity.ts'
import { placed, turnedPast } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { textCorners } from '../font/text-box.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import { placeAligned } from './aligned.ts'
import { type AngularRequest, placeAngle } from './angles.ts'
import { type DatumOnDimension, type DatumOnLine, placeOnDimension, placeOnLine } from './datum-marks.ts'
import { isFramed, placeFramed } from './framed.ts'
import { type LeaderRequest, placeLeader } from './leaders.ts'
import { NoRoom } from './no-room.ts'
import { type OrdinateRequest, placeOrdinates } from './ordinates.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import { type DimensionRequest, requestFault, type Side } from './request.ts'
import { type Box, boxOf, overlap, Room } from './room.ts'
import { type LinearRequest, placeRows, type SideFrame, sideFrame, sideOf } from './rows.ts'
import { fits, hatchLoops, type Paper, segmentsOf, stepped } from './sketch.ts'

/** A view before it has its dimensions. */
export interface BareView {
  /** Paper over model: 0.5 for 1:2. */
  readonly scale: number
  /** Line work, model mm in the view's coordinates; text in it keeps its height on paper. */
  readonly lines: readonly Entity<LayerName>[]
  /** Marks, each to be drawn in one of several places, the best first: line work like `lines`. */
  readonly choices?: readonly (readonly (readonly Entity<LayerName>[])[])[]
  readonly requests: readonly DimensionRequest[]
}

export interface LaidOut {
  /** Of every choice the one that was taken, model mm. */
  readonly marks: readonly Entity<LayerName>[]
  /** In the order of the requests. */
  readonly dimensions: readonly PlacedDimension[]
  /** Around the view and all its dimensions, mm on paper from the view's origin. */
  readonly bounds: Box
}

/** Those with the least choice first. */
const leaderKinds: readonly DimensionRequest['kind'][] = ['radius', 'diameter', 'chamfer', 'thread', 'note']

/** Beyond any sheet, mm. */
const farAway = 5000
const sides: readonly Side[] = ['below', 'left', 'above', 'right']

/**
 * Places the dimensions of one view outside it: slopes and angles near their features, rows of lengths at steady spacing
 * with small ones inside, coordinates beyond them, leaders last. No text overlaps a text, a line of the view or of a
 * dimension. Throws RangeError where a request contradicts its points, an id comes twice, the
 * view is empty, or the scale is not above 0.
 */
export function layOut(view: BareView, style: DrawingStyle, font: Font): LaidOut {
  const { scale, requests } = view
  if (!(Number.isFinite(scale) && scale > 0)) throw new RangeError(`scale ${scale}`)
  if (view.lines.length === 0) throw new RangeError('a view without lines')
  const ids = new Set<string>()
  for (const request of requests) {
    const fault = requestFault(request)
    if (fault !== undefined) throw new RangeError(fault)
    if (ids.has(request.id)) throw new RangeError(`${request.id}: twice`)
    ids.add(request.id)
  }
  const onPaper = view.lines.map((e) => placed(e, scale, [0, 0]))
  const paper: Paper = { style, font, room: new Room() }
  const texts = onPaper.filter((e): e is Text<LayerName> => e.kind === 'text')
  for (const t of texts) paper.room.addText(textCorners(font, t, style.textGap / 2))
  const segments = segmentsOf(onPaper)
  for (const [a, b] of segments) paper.room.addLine(a, b)
  for (const e of onPaper) if (e.kind === 'hatch') paper.room.addFace(hatchLoops(e))
  const bare = boxOf([
    ...segments.flat(),
    ...texts.flatMap((t) => textCorners(font, t)),
    ...requests.flatMap(pointsOf).map((p): Point => [p[0] * scale, p[1] * scale]),
  ])
  const middle: Point = [(bare.low[0] + bare.high[0]) / 2, (bare.low[1] + bare.high[1]) / 2]

  const done = new Map<string, PlacedDimension>()
  const keep = (d: PlacedDimension) => done.set(d.request.id, d)
  const linear = requests.filter((r): r is LinearRequest => r.kind === 'linear')
  const straight = linear.filter((r) => r.direction !== 'aligned')
  const angles = requests.filter((r): r is AngularRequest => r.kind === 'angle')
  const ordinates = requests.filter((r): r is OrdinateRequest => r.kind === 'ordinate')
  const sideFor = (r: LinearRequest | OrdinateRequest): SideFrame =>
    sideFrame(r.kind === 'linear' ? sideOf(r, bare, scale) : (r.side ?? (r.axis === 'x' ? 'below' : 'left')))
  for (const r of [...straight, ...ordinates]) {
    const out = sideFor(r)
    for (const p of r.kind === 'linear' ? [r.from, r.to] : [r.point]) {
      const from: Point = [p[0] * scale, p[1] * scale]
      paper.room.reserve(r.id, from, out.point(out.u(from), out.v(from) + farAway))
    }
  }
  for (const r of angles) {
    const vertex: Point = [r.vertex[0] * scale, r.vertex[1] * scale]
    for (const p of [r.from, r.to]) {
      const direction = Math.atan2(p[1] - r.vertex[1], p[0] - r.vertex[0])
      paper.room.reserve(r.id, vertex, stepped(vertex, direction, farAway))
    }
  }
  for (const r of requests) {
    if (r.kind !== 'radius') continue
    const center: Point = [r.center[0] * scale, r.center[1] * scale]
    const direction = (r.start + turnedPast(r.start, r.end)) / 2
    const long = r.radius * scale + 3 * style.arrowLength
    paper.room.reserve(r.id, center, stepped(center, direction, long))
  }
  const marks = (view.choices ?? []).map((places) => clearPlace(paper, places, scale))
  const box = boxAround([bare, ...marks.map((m) => m.box)])
  // Datums belong close to their lines.
  for (const r of requests) if (standsOnLine(r)) keep(placeOnLine(paper, r, scale))
  // Then slopes and angles: they cannot slide along the view, and rows can step further out.
  for (const r of linear) if (r.direction === 'aligned') keep(placeAligned(paper, r, middle, scale))
  for (const r of angles) keep(placeAngle(paper, r, scale))
  for (const side of sides) {
    const frame = sideFrame(side)
    const mine = ordinates.filter((r) => sideFor(r).side === side)
    const rows = straight.filter((r) => sideFor(r).side === side)
    const waiting = mine.map((r) => frame.u([r.point[0] * scale, r.point[1] * scale]))
    placeRows(paper, frame, rows, box, scale, waiting).forEach(keep)
    placeOrdinates(paper, frame, mine, box, scale).forEach(keep)
  }
  for (const kind of leaderKinds) {
    for (const r of requests) {
      if (r.kind !== kind || done.has(r.id)) continue
      keep(isFramed(r) ? placeFramed(paper, r, box, scale) : placeLeader(paper, r as LeaderRequest, box, scale))
      for (const hung of requests) {
        if (hangsOn(hung, r.id)) keep(placeOnDimension(paper, hung, done.get(r.id)!, box, scale))
      }
    }
  }
  return {
    marks: marks.flatMap((m) => m.mark),
    dimensions: requests.map((r) => done.get(r.id)!),
    bounds: paper.room.bounds(),
  }
}

/** The first place of a mark whose letters stand clear of everything and whose lines of every text; it is taken. */
function clearPlace(paper: Paper, places: readonly (readonly Entity<LayerName>[])[], scale: number) {
  const { font, style, room } = paper
  for (const mark of places) {
    const onPaper = mark.map((e) => placed(e, scale, [0, 0]))
    const quads = onPaper.flatMap((e) => (e.kind === 'text' ? [textCorners(font, e, style.textGap / 2)] : []))
    const segments = segmentsOf(onPaper)
    if (quads.some((q) => segments.some((s) => overlap(q, s)))) continue
    if (!fits(paper, '', quads, segments)) continue
    for (const q of quads) room.addText(q)
    for (const [a, b] of segments) room.addLine(a, b)
    return { mark, box: boxOf([...quads.flat(), ...segments.flat()]) }
  }
  throw new NoRoom('a mark')
}

const boxAround = (boxes: readonly Box[]): Box => boxOf(boxes.flatMap((b) => [b.low, b.high]))

const standsOnLine = (r: DimensionRequest): r is DatumOnLine => isFramed(r) && r.base !== undefined
const hangsOn = (r: DimensionRequest, id: string): r is DatumOnDimension => isFramed(r) && r.on === id

const quarters = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2)

/** Points that the view's box must hold. */
function pointsOf(r: DimensionRequest): readonly Point[] {
  switch (r.kind) {
    case 'linear':
    case 'chamfer':
    case 'thread':
      return [r.from, r.to]
    case 'ordinate':
      return [r.point]
    case 'note':
      return [r.to]
    case 'angle':
      return [r.vertex]
    case 'diameter':
      return quarters.map((a) => stepped(r.center, a, r.radius))
    case 'radius':
      return [r.start, r.end].map((a) => stepped(r.center, a, r.radius))
  }
}

import type { Result } from '../input/problem.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { DxfDocument, DxfLayer } from './dxf/dxf-document.ts'
import type { Arc, Circle, Curve, Line, Point } from './entity.ts'
import { sweepOf } from './entity-shape.ts'

/** One edge of a profile: layers are given by the feature. */
export type ProfileEdge = Omit<Line<string>, 'layer'> | Omit<Arc<string>, 'layer'> | Omit<Circle<string>, 'layer'>

/** What a cutter follows for one feature: true size in the plane it is cut in. */
export interface Profile {
  /** Feature by id. */
  readonly feature: string
  /** mm below the plane that the set-up is zeroed on; absent for a cut right through. */
  readonly depth?: number
  /** Closed outlines, mm in the plane's own coordinates; edges in turn, each in either sense. */
  readonly loops: readonly (readonly ProfileEdge[])[]
  /** Where the set-up's origin lies on the page, mm: profiles of other planes stand beside one another. */
  readonly origin: Point
}

/** How far the ends of two neighbouring edges may lie apart, mm; what CAM takes for closed. */
const joined = 1e-4

/**
 * `profiles.dxf`: closed outlines of lines, arcs and circles, a layer a feature named after it and its depth
 * (`SLOT_DEPTH_12.7MM`, `BORE_THROUGH`), each plane's origin as a cross on its own layer, nothing else: no text, no
 * dimension, that a cutter could follow. Problems: an outline that is not closed, a feature twice.
 */
export function profilesDxf(profiles: readonly Profile[], units: 'mm' | 'in'): Result<DxfDocument> {
  const unit = units === 'mm' ? 1 : 1 / 25.4
  const problems = profiles.flatMap(({ feature, loops }, i) => {
    const where = { file: 'profiles.dxf', path: feature }
    const open = loops.filter((loop) => !closed(loop)).length
    return [
      ...(open > 0
        ? [{ code: 'unsound-solid' as const, where, found: `${open} open outlines`, allowed: 'closed outlines' }]
        : []),
      ...(profiles.findIndex((p) => p.feature === feature) < i
        ? [{ code: 'contradiction' as const, where, found: 'the feature twice', allowed: 'each feature once' }]
        : []),
    ]
  })
  if (problems.length > 0) return { ok: false, problems }
  const layers: DxfLayer[] = profiles.map((p, i) => ({
    name: profileLayer(p, units),
    lineType: 'CONTINUOUS',
    width: 0.25,
    colour: 1 + (i % 6),
  }))
  const origins = new Map(profiles.map((p) => [p.origin.join(' '), p.origin]))
  return {
    ok: true,
    value: {
      units,
      lineTypes: [],
      layers: [...layers, { name: originLayer, lineType: 'CONTINUOUS', width: 0.25, colour: 7 }],
      entities: [
        ...profiles.flatMap((p) =>
          p.loops.flat().map((edge) => moved({ ...edge, layer: profileLayer(p, units) }, unit, p.origin)),
        ),
        ...[...origins.values()].flatMap((at) => cross(at, unit)),
      ],
      dimensions: [],
      dimensionStyles: [
        { name: 'STANDARD', textHeight: 2.5, arrowLength: 3, extensionGap: 1, extensionBeyond: 2, textGap: 0.9 },
      ],
    },
  }
}

export const originLayer = 'ORIGIN'

/** `SLOT_DEPTH_12.7MM`: letters, digits, point, hyphen and underscore, which every CAM takes. */
export function profileLayer({ feature, depth }: Profile, units: 'mm' | 'in'): string {
  const name = feature.toUpperCase().replace(/[^A-Z0-9-]+/g, '-')
  if (depth === undefined) return `${name}_THROUGH`
  const text = units === 'mm' ? formatNumber(depth, 3, { trim: true }) : formatNumber(depth / 25.4, 4, { trim: true })
  return `${name}_DEPTH_${text}${units.toUpperCase()}`
}

function moved(edge: Line<string> | Arc<string> | Circle<string>, unit: number, by: Point): Curve<string> {
  const to = (p: Point): Point => [(p[0] + by[0]) * unit, (p[1] + by[1]) * unit]
  if (edge.kind === 'line') return { ...edge, from: to(edge.from), to: to(edge.to) }
  return { ...edge, center: to(edge.center), radius: edge.radius * unit }
}

function cross([x, y]: Point, unit: number): Curve<string>[] {
  const arm = 5
  const line = (from: Point, to: Point): Curve<string> => ({
    kind: 'line',
    layer: originLayer,
    from: [from[0] * unit, from[1] * unit],
    to: [to[0] * unit, to[1] * unit],
  })
  return [line([x - arm, y], [x + arm, y]), line([x, y - arm], [x, y + arm])]
}

/** Whether the edges of a loop run end to end and back to their start. */
function closed(loop: readonly ProfileEdge[]): boolean {
  if (loop.length === 1) return loop[0]!.kind === 'circle' || (loop[0]!.kind === 'arc' && isWhole(loop[0]!))
  if (loop.length === 0 || loop.some((e) => e.kind === 'circle')) return false
  const ends = loop.map(endsOf)
  const near = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]) <= joined
  return ends[0]!.some((start, side) => {
    let at = ends[0]![1 - side]!
    for (const [a, b] of ends.slice(1)) {
      if (near(a, at)) at = b
      else if (near(b, at)) at = a
      else return false
    }
    return near(at, start)
  })
}

const isWhole = (arc: Omit<Arc<string>, 'layer'>): boolean => Math.abs(sweepOf(arc) - 2 * Math.PI) < 1e-9

function endsOf(edge: ProfileEdge): readonly [Point, Point] {
  if (edge.kind === 'line') return [edge.from, edge.to]
  const on = (t: number): Point => [
    edge.center[0] + edge.radius * Math.cos(t),
    edge.center[1] + edge.radius * Math.sin(t),
  ]
  return edge.kind === 'arc' ? [on(edge.start), on(edge.end)] : [on(0), on(0)]
}

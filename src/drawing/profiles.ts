import { type Entity, endsOf, pointOf, rangeOf } from '../edges/entity.ts'
import type { Result } from '../input/problem.ts'
import { isClosed, type ProfileEdge, type SetUp } from '../profiles/profile.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { DxfDocument, DxfEntity, DxfLayer } from './dxf/dxf-document.ts'
import type { Curve, Point } from './entity.ts'
import { layerWord, profileLayer } from './profile-layer.ts'

/** What the file says beside its outlines. */
export interface ProfileFacts {
  /** Comments at the head of the file, a line each, that CAD and CAM read over: part, revision mark. */
  readonly comments: readonly string[]
  /** Findings that stop the job, in words; none where nothing does. */
  readonly stops: readonly string[]
}

/**
 * `profiles.dxf`: closed outlines of lines, arcs and circles, a layer a feature named after it and its depth
 * (`SLOT_DEPTH_12.7MM`, `BORE_THROUGH`). The set-ups stand beside one another, the first at the file's own origin; the
 * zero of each is marked by its axes on a layer of its own, and comments tell where it lies. No text and no dimension
 * that a cutter could follow: words come only where findings stop the job, on layer `STOP`, above everything else.
 * Problems: an outline that is not closed, two features for one layer.
 */
export function profilesDxf(
  setUps: readonly SetUp[],
  units: 'mm' | 'in',
  { comments, stops }: ProfileFacts = { comments: [], stops: [] },
): Result<DxfDocument> {
  const problems = faultsOf(setUps, units)
  if (problems.length > 0) return { ok: false, problems }
  const unit = units === 'mm' ? 1 : 1 / 25.4
  const origins = originsOf(setUps, units)
  const top = Math.max(0, ...setUps.map((s) => extentOf(s, 1)[1]))
  const words = stops.flatMap((text) => lined(`STOP: ${text}`))
  const cutting = setUps.flatMap((s) => s.profiles.map((p) => profileLayer(p, units)))
  const layer = (name: string, colour: number): DxfLayer => ({ name, lineType: 'CONTINUOUS', width: 0.25, colour })
  return {
    ok: true,
    value: {
      units,
      comments: [...comments, ...setUps.map((s, i) => whereabouts(s, origins[i]!, units))],
      lineTypes: [],
      layers: [
        ...cutting.map((name, i) => layer(name, colours[i % colours.length]!)),
        ...setUps.map((s) => layer(originLayer(s), plain)),
        ...(stops.length > 0 ? [layer(stopLayer, red)] : []),
      ],
      entities: [
        ...setUps.flatMap((s, i) => [
          ...s.profiles.flatMap((p) =>
            p.outlines.flat().map((e) => placed(e, profileLayer(p, units), unit, origins[i]!)),
          ),
          ...axes(originLayer(s), unit, origins[i]!),
        ]),
        ...words.map((text, i): DxfEntity => {
          const at: Point = [0, (top + clear + (words.length - 1 - i) * 2 * letters) * unit]
          const common = { across: 'left', up: 'baseline', rotation: 0 } as const
          return { kind: 'text', layer: stopLayer, at, text, height: letters * unit, ...common }
        }),
      ],
      dimensions: [],
      dimensionStyles: [
        { name: 'STANDARD', textHeight: 2.5, arrowLength: 3, extensionGap: 1, extensionBeyond: 2, textGap: 0.9 },
      ],
    },
  }
}

export const stopLayer = 'STOP'
/** `ORIGIN_TILTED-FACE` */
export const originLayer = ({ name }: SetUp): string => `ORIGIN_${layerWord(name)}`

/** Room between set-ups, and above the uppermost outline, mm. */
const clear = 20
/** Height of the letters of a stop, mm. */
const letters = 5
/** Colours of the DXF table that can be told apart on black and on white; red is kept for a stop. */
const colours = [5, 3, 6, 30, 140, 94, 200, 42, 4]
const red = 1
const plain = 7

/** Words on lines of at most 80 letters or so. */
const lined = (text: string): string[] => text.match(/\S.{0,78}\S(?=\s|$)|\S+/gu) ?? []

function faultsOf(setUps: readonly SetUp[], units: 'mm' | 'in') {
  const profiles = setUps.flatMap((s) => s.profiles)
  const layers = profiles.map((p) => profileLayer(p, units))
  return profiles.flatMap(({ name, outlines }, i) => {
    const where = { file: 'profiles.dxf', path: name }
    const open = outlines.filter((outline) => !isClosed(outline)).length
    const found = open > 0 ? `${open} open outlines` : outlines.length === 0 ? 'no outline' : undefined
    return [
      ...(found ? [{ code: 'unsound-solid' as const, where, found, allowed: 'closed outlines' }] : []),
      ...(layers.indexOf(layers[i]!) < i
        ? [{ code: 'contradiction' as const, where, found: 'the feature twice', allowed: 'each feature once' }]
        : []),
    ]
  })
}

/** Where the zero of each set-up lies, mm: clear of the one before, at whole tens of millimetres or half inches. */
function originsOf(setUps: readonly SetUp[], units: 'mm' | 'in'): Point[] {
  const step = units === 'mm' ? 10 : 12.7
  let edge: number | undefined
  return setUps.map((s): Point => {
    const [low, high] = extentOf(s, 0)
    const x = edge === undefined ? 0 : step * Math.ceil((edge + clear - low) / step - 1e-6)
    edge = x + high
    return [x, 0]
  })
}

/** How far outlines and axes of a set-up reach along x (0) or y (1), mm, to a hair. */
function extentOf({ profiles }: SetUp, axis: 0 | 1): [number, number] {
  const points = profiles.flatMap((p) => p.outlines.flat()).flatMap(pointsOf)
  const values = points.map((p) => p[axis])
  return [Math.min(-arm, ...values), Math.max(2 * arm, ...values)]
}

function pointsOf(e: Entity): readonly Point[] {
  if (e.kind === 'line') return endsOf(e)
  const [from, to] = rangeOf(e)
  return Array.from({ length: 65 }, (_, i) => pointOf(e, from + ((to - from) * i) / 64))
}

function whereabouts({ name, zero }: SetUp, [x, y]: Point, units: 'mm' | 'in'): string {
  const text = (value: number) =>
    units === 'mm' ? formatNumber(value, 3, { trim: true }) : formatNumber(value / 25.4, 4, { trim: true })
  return `set-up ${name}: zero at X ${text(x)} Y ${text(y)} of this file = ${zero}; Z out of the metal to the cutter`
}

function placed(edge: ProfileEdge, layer: string, unit: number, by: Point): Curve<string> {
  const to = (p: Point): Point => [(p[0] + by[0]) * unit, (p[1] + by[1]) * unit]
  if (edge.kind === 'line') return { kind: 'line', layer, from: to(edge.from), to: to(edge.to) }
  const round = { layer, center: to(edge.centre), radius: edge.radius * unit }
  return edge.kind === 'circle'
    ? { kind: 'circle', ...round }
    : { kind: 'arc', ...round, start: edge.start, end: edge.end }
}

const arm = 5

/** The zero of a set-up: a cross with an arrow each along +x and +y, the one along x twice as long. */
function axes(layer: string, unit: number, by: Point): Curve<string>[] {
  const line = (from: Point, to: Point) => placed({ kind: 'line', from, to }, layer, unit, by)
  const head = (tip: Point, [x, y]: Point) => [
    line(tip, [tip[0] - 2 * x - y, tip[1] - 2 * y - x]),
    line(tip, [tip[0] - 2 * x + y, tip[1] - 2 * y + x]),
  ]
  const [right, up]: [Point, Point] = [
    [2 * arm, 0],
    [0, arm],
  ]
  return [line([-arm, 0], right), line([0, -arm], up), ...head(right, [1, 0]), ...head(up, [0, 1])]
}

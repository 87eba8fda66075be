import type { PlacedDimension } from '../dimensions/placed-dimension.ts'
import { boxOf } from '../dimensions/room.ts'
import { segmentsOf } from '../dimensions/sketch.ts'
import type { Entity, Point } from '../entity.ts'
import { placed } from '../entity-shape.ts'
import { type Sheet, type View, viewOnPaper } from '../sheet/sheet.ts'
import { type DrawingStyle, dashesOf, type LayerName, type LineType } from '../style.ts'
import type { DxfDimension, DxfDocument, DxfEntity, DxfLayer, DxfLineType } from './dxf-document.ts'

/** Between two sheets of one file, mm on paper. */
const sheetGap = 20

/**
 * The sheets of one drawing for CAD, from left to right: every view 1:1 in model units, frame and title block enlarged
 * round it. A view that is drawn larger on paper than the rest keeps its middle there and shrinks to 1:1, its text with
 * it, so that nothing comes to overlap; a pictorial view keeps its size beside the frame. Coordinates are mm, or inches
 * for `in`. Throws RangeError where there is no sheet.
 */
export function sheetsDxf(sheets: readonly Sheet[], style: DrawingStyle, units: 'mm' | 'in'): DxfDocument {
  let left = 0
  const onOne = sheets.map((sheet) => {
    const by: Point = [left, 0]
    left += sheet.size.width + sheetGap
    return {
      entities: sheet.entities.map((e) => placed(e, 1, by)),
      views: sheet.views.map((v) => ({ ...v, at: [v.at[0] + by[0], v.at[1]] as Point })),
    }
  })
  if (onOne.length === 0) throw new RangeError('no sheet')
  const [sheetEntities, views] = [onOne.flatMap((s) => s.entities), onOne.flatMap((s) => s.views)]
  const unit = units === 'mm' ? 1 : 1 / 25.4
  const whole = Math.min(...views.filter((v) => v.pictorial !== true).map((v) => v.scale))
  const frame = unit / (Number.isFinite(whole) ? whole : 1)
  const scales = views.filter((v) => v.pictorial !== true).map((v) => unit / v.scale)
  const styles = [...new Set([frame, ...scales])]
  // The sheet's own size is the standard one; views drawn larger on paper have smaller text here.
  const styleName = (scale: number) => (scale === frame ? 'STANDARD' : `VIEW-${styles.indexOf(scale)}`)
  const entities: DxfEntity[] = sheetEntities.map((e) => enlarged(e, frame, [0, 0], style))
  const dimensions: DxfDimension[] = []
  for (const view of views) {
    const paper = view.pictorial === true ? frame : unit / view.scale
    const [cx, cy] = middleOfView(view)
    const shift: Point = [view.at[0] * frame + cx * (frame - paper), view.at[1] * frame + cy * (frame - paper)]
    for (const e of view.lines) {
      const onModel = placed(e, view.scale * paper, shift)
      entities.push(sized(onModel, paper, style))
    }
    for (const e of view.notes) entities.push(enlarged(e, paper, shift, style))
    for (const d of view.dimensions) {
      const graphics = d.graphics.map((g) => enlarged(g, paper, shift, style))
      // A pictorial view is not 1:1: what it says is drawn, not measured.
      const shape = view.pictorial === true ? undefined : shapeOf(d, unit, paper, shift)
      if (shape === undefined) entities.push(...graphics)
      else {
        const measurement = d.request.kind === 'angle' ? d.request.value : d.request.value * unit
        const textPoint = at(d.textPoint, paper, shift)
        dimensions.push({
          layer: 'dimension',
          style: styleName(paper),
          name: d.request.id,
          measurement,
          text: d.request.text,
          textPoint,
          graphics,
          shape,
        })
      }
    }
  }
  return {
    units,
    lineTypes: lineTypesOf(style, frame),
    layers: layersOf(style),
    entities,
    dimensions,
    dimensionStyles: styles.map((scale) => ({
      name: styleName(scale),
      textHeight: style.textHeight * scale,
      arrowLength: style.arrowLength * scale,
      extensionGap: style.extensionGap * scale,
      extensionBeyond: style.extensionBeyond * scale,
      textGap: style.textGap * scale,
    })),
  }
}

const at = (p: Point, scale: number, shift: Point): Point => [p[0] * scale + shift[0], p[1] * scale + shift[1]]

function middleOfView(view: View): Point {
  const points = segmentsOf(viewOnPaper(view)).flat()
  if (points.length === 0) return [0, 0]
  const { low, high } = boxOf(points)
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]
}

const enlarged = (e: Entity<LayerName>, scale: number, shift: Point, style: DrawingStyle): DxfEntity =>
  sized(placed(e, scale, shift), scale, style)

/** Sizes that are given on paper brought to the file: text, arrows, hatch. */
function sized(e: Entity<LayerName>, scale: number, style: DrawingStyle): DxfEntity {
  switch (e.kind) {
    case 'text':
      return { ...e, height: e.height * scale }
    case 'arrow':
      return { ...e, length: e.length * scale, width: e.width * scale }
    case 'hatch':
      return { ...e, spacing: style.hatchSpacing * scale }
    default:
      return e
  }
}

/** Names that CADs with line types of their own know too; the short patterns, which end in 2, for narrow lines. */
const lineTypeNames: Readonly<Record<LineType, string>> = {
  continuous: 'CONTINUOUS',
  dashed: 'DASHED',
  chain: 'CENTER',
  'double-chain': 'DIVIDE',
}
const nameOf = (type: LineType, width: number, style: DrawingStyle): string =>
  type !== 'continuous' && width <= style.layers.hidden.width ? `${lineTypeNames[type]}2` : lineTypeNames[type]

function lineTypesOf(style: DrawingStyle, scale: number): DxfLineType[] {
  const types = new Map<string, DxfLineType>()
  for (const { lineType, width } of Object.values(style.layers)) {
    const name = nameOf(lineType, width, style)
    types.set(name, { name, dashes: dashesOf(lineType, width).map((d) => d * scale) })
  }
  return [...types.values()].filter((t) => t.dashes.length > 0)
}

const layersOf = (style: DrawingStyle): DxfLayer[] =>
  Object.entries(style.layers).map(([name, { lineType, width, dxfColour }]) => ({
    name,
    lineType: nameOf(lineType, width, style),
    width,
    colour: dxfColour,
  }))

/** The DIMENSION's own points, from those that the request measures; undefined for a note. */
function shapeOf(d: PlacedDimension, unit: number, paper: number, shift: Point): DxfDimension['shape'] | undefined {
  const r = d.request
  const on = (p: Point): Point => at(p, unit, shift)
  const linePoint = at(d.linePoint, paper, shift)
  switch (r.kind) {
    case 'linear': {
      const ends = { kind: 'linear' as const, from: on(r.from), to: on(r.to), linePoint }
      if (r.direction === 'aligned') return ends
      return { ...ends, angle: r.direction === 'horizontal' ? 0 : Math.PI / 2 }
    }
    case 'diameter': {
      const [c, s] = [r.radius * Math.cos(d.leader!), r.radius * Math.sin(d.leader!)]
      const [x, y] = r.center
      return { kind: 'diameter', from: on([x - c, y - s]), to: on([x + c, y + s]) }
    }
    case 'radius': {
      const [c, s] = [r.radius * Math.cos(d.leader!), r.radius * Math.sin(d.leader!)]
      return { kind: 'radius', center: on(r.center), on: on([r.center[0] + c, r.center[1] + s]) }
    }
    case 'angle':
      return { kind: 'angle', vertex: on(r.vertex), from: on(r.from), to: on(r.to), linePoint }
    case 'ordinate':
      return { kind: 'ordinate', axis: r.axis, datum: on(r.datum), point: on(r.point), linePoint }
    case 'chamfer': {
      const upright = Math.abs(r.to[1] - r.from[1]) > Math.abs(r.to[0] - r.from[0])
      return { kind: 'linear', from: on(r.from), to: on(r.to), linePoint, angle: upright ? Math.PI / 2 : 0 }
    }
    case 'thread':
      return { kind: 'diameter', from: on(r.from), to: on(r.to) }
    case 'note':
      return undefined
  }
}

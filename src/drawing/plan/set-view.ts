import { layOut } from '../dimensions/layout.ts'
import type { PlacedDimension } from '../dimensions/placed-dimension.ts'
import { type Box, boxOf } from '../dimensions/room.ts'
import { segmentsOf } from '../dimensions/sketch.ts'
import type { Entity, Point } from '../entity.ts'
import { placed } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { textWidth } from '../font/text-box.ts'
import { scaleText } from '../sheet/scale.ts'
import type { View } from '../sheet/sheet.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import { cutOut } from './cut-out.ts'
import type { ViewGroup, ViewPlan } from './sheet-plan.ts'

/** A view with its dimensions, before it has a place. */
export interface SetView {
  readonly plan: ViewPlan
  readonly scale: number
  readonly lines: readonly Entity<LayerName>[]
  readonly notes: readonly Entity<LayerName>[]
  readonly dimensions: readonly PlacedDimension[]
  /** mm on paper from the view's origin. */
  readonly bounds: Box
}

/** Views in their rows and columns: mm on paper from the lower left corner of the group. */
export interface SetGroup {
  readonly width: number
  readonly height: number
  readonly views: readonly { readonly view: SetView; readonly at: Point }[]
}

/** Lays out a view at its scale, and sets its caption below. Throws NoRoom where a dimension finds no clear place. */
export function setView(plan: ViewPlan, sheetScale: number, style: DrawingStyle, font: Font): SetView {
  const scale = sheetScale * (plan.enlarged ?? 1)
  const bare = [...plan.lines, ...(plan.marks?.(scale) ?? [])]
  const choices = plan.choices?.map((c) => c(scale)) ?? []
  const { dimensions, marks, bounds } = layOut({ scale, lines: bare, choices, requests: plan.requests }, style, font)
  const lines = cutOut([...bare, ...marks], dimensions, scale, style, font)
  const caption = [...plan.caption, ...(scale === sheetScale ? [] : [`scale ${scaleText(scale)}`])]
  const outline = boxOf(segmentsOf(plan.lines.map((e) => placed(e, scale, [0, 0]))).flat())
  const x = (outline.low[0] + outline.high[0]) / 2
  const first = bounds.low[1] - style.textHeight - style.titleHeight
  const heights = caption.map((_, i) => (i === 0 ? style.titleHeight : style.textHeight))
  const notes = caption.map(
    (text, i): Entity<LayerName> => ({
      kind: 'text',
      layer: 'text',
      at: [x, first - i * style.lineSpacing],
      text,
      height: heights[i]!,
      across: 'center',
      up: 'baseline',
      rotation: 0,
    }),
  )
  const half = Math.max(0, ...caption.map((text, i) => textWidth(font, text, heights[i]!) / 2))
  const low = caption.length === 0 ? bounds.low[1] : first - (caption.length - 1) * style.lineSpacing - style.textGap
  return {
    plan,
    scale,
    lines,
    notes,
    dimensions,
    bounds: {
      low: [Math.min(bounds.low[0], x - half), low],
      high: [Math.max(bounds.high[0], x + half), bounds.high[1]],
    },
  }
}

/** Room between two views of a group, mm. */
const between = 8

/** Origins of one column stand above one another, those of one row beside one another. */
export function setGroup(group: ViewGroup, set: (plan: ViewPlan) => SetView): SetGroup {
  const rows = group.rows.map((row) => row.map((plan) => plan && set(plan)))
  const columnCount = Math.max(...rows.map((r) => r.length))
  const columns = Array.from({ length: columnCount }, (_, k) => rows.flatMap((r) => r[k] ?? []))
  let left = 0
  const xs = columns.map((views) => {
    const x = left - Math.min(...views.map((v) => v.bounds.low[0]))
    left = x + Math.max(...views.map((v) => v.bounds.high[0])) + between
    return x
  })
  let top = 0
  const ys = rows.map((row) => {
    const views = row.filter((v) => v !== undefined)
    const y = top - Math.max(...views.map((v) => v.bounds.high[1]))
    top = y + Math.min(...views.map((v) => v.bounds.low[1])) - between
    return y
  })
  const height = -(top + between)
  return {
    width: left - between,
    height,
    views: rows.flatMap((row, r) =>
      row.flatMap((view, k) => (view ? [{ view, at: [xs[k]!, ys[r]! + height] as Point }] : [])),
    ),
  }
}

export const viewAt = ({ plan, scale, lines, notes, dimensions }: SetView, at: Point): View => ({
  id: plan.id,
  scale,
  at,
  lines,
  notes,
  dimensions,
  ...(plan.pictorial === true && { pictorial: true }),
})

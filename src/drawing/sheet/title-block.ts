import type { Entity, Point, Text } from '../entity.ts'
import type { Font } from '../font/font.ts'
import { textWidth } from '../font/text-box.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import { type Projection, projectionSymbol } from './projection-symbol.ts'
import type { SheetSize } from './sheet-size.ts'

/** What a title block says (in the spirit of ISO 7200; the layout is our own). */
export interface TitleBlock {
  readonly title: string
  readonly part: string
  readonly drawingNumber: string
  readonly material: string
  /** `1:1` */
  readonly scale: string
  readonly units: string
  readonly generalTolerance: string
  readonly mass: string
  readonly revision: string
  readonly sheet: number
  readonly sheets: number
  readonly projection: Projection
  /** Why the job must not be made, in words; absent where nothing stops it. */
  readonly stop?: string
}

/** Width of the block, mm; with the frame of an upright A4 it takes the whole width (ISO 7200: 180 mm, from memory). */
export const titleBlockWidth = 180
const row = 9
/** Height of the block without the stop banner, mm. */
const rows = 4
const bannerHeight = 10

export const titleBlockHeight = (block: Pick<TitleBlock, 'stop'>): number =>
  rows * row + (block.stop === undefined ? 0 : bannerHeight)

/** The lines and texts of a title block in the lower right corner of the frame; long words are set smaller to fit. */
export function titleBlock(block: TitleBlock, size: SheetSize, style: DrawingStyle, font: Font): Entity<LayerName>[] {
  const right = size.width - size.margins.right
  const left = right - titleBlockWidth
  const bottom = size.margins.bottom
  const top = bottom + rows * row
  const small = 0.7 * style.textHeight
  const line = (from: Point, to: Point, layer: LayerName = 'datum'): Entity<LayerName> => ({
    kind: 'line',
    layer,
    from,
    to,
  })
  const fitted = (
    text: string,
    at: Point,
    width: number,
    height: number,
    layer: LayerName = 'text',
  ): Text<LayerName> => {
    const wide = textWidth(font, text, height)
    return {
      kind: 'text',
      layer,
      at,
      text,
      height: wide > width ? (height * width) / wide : height,
      across: 'left',
      up: 'baseline',
      rotation: 0,
    }
  }
  // Label above, value below, in a cell of a row counted from the bottom.
  const cell = (x: number, r: number, width: number, label: string, value: string, height = style.textHeight) => [
    fitted(label, [left + x + 1, bottom + (r + 1) * row - 1 - small], width - 2, small),
    fitted(value, [left + x + 1, bottom + r * row + 1.4], width - 2, height),
  ]
  const out: Entity<LayerName>[] = [
    line([left, bottom], [left, top], 'frame'),
    line([left, top], [right, top], 'frame'),
    ...[1, 2, 3].map((r) =>
      line([left, bottom + r * row], [r === 1 || r === 2 ? right - 36 : right, bottom + r * row]),
    ),
    line([right - 36, bottom], [right - 36, bottom + 3 * row]),
    line([left + 90, bottom], [left + 90, top]),
    line([left + 45, bottom + row], [left + 45, bottom + 2 * row]),
    line([left + 117, bottom + row], [left + 117, bottom + 2 * row]),
    line([right - 36, top - row], [right - 36, top]),
    ...cell(0, 3, 90, 'title', block.title, style.titleHeight),
    ...cell(90, 3, 54, 'drawing number', block.drawingNumber),
    ...cell(144, 3, 36, 'sheet', `${block.sheet} of ${block.sheets}`),
    ...cell(0, 2, 90, 'part', block.part),
    ...cell(90, 2, 54, 'general tolerance', block.generalTolerance),
    ...cell(0, 1, 45, 'material', block.material),
    ...cell(45, 1, 45, 'mass', block.mass),
    ...cell(90, 1, 27, 'scale', block.scale),
    ...cell(117, 1, 27, 'units', block.units),
    ...cell(0, 0, 90, 'revision', block.revision),
    ...cell(90, 0, 54, 'read with', 'the report of the same revision'),
    ...projectionSymbol(block.projection, [right - 18, bottom + 2 * row - 3], 10),
    fitted(block.projection, [right - 36 + 2, bottom + 1.8], 32, small),
  ]
  if (block.stop === undefined) return out
  const high = top + bannerHeight
  return [
    ...out,
    line([left, top], [left, high], 'stop'),
    line([left, high], [right, high], 'stop'),
    line([right, high], [right, top], 'stop'),
    fitted(`STOP, DO NOT MAKE: ${block.stop}`, [left + 2, top + 3.2], titleBlockWidth - 4, style.titleHeight, 'stop'),
  ]
}

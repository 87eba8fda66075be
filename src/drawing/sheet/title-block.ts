import type { Entity, Point, Text } from '../entity.ts'
import type { Font } from '../font/font.ts'
import { fittedText, type SetText, wrap } from '../font/wrap.ts'
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
/** Rows of the block without the stop banner. */
const rows = 4
/** Smallest height of capitals, for labels and for what is too long otherwise, mm (ISO 3098-1 has 1.8 as its smallest). */
const smallest = 1.8
/** From line to line over the height of capitals. */
const leading = 1.5

const bannerOf = (stop: string, style: DrawingStyle, font: Font): SetText =>
  fittedText(
    `STOP, DO NOT MAKE: ${stop}`,
    titleBlockWidth - 4,
    [
      [style.titleHeight, 2],
      [style.textHeight, 4],
      [smallest, Infinity],
    ],
    font,
  )

const bannerHeight = ({ lines, height }: SetText): number => ((lines.length - 1) * leading + 2.4) * height

/** Height of the block with the banner that it needs, mm. */
export const titleBlockHeight = ({ stop }: Pick<TitleBlock, 'stop'>, style: DrawingStyle, font: Font): number =>
  rows * row + (stop === undefined ? 0 : bannerHeight(bannerOf(stop, style, font)))

/**
 * The lines and texts of a title block in the lower right corner of the frame. Long words are set smaller and on two lines,
 * and a banner grows upward with what it has to say; nothing is cut off.
 */
export function titleBlock(block: TitleBlock, size: SheetSize, style: DrawingStyle, font: Font): Entity<LayerName>[] {
  const right = size.width - size.margins.right
  const left = right - titleBlockWidth
  const bottom = size.margins.bottom
  const top = bottom + rows * row
  const line = (from: Point, to: Point, layer: LayerName = 'datum'): Entity<LayerName> => ({
    kind: 'line',
    layer,
    from,
    to,
  })
  const text = (words: string, at: Point, height: number, layer: LayerName = 'text'): Text<LayerName> => ({
    kind: 'text',
    layer,
    at,
    text: words,
    height,
    across: 'left',
    up: 'baseline',
    rotation: 0,
  })
  // Label above, value below, in a cell of a row counted from the bottom.
  const cell = (x: number, r: number, width: number, label: string, value: string, height = style.textHeight) => {
    const [wide, low] = [width - 2, bottom + r * row + 1.4]
    const set = fittedText(
      value,
      wide,
      [
        [height, 1],
        [style.textHeight, 1],
        [0.85 * style.textHeight, 1],
        [smallest, 2],
      ],
      font,
    )
    // Beyond two lines of the smallest height there is no room in a row: the last resort is smaller.
    const two = set.lines.length > 2 ? squeezed(value, wide, font) : set
    const rise = two.lines.length === 1 ? 0 : Math.min(leading * two.height, row - 4.3 - two.height + 1.2)
    return [
      text(label, [left + x + 1, bottom + (r + 1) * row - 1 - smallest], smallest),
      ...two.lines.map((words, i) =>
        text(
          words,
          [left + x + 1, low - (two.lines.length === 1 ? 0 : 0.5) + (two.lines.length - 1 - i) * rise],
          two.height,
        ),
      ),
    ]
  }
  const out: Entity<LayerName>[] = [
    line([left, bottom], [left, top], 'frame'),
    line([left, top], [right, top], 'frame'),
    ...[1, 2, 3].map((r) =>
      line([left, bottom + r * row], [r === 1 || r === 2 ? right - 36 : right, bottom + r * row]),
    ),
    line([right - 36, bottom], [right - 36, bottom + 3 * row]),
    line([left + 90, bottom], [left + 90, top]),
    line([left + 62, bottom + row], [left + 62, bottom + 2 * row]),
    line([left + 117, bottom + row], [left + 117, bottom + 2 * row]),
    line([right - 36, top - row], [right - 36, top]),
    ...cell(0, 3, 90, 'title', block.title, style.titleHeight),
    ...cell(90, 3, 54, 'drawing number', block.drawingNumber),
    ...cell(144, 3, 36, 'sheet', `${block.sheet} of ${block.sheets}`),
    ...cell(0, 2, 90, 'part', block.part),
    ...cell(90, 2, 54, 'general tolerance', block.generalTolerance),
    ...cell(0, 1, 62, 'material', block.material),
    ...cell(62, 1, 28, 'mass', block.mass),
    ...cell(90, 1, 27, 'scale', block.scale),
    ...cell(117, 1, 27, 'units', block.units),
    ...cell(0, 0, 90, 'revision', block.revision),
    ...cell(90, 0, 54, 'read with', 'the report of the same revision'),
    ...projectionSymbol(block.projection, [right - 18, bottom + 2 * row - 3], 10),
    text(block.projection, [right - 36 + 2, bottom + 1.8], smallest),
  ]
  if (block.stop === undefined) return out
  const banner = bannerOf(block.stop, style, font)
  const high = top + bannerHeight(banner)
  return [
    ...out,
    line([left, top], [left, high], 'stop'),
    line([left, high], [right, high], 'stop'),
    line([right, high], [right, top], 'stop'),
    ...banner.lines.map((words, i) =>
      text(words, [left + 2, high - 1.7 * banner.height - i * leading * banner.height], banner.height, 'stop'),
    ),
  ]
}

/** A text on two lines as small as it takes. */
function squeezed(text: string, width: number, font: Font): SetText {
  let height = smallest
  let lines = wrap(text, width, height, font)
  while (lines.length > 2) {
    height *= 0.9
    lines = wrap(text, width, height, font)
  }
  return { lines, height }
}

import type { Result } from '../input/problem.ts'

/** Line types of ISO 128-2: dash and gap lengths follow from the line's width. */
export type LineType = 'continuous' | 'dashed' | 'chain' | 'double-chain'

export type LayerName =
  | 'visible'
  | 'hidden'
  | 'centre'
  | 'thread'
  | 'section'
  | 'phantom'
  | 'hatch'
  | 'dimension'
  | 'text'
  | 'datum'
  | 'frame'
  | 'stop'

export interface LayerStyle {
  readonly lineType: LineType
  /** mm */
  readonly width: number
  /** On paper and on screen. */
  readonly colour: `#${string}`
  /** Colour number of a DXF layer: 7 is black on white and white on black. */
  readonly dxfColour: number
}

/** How every sheet is drawn: one object for DXF, PDF and SVG. Lengths are mm on paper. */
export interface DrawingStyle {
  readonly layers: Readonly<Record<LayerName, LayerStyle>>
  /** Height of capitals: of dimensions and notes, and of titles. */
  readonly textHeight: number
  readonly titleHeight: number
  readonly arrowLength: number
  readonly arrowWidth: number
  /** Between a point of the view and the start of its extension line. */
  readonly extensionGap: number
  /** How far an extension line runs past the dimension line. */
  readonly extensionBeyond: number
  /** From the view to the first row of dimensions, and from row to row. */
  readonly firstRow: number
  readonly rowSpacing: number
  /** Between text and any line or other text. */
  readonly textGap: number
  /** From line to line of a text. */
  readonly lineSpacing: number
  /** Between hatch lines. */
  readonly hatchSpacing: number
}

/** Line widths of ISO 128-2, each √2 times the one before, mm. */
export const lineWidths: readonly number[] = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1]

export interface StyleChoice {
  /** Wide and narrow lines, 2 : 1 (ISO 128-2): 0.5 and 0.25, or 0.7 and 0.35 for large sheets. */
  readonly lines: '0.5/0.25' | '0.7/0.35'
  /** Height of capitals in dimensions, mm: 2.5 or 3.5 (ISO 3098). */
  readonly textHeight: 2.5 | 3.5
}

/** The style of that choice: widths from ISO 128-2, the rest in proportion to the text (common practice, no source). */
export function styleOf(choice: StyleChoice = { lines: '0.5/0.25', textHeight: 2.5 }): DrawingStyle {
  const [wide, narrow] = choice.lines === '0.5/0.25' ? [0.5, 0.25] : [0.7, 0.35]
  const layer = (lineType: LineType, width: number, dxfColour: number, colour: `#${string}` = '#000000') => ({
    lineType,
    width,
    colour,
    dxfColour,
  })
  const h = choice.textHeight
  return {
    layers: {
      visible: layer('continuous', wide, 7),
      hidden: layer('dashed', narrow, 3),
      centre: layer('chain', narrow, 1),
      thread: layer('continuous', narrow, 6),
      section: layer('chain', wide, 5),
      phantom: layer('double-chain', narrow, 8),
      hatch: layer('continuous', narrow, 8),
      dimension: layer('continuous', narrow, 4),
      text: layer('continuous', narrow, 7),
      datum: layer('continuous', narrow, 2),
      frame: layer('continuous', wide, 7),
      stop: layer('continuous', wide, 1, '#b3001b'),
    },
    textHeight: h,
    titleHeight: 1.4 * h,
    arrowLength: 1.2 * h,
    arrowWidth: 0.4 * h,
    extensionGap: 0.4 * h,
    extensionBeyond: 0.8 * h,
    firstRow: 4 * h,
    rowSpacing: 2.8 * h,
    textGap: 0.36 * h,
    lineSpacing: 1.6 * h,
    hatchSpacing: 1.2 * h,
  }
}

/** Dashes and gaps of a line type in turn, mm, for a line `width` mm wide (ISO 128-2: dash 12 d, long dash 24 d, gap 3 d,
 * dot 0.5 d); empty for a continuous line. */
export function dashesOf(type: LineType, width: number): readonly number[] {
  const of: Readonly<Record<LineType, readonly number[]>> = {
    continuous: [],
    dashed: [12, 3],
    chain: [24, 3, 0.5, 3],
    'double-chain': [24, 3, 0.5, 3, 0.5, 3],
  }
  return of[type].map((n) => n * width)
}

/**
 * A style that a shop has changed, or what is wrong with it: every length above 0, widths from ISO 128-2, visible lines
 * twice as wide as the rest, room for a line of text and its gaps between two rows.
 */
export function checkedStyle(style: DrawingStyle): Result<DrawingStyle> {
  const wrong: { path: string; found: string; allowed: string }[] = []
  const lengths = Object.entries(style).filter(([key]) => key !== 'layers') as [string, number][]
  for (const [path, value] of lengths) {
    if (!(Number.isFinite(value) && value > 0)) wrong.push({ path, found: `${value}`, allowed: 'a length above 0 mm' })
  }
  for (const [name, { width, colour, dxfColour }] of Object.entries(style.layers)) {
    const path = `layers.${name}`
    if (!lineWidths.includes(width)) {
      wrong.push({ path: `${path}.width`, found: `${width}`, allowed: `${lineWidths.join(', ')} mm (ISO 128-2)` })
    }
    if (!/^#[0-9a-f]{6}$/i.test(colour)) wrong.push({ path: `${path}.colour`, found: colour, allowed: '#rrggbb' })
    if (!Number.isInteger(dxfColour) || dxfColour < 1 || dxfColour > 255) {
      wrong.push({ path: `${path}.dxfColour`, found: `${dxfColour}`, allowed: 'a whole number from 1 to 255' })
    }
  }
  const { visible, hidden, dimension } = style.layers
  for (const [name, thin] of [
    ['hidden', hidden],
    ['dimension', dimension],
  ] as const) {
    if (Math.abs(visible.width - 2 * thin.width) > 0.02) {
      const path = `layers.${name}.width`
      wrong.push({
        path,
        found: `${thin.width}`,
        allowed: `half of the visible lines' ${visible.width} mm (ISO 128-2)`,
      })
    }
  }
  const row = 1.6 * style.textHeight + 2 * style.textGap
  if (style.rowSpacing < row) {
    wrong.push({ path: 'rowSpacing', found: `${style.rowSpacing}`, allowed: `${row} mm or more, so that text fits` })
  }
  if (style.extensionBeyond < style.arrowWidth / 2) {
    wrong.push({ path: 'extensionBeyond', found: `${style.extensionBeyond}`, allowed: 'half an arrow or more' })
  }
  if (wrong.length === 0) return { ok: true, value: style }
  return {
    ok: false,
    problems: wrong.map(({ path, found, allowed }) => ({
      code: 'out-of-range',
      where: { file: 'drawing style', path },
      found,
      allowed,
    })),
  }
}

import { dimensionText, type Size } from '../../src/drawing/dimensions/dimension-text.ts'
import { layOut } from '../../src/drawing/dimensions/layout.ts'
import { type DimensionRequest, measureOf } from '../../src/drawing/dimensions/request.ts'
import type { Entity, Point } from '../../src/drawing/entity.ts'
import type { Font } from '../../src/drawing/font/font.ts'
import { sheetFrame } from '../../src/drawing/sheet/frame.ts'
import type { Sheet, View } from '../../src/drawing/sheet/sheet.ts'
import { type SheetName, sheetSizes } from '../../src/drawing/sheet/sheet-size.ts'
import { titleBlock } from '../../src/drawing/sheet/title-block.ts'
import type { DrawingStyle, LayerName } from '../../src/drawing/style.ts'

type WithoutValue<R> = R extends DimensionRequest ? Omit<R, 'value' | 'text'> : never

/** A request whose value is what its points measure, written as the size says. */
export function request(r: WithoutValue<DimensionRequest>, size: Partial<Size> | readonly string[]): DimensionRequest {
  const bare = { ...r, value: 0, text: ['?'] } as DimensionRequest
  const value = measureOf(bare)
  const kinds = {
    diameter: 'diameter',
    radius: 'radius',
    angle: 'angle',
    chamfer: 'chamfer',
    thread: 'thread',
  } as const
  const kind = r.kind in kinds ? kinds[r.kind as keyof typeof kinds] : 'length'
  const text = Array.isArray(size)
    ? (size as readonly string[])
    : dimensionText(
        { kind, value: Math.abs(value), tolerance: { kind: 'general' }, measurable: true, ...(size as Partial<Size>) },
        { units: 'mm' },
      )
  return { ...bare, value, text }
}

const line = (layer: LayerName, from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer, from, to })
const minute = Math.PI / 180 / 60

/** An invented bracket, every kind of entity on it. */
const bracketLines: readonly Entity<LayerName>[] = [
  line('visible', [0, 0], [70, 0]),
  line('visible', [70, 0], [70, 24]),
  line('visible', [70, 24], [52, 42]),
  line('visible', [52, 42], [8, 42]),
  { kind: 'arc', layer: 'visible', center: [8, 34], radius: 8, start: Math.PI / 2, end: Math.PI },
  line('visible', [0, 34], [0, 2]),
  line('visible', [0, 2], [2, 0]),
  { kind: 'circle', layer: 'visible', center: [22, 21], radius: 8 },
  { kind: 'circle', layer: 'visible', center: [50, 14], radius: 2.5 },
  { kind: 'arc', layer: 'thread', center: [50, 14], radius: 3, start: -0.2, end: 1.5 * Math.PI - 0.2 },
  { kind: 'ellipse', layer: 'visible', center: [40, 32], major: [6, 0], ratio: 0.5, start: 0, end: 2 * Math.PI },
  { kind: 'ellipse', layer: 'hidden', center: [40, 32], major: [4, 4], ratio: 0.4, start: 0.3, end: 4 },
  {
    kind: 'polyline',
    layer: 'hidden',
    closed: false,
    points: [
      [34, 0],
      [34, 8],
      [40, 12],
      [40, 24],
    ],
  },
  line('centre', [10, 21], [34, 21]),
  line('centre', [22, 9], [22, 33]),
  line('centre', [45, 14], [55, 14]),
  line('centre', [50, 9], [50, 19]),
]

const bracketRequests: readonly DimensionRequest[] = [
  request({ id: 'length', kind: 'linear', direction: 'horizontal', from: [0, 0], to: [70, 0] }, {}),
  request(
    { id: 'height', kind: 'linear', direction: 'vertical', from: [0, 0], to: [8, 42], side: 'left' },
    { tolerance: { kind: 'limits', lower: -0.1, upper: 0.1 } },
  ),
  request(
    { id: 'bore-x', kind: 'linear', direction: 'horizontal', from: [0, 2], to: [22, 21], side: 'below' },
    { tolerance: { kind: 'limits', lower: 0.02, upper: 0.06 } },
  ),
  request({ id: 'bore-y', kind: 'linear', direction: 'vertical', from: [2, 0], to: [22, 21], side: 'left' }, {}),
  request({ id: 'tap-x', kind: 'linear', direction: 'horizontal', from: [0, 2], to: [50, 14], side: 'below' }, {}),
  request({ id: 'tap-y', kind: 'linear', direction: 'vertical', from: [70, 0], to: [50, 14], side: 'right' }, {}),
  request(
    { id: 'side', kind: 'linear', direction: 'vertical', from: [70, 0], to: [70, 24], side: 'right' },
    { tolerance: { kind: 'reference' } },
  ),
  request({ id: 'top', kind: 'linear', direction: 'horizontal', from: [8, 42], to: [52, 42], side: 'above' }, {}),
  request(
    { id: 'land', kind: 'linear', direction: 'horizontal', from: [0, 34], to: [8, 42], side: 'above' },
    { after: 'typ.' },
  ),
  request({ id: 'slope', kind: 'linear', direction: 'aligned', from: [70, 24], to: [52, 42] }, {}),
  request(
    { id: 'bore', kind: 'diameter', center: [22, 21], radius: 8, toward: 2.3 },
    { fitCode: 'H7', tolerance: { kind: 'limits', lower: 0, upper: 0.018 } },
  ),
  request({ id: 'corner', kind: 'radius', center: [8, 34], radius: 8, start: Math.PI / 2, end: Math.PI }, {}),
  request(
    { id: 'angle', kind: 'angle', vertex: [70, 24], from: [70, 26], to: [52, 42] },
    { tolerance: { kind: 'limits', lower: -15 * minute, upper: 15 * minute } },
  ),
  request({ id: 'edge', kind: 'chamfer', from: [0, 2], to: [2, 0], toward: -2.4 }, {}),
  request(
    { id: 'tap', kind: 'thread', from: [47, 14], to: [53, 14], toward: -0.6 },
    { thread: { designation: 'M6', depth: 12, drill: 5, drillDepth: 15 } },
  ),
  request({ id: 'break', kind: 'note', to: [46, 42], toward: 1.2 }, ['break edges 0.3 × 45°']),
]

const plateRequests: readonly DimensionRequest[] = [
  ...[4, 7, 9, 30].map((x, i) =>
    request({ id: `hole-${i}.x`, kind: 'ordinate', axis: 'x', datum: [0, 0], point: [x, 6 + i], side: 'above' }, {}),
  ),
  ...[6, 8, 16].map((y, i) =>
    request({ id: `hole-${i}.y`, kind: 'ordinate', axis: 'y', datum: [0, 0], point: [30, y], side: 'right' }, {}),
  ),
  request(
    { id: 'slot', kind: 'linear', direction: 'horizontal', from: [10, 0], to: [12, 0], side: 'below' },
    { tolerance: { kind: 'limits', lower: -0.05, upper: 0 } },
  ),
  request({ id: 'plate', kind: 'linear', direction: 'horizontal', from: [0, 0], to: [40, 0], side: 'below' }, {}),
]
const rectangle = (w: number, h: number): Entity<LayerName>[] => [
  {
    kind: 'polyline',
    layer: 'visible',
    closed: true,
    points: [
      [0, 0],
      [w, 0],
      [w, h],
      [0, h],
    ],
  },
]

function view(
  id: string,
  scale: number,
  at: Point,
  lines: readonly Entity<LayerName>[],
  requests: readonly DimensionRequest[],
  style: DrawingStyle,
  font: Font,
): View {
  const { dimensions, bounds } = layOut({ scale, lines, requests }, style, font)
  const caption: Entity<LayerName> = {
    kind: 'text',
    layer: 'text',
    at: [bounds.low[0], bounds.low[1] - 4 * style.textHeight],
    text: `view ${id}`,
    height: style.titleHeight,
    across: 'left',
    up: 'baseline',
    rotation: 0,
  }
  return { id, scale, at, lines, notes: [caption], dimensions }
}

/** A sheet with every kind of entity and dimension, and views at two scales. */
export function sampleSheet(name: SheetName, style: DrawingStyle, font: Font, stop?: string): Sheet {
  const size = sheetSizes[name]
  const section: Entity<LayerName>[] = [
    ...rectangle(30, 20),
    { kind: 'circle', layer: 'visible', center: [15, 10], radius: 5 },
    {
      kind: 'hatch',
      layer: 'hatch',
      angle: Math.PI / 4,
      loops: [
        [
          line('hatch', [0, 0], [30, 0]),
          line('hatch', [30, 0], [30, 20]),
          line('hatch', [30, 20], [0, 20]),
          line('hatch', [0, 20], [0, 0]),
        ] as never,
        [{ kind: 'circle', layer: 'hatch', center: [15, 10], radius: 5 }],
      ],
    },
  ]
  return {
    id: 'sample',
    title: 'sample',
    size,
    entities: [
      ...sheetFrame(size),
      ...titleBlock(
        {
          title: 'Bracket & plate',
          part: 'for trying the drawing rules',
          drawingNumber: 'TRY-001',
          material: 'steel 1018, cold drawn',
          scale: '1:1',
          units: 'mm',
          generalTolerance: 'ISO 2768-m',
          mass: '0.412 kg',
          revision: 'a1b2c3d4',
          sheet: 1,
          sheets: 3,
          projection: 'third angle',
          ...(stop === undefined ? {} : { stop }),
        },
        size,
        style,
        font,
      ),
    ],
    views: [
      view('bracket', 1, [75, 180], bracketLines, bracketRequests, style, font),
      view('plate', 2, [250, 190], rectangle(40, 20), plateRequests, style, font),
      view(
        'section',
        1,
        [70, 75],
        section,
        [
          request(
            { id: 'wide', kind: 'linear', direction: 'horizontal', from: [0, 0], to: [30, 0], side: 'below' },
            {},
          ),
        ],
        style,
        font,
      ),
    ],
  }
}

// The one place that imports dxf-writer. It ships CommonJS whose types leave out much of what it can do, has no
// DIMENSION, HATCH or SOLID, writes no line widths and counts handles for the whole process; all that is dealt with here.
import Drawing from 'dxf-writer'
// @ts-expect-error no types
import Arc from 'dxf-writer/src/Arc.js'
// @ts-expect-error no types
import Circle from 'dxf-writer/src/Circle.js'
// @ts-expect-error no types
import Ellipse from 'dxf-writer/src/Ellipse.js'
// @ts-expect-error no types
import Handle from 'dxf-writer/src/Handle.js'
// @ts-expect-error no types
import Line from 'dxf-writer/src/Line.js'
// @ts-expect-error no types
import Polyline from 'dxf-writer/src/Polyline.js'
// @ts-expect-error no types
import Text from 'dxf-writer/src/Text.js'

/** Takes group codes and their values. */
export interface Tags {
  push(code: number, value: string | number): void
}

/** Anything that writes itself: entities of dxf-writer and our own. */
export interface Shape {
  ownerObjectHandle: string
  layer: { readonly name: string }
  tags(manager: Tags): void
}

interface TableEntry {
  readonly handle?: string
  ownerObjectHandle: string
  tags(manager: Tags): void
}

interface Block {
  readonly name: string
  readonly handle: string
  tags(manager: Tags): void
}

interface Layer {
  addShape(shape: Shape): void
  tags(manager: Tags): void
}

/** What `Drawing` really has. */
interface Writer {
  readonly layers: Record<string, Layer>
  readonly blocks: Record<string, Block>
  readonly tables: Record<string, { readonly elements: { fontFileName?: string }[]; add(entry: TableEntry): void }>
  setUnits(unit: string): void
  header(name: string, values: [number, number | string][]): void
  addLineType(name: string, description: string, elements: readonly number[]): void
  addLayer(name: string, colour: number, lineType: string): void
  toDxfString(): string
}

/** A new drawing, its handles counted from one: two equal drawings are equal to the last byte. */
export function newDrawing(): Writer {
  Handle.seed = 0
  return new (Drawing as unknown as new () => Writer)()
}

export const nextHandle = (): string => Handle.next()

type Degrees = number

export const entities = {
  line: (x1: number, y1: number, x2: number, y2: number): Shape => new Line(x1, y1, x2, y2),
  circle: (x: number, y: number, r: number): Shape => new Circle(x, y, r),
  arc: (x: number, y: number, r: number, start: Degrees, end: Degrees): Shape => new Arc(x, y, r, start, end),
  ellipse: (x: number, y: number, mx: number, my: number, ratio: number, start: number, end: number): Shape =>
    new Ellipse(x, y, mx, my, ratio, start, end),
  polyline: (points: readonly (readonly [number, number])[], closed: boolean): Shape => new Polyline(points, closed),
  text: (
    x: number,
    y: number,
    height: number,
    rotation: Degrees,
    value: string,
    across: 'left' | 'center' | 'right',
    up: 'baseline' | 'middle' | 'top',
  ): Shape => new Text(x, y, height, rotation, value, across, up),
}

import type { Arrow, Curve, Point } from '../entity.ts'
import { arrowCorners, sweepOf } from '../entity-shape.ts'
import type { DxfDimension, DxfDimensionStyle, DxfHatch } from './dxf-document.ts'
import { dxfText } from './dxf-text.ts'
import { nextHandle, type Shape, type Tags } from './dxf-writer.ts'
import { degrees, rounded } from './rounded.ts'

/** Group codes in order, beginning with the subclass marker of the entity itself. */
type Body = (put: Put) => void
interface Put {
  (code: number, value: string | number): void
  readonly point: (code: number, p: Point) => void
}

const putTo = (manager: Tags): Put =>
  Object.assign((code: number, value: string | number) => manager.push(code, value), {
    point: (code: number, p: Point) => {
      manager.push(code, rounded(p[0]))
      manager.push(code + 10, rounded(p[1]))
      manager.push(code + 20, 0)
    },
  })

/** An entity that dxf-writer has not. Its layer and owner are set by whoever takes it in. */
function ownShape(type: string, body: Body): Shape {
  const handle = nextHandle()
  return {
    ownerObjectHandle: '0',
    layer: { name: '0' },
    tags(manager) {
      const put = putTo(manager)
      put(0, type)
      put(5, handle)
      put(330, this.ownerObjectHandle)
      put(100, 'AcDbEntity')
      put(8, this.layer.name)
      body(put)
    },
  }
}

/** A filled triangle. */
export const solidShape = (arrow: Arrow<string>): Shape =>
  ownShape('SOLID', (put) => {
    const [tip, left, right] = arrowCorners(arrow)
    put(100, 'AcDbTrace')
    put.point(10, tip)
    put.point(11, left)
    put.point(12, right)
    put.point(13, right)
  })

/**
 * The pattern of plain lines that every CAD knows: at 45° and 1/8 in apart, turned and enlarged to what is wanted (name and
 * size from memory). The lines are spelled out beside it.
 */
const ansi31 = 'ANSI31'
const ansi31Spacing = 3.175

/** A hatch of parallel lines with exact edges. */
export const hatchShape = (hatch: DxfHatch): Shape =>
  ownShape('HATCH', (put) => {
    put(100, 'AcDbHatch')
    put.point(10, [0, 0])
    put(210, 0)
    put(220, 0)
    put(230, 1)
    put(2, ansi31)
    put(70, 0)
    put(71, 0)
    put(91, hatch.loops.length)
    for (const loop of hatch.loops) {
      put(92, 1)
      put(93, loop.length)
      for (const edge of loop) hatchEdge(put, edge)
      put(97, 0)
    }
    put(75, 0)
    put(76, 1)
    put(52, degrees(hatch.angle - Math.PI / 4))
    put(41, rounded(hatch.spacing / ansi31Spacing))
    put(77, 0)
    put(78, 1)
    put(53, degrees(hatch.angle))
    put(43, 0)
    put(44, 0)
    put(45, rounded(-hatch.spacing * Math.sin(hatch.angle)))
    put(46, rounded(hatch.spacing * Math.cos(hatch.angle)))
    put(79, 0)
    put(98, 0)
  })

function hatchEdge(put: Put, edge: Curve<string>): void {
  const flat = (code: number, p: Point) => {
    put(code, rounded(p[0]))
    put(code + 10, rounded(p[1]))
  }
  switch (edge.kind) {
    case 'line':
      put(72, 1)
      flat(10, edge.from)
      flat(11, edge.to)
      return
    case 'ellipse':
      put(72, 3)
      flat(10, edge.center)
      flat(11, edge.major)
      put(40, rounded(edge.ratio, 9))
      put(50, degrees(edge.start))
      put(51, degrees(edge.start + sweepOf(edge)))
      put(73, 1)
      return
    default: {
      const [start, sweep] = edge.kind === 'circle' ? [0, 2 * Math.PI] : [edge.start, sweepOf(edge)]
      put(72, 2)
      flat(10, edge.center)
      put(40, rounded(edge.radius))
      put(50, degrees(start))
      put(51, degrees(start + sweep))
      put(73, 1)
    }
  }
}

/** A DIMENSION that points at the block which draws it, so that a reader need not know how to draw dimensions. */
export const dimensionShape = (dimension: DxfDimension, block: string): Shape =>
  ownShape('DIMENSION', (put) => {
    const { shape } = dimension
    // 32: the block is this dimension's alone; 128: the text stands where it was put; 64: along x.
    const type =
      {
        linear: shape.kind === 'linear' && shape.angle === undefined ? 1 : 0,
        diameter: 3,
        radius: 4,
        angle: 2,
        ordinate: 6,
      }[shape.kind] +
      160 +
      (shape.kind === 'ordinate' && shape.axis === 'x' ? 64 : 0)
    put(100, 'AcDbDimension')
    put(2, block)
    put.point(10, firstPoint(shape))
    put.point(11, dimension.textPoint)
    put(70, type)
    put(1, dimension.text.map(dxfText).join('\\P'))
    put(71, 5)
    put(42, rounded(dimension.measurement, 9))
    put(3, dimension.style)
    shapeTags(put, shape)
    put(1001, applicationName)
    put(1000, dxfText(dimension.name))
  })

/** Under this name a DIMENSION keeps the name of the size that it shows. */
export const applicationName = 'CUTTERWRIGHT'

function shapeTags(put: Put, shape: DxfDimension['shape']): void {
  switch (shape.kind) {
    case 'linear':
      put(100, 'AcDbAlignedDimension')
      put.point(13, shape.from)
      put.point(14, shape.to)
      if (shape.angle === undefined) return
      put(50, degrees(shape.angle))
      put(100, 'AcDbRotatedDimension')
      return
    case 'diameter':
      put(100, 'AcDbDiametricDimension')
      put.point(15, shape.to)
      put(40, 0)
      return
    case 'radius':
      put(100, 'AcDbRadialDimension')
      put.point(15, shape.on)
      put(40, 0)
      return
    case 'angle':
      // Two lines, 13 to 14 and 15 to 10: more readers know them than the vertex and two points.
      put(100, 'AcDb2LineAngularDimension')
      // Neither begins at the vertex, where a reader that asks for the direction to its first point would find none.
      put.point(13, halfway(shape.vertex, shape.from))
      put.point(14, shape.from)
      put.point(15, halfway(shape.vertex, shape.to))
      put.point(16, shape.linePoint)
      return
    case 'ordinate':
      put(100, 'AcDbOrdinateDimension')
      put.point(13, shape.point)
      put.point(14, shape.linePoint)
  }
}

const halfway = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

function firstPoint(shape: DxfDimension['shape']): Point {
  switch (shape.kind) {
    case 'diameter':
      return shape.from
    case 'radius':
      return shape.center
    case 'ordinate':
      return shape.datum
    case 'angle':
      return shape.to
    default:
      return shape.linePoint
  }
}

/** Entry of the table of applications, without which a reader may drop their data. */
export function applicationEntry() {
  const handle = nextHandle()
  return {
    ownerObjectHandle: '0',
    tags(manager: Tags): void {
      const put = putTo(manager)
      put(0, 'APPID')
      put(5, handle)
      put(330, this.ownerObjectHandle)
      put(100, 'AcDbSymbolTableRecord')
      put(100, 'AcDbRegAppTableRecord')
      put(2, applicationName)
      put(70, 0)
    },
  }
}

/** The dimension style, for a CAD that draws a dimension anew when it is changed. */
export function dimensionStyleEntry(style: DxfDimensionStyle) {
  const handle = nextHandle()
  return {
    ownerObjectHandle: '0',
    tags(manager: Tags): void {
      const put = putTo(manager)
      put(0, 'DIMSTYLE')
      put(105, handle)
      put(330, this.ownerObjectHandle)
      put(100, 'AcDbSymbolTableRecord')
      put(100, 'AcDbDimStyleTableRecord')
      put(2, style.name)
      put(70, 0)
      put(40, 1)
      put(41, rounded(style.arrowLength))
      put(42, rounded(style.extensionGap))
      put(44, rounded(style.extensionBeyond))
      put(77, 1)
      put(140, rounded(style.textHeight))
      put(147, rounded(style.textGap))
    },
  }
}

/** The block that draws one dimension. dxf-writer's own blocks are always empty. */
export function dimensionBlock(name: string, shapes: readonly Shape[]) {
  const [handle, endHandle] = [nextHandle(), nextHandle()]
  for (const shape of shapes) shape.ownerObjectHandle = handle
  return {
    name,
    handle,
    tags(manager: Tags): void {
      const put = putTo(manager)
      put(0, 'BLOCK')
      put(5, handle)
      put(330, '0')
      put(100, 'AcDbEntity')
      put(8, '0')
      put(100, 'AcDbBlockBegin')
      put(2, name)
      // Anonymous: not for inserting by hand.
      put(70, 1)
      put.point(10, [0, 0])
      put(3, name)
      put(1, '')
      for (const shape of shapes) shape.tags(manager)
      put(0, 'ENDBLK')
      put(5, endHandle)
      put(330, '0')
      put(100, 'AcDbEntity')
      put(8, '0')
      put(100, 'AcDbBlockEnd')
    },
  }
}

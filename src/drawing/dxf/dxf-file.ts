import { sweepOf } from '../entity-shape.ts'
import type { DxfDocument, DxfEntity } from './dxf-document.ts'
import { dxfText } from './dxf-text.ts'
import { entities, newDrawing, type Shape } from './dxf-writer.ts'
import {
  applicationEntry,
  dimensionBlock,
  dimensionShape,
  dimensionStyleEntry,
  hatchShape,
  solidShape,
} from './own-shapes.ts'
import { degrees, rounded } from './rounded.ts'

/** Widths a DXF layer can have, 1/100 mm. */
const layerWidths = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211]

/** A sans serif that comes with most systems and is no wider than the one that room was kept for. */
const fontFile = 'arial.ttf'

/**
 * The document as a DXF file (AC1021, text): the same document gives the same bytes. Throws RangeError on a layer or line
 * type that is not in its table or comes twice, a width that DXF has not, a number that is not finite, a circle without
 * radius, and text with control characters.
 */
export function dxfFile(document: DxfDocument): string {
  const drawing = newDrawing()
  drawing.setUnits(document.units === 'mm' ? 'Millimeters' : 'Inches')
  drawing.header('MEASUREMENT', [[70, document.units === 'mm' ? 1 : 0]])
  drawing.header('LTSCALE', [[40, 1]])
  drawing.header('LWDISPLAY', [[290, 1]])
  const [first] = document.dimensionStyles
  if (first === undefined) throw new RangeError('no dimension style')
  drawing.header('DIMSTYLE', [[2, first.name]])
  for (const entry of drawing.tables.STYLE!.elements) entry.fontFileName = fontFile
  for (const style of document.dimensionStyles) drawing.tables.DIMSTYLE!.add(dimensionStyleEntry(style))

  if (document.dimensions.length > 0) drawing.tables.APPID!.add(applicationEntry())

  const lineTypes = new Set(['CONTINUOUS'])
  for (const { name, dashes } of document.lineTypes) {
    if (lineTypes.has(name)) continue
    lineTypes.add(name)
    drawing.addLineType(
      name,
      name,
      dashes.map((d, i) => rounded(i % 2 === 0 ? d : -d)),
    )
  }
  const layers = new Set<string>()
  for (const { name, colour, lineType, width } of document.layers) {
    if (layers.has(name)) throw new RangeError(`layer ${name} twice`)
    if (!/^[^<>/\\":;?*|=`,\p{Cc}]+$/u.test(name)) throw new RangeError(`not a name for a layer: ${name}`)
    if (!lineTypes.has(lineType)) throw new RangeError(`layer ${name}: no line type ${lineType}`)
    const hundredths = Math.round(width * 100)
    if (!layerWidths.includes(hundredths)) throw new RangeError(`layer ${name}: no line width ${width} mm in DXF`)
    layers.add(name)
    drawing.addLayer(name, colour, lineType)
    const layer = drawing.layers[name]!
    const tags = layer.tags.bind(layer)
    layer.tags = (manager) => {
      tags(manager)
      manager.push(370, hundredths)
    }
  }
  const layerOf = (name: string) => {
    if (!layers.has(name)) throw new RangeError(`no layer ${name}`)
    return drawing.layers[name]!
  }

  document.dimensions.forEach((dimension, i) => {
    const name = `*D${i + 1}`
    if (!document.dimensionStyles.some((s) => s.name === dimension.style)) {
      throw new RangeError(`no dimension style ${dimension.style}`)
    }
    const shapes = dimension.graphics.map((g) => {
      layerOf(g.layer)
      return Object.assign(shapeOf(g), { layer: { name: g.layer } })
    })
    drawing.blocks[name] = dimensionBlock(name, shapes)
    layerOf(dimension.layer).addShape(dimensionShape(dimension, name))
  })
  for (const entity of document.entities) layerOf(entity.layer).addShape(shapeOf(entity))
  const comments = (document.comments ?? []).map((c) => `999\n${dxfText(c)}\n`)
  return `${comments.join('')}${drawing.toDxfString()}\n`
}

function shapeOf(e: DxfEntity): Shape {
  switch (e.kind) {
    case 'line':
      return entities.line(rounded(e.from[0]), rounded(e.from[1]), rounded(e.to[0]), rounded(e.to[1]))
    case 'circle':
      return entities.circle(rounded(e.center[0]), rounded(e.center[1]), size(e.radius))
    case 'arc': {
      const end = e.start + sweepOf(e)
      return entities.arc(rounded(e.center[0]), rounded(e.center[1]), size(e.radius), turn(e.start), turn(end))
    }
    case 'ellipse': {
      if (!(e.ratio > 0 && e.ratio <= 1)) throw new RangeError(`ellipse with axes 1 : ${e.ratio}`)
      const [[x, y], [mx, my]] = [e.center, e.major]
      size(Math.hypot(mx, my))
      const [start, end] = [rounded(e.start, 9), rounded(e.start + sweepOf(e), 9)]
      return entities.ellipse(rounded(x), rounded(y), rounded(mx, 9), rounded(my, 9), rounded(e.ratio, 12), start, end)
    }
    case 'polyline':
      return entities.polyline(
        e.points.map(([x, y]) => [rounded(x), rounded(y)] as const),
        e.closed,
      )
    case 'text': {
      const [x, y] = [rounded(e.at[0]), rounded(e.at[1])]
      return entities.text(x, y, size(e.height), turn(e.rotation), dxfText(e.text), e.across, e.up)
    }
    case 'arrow':
      return solidShape(e)
    case 'hatch':
      return hatchShape(e)
  }
}

function size(value: number): number {
  const near = rounded(value)
  if (!(near > 0)) throw new RangeError(`not a size: ${value}`)
  return near
}

/** rad to degrees from 0 up to 360. */
function turn(angle: number): number {
  const all = degrees(angle)
  return rounded(all - 360 * Math.floor(all / 360), 9)
}

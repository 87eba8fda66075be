import type { Entity as Edge } from '../../edges/entity.ts'
import type { CutFace } from '../../edges/section.ts'
import type { ViewLines } from '../../edges/view.ts'
import type { Curve, Entity } from '../entity.ts'
import type { LayerName } from '../style.ts'

/** Exact line work of a view on the layers that ISO 128 gives it; smooth edges are drawn thin. */
export const drawnView = (lines: ViewLines, hidden = true): Entity<LayerName>[] => [
  ...lines.visible.map((e) => drawnEdge(e, 'visible')),
  ...lines.smooth.map((e) => drawnEdge(e, 'thread')),
  ...(hidden ? lines.hidden.map((e) => drawnEdge(e, 'hidden')) : []),
]

/** Hatched cut faces; neighbouring parts lean the other way. */
export const hatchedFaces = (faces: readonly CutFace[], angleOf: (id: string) => number): Entity<LayerName>[] =>
  faces.map(({ id, loops }) => ({
    kind: 'hatch',
    layer: 'hatch',
    loops: loops.map((loop) => loop.steps.map(({ entity }) => drawnEdge(entity, 'hatch'))),
    angle: angleOf(id),
  }))

export function drawnEdge(e: Edge, layer: LayerName): Curve<LayerName> {
  switch (e.kind) {
    case 'line':
      return { kind: 'line', layer, from: e.from, to: e.to }
    case 'circle':
      return { kind: 'circle', layer, center: e.centre, radius: e.radius }
    case 'arc':
      return { kind: 'arc', layer, center: e.centre, radius: e.radius, start: e.start, end: e.end }
    case 'ellipse':
      return { kind: 'ellipse', layer, center: e.centre, major: e.major, ratio: e.ratio, start: e.start, end: e.end }
  }
}

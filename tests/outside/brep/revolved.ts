import { makePolygon, revolution, type Shape3D } from 'replicad'

/** Turned solid about Z from its outline in radius and height. */
export const revolved = (outline: readonly (readonly [number, number])[]): Shape3D =>
  revolution(makePolygon(outline.map(([r, z]) => [r, 0, z])), [0, 0, 0], [0, 0, 1])

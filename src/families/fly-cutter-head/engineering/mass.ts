import { pointFrom } from '../../../geometry/frame.ts'
import { add, scale, type Vec3 } from '../../../geometry/vector.ts'
import { contentOf } from '../../../mechanics/angles/convex-polyhedron.ts'
import type { MassItem } from '../../../mechanics/balance/static-balance.ts'
import { solidOf } from '../../../part/part.ts'
import { turnedVolumeOf } from '../../../solid/turned.ts'
import { quickVolumeOf } from '../../../solid/volume.ts'
import type { MaterialRow } from '../../../tables/materials.ts'
import type { HeadDesign } from '../design.ts'
import { groundBitOf } from './angles.ts'
import { headVolumeOf } from './head-volume.ts'

/**
 * Mass, kg, and centroid, body frame, of everything that turns, quickly enough to be asked of every variant of a design:
 * arbor and bit exact, set screws as plain cylinders, the head as `headVolumeOf` has it.
 */
export const massItemsOf = (design: HeadDesign): readonly MassItem[] =>
  design.once('mass items', () => [bodyOf(design), arborOf(design), bitMassOf(design), ...screwsOf(design)])

/** The bit alone: its ground piece and the blank behind it. */
export const bitMassOf = (design: HeadDesign): MassItem =>
  design.once('mass of the bit', () => {
    const { tip, head, tail } = groundBitOf(design)
    const pieces = [head, ...(tail ? [tail] : [])].map(contentOf)
    const volume = pieces.reduce((sum, piece) => sum + piece.volume, 0)
    const moment = pieces.reduce<Vec3>((sum, piece) => add(sum, piece.moment), [0, 0, 0])
    return weighed(design.layout.materials.bit, volume, pointFrom(tip.bit, scale(moment, 1 / volume)))
  })

const bodyOf = (design: HeadDesign): MassItem => {
  const { volume, centroid } = headVolumeOf(design)
  return weighed(design.layout.materials.body, volume, centroid)
}

const arborOf = (design: HeadDesign): MassItem => {
  const solid = solidOf(design.part('arbor'))
  const { volume, centroid } = turnedVolumeOf(solid) ?? quickVolumeOf(solid)
  return weighed(design.layout.materials.arbor, volume, centroid)
}

const screwsOf = ({ layout: { screws, materials }, screwMiddles }: HeadDesign): MassItem[] => {
  const volume = (Math.PI / 4) * screws.thread.majorDiameter ** 2 * screws.length
  return screwMiddles.map((middle) => weighed(materials.screw, volume, middle))
}

const weighed = ({ density }: MaterialRow, volume: number, centroid: Vec3): MassItem => ({
  mass: volume * 1e-9 * density,
  centroid,
})

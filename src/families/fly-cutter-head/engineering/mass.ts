import { add, scale, type Vec3 } from '../../../geometry/vector.ts'
import type { MassItem } from '../../../mechanics/balance/static-balance.ts'
import { type Part, solidOf } from '../../../part/part.ts'
import { rodVolumeOf, turnedVolumeOf } from '../../../solid/turned.ts'
import { flatVolumeOf, quickVolumeOf, type Volume } from '../../../solid/volume.ts'
import type { HeadDesign } from '../design.ts'
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
    const part = design.part('bit')
    return weighed(design, part, joined(solidOf(part).stock.map(flatVolumeOf)))
  })

const bodyOf = (design: HeadDesign): MassItem => {
  return weighed(design, design.part('body'), headVolumeOf(design))
}

const arborOf = (design: HeadDesign): MassItem => {
  const part = design.part('arbor')
  const solid = solidOf(part)
  return weighed(design, part, turnedVolumeOf(solid) ?? quickVolumeOf(solid))
}

const screwsOf = (design: HeadDesign): MassItem[] =>
  design.screwParts.map((part) => {
    const solid = solidOf(part)
    const [cell] = solid.stock
    return weighed(design, part, (cell && rodVolumeOf(cell)) ?? quickVolumeOf(solid))
  })

const weighed = (design: HeadDesign, part: Part, { volume, centroid }: Volume): MassItem => ({
  mass: volume * 1e-9 * design.materialOf(part).density,
  centroid,
})

function joined(volumes: readonly Volume[]): Volume {
  const volume = volumes.reduce((sum, one) => sum + one.volume, 0)
  const moment = volumes.reduce<Vec3>((sum, one) => add(sum, scale(one.centroid, one.volume)), [0, 0, 0])
  return { volume, centroid: volume > 0 ? scale(moment, 1 / volume) : [0, 0, 0] }
}

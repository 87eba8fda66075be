import type { HeadDesign } from '../design.ts'
import { acrossSlot } from '../section.ts'
import { parallelsOrPacking } from './parallels-or-packing.ts'

/** Clampings of the blank before it is tilted: either end up, or either end out of the chuck. */
export const uprightIds = ['first-end', 'mounting'] as const
export type UprightId = (typeof uprightIds)[number]

/** The blank standing on end in the vise of the mill. mm */
export interface UprightSetUp {
  /** Of the blank as it is put in. */
  readonly length: number
  readonly opening: number
  /** Parallels under it, or packing of that height where no pair of the list is: 0 stands on the bed. */
  readonly under: number
  readonly onParallels: boolean
  /** Upper end above the jaw tops, before it is faced. */
  readonly stickUp: number
  /** Height held between the jaws, and least that is wanted. */
  readonly grip: number
  readonly gripWanted: number
}

/** Length of the blank when it is put in: the second end is faced when the first one is. mm */
export const lengthThen = ({ layout, parameters }: HeadDesign, id: UprightId): number =>
  layout.stockLength - (id === 'mounting' ? parameters.settings.facing : 0)

/** High enough for the facing cut to clear the jaws, and no higher. */
export const uprightSetUp = (design: HeadDesign, id: UprightId): UprightSetUp =>
  design.once(`upright set-up ${id}`, () => {
    const { parameters: p } = design
    const jawHeight = p.machine.vise['jaw-height']
    const { clearance, 'least-grip': gripWanted } = p.settings['set-up']
    const length = lengthThen(design, id)
    const needed = Math.max(0, jawHeight + clearance + p.settings.facing - length)
    const { under, onParallels } = parallelsOrPacking(design, needed, Math.max(needed, jawHeight - gripWanted))
    return {
      length,
      opening: acrossSlot(p.stock),
      under,
      onParallels,
      stickUp: under + length - jawHeight,
      grip: Math.min(length, jawHeight - under),
      gripWanted,
    }
  })

/** How much of a short blank the jaws of a chuck hold: common practice, no source. */
const held = 2 / 3

/** Length in the jaws of the chuck, mm: whole millimetres or eighths of an inch, where that leaves any. */
export function heldInChuck(design: HeadDesign, id: UprightId): number {
  const step = design.units === 'mm' ? 1 : 25.4 / 8
  const length = held * lengthThen(design, id)
  return length < step ? length : Math.floor(length / step) * step
}

import type { CommonParameters, Design, MockUpBody } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { Solid } from '../geometry/solid.ts'
import { solidOf } from '../part/part.ts'

/** What the solids of a design are made from. Plain data: it goes from thread to thread. */
export interface SolidsJob {
  readonly parts: readonly {
    readonly id: string
    readonly label: string
    readonly material: string
    readonly solid: Solid
  }[]
  readonly mockUp: readonly MockUpBody[]
  /** mm. */
  readonly chordTolerance: number
  /** Of the mock-up. */
  readonly scale: number
  readonly title: string
  readonly revision: string
}

export const solidsJob = (
  { family, design }: Pick<ReadDesign<CommonParameters, Design>, 'family' | 'design'>,
  revision: string,
): SolidsJob => ({
  parts: design.scene.parts.map(({ part }) => ({
    id: part.id,
    label: part.label,
    material: part.material,
    solid: solidOf(part),
  })),
  mockUp: family.mockUp(design),
  chordTolerance: design.parameters.settings['chord-tolerance'],
  scale: design.parameters['mock-up'].scale,
  title: design.parameters.title,
  revision,
})

import type { Drawn, Pictures } from '../../figures/pictures.ts'
import { balanceSketch } from './balance-sketch.ts'
import { interferenceBand } from './interference-band.ts'
import type { Picture } from './picture.ts'
import { planOfSwing } from './plan-of-swing.ts'
import { screwSection } from './screw-section.ts'
import { speedBars } from './speed-bars.ts'
import { tipViews } from './tip-views.ts'
import { wallSection } from './wall-section.ts'

type DataOf<Entry> = Entry extends Drawn<infer T> ? Exclude<T, { leftOut: string }> : never

/** Every kind of picture, in the order of the report. */
const kinds: { readonly [K in keyof Pictures]-?: Picture<DataOf<NonNullable<Pictures[K]>>> } = {
  'plan-of-swing': planOfSwing,
  'wall-section': wallSection,
  'tip-views': tipViews,
  'screw-section': screwSection,
  'interference-band': interferenceBand,
  'speed-bars': speedBars,
  'balance-sketch': balanceSketch,
}

/** A picture that a kind of tool has: what draws it and its data, or why there is none. */
export interface PictureEntry {
  readonly id: string
  readonly kind: Picture<unknown>
  readonly data: Drawn<unknown>
}

export const entriesOf = (pictures: Pictures): PictureEntry[] =>
  (Object.keys(kinds) as (keyof Pictures)[]).flatMap((id) => {
    const data = pictures[id]
    // Kind and data belong to the same id.
    return data === undefined ? [] : [{ id, kind: kinds[id] as Picture<unknown>, data }]
  })

export const isLeftOut = (data: Drawn<unknown>): data is { readonly leftOut: string } =>
  typeof data === 'object' && data !== null && 'leftOut' in data

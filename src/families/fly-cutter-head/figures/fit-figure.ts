import type { Figure } from '../../../figures/figure.ts'
import type { Joint } from '../../../mechanics/fit/joint.ts'
import type { HeadDesign } from '../design.ts'
import { jointOfHead } from '../engineering/fit.ts'

export type Of = (design: HeadDesign) => number | undefined
type Held = Pick<Figure<HeadDesign>, 'limit' | 'limitIs'>

export const lame = 'thick cylinders (Lamé), elastic, plane stress'

export const figure = (
  id: string,
  label: string,
  kind: Figure<HeadDesign>['kind'],
  source: string,
  of: Of,
  held: Held = {},
) => ({
  id,
  label,
  kind,
  source,
  of,
  ...held,
})

export const least = (limit: Of): Held => ({ limit, limitIs: 'least' })
export const most = (limit: Of): Held => ({ limit, limitIs: 'most' })

/** A figure of the joint, of a head that has one. */
export const ofJoint =
  (of: (joint: Joint, design: HeadDesign) => number | undefined): Of =>
  (design) => {
    const joint = jointOfHead(design)
    return joint && of(joint, design)
  }

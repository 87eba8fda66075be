import type { HeadDesign } from '../design.ts'

/** What the rules for bit and screws of a head look at. */
export type HeadLayout = Pick<HeadDesign, 'units' | 'layout' | 'gripped' | 'parameters'>

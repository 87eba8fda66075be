import type { TiltedSetUp } from './tilted-set-up.ts'

/** What is lowest at the tilt. */
export const lowPlace = (set: TiltedSetUp): string => (set.heldBy === 'shank' ? 'end of the shank' : headFoot(set))

/** What the height of the head is measured from at the tilt. */
export function headFoot({ tilt, lowPoint }: TiltedSetUp): string {
  return tilt === 0 ? 'mounting face' : `lowest ${lowPoint ? 'point' : 'edge'} of the mounting face`
}

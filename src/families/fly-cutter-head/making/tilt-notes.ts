import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { jawClearanceWords } from './jaw-clearance.ts'
import { tiltSetting } from './tilt-setting.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

/** How the tilted set-up is made, in order: height and angle of the head, and what comes near the jaws. */
export function tiltNotes(design: HeadDesign): string[] {
  const set = tiltedSetUp(design)
  const size = (value: number) => formatLength(value, design.units)
  const nearest = jawClearanceWords(design, size)
  return [
    ...tiltSetting(design, size),
    ...(set.heldBy === 'shank'
      ? ['A shank turns and tips in its block: flats along the table by an indicator, jaws tight, light cuts.']
      : []),
    `The deepest cut ends ${size(set.stickUp - set.deepest)} above the jaws.`,
    ...(nearest === undefined ? [] : [nearest]),
  ]
}

import type { Dimension } from '../../part/dimension.ts'
import type { HeadDesign } from './design.ts'
import { tiltedSetUp } from './making/tilted-set-up.ts'

/** Named sizes of the tilted set-up, mm or rad: what the vise is set to, and in brackets what follows. */
export function setUpDimensions(design: HeadDesign): Dimension[] {
  const s = tiltedSetUp(design)
  const size = (id: string, label: string, value: number, set: boolean, kind: Dimension['kind'] = 'length') => ({
    id: `set-up.${id}`,
    label,
    kind,
    value,
    tolerance: { kind: set ? 'general' : 'reference' } as const,
    feature: 'set-up',
    measurable: set,
  })
  return [
    ...(s.tilt > 0 ? [size('tilt', 'tilt of the head in the vise', s.tilt, true, 'angle')] : []),
    size('stick-up', 'finished face above the jaws', s.stickUp, true),
    size('jaw-height', 'bed of the vise to the top of the jaws', s.jawHeight, false),
    ...(s.under > 0 ? [size('under', 'bed of the vise to the lowest edge of the head', s.under, false)] : []),
    size('lowest', 'lowest edge of the head below the finished face', s.lowest, false),
    size('opening', 'opening of the jaws', s.opening, false),
  ]
}

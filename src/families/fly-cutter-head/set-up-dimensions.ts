import type { Dimension } from '../../part/dimension.ts'
import type { HeadDesign } from './design.ts'
import { isBoredInMill } from './making/bore-operations.ts'
import { headRoute } from './making/route.ts'
import { scribedLine } from './making/sawing.ts'
import { tiltedSetUp } from './making/tilted-set-up.ts'
import { heldInChuck, uprightIds, uprightSetUp } from './making/upright-set-up.ts'

/** Named sizes of the set-ups, mm or rad: what is set, and in brackets what follows. */
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
  const used = new Set(headRoute(design).map((o) => o.setUp))
  return [
    ...uprightIds
      .filter((id) => used.has(id))
      .flatMap((id) => {
        if (!isBoredInMill(design))
          return [size(`${id}-held`, 'length in the jaws of the chuck', heldInChuck(design, id), true)]
        const { stickUp, under } = uprightSetUp(design, id)
        return [
          size(`${id}-stick-up`, 'upper end above the jaws, before it is faced', stickUp, true),
          ...(under > 0 ? [size(`${id}-under`, 'bed of the vise to the lower end', under, false)] : []),
        ]
      }),
    ...(used.has('wedge') ? scribed(design).map(([id, label, value]) => size(id, label, value, true)) : []),
    ...(s.tilt > 0 ? [size('tilt', 'tilt of the head in the vise', s.tilt, true, 'angle')] : []),
    size('stick-up', 'finished face above the jaws', s.stickUp, true),
    size('jaw-height', 'bed of the vise to the top of the jaws', s.jawHeight, false),
    ...(s.under > 0 ? [size('under', 'bed of the vise to the lowest edge of the head', s.under, false)] : []),
    size('lowest', 'lowest edge of the head below the finished face', s.lowest, false),
    size('opening', 'opening of the jaws', s.opening, false),
  ]
}

/** The line that the saw follows. */
function scribed(design: HeadDesign): readonly (readonly [id: string, label: string, value: number])[] {
  const { short, long, inward } = scribedLine(design)
  return [
    ['wedge-short', 'mounting face to the scribed line, away from the bit', short],
    inward === undefined
      ? ['wedge-long', 'mounting face to the scribed line, on the bit side', long]
      : ['wedge-inward', 'scribed line at the end of the blank, from the bit side', inward],
  ]
}

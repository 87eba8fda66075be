import { inSentence } from '../../../checks/in-sentence.ts'
import type { Measuring } from '../../../figures/measuring.ts'
import { indicatorAngle } from '../../../mechanics/measuring/indicator-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { angleBlockWords, blocksWords } from './block-words.ts'
import { protractorWords } from './protractor-words.ts'
import { isJoinedFirst, tiltedSetUp } from './tilted-set-up.ts'

type Way = Pick<Measuring, 'how' | 'reading'>

const inMinutes = (angle: number): number => (angle * 180 * 60) / Math.PI

/** How the face angle is measured: by what sets it, and an indicator over the face for the rest. */
export function faceAngleWay(design: HeadDesign): Way {
  const { tilt } = tiltedSetUp(design)
  // With a shank in the middle the mounting face stands on nothing.
  if (isJoinedFirst(design)) {
    return {
      how: `vernier protractor, ${protractorWords(Math.PI / 2 - tilt)}`,
      reading: { says: 'between shank and angled face, on the bit side', scale: -1, offset: Math.PI / 2 },
    }
  }
  return { how: onMountingFace(design) }
}

function onMountingFace(design: HeadDesign): string {
  const { setting, tilt } = tiltedSetUp(design)
  switch (setting.by) {
    case 'level':
      return 'indicator over the face, the head on its mounting face'
    case 'angle-block': {
      return `${inSentence(angleBlockWords(setting.blocks))} under the mounting face, on the surface plate, ${overFace(design)}`
    }
    case 'sine-bar': {
      const stack = formatLength(setting.stack, design.units, { decimals: design.units === 'mm' ? 3 : 4 })
      return `sine bar of ${formatLength(setting.bar, design.units)} on ${stack} of blocks${blocksWords(design)} under the mounting face, ${overFace(design)}`
    }
    case 'protractor':
      return `vernier protractor from the mounting face, ${protractorWords(tilt)}, or an angle block`
  }
}

/** What a division of the indicator is worth over a round length of the face. */
function overFace({ layout, units }: HeadDesign): string {
  const [step, division] = units === 'mm' ? [10, 0.01] : [12.7, 0.0254]
  const travel = Math.max(step, step * Math.floor((2 * layout.corner) / step))
  const angle = certain(indicatorAngle(division, travel)).size
  const shown = (value: number) => formatLength(value, units)
  return `indicator over the face: ${shown(division)} over ${shown(travel)} is ${formatNumber(inMinutes(angle), 1)}'`
}

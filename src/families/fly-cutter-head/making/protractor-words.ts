import { protractorReading, vernierLeastCount } from '../../../mechanics/measuring/protractor.ts'
import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { certain } from '../engineering/certain.ts'

const inMinutes = (angle: number): number => (angle * 180 * 60) / Math.PI

/** A bevel protractor with whole degrees and twelve divisions on its vernier: common practice, no source. rad */
const leastCount = vernierLeastCount(Math.PI / 180, 12)

/** What a bevel protractor is set to for an angle, and how near that is: `set to 7°20', good to 5'`. */
export function protractorWords(angle: number): string {
  const { reading, error } = certain(protractorReading(angle, leastCount))
  return `set to ${formatAngle(reading, { minutes: true })}, good to ${formatNumber(Math.ceil(inMinutes(error) - 1e-6), 0)}'`
}

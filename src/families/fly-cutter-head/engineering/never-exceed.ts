import { type NeverExceedSpeed, neverExceed, type SpeedLimitName } from '../../../mechanics/speed/never-exceed.ts'
import type { HeadDesign } from '../design.ts'
import { balanceOf } from './balance.ts'
import { certain } from './certain.ts'
import { clampingOf } from './clamping.ts'
import { jointSpeedLimit } from './fit.ts'

/** rad/s in a turn a minute. */
const turn = (2 * Math.PI) / 60

/**
 * The speed never to be exceeded, of a design that holds together, and every limit it comes from. A safety limit goes down
 * to the next whole turn a minute, so that stamp, sheets and report say the same.
 */
export const neverExceedOf = (design: HeadDesign): NeverExceedSpeed =>
  design.once('never exceed', () => {
    const { running } = design.parameters.settings
    const { speeds } = design.parameters.machine
    const found = certain(
      neverExceed({
        bitHold: clampingOf(design).held?.hold.speedLimit,
        joint: jointSpeedLimit(design),
        unbalanceForce: balanceOf(design).speedLimit,
        spindleMaximum: Array.isArray(speeds) ? Math.max(...speeds) : speeds.fastest,
        swing: design.swing,
        tipSpeed: running['tip-speed'],
        proofRun: running['proof-run'],
        rules: { share: running['never-exceed-share'], proofShare: running['proof-share'] },
      }),
    )
    return { ...found, notAbove: Math.floor(found.notAbove / turn + 1e-9) * turn }
  })

/** What each limit is called on sheets and in reports. */
export const limitNames: Readonly<Record<SpeedLimitName, string>> = {
  'bit-hold': 'hold on the bit',
  joint: 'joint of head and arbor',
  'unbalance-force': 'unbalance force',
  'spindle-maximum': 'fastest speed of the spindle',
  'tip-speed': 'tip speed',
  'proof-run': 'proof run',
}

import type { FindingLever } from '../../../checks/finding.ts'

/** Brings the tip nearer to the axis. A file gives overhang or swing: the other one is passed over. */
export const shorterReach: readonly FindingLever[] = [
  { path: 'bit.overhang', turn: 'down' },
  { path: 'bit.swing', turn: 'down' },
]

/** Takes force off the tip. */
export const lighterCut: readonly FindingLever[] = [
  { path: 'work.feed-per-turn', turn: 'down' },
  { path: 'work.depth-of-cut', turn: 'down' },
]

export const slowerCut: readonly FindingLever[] = [{ path: 'work.cutting-speed', turn: 'down' }]

/** More force on the bit. */
export const tighterScrews: readonly FindingLever[] = [
  { path: 'screws.tightening-torque', turn: 'up' },
  { path: 'screws.count', turn: 'up' },
]

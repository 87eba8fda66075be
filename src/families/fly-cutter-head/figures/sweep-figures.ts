/** What a sweep of a fly-cutter head shows unless told otherwise: one figure for each thing that is traded off. */
export const headSweepFigures: readonly string[] = [
  'swing',
  'wall.slot-bore',
  'fit.capacity.torque',
  'clamp.prying',
  'speed.advised',
  'speed.never-exceed',
  'balance.unbalance',
]

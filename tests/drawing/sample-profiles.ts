import type { Profile } from '../../src/drawing/profiles.ts'

const turn = Math.PI / 2

/** A slot with a round end, a bore through, and a plate outline, on two planes. */
export const sampleProfiles: readonly Profile[] = [
  {
    feature: 'slot',
    depth: 12.7,
    origin: [0, 0],
    loops: [
      [
        { kind: 'line', from: [0, -6], to: [40, -6] },
        { kind: 'arc', center: [40, 0], radius: 6, start: -turn, end: turn },
        // The other way round than the rest: edges may run in either sense.
        { kind: 'line', from: [0, 6], to: [40, 6] },
        { kind: 'line', from: [0, 6], to: [0, -6] },
      ],
    ],
  },
  { feature: 'fit bore', origin: [100, 0], loops: [[{ kind: 'circle', center: [0, 0], radius: 12.5 }]] },
]

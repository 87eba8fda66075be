import { worldFrame } from '../../src/geometry/frame.ts'
import type { Profile, SetUp } from '../../src/profiles/profile.ts'

const turn = Math.PI / 2

export const slot: Profile = {
  name: 'slot',
  depth: 12.7,
  outlines: [
    [
      { kind: 'line', from: [0, -6], to: [40, -6] },
      { kind: 'arc', centre: [40, 0], radius: 6, start: -turn, end: turn },
      // The other way round than the rest: edges may run in either sense.
      { kind: 'line', from: [0, 6], to: [40, 6] },
      { kind: 'line', from: [0, 6], to: [0, -6] },
    ],
  ],
}
export const bore: Profile = { name: 'fit bore', outlines: [[{ kind: 'circle', centre: [0, 0], radius: 12.5 }]] }

export const setUp = (name: string, ...profiles: Profile[]): SetUp => ({
  name,
  zero: 'corner; X along the slot',
  plane: worldFrame,
  profiles,
})

/** A slot with a round end, and a bore through, on two planes. */
export const sampleProfiles: readonly SetUp[] = [setUp('slot side', slot), setUp('bore side', bore)]

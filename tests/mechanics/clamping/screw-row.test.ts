import { expect, it } from 'vitest'
import { type ScrewRowInput, screwRow } from '../../../src/mechanics/clamping/screw-row.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: ScrewRowInput = {
  xs: [10, -14],
  majorDiameter: 6,
  pointDiameter: 4,
  keySize: 3,
  tapDrill: 5,
  wall: { outer: 22, inner: -22 },
  screwHeight: 4.4,
  stepDepth: 10.5,
}

it('two M6 screws 24 apart stand 4 diameters from each other and 2 from the end of the wall', () => {
  const row = workedOut(screwRow(input))
  expect(row).toMatchObject({ countOnBit: 2, spacing: 24, spacingDiameters: 4, fromEnd: 12, fromEndDiameters: 2 })
  expect(screwRow({ ...input, xs: [-14, 10] })).toMatchObject({ value: { spacing: 24, fromEnd: 12 } })
})

it('of an uneven row the closest pair counts', () => {
  expect(workedOut(screwRow({ ...input, xs: [-15, 10, 0] })).spacing).toBe(10)
})

it('a screw whose point overlaps the end of the bit does not count', () => {
  expect(workedOut(screwRow({ ...input, xs: [10, -20, -20.1, 21] })).onBit).toEqual([true, true, false, false])
})

it('one screw has no neighbour, and none no place', () => {
  expect(workedOut(screwRow({ ...input, xs: [10] })).spacing).toBeUndefined()
  expect(workedOut(screwRow({ ...input, xs: [] }))).toMatchObject({ countOnBit: 0, fromEnd: undefined })
})

it('the floor of the step must lie lower than half the key over its corners and half the drill', () => {
  // Key of 3: 3/√3 = 1.732; drill 5: 2.5.
  expect(workedOut(screwRow(input)).reached).toBe(true)
  expect(workedOut(screwRow(input)).keyNeeds).toBeCloseTo(1.732, 3)
  expect(workedOut(screwRow({ ...input, stepDepth: 6.8 })).reached).toBe(false)
  expect(workedOut(screwRow({ ...input, tapDrill: 1, stepDepth: 6.1 })).reached).toBe(false)
  expect(workedOut(screwRow({ ...input, tapDrill: 1, stepDepth: 6.2 })).reached).toBe(true)
})

it('a wall of no length is refused', () => {
  expect(problemsOf(screwRow({ ...input, wall: { outer: 0, inner: 0 } }))).toEqual([['out-of-range', 'wall.outer']])
})

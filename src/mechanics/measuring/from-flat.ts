import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/**
 * From an outside flat to the wall of a slot that runs along it, mm, measured by micrometer from the flat to the far side of a pin in the slot
 * that is pressed against the near wall: the reading less the pin. Problems: a pin that is not above 0, a reading that is no more than the pin.
 */
export function flatToWall({
  reading,
  pin,
}: {
  readonly reading: number
  readonly pin: number
}): Result<Measured<'reading' | 'pin'>> {
  const faults = new InputFaults()
  if (faults.keeps('pin', pin, 'length', { above: 0 })) faults.keeps('reading', reading, 'length', { above: pin })
  return faults.result(() => ({ size: reading - pin, slopes: { reading: 1, pin: -1 } }))
}

/**
 * How far a slot's middle lies from midway between two parallel flats, mm, positive towards the second: each wall is measured from the flat on
 * its own side, and half of the difference is left. The size across the flats does not come in. Problems: distances that are not above 0.
 */
export function slotOffCentre({
  first,
  second,
}: {
  readonly first: number
  readonly second: number
}): Result<Measured<'first' | 'second'>> {
  const faults = new InputFaults()
  faults.keeps('first', first, 'length', { above: 0 })
  faults.keeps('second', second, 'length', { above: 0 })
  return faults.result(() => ({ size: (first - second) / 2, slopes: { first: 0.5, second: -0.5 } }))
}

/**
 * From an outside flat to the axis of a bore, mm: the metal between, by a micrometer with a round anvil or over a pin, and half of the bore. Problems: a
 * wall or a bore that is not above 0.
 */
export function flatToAxis({
  wall,
  bore,
}: {
  readonly wall: number
  readonly bore: number
}): Result<Measured<'wall' | 'bore'>> {
  const faults = new InputFaults()
  faults.keeps('wall', wall, 'length', { above: 0 })
  faults.keeps('bore', bore, 'length', { above: 0 })
  return faults.result(() => ({ size: wall + bore / 2, slopes: { wall: 1, bore: 0.5 } }))
}

/**
 * How much too thick a wall beside a bore reads when the anvil is flat and not round, mm: the anvil's edges touch, and its middle stands off by
 * R − √(R² − (b/2)²). `anvil`: width of the anvil across the bore, mm, 0 or more. Problems: a bore that is not above 0, an anvil wider than the bore.
 */
export function flatAnvilError(bore: number, anvil: number): Result<number> {
  const faults = new InputFaults()
  if (faults.keeps('bore', bore, 'length', { above: 0 })) faults.keeps('anvil', anvil, 'length', { min: 0, max: bore })
  return faults.result(() => bore / 2 - Math.sqrt((bore / 2) ** 2 - (anvil / 2) ** 2))
}

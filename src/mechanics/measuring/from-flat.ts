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

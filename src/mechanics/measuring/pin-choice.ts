import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import type { Units } from '../../quantity/kind.ts'
import { InputFaults } from '../fit/input-faults.ts'

export interface PinChoice {
  /** Diameters that there are, mm, in any order. */
  readonly pins: readonly number[]
  /** The diameter that would touch best, mm. */
  readonly ideal: number
  /** A pin must be thicker than `above` and thinner than `below` to touch at all, mm. */
  readonly above: number
  readonly below: number
  /** How lengths are written in a problem. */
  readonly units: Units
}

/**
 * The pin nearest to the ideal one among those that touch; of two as near the thicker, which bends less. Problems (`not-in-table`): none
 * that touches, with the nearest to the range that there is. Throws RangeError on a range without room and on an ideal outside it.
 */
export function choosePin({ pins, ideal, above, below, units }: PinChoice): Result<number> {
  if (!(above < ideal && ideal < below))
    throw new RangeError(`an ideal pin of ${ideal} mm between ${above} and ${below}`)
  const off = (pin: number) => Math.abs(pin - ideal)
  const nearest = (some: readonly number[]) => some.toSorted((a, b) => off(a) - off(b) || b - a)[0]
  const chosen = nearest(pins.filter((pin) => pin > above && pin < below))
  if (chosen !== undefined) return { ok: true, value: chosen }
  const faults = new InputFaults()
  const near = nearest(pins)
  const write = (size: number) => formatLength(size, units)
  faults.add(
    'pins',
    'not-in-table',
    near === undefined ? 'no pins' : `nearest pin ${write(near)}`,
    `a pin above ${write(above)} and below ${write(below)}`,
    `turn or grind a pin to about ${write(ideal)} and measure it`,
  )
  return { ok: false, problems: faults.problems }
}

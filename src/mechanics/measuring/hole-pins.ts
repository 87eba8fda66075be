import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import type { Measured } from './measured.ts'

/** A hole and the pin in it, mm: the pin may move by the difference. */
export interface PinInHole {
  readonly pin: number
  readonly hole: number
}

/** Each side that a pin may lie from the middle of its hole, mm. */
const play = ({ pin, hole }: PinInHole): number => (hole - pin) / 2

/**
 * From an edge to the middle of a hole, mm, measured to the far or the near side of a pin in it: reading ∓ half of the pin. `play` adds to the
 * errors: the pin lies up to that far from the middle. Problems: a pin that is not above 0 or does not go into the hole, a far reading below half of the pin.
 */
export function edgeToHole({
  reading,
  side,
  pin,
  hole,
}: PinInHole & { readonly reading: number; readonly side: 'far' | 'near' }): Result<
  Measured<'reading' | 'pin' | 'play'> & { readonly play: number }
> {
  const faults = new InputFaults()
  if (faults.keeps('pin', pin, 'length', { above: 0, max: hole })) {
    faults.keeps('reading', reading, 'length', side === 'far' ? { above: pin / 2 } : { min: 0 })
  }
  const sign = side === 'far' ? -1 : 1
  return faults.result(() => ({
    size: reading + (sign * pin) / 2,
    slopes: { reading: 1, pin: sign / 2, play: 1 },
    play: play({ pin, hole }),
  }))
}

/**
 * From the middle of one hole to that of another, mm, measured over pins in both: reading − (d₁ + d₂)/2. `play` is that of both together. Problems:
 * pins that are not above 0 or do not go into their holes, a reading at which the holes would meet.
 */
export function betweenHoles({
  reading,
  first,
  second,
}: {
  readonly reading: number
  readonly first: PinInHole
  readonly second: PinInHole
}): Result<Measured<'reading' | 'firstPin' | 'secondPin' | 'play'> & { readonly play: number }> {
  const faults = new InputFaults()
  const whole = [
    faults.keeps('first.pin', first.pin, 'length', { above: 0, max: first.hole }),
    faults.keeps('second.pin', second.pin, 'length', { above: 0, max: second.hole }),
  ].every((kept) => kept)
  const pins = (first.pin + second.pin) / 2
  if (whole) faults.keeps('reading', reading, 'length', { above: pins + (first.hole + second.hole) / 2 })
  return faults.result(() => ({
    size: reading - pins,
    slopes: { reading: 1, firstPin: -0.5, secondPin: -0.5, play: 1 },
    play: play(first) + play(second),
  }))
}

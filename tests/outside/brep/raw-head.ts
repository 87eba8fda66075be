import './kernels.ts'
import { parse } from 'yaml'
import { rawArbor } from './raw-arbor.ts'
import { rawBit, rawScrews, rawTip } from './raw-bit.ts'
import { rawBody } from './raw-body.ts'
import { figuresOf } from './raw-figures.ts'
import type { RawSet } from './raw-set.ts'

/**
 * The independent judge: the head, its arbor, bit and screws as exact B-rep solids in the body frame (origin where the
 * spindle axis meets the mounting face, Z up into the spindle, X to the bit side, mm), built from the words of the
 * parameter file alone.
 */
export function rawHead(text: string) {
  const figures = figuresOf(parse(text) as RawSet)
  return {
    figures,
    body: () => rawBody(figures),
    arbor: () => rawArbor(figures),
    bit: () => rawBit(figures),
    screws: () => rawScrews(figures),
    tip: () => rawTip(figures),
  }
}

import { formatLength } from '../quantity/format-length.ts'
import type { Units } from '../quantity/kind.ts'
import type { RowFault } from './row-fault.ts'
import { allowedTaper, parseTaper } from './taper.ts'

/** One turned piece of a shank: cylinder where `from` and `to` are equal, cone otherwise; lengths in mm. */
export interface ShankPiece {
  readonly length: number
  /** Diameter at the lower end, nearest the gauge plane. */
  readonly from: number
  /** Diameter at the upper end; never above `from`, or the shank could not enter the spindle. */
  readonly to: number
}

/** A piece as the table writes it; lengths in mm already. */
export interface WrittenPiece {
  readonly from: number
  readonly to?: number | undefined
  readonly length?: number | undefined
  readonly taper?: string | undefined
}

export type PieceRead =
  | { readonly ok: true; readonly piece: ShankPiece; readonly taper: number }
  | { readonly ok: false; readonly fault: RowFault }

/** Longest piece of a shank, mm. */
export const longestPiece = 1000

/** How far printed diameters, rounded to a thou, may lie from printed length times printed taper: 0.001 in. */
const printedRounding = 0.0254

/**
 * Works out what a piece leaves open. Two of `to`, `length` and `taper` make a cone, `length` alone a cylinder; where
 * all three are given they must agree within 0.001 in on the diameter. `taper` is the change of diameter per length,
 * as stated where it is, 0 for a cylinder.
 */
export function readPiece(written: WrittenPiece, path: RowFault['path'], units: Units): PieceRead {
  const write = (length: number) => formatLength(length, units)
  const refuse = (fault: Omit<RowFault, 'path'>, key?: string): PieceRead => ({
    ok: false,
    fault: { path: key === undefined ? path : [...path, key], ...fault },
  })
  const { from, to, length } = written
  const taper = written.taper === undefined ? undefined : parseTaper(written.taper)
  if (written.taper !== undefined && taper === undefined) {
    return refuse({ code: 'not-a-quantity', allowed: allowedTaper }, 'taper')
  }
  if (to !== undefined && to > from) {
    const allowed = `no more than the lower diameter ${write(from)}`
    return refuse({ code: 'out-of-range', allowed }, 'to')
  }
  if (to !== undefined && length !== undefined) {
    const byTaper = taper === undefined ? to : from - taper * length
    if (Math.abs(byTaper - to) > printedRounding) {
      return refuse({ code: 'contradiction', allowed: `${write(byTaper)}, by the length and the taper` }, 'to')
    }
    return { ok: true, piece: { length, from, to }, taper: taper ?? (from - to) / length }
  }
  if (to !== undefined && taper !== undefined) {
    if (to === from) return refuse({ code: 'contradiction', allowed: `below ${write(from)}` }, 'to')
    const length = (from - to) / taper
    if (length > longestPiece) {
      return refuse({ code: 'out-of-range', allowed: `a taper that ends within ${write(longestPiece)}` }, 'taper')
    }
    return { ok: true, piece: { length, from, to }, taper }
  }
  if (length !== undefined && taper !== undefined) {
    const end = from - taper * length
    if (end > 0) return { ok: true, piece: { length, from, to: end }, taper }
    return refuse(
      { code: 'out-of-range', allowed: `below ${write(from / taper)}, where it comes to a point` },
      'length',
    )
  }
  if (length !== undefined) return { ok: true, piece: { length, from, to: from }, taper: 0 }
  return refuse({
    code: 'missing-key',
    found: taper === undefined ? 'a piece without length' : 'a taper without length',
    allowed: 'length (a cylinder), or two of to, length and taper (a cone)',
  })
}

/** Where a profile gets thicker upwards between two pieces; a step down, as to a pilot, is fine. */
export function growingFaults(
  pieces: readonly ShankPiece[],
  path: RowFault['path'],
  units: Units,
): readonly RowFault[] {
  const faults: RowFault[] = []
  for (const [at, piece] of pieces.entries()) {
    const below = pieces[at - 1]
    if (below === undefined || piece.from <= below.to) continue
    faults.push({
      code: 'contradiction',
      path: [...path, at, 'from'],
      allowed: `no more than the upper diameter of the piece below, ${formatLength(below.to, units)}`,
    })
  }
  return faults
}

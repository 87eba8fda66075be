import { readFileSync } from 'node:fs'
import { degrees, mm } from './raw-quantity.ts'

interface Piece {
  readonly from: string
  readonly to?: string
  readonly length?: string
  readonly taper?: string
}

const rowsOf = (file: string) =>
  (
    JSON.parse(readFileSync(new URL(`../../../seeds/${file}`, import.meta.url), 'utf8')) as {
      rows: readonly { name?: string; threads?: readonly string[]; lengths?: readonly string[]; profile?: Piece[] }[]
    }
  ).rows

/** Major diameter and tap drill, mm: what is written on the drill chart, not read from the product's tables. */
export const threads: Readonly<Record<string, { readonly major: number; readonly tap: number }>> = {
  M3: { major: 3, tap: 2.5 },
  M4: { major: 4, tap: 3.3 },
  M5: { major: 5, tap: 4.2 },
  M6: { major: 6, tap: 5 },
  M8: { major: 8, tap: 6.8 },
  '1/4-28': { major: 6.35, tap: 0.213 * 25.4 },
}

/** Standard lengths of a set screw, mm, shortest first. */
export function screwLengths(thread: string): readonly number[] {
  const row = rowsOf('set-screws.json').find((r) => r.threads?.includes(thread))
  if (row?.lengths === undefined) throw new Error(`no set screw ${thread}`)
  return row.lengths.map((l) => mm(l, 'mm')).sort((a, b) => a - b)
}

/** Outline of a shank as pairs of radius and height above its gauge plane, mm, upwards. */
export function shankOutline(name: string): readonly (readonly [number, number])[] {
  const row = rowsOf('shanks.json').find((r) => r.name === name)
  if (row?.profile === undefined) throw new Error(`no shank ${name}`)
  let height = 0
  return row.profile.flatMap((piece) => {
    const bottom = mm(piece.from, 'mm')
    const start = height
    const { top, length } = piece.length === undefined ? steep(piece, bottom) : slim(piece, bottom)
    height += length
    return [
      [bottom / 2, start],
      [top / 2, height],
    ] as const
  })
}

/** A piece whose length is written: a cylinder, a cone to a written end, or one of 7:24. */
function slim(piece: Piece, bottom: number) {
  const length = mm(piece.length!, 'mm')
  if (piece.to !== undefined) return { top: mm(piece.to, 'mm'), length }
  if (piece.taper === undefined) return { top: bottom, length }
  const [over, under] = piece.taper.split(':').map(Number) as [number, number]
  return { top: bottom - (length * over) / under, length }
}

/** A cone from one written end to the other under a written included angle. */
function steep(piece: Piece, bottom: number) {
  const top = mm(piece.to!, 'mm')
  return { top, length: (bottom - top) / 2 / Math.tan((degrees(piece.taper!) * Math.PI) / 360) }
}

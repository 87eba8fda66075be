import type { RawLength } from './raw-set.ts'

const millimetres: Readonly<Record<string, number>> = { mm: 1, um: 0.001, in: 25.4, thou: 0.0254 }

/** Millimetres of `46`, `1-3/4`, `7/8 in`, `15 thou`. The judge's own small reading, for the judge's own sets. */
export function mm(raw: RawLength, units: 'mm' | 'in'): number {
  if (typeof raw === 'number') return raw * millimetres[units]!
  const [, whole, over, under, unit] =
    /^(?:(-?[\d.]+)(?:-(?=\d+\/)|(?![\d/])))?(?:(\d+)\/(\d+))?\s*([a-z]*)$/.exec(raw) ?? []
  const perUnit = millimetres[unit || units]
  if (perUnit === undefined || (whole === undefined && over === undefined)) throw new Error(`no length: ${raw}`)
  return (Number(whole ?? 0) + (over === undefined ? 0 : Number(over) / Number(under))) * perUnit
}

/** Degrees of `7 deg`, `9 deg 30 min`, `-5 deg`. */
export function degrees(raw: string): number {
  const [, whole, minutes] = /^(-?[\d.]+) deg(?: ([\d.]+) min)?$/.exec(raw) ?? []
  if (whole === undefined) throw new Error(`no angle: ${raw}`)
  const size = Math.abs(Number(whole)) + Number(minutes ?? 0) / 60
  return whole.startsWith('-') ? -size : size
}

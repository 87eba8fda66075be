/** Round numbers, about so many, that lie within a range; ends included. Steps of 1, 2 or 5 times a power of ten. */
export function ticksIn(low: number, high: number, about: number): number[] {
  if (!(high > low)) return [low]
  const raw = (high - low) / about
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= raw * (1 - 1e-9)) ?? 10)
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, at) => Number(((first + at) * step).toPrecision(12)))
}

type Point = readonly [number, number]

/** A DIMENSION as the file has it. */
export interface DxfDimensionRead {
  /** Name of the size, from the data of the application. */
  readonly name: string
  readonly marker: string
  readonly type: number
  readonly alongX: boolean
  readonly text: string
  /** In the file's unit, or rad. */
  readonly value: number
  /** Degrees. */
  readonly angle: number
  readonly block: string
  point(code: number): Point
}

/** Every DIMENSION of a DXF file by its own group codes, read here without any library. */
export function dimensionsIn(text: string): DxfDimensionRead[] {
  const rows = text.split('\n')
  const pairs = Array.from(
    { length: Math.floor(rows.length / 2) },
    (_, i) => [Number(rows[2 * i]), rows[2 * i + 1]!] as const,
  )
  const starts = pairs.flatMap(([code, value], i) => (code === 0 && value === 'DIMENSION' ? [i] : []))
  return starts.map((start) => {
    const end = pairs.findIndex(([code], i) => i > start && code === 0)
    const codes = new Map(pairs.slice(start, end))
    const number = (code: number) => Number(codes.get(code))
    const point = (code: number): Point => [number(code), number(code + 10)]
    const marker = pairs.slice(start, end).filter(([code]) => code === 100)[2]![1]
    return {
      name: codes.get(1000)!,
      marker,
      type: number(70) & 7,
      alongX: (number(70) & 64) !== 0,
      text: codes.get(1)!,
      value: number(42),
      angle: number(50),
      point,
      block: codes.get(2)!,
    }
  })
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** What its own points measure, in the file's unit or rad. */
export function measured({ type, alongX, angle, point }: DxfDimensionRead): number {
  if (type === 0) {
    const [a, b, t] = [point(13), point(14), (angle * Math.PI) / 180]
    return Math.abs((b[0] - a[0]) * Math.cos(t) + (b[1] - a[1]) * Math.sin(t))
  }
  if (type === 1) return distance(point(13), point(14))
  if (type === 3 || type === 4) return distance(point(10), point(15))
  if (type === 6) return alongX ? point(13)[0] - point(10)[0] : point(13)[1] - point(10)[1]
  // Two lines: 13 to 14, and 15 to 10.
  const direction = (a: Point, b: Point) => Math.atan2(b[1] - a[1], b[0] - a[0])
  return (direction(point(15), point(10)) - direction(point(13), point(14)) + 2 * Math.PI) % (2 * Math.PI)
}

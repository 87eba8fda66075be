/** Corner points of a mesh, three numbers each, in which points nearer than the weld distance are one. */
export interface Welder {
  /** Index of the point at or within the weld distance of (x, y, z): a known one, or a new one. */
  index(x: number, y: number, z: number): number
  /** Coordinates so far. */
  readonly coordinates: number[]
}

/**
 * Makes a welder. Points are kept in a grid of cells four weld distances wide; a neighbouring cell is looked into only
 * from within a weld distance of it.
 */
export function welder(weld: number): Welder {
  const coordinates: number[] = []
  const first = new Map<number, number>()
  const next: number[] = []
  const width = 4 * weld
  const near = weld * weld
  const key = (a: number, b: number, c: number) => (a * 73856093) ^ (b * 19349663) ^ (c * 83492791)
  const inCell = (k: number, x: number, y: number, z: number): number => {
    for (let i = first.get(k) ?? -1; i >= 0; i = next[i]!) {
      const dx = coordinates[3 * i]! - x
      const dy = coordinates[3 * i + 1]! - y
      const dz = coordinates[3 * i + 2]! - z
      if (dx * dx + dy * dy + dz * dz < near) return i
    }
    return -1
  }
  return {
    coordinates,
    index(x, y, z) {
      const a = Math.floor(x / width)
      const b = Math.floor(y / width)
      const c = Math.floor(z / width)
      const here = key(a, b, c)
      const found = inCell(here, x, y, z)
      if (found >= 0) return found
      const [a0, a1] = [Math.floor((x - weld) / width), Math.floor((x + weld) / width)]
      const [b0, b1] = [Math.floor((y - weld) / width), Math.floor((y + weld) / width)]
      const [c0, c1] = [Math.floor((z - weld) / width), Math.floor((z + weld) / width)]
      for (let i = a0; i <= a1; i++) {
        for (let j = b0; j <= b1; j++) {
          for (let k = c0; k <= c1; k++) {
            if (i === a && j === b && k === c) continue
            const beside = inCell(key(i, j, k), x, y, z)
            if (beside >= 0) return beside
          }
        }
      }
      const made = coordinates.length / 3
      coordinates.push(x, y, z)
      next.push(first.get(here) ?? -1)
      first.set(here, made)
      return made
    },
  }
}

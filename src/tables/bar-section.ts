/** The cross-section of bar stock: what follows from shape and size by geometry, so that no table stores it. */

export type BarShape = 'hexagon' | 'round' | 'square'

/** `size` is across flats (hexagon), diameter (round) or side (square), mm. */
export interface BarSection {
  readonly shape: BarShape
  readonly size: number
}

/** Diameter of the circle round the bar, mm: across the corners, which is what must turn clear. */
export function acrossCorners({ shape, size }: BarSection): number {
  if (shape === 'hexagon') return (2 * size) / Math.sqrt(3)
  if (shape === 'square') return size * Math.SQRT2
  return size
}

/** Area of the section, mm². */
export function sectionArea({ shape, size }: BarSection): number {
  if (shape === 'hexagon') return (Math.sqrt(3) / 2) * size ** 2
  if (shape === 'square') return size ** 2
  return (Math.PI / 4) * size ** 2
}

/** Mass of a metre of bar, kg/m, for a density in kg/m³. */
export function massPerMetre(section: BarSection, density: number): number {
  return sectionArea(section) * 1e-6 * density
}

import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** Radius of the hole in the metal, mm: of the tap drill where the head is screwed on. */
export const boreRadius = (bore: Parameters['bore'], { spigotThread }: Pick<Layout, 'spigotThread'>): number =>
  (spigotThread?.tapDrill ?? bore.diameter) / 2

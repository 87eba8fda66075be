import { makeBox, type Shape3D } from 'replicad'
import type { Figures } from './raw-figures.ts'
import { shankOutline } from './raw-tables.ts'
import { revolved } from './revolved.ts'

/** The arbor as one turned outline from the end of the spigot upwards, and the vent flat if it has one. */
export function rawArbor({ arbor, bore }: Figures): Shape3D {
  const r = bore.radius
  const spigot: [number, number][] = [
    [r - arbor.leadIn, -arbor.spigot],
    [r, -arbor.spigot + arbor.leadIn],
  ]
  const above: (readonly [number, number])[] =
    arbor.shank === undefined
      ? [[r, arbor.above]]
      : [
          [r, 0],
          [arbor.shoulderRadius, 0],
          [arbor.shoulderRadius, arbor.shoulder],
          ...shankOutline(arbor.shank).map(([radius, z]) => [radius, z + arbor.shoulder] as const),
        ]
  const outside = withoutRepeats(arbor.leadIn > 0 ? [...spigot, ...above] : [spigot[0]!, ...above])
  const top = outside.at(-1)![1]
  const turned = revolved([[arbor.hole, -arbor.spigot], ...outside, [arbor.hole, top]])
  if (bore.vent !== 'flat') return turned
  return turned.cut(makeBox([r - bore.ventSize, -2 * r, -arbor.spigot - 1], [2 * r, 2 * r, 0]))
}

/** A polygon cannot have an edge of no length, as where one piece of a shank goes on as wide as the last ended. */
const withoutRepeats = (outline: readonly (readonly [number, number])[]) =>
  outline.filter(([r, z], i) => {
    const before = outline[i - 1]
    return before === undefined || Math.hypot(r - before[0], z - before[1]) > 1e-9
  })

import { makeBox, type Shape3D } from 'replicad'
import { revolved } from '../brep/revolved.ts'
import { SizeFault } from './rebuilt-body.ts'
import { SizesRead, type WrittenSize } from './sizes-read.ts'

type Outline = readonly (readonly [radius: number, z: number])[]

/** What makes the metal of an arbor, mm: its outline from the end of the spigot upwards, z from the seat. */
export interface RebuiltArbor {
  readonly outline: Outline
  /** Radius of the hole through it, and how deep the flat on the spigot is; 0: none. */
  readonly hole: number
  readonly flat: number
  readonly spigotRadius: number
}

/** The arbor as the dimensions of its drawing alone give it. Throws `SizeFault` where one is missing or left over. */
export function rebuiltArbor(written: readonly WrittenSize[], unit: 'mm' | 'in'): RebuiltArbor {
  const sizes = new SizesRead(written, unit)
  const spigotRadius = sizes.value('spigot.diameter') / 2
  const end = -sizes.value('spigot.length')
  const lead = sizes.valueOr0('spigot.lead-in')
  const spigot: Outline = [
    [spigotRadius - lead, end],
    [spigotRadius, end + lead],
  ]
  const made: RebuiltArbor = {
    outline: [...spigot, ...above(sizes, spigotRadius)],
    hole: sizes.valueOr0('arbor-bore.diameter') / 2,
    flat: sizes.valueOr0('vent-flat.depth'),
    spigotRadius,
  }
  sizes.done()
  return made
}

/** Above the seat: the plain bar goes on, or shoulder and shank, piece by piece. */
function above(sizes: SizesRead, spigotRadius: number): Outline {
  if (sizes.has('spigot.length-above')) return [[spigotRadius, sizes.value('spigot.length-above')]]
  const shoulder = sizes.value('shoulder.diameter') / 2
  let z = sizes.value('shoulder.thickness')
  const outline: [number, number][] = [
    [spigotRadius, 0],
    [shoulder, 0],
    [shoulder, z],
  ]
  for (let i = 1; sizes.has(`shank.length${nth(i)}`); i++) {
    const top = z + sizes.value(`shank.length${nth(i)}`)
    outline.push(...shankPiece(sizes, i).map((radius, k) => [radius, k === 0 ? z : top] as [number, number]))
    z = top
  }
  if (outline.length < 5) throw new SizeFault('no shank')
  return outline
}

/** Radii at the ends of a piece. A taper runs down to its own small end, or to the cylinder that carries on from it. */
function shankPiece(sizes: SizesRead, i: number): readonly [number, number] {
  const diameter = (size: string, k: number) => sizes.value(`shank.${size}${nth(k)}`) / 2
  if (!sizes.has(`shank.gauge-diameter${nth(i)}`)) return [diameter('diameter', i), diameter('diameter', i)]
  const hasSmallEnd = sizes.has(`shank.small-diameter${nth(i)}`)
  return [diameter('gauge-diameter', i), hasSmallEnd ? diameter('small-diameter', i) : diameter('diameter', i + 1)]
}

const nth = (i: number) => (i === 1 ? '' : `-${i}`)

/** The B-rep of it, in the body frame. */
export function arborShape({ outline, hole, flat, spigotRadius: r }: RebuiltArbor): Shape3D {
  const corners = outline.filter(
    ([x, z], i) => i === 0 || Math.hypot(x - outline[i - 1]![0], z - outline[i - 1]![1]) > 1e-9,
  )
  const [end, top] = [corners[0]![1], corners.at(-1)![1]]
  const turned = revolved([[hole, end], ...corners, [hole, top]])
  return flat === 0 ? turned : turned.cut(makeBox([r - flat, -2 * r, end - 1], [2 * r, 2 * r, 0]))
}

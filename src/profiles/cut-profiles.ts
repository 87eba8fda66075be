import type { Cell } from '../geometry/cell.ts'
import type { Frame } from '../geometry/frame.ts'
import type { Cone, Cylinder, Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { along, dot, subtract } from '../geometry/vector.ts'
import type { Feature } from '../part/feature.ts'
import { formatNumber } from '../quantity/format-number.ts'
import { outlinesOf } from './outline.ts'
import type { Profile } from './profile.ts'
import { type Blank, blankAbove, runOutSides } from './run-out.ts'

/**
 * Profiles of a cut whose walls stand along the z of the set-up's plane, from its own surfaces: one for all that goes to
 * the same depth, and one for each chamfer, named after its face. Depth is that of the floor; of a drilled bottom that of
 * the full diameter, with a note of the point's angle. A cut that the part model leaves open needs the `blank`, past
 * which it runs out. None for a cut that meets no metal there. Throws RangeError on one that no cutter along z could
 * make.
 */
export function cutProfiles(feature: Feature, plane: Frame, blank?: Blank): Profile[] {
  const shapes = feature.cells.map((cell) => ({ cell, ...shapeOf(feature, cell, plane) }))
  const groups: (typeof shapes)[] = []
  for (const shape of shapes) {
    const like = groups.find((g) => sameCut(g[0]!, shape))
    if (like) like.push(shape)
    else groups.push([shape])
  }
  return groups.flatMap((group) => {
    const { depth, chamfer, note } = group[0]!
    const sides = blank ? runOutSides(blank, plane, depth) : []
    if (blank && sides.length === 0) return []
    // What lies between the plane and a mouth below it is taken out by another cut.
    const mouth = Math.max(0, Math.min(...group.map((g) => g.mouth)))
    const outlines = outlinesOf(
      group.map(({ cell }) => ({ surfaces: [...cell.surfaces, ...sides] })),
      { ...plane, origin: along(plane.origin, plane.z, -mouth) },
    )
    if (outlines.length === 0) return []
    const profile: Profile = {
      name: chamfer ?? feature.id,
      ...(depth !== undefined && { depth }),
      ...(feature.thread && chamfer === undefined && { thread: feature.thread.name }),
      ...(note !== undefined && { notes: [note] }),
      outlines,
    }
    return [profile]
  })
}

/**
 * Profile of a face that is milled down to the plane of the set-up: the outline of the blank there, without run-out. None
 * where the plane misses the blank.
 */
export function facingProfile(feature: Feature, plane: Frame, blank: Pick<Blank, 'cells'>): Profile[] {
  const outlines = outlinesOf(blank.cells, plane)
  if (outlines.length === 0) return []
  return [{ name: feature.id, depth: 0, blankAbove: blankAbove(blank, plane), outlines }]
}

interface Shape {
  /** mm below the plane at which it begins; −∞ where it is open upwards. */
  readonly mouth: number
  readonly depth: number | undefined
  /** Name of the sloping face of a chamfer. */
  readonly chamfer: string | undefined
  readonly note: string | undefined
}

const sameCut = (a: Shape, b: Shape): boolean =>
  a.chamfer === b.chamfer &&
  a.note === b.note &&
  (a.depth === b.depth || (a.depth !== undefined && b.depth !== undefined && Math.abs(a.depth - b.depth) < coincident))

function shapeOf(feature: Feature, { surfaces }: Cell, { origin, z }: Frame): Shape {
  const [floors, mouths]: [number[], number[]] = [[], []]
  const points: Cone[] = []
  const walls: Cylinder[] = []
  for (const s of surfaces) {
    const upright = standing(s, z)
    if (upright === undefined)
      throw new RangeError(`${feature.id}: ${s.name} neither lies square to z nor stands on it`)
    if (s.kind === 'cone') points.push(s)
    else if (s.kind === 'cylinder') walls.push(s)
    else if (upright < 0) floors.push(s.offset - dot(s.normal, origin))
    else if (upright > 0) mouths.push(dot(s.normal, origin) - s.offset)
  }
  const [cone] = points
  const floor = floors.length > 0 ? Math.min(...floors) : undefined
  const mouth = Math.max(-Infinity, ...mouths)
  if (!cone) return { mouth, depth: floor, chamfer: undefined, note: undefined }
  if (walls.length === 0) {
    return { mouth, depth: floor, chamfer: cone.name, note: `${inDegrees(Math.atan(cone.slope))}deg` }
  }
  const full = -dot(subtract(cone.apex, origin), z) - Math.min(...walls.map((w) => w.radius)) / cone.slope
  const note = `point ${inDegrees(2 * Math.atan(cone.slope))}deg`
  return { mouth, depth: floor === undefined ? full : Math.min(floor, full), chamfer: undefined, note }
}

/** 0 for a wall along z; for a plane square to it 1 where the metal it takes lies below it, −1 for a floor. */
function standing(s: Surface, z: Frame['z']): 1 | 0 | -1 | undefined {
  const cosine = dot(s.kind === 'plane' ? s.normal : s.axis, z)
  const parallel = Math.abs(cosine) > 1 - 1e-9
  if (s.kind === 'cone') return cosine > 1 - 1e-9 ? 0 : undefined
  if (s.kind === 'cylinder') return parallel ? 0 : undefined
  if (parallel) return cosine > 0 ? 1 : -1
  return Math.abs(cosine) < 1e-9 ? 0 : undefined
}

const inDegrees = (angle: number): string => formatNumber((angle * 180) / Math.PI, 2, { trim: true })

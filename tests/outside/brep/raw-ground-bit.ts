import { makeBox, type Shape3D } from 'replicad'
import { laidOnFace } from './face-frame.ts'
import { rawTip } from './raw-bit.ts'
import type { Figures } from './raw-figures.ts'

type Direction = readonly [number, number, number]

/**
 * The bit as it leaves the grinder. Three facets pass through the tip and take everything in front of them as far in as
 * they run; the blank behind that is untouched. The corner is sharp: the nose is stoned on afterwards and no metal of
 * the model. `whole`: the blank in the frame of the face.
 */
export function rawGroundBit(figures: Figures, whole: Shape3D): Shape3D {
  const { bit, slot, hand } = figures
  const x = rawTip(figures).x
  const tip: Direction = [x, hand * (slot.ahead - bit.offLeading), slot.depth - bit.height + bit.offUnderside]
  const { rakeAlong, rakeAcross, endEdge, endRelief, workSideEdge, workSideRelief } = bit.facets
  const far = 4 * (bit.length + bit.width + bit.height)
  // Facets are given by x outward along the bit, y in the direction of motion and z towards the work, and the face has z
  // into the metal. Of the three equations y − x·tan − z·tan = 0 and so on, what is above 0 is ground away.
  const groundAway: readonly Direction[] = [
    [-tan(rakeAlong), 1, -tan(rakeAcross)],
    [1, -tan(endRelief), -tan(endEdge)],
    [-tan(workSideEdge), -tan(workSideRelief), 1],
  ]
  const along = (from: number, to: number) => makeBox([from, -far, -far], [to, far, far])
  const behind = x - bit.groundLength
  let ground = whole.clone().intersect(along(behind, x + far))
  for (const [a, b, c] of groundAway) ground = ground.cut(halfSpace(tip, [a, hand * b, -c], far))
  if (x + bit.offEnd - bit.length > behind - 1e-6) return laidOnFace(figures, ground)
  return laidOnFace(figures, whole.clone().intersect(along(-far, behind)).fuse(ground))
}

/** All that lies on the side of a plane to which `normal` points, as far as `far`. */
function halfSpace(at: Direction, [x, y, z]: Direction, far: number): Shape3D {
  const upright = makeBox([-far, -far, 0], [far, far, far])
  const angle = (Math.acos(z / Math.hypot(x, y, z)) * 180) / Math.PI
  // About the line square to the old normal and the new one.
  const turned =
    Math.hypot(x, y) < 1e-12
      ? upright.rotate(angle, [0, 0, 0], [1, 0, 0])
      : upright.rotate(angle, [0, 0, 0], [-y, x, 0])
  return turned.translate([...at])
}

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180)

import type { Shape3D } from 'replicad'
import type { Figures } from './raw-figures.ts'

/** Lays a solid made about the world's axes into the frame of the angled face: x down the slope to the bit side, z in. */
export const laidOnFace = (figures: Pick<Figures, 'angle' | 'slope' | 'depth'>, solid: Shape3D): Shape3D =>
  solid.rotate(figures.angle, [0, 0, 0], [0, 1, 0]).translate([0, 0, -figures.depth])

/** A point or, with `origin` false, a direction of that frame, in the body frame. */
export function inBody(
  figures: Pick<Figures, 'angle' | 'slope' | 'depth'>,
  [x, y, z]: readonly [number, number, number],
): [number, number, number] {
  const [c, s] = [Math.cos(figures.slope), Math.sin(figures.slope)]
  return [x * c + z * s, y, z * c - x * s - figures.depth]
}

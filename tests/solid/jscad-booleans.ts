// The demo head's body by JSCAD's own primitives and booleans: a second road, and what the bench compares with.
import modeling from '@jscad/modeling'

const { primitives, booleans, transforms } = modeling

/** Hexagon 46 across flats, 7° face at 41, slot, step, bore 20 × 24 with chamfer and vent, two M6 tap holes. */
export function jscadBooleanBody() {
  const [h, a] = [41, (7 * Math.PI) / 180]
  const inFace = (g: ReturnType<typeof primitives.cuboid>) => transforms.translate([0, 0, -h], transforms.rotateY(a, g))
  const bar = primitives.cylinder({ radius: 46 / Math.sqrt(3), height: 45, segments: 6, center: [0, 0, -22.5] })
  const rod = (radius: number, height: number, segments: number) => primitives.cylinder({ radius, height, segments })
  const screw = (x: number) =>
    inFace(transforms.translate([x, -6.9, 6], transforms.rotateX(Math.PI / 2, rod(2.5, 9, 28))))
  const first = 46 / Math.sqrt(3) / Math.cos(a) - 14.5
  const chamfer = { startRadius: [10, 10], endRadius: [11, 11], height: 1, segments: 52, center: [0, 0, -0.5] }
  const cuts = booleans.union(
    inFace(primitives.cuboid({ size: [200, 200, 100], center: [0, 0, -50] })),
    inFace(primitives.cuboid({ size: [200, 10.04, 109.5], center: [0, 2.62, -45.25] })),
    inFace(primitives.cuboid({ size: [200, 100, 110.5], center: [0, -61.4, -44.75] })),
    transforms.translate([0, 0, -12], rod(10, 24, 52)),
    primitives.cylinderElliptic(chamfer as Parameters<typeof primitives.cylinderElliptic>[0]),
    transforms.translate([0, 0, -39], rod(1, 30, 16)),
    screw(first),
    screw(first - 24),
  )
  return booleans.subtract(bar, cuts)
}

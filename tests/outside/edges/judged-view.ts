import { cast, type Edge, ProjectionCamera, type Shape3D } from 'replicad'
import { brep } from '../brep/kernels.ts'

type Vec2 = readonly [number, number]
type Vec3 = readonly [number, number, number]

/** One projected edge of the judge: points along it, and its length. */
export interface JudgedEdge {
  readonly points: readonly Vec2[]
  readonly length: number
  /** How far the true curve may stand out from each chord between the points, mm. */
  readonly sagittas: readonly number[]
}

/** What the B-rep kernel draws of a solid: corners, tangent lines and outlines, seen and hidden. */
export interface JudgedView {
  readonly visible: readonly JudgedEdge[]
  readonly smooth: readonly JudgedEdge[]
  readonly hidden: readonly JudgedEdge[]
}

/** Hidden-line projection of a solid with the eye in the direction `eye` and `right` to the right, both unit vectors. */
export function judgedView(shape: Shape3D, eye: Vec3, right: Vec3, spacing: number): JudgedView {
  const camera = new ProjectionCamera([0, 0, 0], [...eye], [...right])
  const algorithm = new brep.HLRBRep_Algo()
  algorithm.Add(shape.wrapped, 0)
  algorithm.Projector(new brep.HLRAlgo_Projector(camera.wrapped))
  algorithm.Update()
  algorithm.Hide()
  const shapes = new brep.HLRBRep_HLRToShape(algorithm)
  const edges = (...compounds: ReturnType<typeof shapes.VCompound>[]) =>
    compounds
      .filter((c) => !c.IsNull())
      .flatMap((c) => cast(c).edges)
      .map((e) => {
        brep.BRepLib.BuildCurves3d(e.wrapped)
        return sampled(e, spacing)
      })
      .filter(({ length }) => length > 1e-5)
  return {
    visible: edges(shapes.VCompound(), shapes.OutLineVCompound()),
    smooth: edges(shapes.Rg1LineVCompound()),
    hidden: edges(shapes.HCompound(), shapes.OutLineHCompound()),
  }
}

function sampled(edge: Edge, spacing: number): JudgedEdge {
  const at = (t: number): Vec2 => {
    const p = edge.pointAt(t)
    return [p.x, p.y]
  }
  const on = (n: number) => Array.from({ length: n + 1 }, (_, i) => at(i / n))
  const { length } = edge
  // An error of the judge's: what it cannot name in the view it draws as 14 chords, up to 1 % short of a full circle.
  if (edge.geomType === 'BSPLINE_CURVE') {
    const corners = on(chords)
    if (Math.abs(lengthOf(corners) - length) < 1e-6 * length && lengthOf(on(chords * 3)) < length * (1 + 1e-9)) {
      const half = corners.filter((_, i) => i % 2 === 0)
      return { points: corners, length: (4 * length - lengthOf(half)) / 3, sagittas: sagittasOf(corners) }
    }
  }
  const points = on(Math.max(edge.geomType === 'LINE' ? 2 : 60, Math.ceil(length / spacing)))
  return { points, length, sagittas: points.slice(1).map(() => 0) }
}

const chords = 14

const lengthOf = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0)

/**
 * Arrow height over each chord from the turns at its two corners: an eighth of chord and turn on a circle, and a quarter
 * more; where the curve turns sharply, all that two tangents leave open.
 */
function sagittasOf(corners: readonly Vec2[]): number[] {
  const turn = (i: number) => {
    const [a, b, c] = [corners[i - 1], corners[i], corners[i + 1]]
    if (!a || !b || !c) return 0
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]]
    return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy))
  }
  return corners.slice(1).map(([x, y], i) => {
    const chord = Math.hypot(x - corners[i]![0], y - corners[i]![1])
    // What the curve does at its very end no corner tells: up to three times the turn of the next one was seen.
    const most = i === 0 ? 3 * turn(1) : i === corners.length - 2 ? 3 * turn(i) : Math.max(turn(i), turn(i + 1))
    return most < 0.6 ? (1.25 * chord * most) / 8 : (chord * Math.tan(Math.min(most, 2) / 2)) / 2
  })
}

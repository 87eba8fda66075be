import { cast, type Edge, ProjectionCamera, type Shape3D } from 'replicad'
import { brep } from '../brep/kernels.ts'

type Vec2 = readonly [number, number]
type Vec3 = readonly [number, number, number]

/** One projected edge of the judge: points along it, and its length. */
export interface JudgedEdge {
  readonly points: readonly Vec2[]
  readonly length: number
  /** How far the true curve stands out from the chords between the points at most, mm. */
  readonly sagitta: number
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
      return { points: corners, length: (4 * length - lengthOf(half)) / 3, sagitta: sagittaOf(corners) }
    }
  }
  return { points: on(Math.max(2, Math.ceil(length / spacing))), length, sagitta: 0 }
}

const chords = 14

const lengthOf = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0)

/** Arrow height over the chords, from the turns at the corners, and a quarter more where the turn changes. */
function sagittaOf(corners: readonly Vec2[]): number {
  let most = 0
  for (let i = 1; i + 1 < corners.length; i++) {
    const [[ax, ay], [bx, by], [cx, cy]] = [corners[i - 1]!, corners[i]!, corners[i + 1]!]
    const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - bx, cy - by]
    const turn = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy))
    most = Math.max(most, (1.25 * Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy)) * turn) / 8)
  }
  return most
}

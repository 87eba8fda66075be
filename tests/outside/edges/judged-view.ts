import { cast, type Edge, ProjectionCamera, type Shape3D } from 'replicad'
import { brep } from '../brep/kernels.ts'

type Vec2 = readonly [number, number]
type Vec3 = readonly [number, number, number]

/** One projected edge of the judge: points along it, and its length; two points of a straight one. */
export interface JudgedEdge {
  readonly points: readonly Vec2[]
  readonly length: number
  /** The kernel drew the points as chords, not the curve: what it stands for may lie beside them. */
  readonly chords: boolean
}

/** What the B-rep kernel draws of a solid: corners, tangent lines and outlines, seen and hidden. */
export interface JudgedView {
  readonly visible: readonly JudgedEdge[]
  readonly smooth: readonly JudgedEdge[]
  readonly hidden: readonly JudgedEdge[]
}

/** Hidden-line projection of a solid with the eye in the direction `eye` and `right` to the right, both unit vectors. */
export function judgedView(shape: Shape3D, eye: Vec3, right: Vec3, spacing: number): JudgedView {
  const { visible, smooth, hidden } = projection(shape, eye, right)
  const edges = (found: readonly Edge[]) => found.map((e) => sampled(e, spacing)).filter(({ length }) => length > 1e-5)
  return { visible: edges(visible), smooth: edges(smooth), hidden: edges(hidden) }
}

/** The kernel's own edges in the drawing plane, with their curves but no points along them yet. */
export function projection(shape: Shape3D, eye: Vec3, right: Vec3): Record<keyof JudgedView, Edge[]> {
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
        return e
      })
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
      return { points: corners, length: (4 * length - lengthOf(half)) / 3, chords: true }
    }
  }
  const points = on(edge.geomType === 'LINE' ? 1 : Math.max(60, Math.ceil(length / spacing)))
  return { points, length, chords: false }
}

const chords = 14

const lengthOf = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0)

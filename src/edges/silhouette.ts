import type { Surface } from '../geometry/surface.ts'
import { along, cross, dot, length, scale, unit, type Vec3 } from '../geometry/vector.ts'
import { generator, type Line, pointAt } from './curve.ts'
import { quadricsOf, splitAt } from './edges-of.ts'
import type { Stretch } from './meeting.ts'
import { flat, type Quadric } from './quadric.ts'
import { bordersAround, type Face, type Skin } from './skin.ts'
import { far } from './tolerance.ts'

/** The outline of a round face seen along `eye`: a generator line, as far as it is on the skin. */
export interface Silhouette extends Stretch {
  readonly face: Face
}

/** Outlines of all round faces; `eye`: unit vector towards the eye. */
export function silhouettesOf(skin: Skin, eye: Vec3): Silhouette[] {
  const quadrics = quadricsOf(skin)
  return skin.surfaces.flatMap((s, sheet) =>
    outlines(s, eye).flatMap(({ line, from }) => {
      const out: Silhouette[] = []
      const others = quadrics.filter((_, i) => i !== sheet)
      for (const [start, end] of splitAt(line, from, far, others)) {
        const p = pointAt(line, (start + end) / 2)
        if (!skin.touches(sheet, p) || !skin.nearSkin(p)) continue
        const border = bordersAround([skin], p, line.direction).find((b) => b.sheet === sheet)
        if (!border) continue
        const last = out[out.length - 1]
        if (last && start - last.to < 1e-5 && last.face.surface === border.face.surface) {
          out[out.length - 1] = { ...last, to: end }
        } else out.push({ curve: line, from: start, to: end, face: border.face })
      }
      return out
    }),
  )
}

function outlines(s: Surface, eye: Vec3): { line: Line; from: number }[] {
  if (s.kind === 'plane') return []
  const across = cross(s.axis, eye)
  const sine = length(across)
  if (sine < 1e-9) return []
  const y = unit(across)
  const x = cross(y, s.axis)
  if (s.kind === 'cylinder') {
    return [s.radius, -s.radius].map((r) => ({
      line: { kind: 'line', point: along(s.point, y, r), direction: s.axis },
      from: -far,
    }))
  }
  const cosine = (s.slope * dot(s.axis, eye)) / dot(x, eye)
  if (Math.abs(cosine) >= 1) return []
  const half = Math.acos(cosine)
  return [half, -half].map((theta) => ({
    line: { kind: 'line', point: s.apex, direction: generator(s, x, y, theta).direction },
    from: 0,
  }))
}

/** The plane in which the outlines of a round face lie: where an edge of it turns from the eye's side to the far side. */
export function outlinePlane(s: Surface, eye: Vec3): Quadric | undefined {
  if (s.kind === 'plane') return undefined
  const axial = dot(s.axis, eye)
  const square = along(eye, s.axis, -axial)
  const normal = s.kind === 'cylinder' ? square : along(square, s.axis, -s.slope * s.slope * axial)
  const size = length(normal)
  if (size < 1e-9) return undefined
  const n = scale(normal, 1 / size)
  return flat(n, dot(n, s.kind === 'cylinder' ? s.point : s.apex))
}

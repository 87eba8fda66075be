import { pointFrom } from '../../../geometry/frame.ts'
import { add, scale, type Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import { quickVolumeOf, type Volume } from '../../../solid/volume.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import type { Layout } from '../layout.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { halfLengthAt } from '../section.ts'
import { milledBarOf } from './milled-bar.ts'

/**
 * Volume, mm³, and centroid of the head, body frame, for balance. Where every hole is whole, cut by nothing else, holes
 * are taken off the milled bar, all in closed form. Where a hole breaks out, or a cut does (see `milledBarOf`), the rest
 * is as exact as `quickVolumeOf`.
 */
export function headVolumeOf(design: HeadDesign): Volume {
  const body = design.part('body')
  const holes = holesOf(design)
  if (!holes) return quickVolumeOf(solidOf(body))
  const milled =
    milledBarOf(design.parameters, design.layout) ??
    quickVolumeOf(solidOf({ ...body, cuts: body.cuts.filter((cut) => isMilled(cut.id)) }))
  const volume = milled.volume - holes.reduce((sum, hole) => sum + hole.volume, 0)
  const moment = holes.reduce<Vec3>((sum, hole) => add(sum, hole.moment), [0, 0, 0])
  return { volume, centroid: scale(add(scale(milled.centroid, milled.volume), scale(moment, -1)), 1 / volume) }
}

const isMilled = (id: string): boolean => id === 'face' || id === 'slot' || id === 'step'

interface Hole {
  readonly volume: number
  readonly moment: Vec3
}

/** The holes, or undefined where one is not whole or of a kind that is not known here. */
function holesOf(design: HeadDesign): Hole[] | undefined {
  const { parameters: p, layout: l } = design
  const drilled = design.part('body').cuts.filter((cut) => !isMilled(cut.id))
  const screws = drilled.filter((cut) => cut.role === 'clamp-screw')
  if (p.bore.kind !== 'blind' || drilled.length - screws.length !== (p.bore.vent === 'hole' ? 2 : 1)) return undefined
  if (!screwHolesAreWhole(p, l) || !boreIsWhole(p, l)) return undefined
  const r = l.screws.thread.tapDrill / 2
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const volume = Math.PI * r ** 2 * p.step['wall-thickness']
  const middle = (l.screws.seat + l.step.wall) / 2
  return [
    ...l.screws.xs.map((x) => ({ volume, moment: scale(pointFrom(face, [x, middle, l.screws.height]), volume) })),
    ...boreOf(p.bore, l),
  ]
}

/** Between face and floors, clear of one another, and inside the bar at both ends. */
function screwHolesAreWhole(p: Parameters, { screws, slot, step, faceAngle }: Layout): boolean {
  const r = screws.thread.tapDrill / 2
  const across = Math.max(...screws.xs.map(Math.abs)) + r
  const reach = across * Math.cos(faceAngle) + (screws.height + r) * Math.sin(faceAngle)
  return (
    screws.height >= r &&
    screws.height + r <= Math.min(slot.depth, step.depth) &&
    (screws.xs.length === 1 || screws.spacing >= 2 * r) &&
    reach <= Math.min(halfLengthAt(p.stock, screws.seat), halfLengthAt(p.stock, step.wall))
  )
}

/** Its bottom above slot and step, its mouth inside the bar, a vent hole that comes out wholly in the slot. */
function boreIsWhole({ bore }: Parameters, { slot, step, depthOnAxis, faceAngle, inscribed }: Layout): boolean {
  if (bore.kind !== 'blind') return false
  const r = bore.diameter / 2
  const cut = Math.max(slot.depth, step.depth) / Math.cos(faceAngle)
  const vent = bore.vent === 'hole' ? bore['vent-size'] / 2 : 0
  return (
    bore.depth + pointHeight(bore) <= depthOnAxis - cut - r * Math.tan(faceAngle) &&
    r + bore.chamfer <= inscribed / 2 &&
    slot.leading * slot.trailing < 0 &&
    Math.min(Math.abs(slot.leading), Math.abs(slot.trailing)) >= vent &&
    (slot.end?.x ?? -Infinity) + (slot.end?.radius ?? 0) <= -2 * vent
  )
}

type BlindBore = Extract<Parameters['bore'], { readonly kind: 'blind' }>

/** How far a drilled bottom runs on beyond the full diameter. */
const pointHeight = (bore: BlindBore): number =>
  bore.bottom === 'flat' ? 0 : bore.diameter / 2 / Math.tan(bore['point-angle'] / 2)

/** Bore, chamfer and point lie on the axis; a vent hole comes out in a floor that is tilted. */
function boreOf(bore: BlindBore, { slot, depthOnAxis, faceAngle }: Layout): Hole[] {
  const [r, c, point] = [bore.diameter / 2, bore.chamfer, pointHeight(bore)]
  /** Volume, and its moment about the mounting face, which is below it. */
  const onAxis = (volume: number, depth: number): Hole => ({ volume, moment: [0, 0, -volume * depth] })
  const holes = [
    onAxis(Math.PI * r ** 2 * bore.depth, bore.depth / 2),
    onAxis((Math.PI * r ** 2 * point) / 3, bore.depth + point / 4),
  ]
  if (c > 0) {
    const volume = Math.PI * (r * c ** 2 + c ** 3 / 3)
    holes.push(onAxis(volume, (Math.PI * ((r * c ** 3) / 3 + c ** 4 / 12)) / volume))
  }
  if (bore.vent !== 'hole') return holes
  const v = bore['vent-size'] / 2
  const slope = Math.tan(faceAngle)
  const floor = depthOnAxis - slot.depth / Math.cos(faceAngle)
  // From where the point is as narrow as the vent; what is left of the point counts already.
  const from = bore.depth + point * (1 - v / r)
  const rest = (point * v) / r
  const volume = Math.PI * v ** 2 * (floor - from - rest / 3)
  const depths = (floor ** 2 - from ** 2) / 2 + (v * slope) ** 2 / 8 - (rest / 3) * (from + rest / 4)
  return [...holes, { volume, moment: [(Math.PI / 4) * v ** 4 * slope, 0, -Math.PI * v ** 2 * depths] }]
}

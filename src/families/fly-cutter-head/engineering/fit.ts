import type { Problem } from '../../../input/problem.ts'
import type { Fit } from '../../../mechanics/fit/fit.ts'
import { pressureNeeded } from '../../../mechanics/fit/grip.ts'
import { type Hold, type Joint, type JointInput, jointOf, jointProblems } from '../../../mechanics/fit/joint.ts'
import { flatShare, type Interruption, type JointLength, jointLength } from '../../../mechanics/fit/joint-length.ts'
import { interferenceFor } from '../../../mechanics/fit/press-joint.ts'
import { speedLosing } from '../../../mechanics/fit/spin-loss.ts'
import { steelInNitrogen } from '../../../mechanics/fit/temperature-assembly.ts'
import type { MaterialRow } from '../../../tables/materials.ts'
import type { HeadDesign } from '../design.ts'
import type { Layout } from '../layout.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { fitLoadOf } from './fit-load.ts'
import { underPaths } from './problem-paths.ts'

/** A pressed or shrunk fit as the parameters have it. */
export type PressedFit = Exclude<Parameters['fit'], { readonly kind: 'threaded' }>

/** The pressed or shrunk fit of a design; undefined for a head that is screwed on. */
export const pressedFit = ({ parameters: { fit } }: HeadDesign): PressedFit | undefined =>
  fit.kind === 'threaded' ? undefined : fit

/**
 * The joint of head and arbor at both ends of its tolerance, loaded by the cut: pressures, grip, stress, temperatures.
 * The hub counts as round out to the largest circle inside the bar. Undefined: a head that is screwed on, or one in which
 * slot, step and chamfers leave nothing of the joint whole.
 */
export function jointOfHead(design: HeadDesign): Joint | undefined {
  const worked = design.once('joint', () => {
    const input = jointInputOf(design)
    return input && jointOf(input)
  })
  return worked?.ok ? worked.value : undefined
}

/** What the joint is worked out from; undefined where there is none. */
export function jointInputOf(design: HeadDesign): (JointInput & { readonly fit: Fit }) | undefined {
  const fit = design.layout.fit
  const pressed = pressedFit(design)
  const length = joinedLength(design)
  if (fit === undefined || pressed === undefined || length.effective < leastLength) return undefined
  const { parameters, layout } = design
  const settings = parameters.settings.fit
  const load = fitLoadOf(design)
  return {
    fit,
    hub: { outside: layout.inscribed, material: layout.materials.body, roughness: pressed['bore-roughness'] },
    shaft: {
      bore: parameters.arbor['bore-through'] ?? 0,
      material: layout.materials.arbor,
      roughness: pressed['spigot-roughness'],
    },
    length: length.effective,
    load: { torque: load.cutTorque, axial: load.axial, bending: load.bending(length.middle) },
    safety: settings['safety-factor'],
    settings: {
      smoothing: settings.smoothing,
      frictionPressed: settings['friction-pressed'],
      frictionShrunk: settings['friction-shrunk'],
      frictionPressing: settings['friction-pressing'],
    },
    assembly: {
      ambient: settings.ambient,
      hubLimit: heatLimit(design),
      ...(isSteel(layout.materials.arbor) && { cooling: steelInNitrogen }),
    },
  }
}

/** Shorter than this, mm, nothing is joined: chamfers and burrs eat it. */
const leastLength = 0.1

/** Engineering problems of the fit: figures that contradict each other. Code and limits are looked at with the layout. */
export function fitProblems(design: HeadDesign): Problem[] {
  const problems: Problem[] = []
  const pin = pinDiameter(design.parameters)
  if (design.parameters.fit.catch === 'pin' && pin >= design.parameters.bore.diameter) {
    problems.push({
      code: 'contradiction',
      where: { file: '', path: 'fit.pin-diameter' },
      found: 'a pin as thick as the spigot',
      allowed: 'less than the bore diameter',
    })
  }
  const input = jointInputOf(design)
  if (input === undefined) return problems
  return [...problems, ...underPaths(jointProblems(input), parameterPaths, 'fit')]
}

const parameterPaths: readonly (readonly [prefix: string, path: string])[] = [
  ['hub.outside', 'stock.size'],
  ['hub.roughness', 'fit.bore-roughness'],
  ['hub.material', 'stock.material'],
  ['shaft.bore', 'arbor.bore-through'],
  ['shaft.roughness', 'fit.spigot-roughness'],
  ['shaft.material', 'arbor.material'],
  ['settings.smoothing', 'settings.fit.smoothing'],
  ['settings.frictionPressing', 'settings.fit.friction-pressing'],
  ['settings.frictionPressed', 'settings.fit.friction-pressed'],
  ['settings.frictionShrunk', 'settings.fit.friction-shrunk'],
  ['safety', 'settings.fit.safety-factor'],
  ['assembly.ambient', 'settings.fit.ambient'],
  ['length', 'arbor.spigot-length'],
]

/** What is left of the joint, and how deep below the mounting face its middle lies, mm. */
export interface JoinedLength extends JointLength {
  readonly middle: number
}

/**
 * What slot, step, angled face, chamfers, vent flat and pin leave of the joint. Whatever lies below the highest point that
 * slot, step or face reach inside the hub's circle is not counted: there the hub is no closed ring.
 */
export const joinedLength = (design: HeadDesign): JoinedLength =>
  design.once('joined length', () => joinedOf(design.parameters, design.layout))

function joinedOf(p: Parameters, l: Layout): JoinedLength {
  const engaged = { from: 0, to: p.arbor['spigot-length'] }
  const cuts: Interruption[] = []
  const lose = (from: number, to: number, share = 1) => {
    if (to > from) cuts.push({ from, to, share })
  }
  lose(0, p.bore.chamfer)
  lose(engaged.to - p.arbor['lead-in'], engaged.to)
  lose(Math.max(0, wholeRing(l)), engaged.to)
  if (p.bore.kind === 'blind') lose(p.bore.depth, engaged.to)
  const whole = jointLength(engaged, cuts).stretches
  const middle = ((whole[0]?.from ?? 0) + (whole.at(-1)?.to ?? 0)) / 2
  if (p.bore.kind === 'blind' && p.bore.vent === 'flat') {
    lose(0, engaged.to, flatShare(p.bore.diameter, p.bore['vent-size']))
  }
  if (p.fit.catch === 'pin') {
    const pin = pinDiameter(p)
    // Two holes in the circumference.
    lose(middle - pin / 2, middle + pin / 2, Math.min(1, (2 * pin) / (Math.PI * p.bore.diameter)))
  }
  return { ...jointLength(engaged, cuts), middle }
}

/**
 * Depth below the mounting face, mm, down to which the hub is a closed ring out to its inscribed circle: the least depth
 * that angled face, slot floor or step floor has inside that circle, on the high side opposite the bit.
 */
export function wholeRing(l: Layout): number {
  const radius = l.inscribed / 2
  const [tan, cos] = [Math.tan(l.faceAngle), Math.cos(l.faceAngle)]
  const depthAt = (x: number, cut: number) => l.depthOnAxis + x * tan - cut / cos
  /** Farthest reach to the high side, within the circle, of something that keeps `off` from the mid-plane. */
  const reach = (off: number) => (off < radius ? Math.sqrt(radius ** 2 - off ** 2) : undefined)
  const { slot, step } = l
  const besideAxis = slot.leading * slot.trailing <= 0 ? 0 : Math.min(Math.abs(slot.leading), Math.abs(slot.trailing))
  const [ofSlot, ofStep] = [reach(besideAxis), reach(Math.max(0, step.wall * step.towards))]
  return Math.min(
    depthAt(-radius, 0),
    ofSlot === undefined ? Infinity : depthAt(Math.max(-ofSlot, slot.end ? slot.end.x * cos : -ofSlot), slot.depth),
    ofStep === undefined ? Infinity : depthAt(-ofStep, step.depth),
  )
}

/** Diameter of the pin across hub and spigot, mm: a quarter of the bore as whole millimetres or sixteenths of an inch. */
export function pinDiameter({ fit, bore, units }: Parameters): number {
  const step = units === 'in' ? 25.4 / 16 : 1
  return fit['pin-diameter'] ?? step * Math.max(1, Math.round(bore.diameter / 4 / step))
}

/** Warmest that the head may get when it is shrunk on, °C, bit and set screws taken out. */
export function heatLimit({ parameters, layout: { materials } }: HeadDesign): number {
  const settings = parameters.settings.fit
  if (materials.body.workMaterial === 'aluminium') return settings['heat-limit-aluminium']
  const hardened = isHardened(materials.body) || isHardened(materials.arbor)
  return hardened ? settings['heat-limit-hardened'] : settings['heat-limit-steel']
}

/** Hardened materials are those that a shop does not cut and for which no strength is published. */
const isHardened = (m: MaterialRow): boolean => m.yieldStrength === undefined && m.ultimateStrength === undefined

/** Steel shrinks in the cold as the figure for it says; of other materials no figure is known here. */
const isSteel = (m: MaterialRow): boolean => m.name.startsWith('steel')

/**
 * Speed, rad/s, at which turning has opened the hub so far that the joint no longer carries the cut (with its blow, without
 * the wanted margin); undefined where no speed does, 0 where it does not carry it at rest.
 */
export function jointSpeedLimit(design: HeadDesign): number | undefined {
  const joint = jointOfHead(design)
  const input = jointInputOf(design)
  if (joint === undefined || input === undefined) return undefined
  const { diameter, length, elastic, least } = joint
  const needed = pressureNeeded({ diameter, length, friction: frictionOf(design) }, input.load, 1)
  const { body, arbor } = design.layout.materials
  const spare = least.effective - interferenceFor(elastic, needed)
  return speedLosing(spare, elastic, { hub: body.density, shaft: arbor.density })
}

/** Whether head and arbor are put together with heat: what they hold by then is the dry friction of a shrunk joint. */
export const isShrunk = (design: HeadDesign): boolean => pressedFit(design)?.assembly === 'heat'

const frictionOf = (design: HeadDesign): number =>
  design.parameters.settings.fit[isShrunk(design) ? 'friction-shrunk' : 'friction-pressed']

/** What the joint carries at its least interference, put together the way the parameters say. */
export const holdOf = (design: HeadDesign, joint: Joint): Hold =>
  isShrunk(design) ? joint.least.shrunk : joint.least.pressed

/** Torque that head and arbor should carry, N·mm: the cut's with the wanted safety, or the jam's, whichever is larger. */
export function wantedTorque(design: HeadDesign): number {
  const { cutTorque, jamTorque } = fitLoadOf(design)
  return Math.max(design.parameters.settings.fit['safety-factor'] * cutTorque, jamTorque)
}

/**
 * Air shut in below the spigot when it is home: the force, N, with which it pushes the arbor out, as long as it does not
 * leak and has the temperature of the shop (Boyle, at 0.1013 MPa); infinite where no room is left. Undefined where the air
 * has a way out: through bore, vent, hollow arbor.
 */
export function trappedAir({ parameters: { bore, arbor } }: HeadDesign): { readonly force: number } | undefined {
  if (bore.kind === 'through' || bore.vent !== 'none' || arbor['bore-through'] !== undefined) return undefined
  const section = (Math.PI / 4) * bore.diameter ** 2
  const point = bore.bottom === 'drill-point' ? bore.diameter / 2 / Math.tan(bore['point-angle'] / 2) / 3 : 0
  const [before, after] = [bore.depth + point, bore.depth + point - arbor['spigot-length']]
  return { force: after > 0 ? atmosphere * (before / after - 1) * section : Infinity }
}

/** Of air, MPa. */
const atmosphere = 0.1013

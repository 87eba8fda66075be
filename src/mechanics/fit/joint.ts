import type { Problem, Result, Where } from '../../input/problem.ts'
import { formatNumber } from '../../quantity/format-number.ts'
import type { Fit } from './fit.ts'
import {
  axialGrip,
  type Contact,
  type Grip,
  gapeFactor,
  gripOf,
  type Load,
  lengthNeeded,
  pressureNeeded,
  slipFactor,
} from './grip.ts'
import { InputFaults } from './input-faults.ts'
import { hubStress, type Stress, shaftStress } from './joint-stress.ts'
import { type Elastic, interferenceFor, type PressJoint, pressJoint, pressureFrom } from './press-joint.ts'
import { interferenceChange, type ServiceTemperatures } from './service-temperature.ts'
import { effectiveInterference, smoothingLoss } from './smoothing.ts'
import { type AssemblyPlan, assemblyPlan, type Cooling } from './temperature-assembly.ts'
import { countingStress, criterionOf, type Onset, onsetsOf, type Strength, worstShaftStress } from './yield-onset.ts'

/** What one part of a joint is made of; a row of the materials table fits. Expansion in 1/K. */
export interface JointMaterial extends Elastic, Strength {
  readonly expansion: number
}

/** Everything a joint depends on. Lengths mm, stresses MPa, temperatures °C; every figure that no standard sets is a setting. */
export interface JointInput {
  readonly fit: Fit
  /** `outside`: of a head that is not round, its inscribed circle. `roughness`: Rz. */
  readonly hub: { readonly outside: number; readonly material: JointMaterial; readonly roughness: number }
  /** `bore`: 0 for a solid arbor. */
  readonly shaft: { readonly bore: number; readonly material: JointMaterial; readonly roughness: number }
  /** Effective length: what slot, step, chamfers and vents leave whole. */
  readonly length: number
  /** What it has to carry, demand factors included. */
  readonly load: Load
  /** Wanted between grip and load, 1 or more. */
  readonly safety: number
  readonly settings: JointSettings
  /** Warmest that the hub may get, temperature of the shop, and what the spigot could be cooled with. */
  readonly assembly: { readonly hubLimit: number; readonly ambient: number; readonly cooling?: Cooling }
  /** Temperatures at work; left out: 20 °C, and no figures for work. */
  readonly service?: ServiceTemperatures
}

/** Figures that the trade sets, not a standard. */
export interface JointSettings {
  /** Share of Rz of both surfaces that is lost: `smoothingLoss`. */
  readonly smoothing: number
  /** Low friction of a joint pressed cold and of one shrunk on dry: what it holds by. */
  readonly frictionPressed: number
  readonly frictionShrunk: number
  /** High friction while pressing: what the press has to overcome. */
  readonly frictionPressing: number
}

/**
 * Usual settings. Smoothing 0.8: older edition of DIN 7190 (second-hand). Friction pressed 0.08: from memory of DIN 7190-1
 * section 5.2, dry steel, slipping; shrunk 0.15: its section 5.3, hub heated to 300 °C (second-hand). Pressing: the higher
 * of the two, rule of thumb.
 */
export const usualSettings: JointSettings = {
  smoothing: 0.8,
  frictionPressed: 0.08,
  frictionShrunk: 0.15,
  frictionPressing: 0.15,
}

/** A joint at one end of its tolerance. */
export interface JointEnd {
  /** Interference on the diameter as measured, clearance negative, and what is left after smoothing, mm. */
  readonly interference: number
  readonly effective: number
  /** Pressure, MPa, of the interference that is left: what the joint may be counted on for. */
  readonly pressure: number
  /**
   * Pressure, MPa, that the grips are worked out with: no more than at the onset of yield, since the elastic figure
   * promises too much beyond it; 0 where a part has cracked.
   */
  readonly grippingPressure: number
  readonly pressed: Hold
  readonly shrunk: Hold
  /**
   * Pressure, MPa, of the whole interference, as though nothing were smoothed: what stresses and press force are worked
   * out with, since nobody can promise that the peaks give way.
   */
  readonly fullPressure: number
  /** N, with the high friction, at full depth. */
  readonly pressForce: number
  readonly stress: JointStress
  readonly hub: Reserve
  readonly shaft: Reserve
  readonly assembly: AssemblyPlan
}

/** What a joint carries, and how that compares with its load. Factors are undefined where nothing loads it. */
export interface Hold extends Grip {
  /** Grip over torque and axial force together. */
  readonly slip: number | undefined
  /** Pressure over what the bending moment takes away on one side; above 1 the joint stays closed. */
  readonly gape: number | undefined
  /** Slips no sooner than the wanted safety says, and stays closed. */
  readonly enough: boolean
}

/** Stresses, MPa, tension positive. */
export interface JointStress {
  readonly hubBore: Stress
  readonly hubOutside: Stress
  readonly shaftOutside: Stress
  /** Undefined for a solid shaft. */
  readonly shaftBore: Stress | undefined
}

/** How far a part is from failing. */
export interface Reserve {
  readonly fails: 'yields' | 'breaks' | 'unknown'
  /** MPa: von Mises of a ductile part, greatest principal of a brittle one; and the strength it is held against. */
  readonly stress: number
  readonly limit: number | undefined
  /** Strength over stress; undefined where no strength is known or nothing presses. Below 1 it fails. */
  readonly factor: number | undefined
}

/** A joint at both ends of its tolerance. */
export interface Joint {
  readonly diameter: number
  readonly length: number
  /** Hub outside over bore. */
  readonly hubRatio: number
  /** Interference lost to smoothing, mm on the diameter. */
  readonly smoothingLoss: number
  /** Least interference: grip counts here. */
  readonly least: JointEnd
  /** Most interference: stress, press force and temperature count here. */
  readonly most: JointEnd
  /** The same at work, where service temperatures were given. */
  readonly service?: { readonly change: number; readonly least: JointEnd; readonly most: JointEnd }
  /** Where each part of known strength first fails, the first one first; interference without smoothing. */
  readonly onsets: readonly Onset[]
  /** Pressure, MPa, and measured interference, mm, at which the joint carries its load pressed and shrunk. */
  readonly needed: { readonly pressed: Needed; readonly shrunk: Needed }
  readonly elastic: PressJoint
}

/** What would be enough. */
export interface Needed {
  readonly pressure: number
  readonly interference: number
  /** Effective length that would be enough at the pressure the least interference gives; undefined where that is none. */
  readonly length: number | undefined
  /** Whether the joint can be made to press that hard before a part yields or breaks. */
  readonly reachable: boolean
}

/**
 * Works a joint out at both ends of its tolerance: interference, pressure, grip pressed and shrunk, press force, stresses,
 * reserves, temperatures. Lamé's thick cylinders, plane stress, elastic.
 *
 * Problems, all together, with the names of the inputs as paths: a shape that `pressJoint` refuses, roughness, friction,
 * smoothing, load, safety or temperature that cannot be, a joint of which nothing is left whole. RangeError for NaN or
 * infinity and for a fit whose least interference is above its most.
 */
export function jointOf(input: JointInput): Result<Joint> {
  const shape = shapeOf(input)
  const problems = problemsOf(input, shape)
  if (!shape.ok || problems.length > 0) return { ok: false, problems }
  const { fit, hub, shaft } = input
  const joint = shape.value
  const { least, most } = fit.interference
  const expansions = { hub: hub.material.expansion, shaft: shaft.material.expansion }
  const change = input.service === undefined ? 0 : interferenceChange(joint.diameter, expansions, input.service)
  const atLeast = endOf(input, joint, least)
  return {
    ok: true,
    value: {
      diameter: joint.diameter,
      length: input.length,
      hubRatio: hub.outside / joint.diameter,
      smoothingLoss: lossOf(input),
      least: atLeast,
      most: endOf(input, joint, most),
      ...(input.service !== undefined && {
        service: { change, least: endOf(input, joint, least, change), most: endOf(input, joint, most, change) },
      }),
      onsets: onsetsOf(joint, hub.material, shaft.material),
      needed: {
        pressed: neededWith(input, joint, input.settings.frictionPressed, atLeast.grippingPressure),
        shrunk: neededWith(input, joint, input.settings.frictionShrunk, atLeast.grippingPressure),
      },
      elastic: joint,
    },
  }
}

/** The problems of `jointOf` alone, in a fraction of the time; empty where it can be worked out. RangeError as there. */
export const jointProblems = (input: JointInput): Problem[] => problemsOf(input, shapeOf(input))

function shapeOf({ fit, hub, shaft }: JointInput): Result<PressJoint> {
  if (!(fit.interference.least <= fit.interference.most)) throw new RangeError('least interference above the most')
  return pressJoint({
    diameter: fit.diameter,
    hubOutside: hub.outside,
    shaftBore: shaft.bore,
    hub: hub.material,
    shaft: shaft.material,
  })
}

function problemsOf(input: JointInput, shape: Result<PressJoint>): Problem[] {
  const ofShape = shape.ok ? [] : shape.problems.map(({ where, ...rest }) => ({ ...rest, where: inputOf(where) }))
  return [...ofShape, ...faultsOf(input).problems]
}

/** Where a figure of the shape stands in the input of the joint. */
function inputOf(where: Where): Where {
  const path = where.path ?? ''
  const own: Readonly<Record<string, string>> = {
    diameter: 'fit.diameter',
    hubOutside: 'hub.outside',
    shaftBore: 'shaft.bore',
  }
  return { ...where, path: own[path] ?? path.replace('.', '.material.') }
}

/** `change`: what temperature at work adds to the interference the parts were put together with, mm. */
function endOf(input: JointInput, joint: PressJoint, measured: number, change = 0): JointEnd {
  const { hub, shaft, load, settings, length } = input
  const { diameter } = joint
  const interference = measured + change
  const effective = effectiveInterference(interference, lossOf(input))
  const pressure = pressureFrom(joint, effective)
  const fullPressure = pressureFrom(joint, interference)
  const grippingPressure = grippingPressureOf(input, joint, { pressure, fullPressure })
  const holdWith = (friction: number): Hold => {
    const contact: Contact = { pressure: grippingPressure, diameter, length, friction }
    const slip = slipFactor(contact, load)
    const gape = gapeFactor(contact, load.bending)
    const enough = (slip === undefined || slip >= input.safety) && (gape === undefined || gape > 1)
    return { ...gripOf(contact), slip, gape, enough }
  }
  return {
    interference,
    effective,
    pressure,
    grippingPressure,
    pressed: holdWith(settings.frictionPressed),
    shrunk: holdWith(settings.frictionShrunk),
    fullPressure,
    pressForce: axialGrip({ pressure: fullPressure, diameter, length, friction: settings.frictionPressing }),
    stress: {
      hubBore: hubStress(joint, fullPressure),
      hubOutside: hubStress(joint, fullPressure, joint.hubOutside),
      shaftOutside: shaftStress(joint, fullPressure),
      shaftBore: joint.shaftBore > 0 ? shaftStress(joint, fullPressure, joint.shaftBore) : undefined,
    },
    hub: reserveOf(hub.material, hubStress(joint, fullPressure)),
    shaft: reserveOf(shaft.material, worstShaftStress(joint, fullPressure)),
    assembly: planOf(input, joint, measured),
  }
}

function lossOf({ hub, shaft, settings }: JointInput): number {
  return smoothingLoss(hub.roughness, shaft.roughness, settings.smoothing)
}

function grippingPressureOf(
  { hub, shaft }: JointInput,
  joint: PressJoint,
  { pressure, fullPressure }: Pick<JointEnd, 'pressure' | 'fullPressure'>,
): number {
  const onsets = onsetsOf(joint, hub.material, shaft.material)
  // Whether it cracks is a matter of stress, so the whole interference counts.
  if (onsets.some((onset) => onset.kind === 'breaks' && onset.pressure < fullPressure)) return 0
  return Math.min(pressure, ...onsets.map((onset) => onset.pressure))
}

function reserveOf(material: JointMaterial, stress: Stress): Reserve {
  const criterion = criterionOf(material)
  const counting = countingStress(criterion, stress)
  const factor = criterion.kind === 'unknown' || counting === 0 ? undefined : criterion.limit / counting
  return { fails: criterion.kind, stress: counting, limit: criterion.limit, factor }
}

function planOf({ hub, shaft, assembly }: JointInput, joint: PressJoint, interference: number): AssemblyPlan {
  const { ambient, hubLimit, cooling } = assembly
  // In a shop that is not at 20 °C, head and arbor of unlike materials have not grown alike.
  const expansions = { hub: hub.material.expansion, shaft: shaft.material.expansion }
  const change = interferenceChange(joint.diameter, expansions, { hub: ambient, shaft: ambient })
  return assemblyPlan({
    diameter: joint.diameter,
    interference: interference > 0 ? Math.max(0, interference + change) : interference,
    hubExpansion: hub.material.expansion,
    ambient,
    hubLimit,
    ...(cooling !== undefined && { cooling }),
  })
}

function neededWith(input: JointInput, joint: PressJoint, friction: number, pressure: number): Needed {
  const { load, safety, length } = input
  const { diameter } = joint
  const needed = pressureNeeded({ diameter, length, friction }, load, safety)
  const onsets = onsetsOf(joint, input.hub.material, input.shaft.material)
  return {
    pressure: needed,
    interference: interferenceFor(joint, needed) + lossOf(input),
    length: pressure > 0 ? lengthNeeded({ diameter, friction, pressure }, load, safety) : undefined,
    reachable: onsets.every((onset) => onset.pressure >= needed),
  }
}

function faultsOf({ hub, shaft, length, load, safety, settings, assembly, service }: JointInput): InputFaults {
  const faults = new InputFaults()
  for (const [path, part] of [
    ['hub', hub],
    ['shaft', shaft],
  ] as const) {
    faults.keeps(`${path}.roughness`, part.roughness, 'length', { min: 0 })
    faults.keeps(`${path}.material.expansion`, part.material.expansion, 'expansion', { above: 0 })
    for (const strength of ['yieldStrength', 'ultimateStrength'] as const) {
      const value = part.material[strength]
      if (value !== undefined) faults.keeps(`${path}.material.${strength}`, value, 'pressure', { above: 0 })
    }
  }
  faults.keeps('length', length, 'length', { above: 0 })
  faults.keeps('load.torque', load.torque, 'torque', { min: 0 })
  faults.keeps('load.axial', load.axial, 'force', { min: 0 })
  faults.keeps('load.bending', load.bending, 'torque', { min: 0 })
  faults.keeps('safety', safety, 'ratio', { min: 1 })
  faults.keeps('settings.smoothing', settings.smoothing, 'ratio', { min: 0, max: 1 })
  for (const friction of ['frictionPressed', 'frictionShrunk', 'frictionPressing'] as const) {
    faults.keeps(`settings.${friction}`, settings[friction], 'ratio', { above: 0, max: 1 })
  }
  if (settings.frictionPressing < settings.frictionPressed) {
    const write = (friction: number) => formatNumber(friction, 4, { trim: true })
    const allowed = `no less than what a pressed joint holds by, ${write(settings.frictionPressed)}`
    faults.add('settings.frictionPressing', 'contradiction', write(settings.frictionPressing), allowed)
  }
  faults.keeps('assembly.ambient', assembly.ambient, 'temperature', { above: -273.15 })
  faults.keeps('assembly.hubLimit', assembly.hubLimit, 'temperature', { above: -273.15 })
  if (assembly.cooling !== undefined) {
    faults.keeps('assembly.cooling.coldest', assembly.cooling.coldest, 'temperature', { above: -273.15 })
    faults.keeps('assembly.cooling.expansion', assembly.cooling.expansion, 'expansion', { above: 0 })
  }
  if (service !== undefined) {
    faults.keeps('service.hub', service.hub, 'temperature', { above: -273.15 })
    faults.keeps('service.shaft', service.shaft, 'temperature', { above: -273.15 })
  }
  return faults
}

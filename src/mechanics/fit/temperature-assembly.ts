/** How a joint goes together by heat, by cold, or both. Lengths mm, temperatures °C. */
export interface AssemblyInput {
  readonly diameter: number
  /** Largest interference on the diameter that the limits allow; negative is clearance. */
  readonly interference: number
  /** Linear thermal expansion of the hub, 1/K. */
  readonly hubExpansion: number
  /** Of the shop. */
  readonly ambient: number
  /** Warmest that the hub may get. */
  readonly hubLimit: number
  /** Room to slip the spigot in; left out: `assemblyClearance`. */
  readonly clearance?: number
  /** Cooling of the spigot; left out: not looked at. */
  readonly cooling?: Cooling
}

/** What the spigot is cooled with. */
export interface Cooling {
  /** Coldest that it gets, °C. */
  readonly coldest: number
  /** Mean linear expansion from ambient down to there, 1/K. */
  readonly expansion: number
}

/** Steel in liquid nitrogen: about 8.5e-6 per K in the mean down to −196 °C (from memory). */
export const steelInNitrogen: Cooling = { coldest: -196, expansion: 8.5e-6 }

/** Warmest that a hub may get, °C. Rules of thumb, from memory, where nothing else is said. */
export const heatLimits = {
  /** DIN 7190-1 has hubs of steel heated to 300 °C (second-hand). */
  'plain-steel': 300,
  /** Parts hardened and tempered low lose hardness above their temper. */
  'near-hardened': 200,
  /** Hardened aluminium overages. */
  aluminium: 150,
} as const satisfies Record<string, number>

/** What has to be done, and whether it can be. */
export interface AssemblyPlan {
  /** `none`: goes together cold without force. */
  readonly need: 'none' | 'temperature'
  readonly statement: string
  /** Room to slip the spigot in, and how much hub and spigot must part in all, mm on the diameter. */
  readonly clearance: number
  readonly parting: number
  /** Heating the hub alone. */
  readonly heat: HeatedHub
  /** Cooling the spigot alone: how cold it has to be, and whether the cold reaches that far. */
  readonly cold?: { readonly temperature: number; readonly possible: boolean }
  /** Spigot as cold as it gets, and the hub heated for the rest. */
  readonly both?: HeatedHub & { readonly spigotTemperature: number }
}

/** A hub heated for assembly. */
export interface HeatedHub {
  /** Above ambient, K. */
  readonly rise: number
  /** °C */
  readonly temperature: number
  readonly limit: number
  readonly possible: boolean
}

/** Room to slip a spigot in, mm: 0.001 of the diameter, 0.02 mm at least. Rule of thumb. */
export function assemblyClearance(diameter: number): number {
  return Math.max(0.001 * diameter, 0.02)
}

/**
 * Rise of temperature, K, that opens a bore (mm) by interference and clearance (mm on the diameter, together above 0):
 * (δ + clearance)/(α·d). The same is the fall that shrinks a spigot.
 */
export function riseFor(parting: number, diameter: number, expansion: number): number {
  if (!(parting >= 0 && diameter > 0 && expansion > 0)) {
    throw new RangeError(`parting ${parting}, diameter ${diameter}, expansion ${expansion}`)
  }
  return parting / (expansion * diameter)
}

/**
 * How to put a joint together by temperature. RangeError for a diameter or expansion that is not above 0, a clearance
 * below 0, an ambient below absolute zero, NaN or infinity: whoever calls has checked what the user gave.
 */
export function assemblyPlan(input: AssemblyInput): AssemblyPlan {
  const { diameter, interference, hubExpansion, ambient, hubLimit, cooling } = input
  const { clearance = assemblyClearance(diameter) } = input
  for (const figure of [diameter, interference, hubExpansion, ambient, hubLimit, clearance]) {
    if (!Number.isFinite(figure)) throw new RangeError(`assembly by heat: ${figure}`)
  }
  if (ambient < absoluteZero) throw new RangeError(`ambient: ${ambient} °C`)
  if (clearance < 0) throw new RangeError(`clearance: ${clearance}`)
  const need = interference > 0 ? 'temperature' : 'none'
  const parting = need === 'none' ? 0 : interference + clearance
  const heated = (part: number): HeatedHub => {
    const rise = riseFor(part, diameter, hubExpansion)
    return { rise, temperature: ambient + rise, limit: hubLimit, possible: ambient + rise <= hubLimit }
  }
  const plan = { need, statement: statements[need], clearance, parting, heat: heated(parting) } as const
  if (cooling === undefined) return plan
  const fall = riseFor(parting, diameter, cooling.expansion)
  const shrunk = Math.max(0, cooling.expansion * diameter * (ambient - cooling.coldest))
  return {
    ...plan,
    cold: { temperature: ambient - fall, possible: ambient - fall >= cooling.coldest },
    both: { ...heated(Math.max(0, parting - shrunk)), spigotTemperature: Math.min(ambient, cooling.coldest) },
  }
}

const statements = {
  none:
    'The spigot is no larger than the bore and goes in cold. Heating never creates interference: cold again, the head is ' +
    'as loose as before.',
  temperature:
    'Heat makes the assembly easy and leaves the surfaces whole, so that what smoothing leaves of the interference holds more ' +
    'than when it is pressed. It adds nothing to the interference.',
} as const

const absoluteZero = -273.15

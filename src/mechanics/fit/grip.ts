/** Where a joint presses: pressure MPa, diameter and effective length mm, friction 1. */
export interface Contact {
  readonly pressure: number
  readonly diameter: number
  readonly length: number
  readonly friction: number
}

/** What a joint has to carry, all 0 or more: torque N·mm, force along the axis N, bending moment N·mm. */
export interface Load {
  readonly torque: number
  readonly axial: number
  readonly bending: number
}

/** What a joint carries before it slips or gapes, each load taken alone. */
export interface Grip {
  /** N */
  readonly axial: number
  /** N·mm */
  readonly torque: number
  /** N·mm, at which the joint begins to open on one side. */
  readonly bending: number
}

/** Force along the axis at which the joint slips, N: μ·π·d·L·p. Textbooks of machine design. */
export function axialGrip({ pressure, diameter, length, friction }: Contact): number {
  return friction * Math.PI * diameter * length * pressure
}

/** What the joint carries: axial μπdLp, torque that times d/2, bending p·d·L²/6. */
export function gripOf(contact: Contact): Grip {
  const { pressure, diameter, length } = contact
  const axial = axialGrip(contact)
  return { axial, torque: (axial * diameter) / 2, bending: (pressure * diameter * length ** 2) / 6 }
}

/** Slip force on the joint's surface, N, of torque and axial force together: √(F² + (2T/d)²). */
export function slipForce({ torque, axial }: Pick<Load, 'torque' | 'axial'>, diameter: number): number {
  return Math.hypot(axial, (2 * torque) / diameter)
}

/** How many times the load the joint carries before it slips; undefined where nothing loads it. */
export function slipFactor(contact: Contact, load: Pick<Load, 'torque' | 'axial'>): number | undefined {
  const force = slipForce(load, contact.diameter)
  return force === 0 ? undefined : axialGrip(contact) / force
}

/**
 * Pressure, MPa, below which a bending moment, N·mm, opens the joint on one side: 6M/(d·L²), pressure spread evenly over
 * the width; textbooks of machine elements. Safe: spread by the cosine it would be 2/π times that.
 */
export function gapePressure(bending: number, diameter: number, length: number): number {
  return (6 * bending) / (diameter * length ** 2)
}

/** How many times the bending moment the joint stays closed under; undefined where none bends it. */
export function gapeFactor({ pressure, diameter, length }: Contact, bending: number): number | undefined {
  return bending === 0 ? undefined : pressure / gapePressure(bending, diameter, length)
}

/** Pressure, MPa, at which the joint carries a load with a safety against slipping, and stays closed. */
export function pressureNeeded(contact: Omit<Contact, 'pressure'>, load: Load, safety: number): number {
  const { diameter, length } = contact
  const toHold = (safety * slipForce(load, diameter)) / axialGrip({ ...contact, pressure: 1 })
  return Math.max(toHold, gapePressure(load.bending, diameter, length))
}

/** Effective length, mm, at which the joint carries a load with a safety against slipping, and stays closed. */
export function lengthNeeded(contact: Omit<Contact, 'length'>, load: Load, safety: number): number {
  const { pressure, diameter } = contact
  const toHold = (safety * slipForce(load, diameter)) / axialGrip({ ...contact, length: 1 })
  return Math.max(toHold, Math.sqrt((6 * load.bending) / (diameter * pressure)))
}

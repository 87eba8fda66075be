/** Power, W, of a force (N) on a point that runs at a speed (mm/s). */
export const powerOfForce = (force: number, speed: number): number => (force * speed) / 1000

/** Torque, N·mm, of a force (N) at a radius (mm). */
export const torqueOfForce = (force: number, radius: number): number => force * radius

/** Power, W, to take off metal at a rate (mm³/s) against a specific cutting force (MPa). */
export const powerOfRemoval = (removal: number, specific: number): number => (removal * specific) / 1000

/** Power the motor must give, W, for power at the tip (W) through a drive of an efficiency above 0, at most 1. */
export const motorPower = (power: number, efficiency: number): number => power / efficiency

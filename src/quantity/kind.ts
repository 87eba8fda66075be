/** Which unit a bare number takes, and which unit figures are written in: chosen once for a whole file. */
export type Units = 'mm' | 'in'

/**
 * What a number measures. Inside the program every quantity is a plain number in the unit named here:
 *
 * length mm · angle rad · torque N·mm · power W · rotation-speed rad/s · cutting-speed mm/s ·
 * temperature °C (a point on the scale) · temperature-difference K (a rise or fall) · mass kg · force N ·
 * pressure MPa (= N/mm², also stress) · density kg/m³ · expansion 1/K · ratio 1 (a plain number)
 *
 * Feed a turn and surface roughness are lengths.
 */
export type QuantityKind =
  | 'length'
  | 'angle'
  | 'torque'
  | 'power'
  | 'rotation-speed'
  | 'cutting-speed'
  | 'temperature'
  | 'temperature-difference'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'density'
  | 'expansion'
  | 'ratio'

/** Every kind, in the order in which documentation lists them. */
export const quantityKinds: readonly QuantityKind[] = [
  'length',
  'angle',
  'torque',
  'power',
  'rotation-speed',
  'cutting-speed',
  'temperature',
  'temperature-difference',
  'mass',
  'force',
  'pressure',
  'density',
  'expansion',
  'ratio',
]

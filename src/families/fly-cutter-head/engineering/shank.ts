import { type ShankDrive, shankDrives, taperTorque } from '../../../mechanics/fit/shank-drive.ts'
import type { HeadDesign } from '../design.ts'
import { wantedTorque } from './fit.ts'

/** How the arbor is held and turned in the spindle; a plain round arbor sits in a collet like a straight shank. */
export const shankDriveOf = ({ layout: { shank } }: HeadDesign): ShankDrive => shankDrives[shank?.kind ?? 'straight']

/**
 * Pull of the drawbar, N, at which a taper that turns by friction carries the torque wanted of the joint, at the low
 * friction of a pressed joint; undefined for shanks that are turned by keys or a collet.
 */
export function drawbarPull(design: HeadDesign): number | undefined {
  const cone = design.layout.shank?.profile[0]
  if (cone === undefined || cone.from <= cone.to || shankDriveOf(design).turnedBy !== 'friction') return undefined
  const ofOneNewton = taperTorque({
    drawForce: 1,
    largeDiameter: cone.from,
    smallDiameter: cone.to,
    halfAngle: Math.atan((cone.from - cone.to) / 2 / cone.length),
    friction: design.parameters.settings.fit['friction-pressed'],
  })
  return ofOneNewton.ok ? wantedTorque(design) / ofOneNewton.value : undefined
}

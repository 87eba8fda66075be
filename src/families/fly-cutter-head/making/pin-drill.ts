import { pointLength } from '../../../mechanics/measuring/drill-point.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { pinDiameter } from '../engineering/fit.ts'
import { breakThrough, type Cutter, drillToReam, jobberPoint } from './tooling.ts'

/** The drill for the reamed hole of the catch pin, right through the head; depth of its tip, mm. Undefined: no pin. */
export function pinDrill(design: HeadDesign): { readonly drill: Cutter; readonly depth: number } | undefined {
  const { fit, stock, settings } = design.parameters
  if (fit.catch !== 'pin') return undefined
  const past = stock.size + breakThrough
  const { clearance } = settings['set-up']
  const depthOf = (diameter: number) => past + certain(pointLength({ diameter, pointAngle: jobberPoint }))
  const pin = pinDiameter(design.parameters)
  const { diameter, reach } = drillToReam(design, pin, depthOf(pin) + clearance)
  const depth = depthOf(diameter)
  return { drill: { kind: 'drill', diameter, reach, reachNeeded: depth + clearance }, depth }
}

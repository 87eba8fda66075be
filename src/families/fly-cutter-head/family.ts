import { leastWall } from '../../checks/rules/walls.ts'
import type { Family } from '../family.ts'
import { HeadDesign } from './design.ts'
import { headFigures } from './figures/head-figures.ts'
import { type Parameters, parametersSchema } from './parameters/parameters.ts'
import { headRules } from './rules/head-rules.ts'

export const flyCutterHead: Family<Parameters, HeadDesign> = {
  name: 'fly-cutter-head',
  says: 'Head with an angled face, a slot for a square bit, a step with set screws, and an arbor fitted into a bore',
  schema: parametersSchema,
  build: HeadDesign.from,
  filledIn,
  rules: headRules,
  figures: headFigures,
  leastWall: (design, a, b) => leastWall(design, a, b).least,
}

function filledIn({ parameters: p, layout: l }: HeadDesign): Parameters {
  const torque = l.screws.tighteningTorque
  return {
    ...p,
    stock: { ...p.stock, length: l.stockLength },
    bit: {
      ...p.bit,
      overhang: l.bit.overhang,
      swing: l.bit.swing,
      ...(p.bit.facets && { facets: { ...p.bit.facets, length: l.bit.groundLength } }),
    },
    slot: p.slot.runs === 'stopped' ? { ...p.slot, 'cutter-diameter': 2 * l.slot.end!.radius } : p.slot,
    screws: {
      ...p.screws,
      spacing: l.screws.spacing,
      length: l.screws.length,
      ...(torque !== undefined && { 'tightening-torque': torque }),
    },
  }
}

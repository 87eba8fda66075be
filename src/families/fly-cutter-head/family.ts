import { leastWall } from '../../checks/rules/walls.ts'
import type { Family } from '../family.ts'
import { assemblyDimensions } from './assembly-dimensions.ts'
import { HeadDesign } from './design.ts'
import { drillsOf } from './engineering/balance.ts'
import { cuttingOf } from './engineering/cutting.ts'
import { pinDiameter } from './engineering/fit.ts'
import { facetParameters } from './facet-parameters.ts'
import { headFigures } from './figures/head-figures.ts'
import { headTables } from './figures/head-tables.ts'
import { headSweepFigures } from './figures/sweep-figures.ts'
import { headAsMade } from './making/as-made.ts'
import { headMeasuring } from './making/measuring.ts'
import { headRepairs, stillOpen } from './making/repairs.ts'
import { headRoute } from './making/route.ts'
import { headSetUps } from './making/set-ups.ts'
import { headMockUp } from './mock-up.ts'
import { type Parameters, parametersSchema } from './parameters/parameters.ts'
import { headPictures } from './pictures.ts'
import { headProfiles } from './profiles.ts'
import { headRules } from './rules/head-rules.ts'
import { setUpDimensions } from './set-up-dimensions.ts'
import { headSheets } from './sheets/head-sheets.ts'

export const flyCutterHead: Family<Parameters, HeadDesign> = {
  name: 'fly-cutter-head',
  says: 'Head with an angled face, a slot for a square bit, a step with set screws, and an arbor fitted into a bore',
  schema: parametersSchema,
  build: HeadDesign.from,
  filledIn,
  rules: headRules,
  figures: headFigures,
  sweepFigures: headSweepFigures,
  tables: headTables,
  sheets: headSheets,
  profiles: headProfiles,
  route: headRoute,
  setUps: headSetUps,
  measuring: headMeasuring,
  asMade: (design, sizes) => headAsMade(design, sizes),
  stillOpen,
  furtherDimensions: (design) => [
    { of: 'assembly', dimensions: assemblyDimensions(design) },
    { of: 'set-up', dimensions: setUpDimensions(design) },
  ],
  repairs: headRepairs,
  mockUp: headMockUp,
  pictures: headPictures,
  leastWall: (design, a, b) => leastWall(design, a, b).least,
}

function filledIn(design: HeadDesign): Parameters {
  const { parameters: p, layout: l } = design
  const torque = l.screws.tighteningTorque
  return {
    ...p,
    stock: { ...p.stock, length: l.stockLength },
    bit: {
      ...p.bit,
      overhang: l.bit.overhang,
      swing: l.bit.swing,
      ...((p.bit.facets || p.bit.grind === 'for-work-material') && { facets: facetParameters(l) }),
    },
    slot: p.slot.runs === 'stopped' ? { ...p.slot, 'cutter-diameter': 2 * l.slot.end!.radius } : p.slot,
    fit: p.fit.catch === 'pin' ? { ...p.fit, 'pin-diameter': pinDiameter(p) } : p.fit,
    screws: {
      ...p.screws,
      spacing: l.screws.spacing,
      length: l.screws.length,
      ...(torque !== undefined && { 'tightening-torque': torque }),
    },
    work: { ...p.work, 'cutting-speed': p.work['cutting-speed'] ?? cuttingOf(design).range.high },
    settings: { ...p.settings, balance: { ...p.settings.balance, drills: [...drillsOf(design)] } },
  }
}

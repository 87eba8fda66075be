import type { Figure } from '../../../figures/figure.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import type { AnglesInUse } from '../../../mechanics/angles/angles-in-use.ts'
import type { GroundFacets } from '../../../mechanics/angles/facets.ts'
import type { GrinderSettings } from '../../../mechanics/angles/grinder-table.ts'
import { sweptRadius } from '../../../mechanics/angles/swept-radius.ts'
import type { HeadDesign } from '../design.ts'
import {
  anglesOf,
  edgeReachOf,
  facetsWantedOf,
  feedUntilHeel,
  grinderOf,
  groundBitOf,
  groundSectionOf,
  heelOfBit,
  isGround,
  leastExactReliefOf,
  leastReliefOf,
  noseOfBit,
  suitableOf,
  type TableAngle,
} from '../engineering/angles.ts'
import { groundStressOf } from '../engineering/ground-stress.ts'

const iso = 'ISO 3002-1, reference plane square to the motion at the tip'
const inverse = 'the angles in use solved backwards, closed form; wanted angles from the table of work materials'
const exact = 'corners and edges of the exact ground bit'

const angle = (
  id: string,
  label: string,
  source: string,
  of: (d: HeadDesign) => number | undefined,
  least?: (d: HeadDesign) => number | undefined,
): Figure<HeadDesign> => ({
  id,
  label,
  kind: 'angle',
  source,
  of,
  ...(least && { limit: least, limitIs: 'least' }),
})

const length = (
  id: string,
  label: string,
  source: string,
  of: (d: HeadDesign) => number | undefined,
  least?: (d: HeadDesign) => number | undefined,
): Figure<HeadDesign> => ({ ...angle(id, label, source, of, least), kind: 'length' })

const inUse = (id: string, label: string, name: keyof AnglesInUse, least?: (d: HeadDesign) => number | undefined) =>
  angle(`angle.${id}`, label, iso, (d) => anglesOf(d)[name], least)

/** What a relief may come down to before it is a finding. */
const leastRelief = (name: TableAngle) => (d: HeadDesign) => {
  const suitable = suitableOf(d)
  return suitable && suitable[name].low - d.parameters.settings.grind['angle-tolerance']
}

const ground = (id: string, label: string, name: keyof GroundFacets) =>
  angle(`grind.${id}`, label, 'as given, or worked out for the work material', (d) => d.layout.bit.facets[name])

const wanted = (id: string, label: string, name: keyof GroundFacets) =>
  angle(`wanted.${id}`, label, inverse, (d) => {
    const facets = facetsWantedOf(d)
    return facets?.ok ? facets.value[name] : undefined
  })

const table = (facet: keyof GrinderSettings, label: string) =>
  (['swivel', 'tilt'] as const).map((turn) =>
    angle(
      `grinder.${facet === 'workSide' ? 'work-side' : facet}.${turn}`,
      `Grinder’s table for the ${label}, ${turn === 'swivel' ? 'turned anticlockwise from above' : 'edge at the wheel lifted'}`,
      'normal of the facet brought square to an upright wheel',
      (d) => (isGround(d) ? grinderOf(d)[facet][turn] : undefined),
    ),
  )

/** Distance behind the tip against the motion, mm. */
function behindTip({ layout: { bit } }: HeadDesign, at: Vec3): number {
  return bit.setting.hand * (bit.tip[1] - at[1])
}

const heel = (
  which: 'end' | 'workSide',
  label: string,
  least: (d: HeadDesign) => number | undefined,
): Figure<HeadDesign>[] => {
  const id = `heel.${which === 'end' ? 'end' : 'work-side'}`
  const at = (d: HeadDesign) => heelOfBit(d)?.[which].at
  const place = (suffix: string, words: string, of: (d: HeadDesign, at: Vec3) => number) =>
    length(`${id}.${suffix}`, `${label}: ${words}`, exact, (d) => {
      const there = at(d)
      return there && of(d, there)
    })
  return [
    length(`${id}.clearance`, `Clearance ${label}`, exact, (d) => heelOfBit(d)?.[which].clearance, least),
    place('behind', 'least so far behind the tip', behindTip),
    place('above', 'and so far above the cut plane', (d, p) => p[2] - d.layout.bit.tip[2]),
    place('radius', 'and on this radius', (_, p) => Math.hypot(p[0], p[1])),
  ]
}

/** Angles in use, what to grind for them, and whether heel and underside come through. */
export const anglesFigures: readonly Figure<HeadDesign>[] = [
  inUse('radial-rake', 'Radial rake in use', 'radialRake'),
  inUse('axial-rake', 'Axial rake in use', 'axialRake'),
  inUse('radial-relief', 'Radial relief of the end flank in use', 'radialRelief', leastRelief('radialRelief')),
  inUse('axial-relief', 'Axial relief of the work-side flank in use', 'axialRelief', leastRelief('axialRelief')),
  inUse('cutting-edge', 'Cutting edge angle κr of the end edge', 'cuttingEdgeAngle'),
  inUse(
    'minor-edge',
    'Minor cutting edge angle κr′ of the work-side edge',
    'minorCuttingEdgeAngle',
    (d) => d.parameters.settings.grind['minor-edge-angle'],
  ),
  inUse('corner', 'Corner between the two edges εr', 'cornerAngle'),
  inUse('orthogonal-rake', 'Orthogonal rake γo of the end edge', 'orthogonalRake'),
  inUse('normal-rake', 'Normal rake γn of the end edge', 'normalRake'),
  inUse('inclination', 'Inclination λs of the end edge', 'inclination'),
  angle(
    'tip.lead',
    'Tip ahead of the radius along the slot',
    'asin of tip ahead over tip radius',
    ({ layout: { bit } }) => Math.asin((bit.setting.hand * bit.tip[1]) / bit.tipRadius),
  ),
  ground('rake-along', 'Ground: rake along the bit', 'rakeAlong'),
  ground('rake-across', 'Ground: rake across the bit', 'rakeAcross'),
  ground('end-edge-angle', 'Ground: end edge angle', 'endEdgeAngle'),
  ground('end-relief', 'Ground: end relief', 'endRelief'),
  ground('work-side-edge-angle', 'Ground: work-side edge angle', 'workSideEdgeAngle'),
  ground('work-side-relief', 'Ground: work-side relief', 'workSideRelief'),
  wanted('rake-along', 'To grind for this work: rake along the bit', 'rakeAlong'),
  wanted('rake-across', 'To grind for this work: rake across the bit', 'rakeAcross'),
  wanted('end-relief', 'To grind for this work: end relief', 'endRelief'),
  wanted('work-side-relief', 'To grind for this work: work-side relief', 'workSideRelief'),
  ...table('rake', 'rake face'),
  ...table('end', 'end flank'),
  ...table('workSide', 'work-side flank'),
  ...heel('end', 'behind the end edge', (d) => {
    const found = heelOfBit(d)
    return found && feedUntilHeel(d, found)
  }),
  ...heel('workSide', 'behind the work-side edge', (d) => d.parameters.settings.grind['heel-clearance']),
  angle(
    'least-end-relief.in-use',
    'Least relief in use behind the end edge, whole width of the bit',
    'half the arc from tip to heel: ½·(asin((e − g)/R) + asin((w − e)/R))',
    (d) => leastReliefOf(d)?.inUse,
  ),
  angle(
    'least-end-relief.as-ground',
    'The same as ground',
    'half the arc from tip to heel, turned into the bit’s own frame',
    (d) => leastReliefOf(d)?.asGround,
  ),
  angle('least-end-relief.exact', 'Least end relief to grind within this depth of cut', exact, leastExactReliefOf),
  length(
    'end-edge.reach',
    'End edge reaches above the cut plane',
    exact,
    edgeReachOf,
    (d) => d.parameters.work['depth-of-cut'],
  ),
  length('swept-diameter.bit', 'Swept diameter of the bit alone', exact, (d) => 2 * sweptRadius(groundBitOf(d)).radius),
  length(
    'nose.edge-taken',
    'Nose takes of each edge',
    'circle that touches both edges in the reference plane',
    (d) => noseOfBit(d).edgeTaken,
  ),
  length(
    'nose.lift',
    'Nose cuts above the sharp corner',
    'circle that touches both edges in the reference plane',
    (d) => noseOfBit(d).lift,
  ),
  {
    id: 'grind.section-left',
    label: 'Section of the bit left where the grinding ends, over the blank’s',
    kind: 'ratio',
    source: 'blank cut by the three facets',
    of: (d) => groundSectionOf(d).share,
  },
  {
    id: 'grind.stress',
    label: 'Bending stress in the bit where the grinding ends',
    kind: 'pressure',
    source: 'main cutting force times ground length over the section modulus that is left',
    of: groundStressOf,
    limit: (d) => d.parameters.settings.running['bit-stress'],
  },
]

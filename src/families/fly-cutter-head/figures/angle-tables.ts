import { inSentence } from '../../../checks/in-sentence.ts'
import type { TableOf } from '../../../figures/table.ts'
import type { GrinderSetting } from '../../../mechanics/angles/grinder-table.ts'
import type { HeadDesign } from '../design.ts'
import {
  anglesOf,
  facetsWantedOf,
  grinderOf,
  heelOfBit,
  isGround,
  suitableOf,
  tableAngles,
} from '../engineering/angles.ts'
import { facetsForMiddle, suitableFor } from '../engineering/grind.ts'

const words = (label: string) => ({ label, kind: 'text' }) as const
const angle = (label: string) => ({ label, kind: 'angle' }) as const
const length = (label: string) => ({ label, kind: 'length' }) as const

/** Angles in use beside what the work material wants, and the facet that makes each. */
export const anglesTable: TableOf<HeadDesign> = (design) => {
  const suitable = suitableOf(design)
  const wanted = facetsWantedOf(design)
  const inUse = anglesOf(design)
  const { facets } = design.layout.bit
  const made = {
    radialRake: ['Radial rake', 'rake along', 'rakeAlong'],
    axialRake: ['Axial rake', 'rake across', 'rakeAcross'],
    radialRelief: ['Relief behind the end edge', 'end relief', 'endRelief'],
    axialRelief: ['Relief behind the work-side edge', 'work-side relief', 'workSideRelief'],
  } as const
  return {
    id: 'angles-in-use',
    title: `Angles in use, and what ${inSentence(design.layout.materials.work.title)} wants`,
    columns: [
      words('angle'),
      angle('in use'),
      angle('wanted from'),
      angle('to'),
      words('made by'),
      angle('ground'),
      angle('for the middle'),
    ],
    rows: tableAngles.map((name) => {
      const [title, facet, key] = made[name]
      return [
        title,
        inUse[name],
        suitable?.[name].low,
        suitable?.[name].high,
        facet,
        facets[key],
        wanted?.ok ? wanted.value[key] : undefined,
      ]
    }),
  }
}

/** Each facet as it is laid on the table of a bench grinder; none for a bit that is square as bought. */
export const facetsTable: TableOf<HeadDesign> = (design) => {
  if (!isGround(design)) return undefined
  const { rake, end, workSide } = grinderOf(design)
  const { facets } = design.layout.bit
  const row = (name: string, first: number, second: number, setting: GrinderSetting) =>
    [name, first, second, setting.towardsWheel, setting.up, setting.liesOn, setting.swivel, setting.tilt] as const
  return {
    id: 'facets',
    title:
      'Facets on the bench grinder: wheel face upright; table turned anticlockwise from above, then its edge at the wheel lifted',
    columns: [
      words('facet'),
      angle('along its edge'),
      angle('behind its edge'),
      words('towards the wheel'),
      words('on top'),
      words('lies on'),
      angle('turn'),
      angle('lift'),
    ],
    rows: [
      row('rake face', facets.rakeAcross, facets.rakeAlong, rake),
      row('end flank', facets.endEdgeAngle, facets.endRelief, end),
      row('work-side flank', facets.workSideEdgeAngle, facets.workSideRelief, workSide),
    ],
  }
}

/** Smallest clearances behind both edges, and where on the bit. */
export const heelTable: TableOf<HeadDesign> = (design) => {
  const heel = heelOfBit(design)
  if (!heel) return undefined
  const { tip, tipRadius, setting } = design.layout.bit
  const row = (name: string, { clearance, at: [x, y, z], between }: (typeof heel)['end']) =>
    [
      name,
      clearance,
      setting.hand * (tip[1] - y),
      tipRadius - Math.hypot(x, y),
      z - tip[2],
      between.join(', '),
    ] as const
  return {
    id: 'heel',
    title: 'Least clearance behind the edges, and where',
    columns: [
      words('behind'),
      length('clearance'),
      length('behind the tip'),
      length('inside its circle'),
      length('above the cut'),
      words('faces that meet there'),
    ],
    rows: [row('end edge', heel.end), row('work-side edge', heel.workSide)],
  }
}

/** For every work material of the table: angles in use wanted of this bit, and the facets that make them. */
export const wantedTable: TableOf<HeadDesign> = (design) => {
  const { setting, facets, blank } = design.layout.bit
  const rows = design.tables.workMaterials.flatMap((work) => {
    const suitable = suitableFor(work, setting, blank.width, facets.endEdgeAngle)
    if (!suitable.ok) return []
    const wanted = facetsForMiddle(suitable.value, setting, facets.endEdgeAngle, facets.workSideEdgeAngle)
    const ground = wanted.ok ? wanted.value : undefined
    return [
      [
        work.name,
        ...tableAngles.flatMap((name) => [suitable.value[name].low, suitable.value[name].high]),
        ground?.rakeAlong,
        ground?.rakeAcross,
        ground?.endRelief,
        ground?.workSideRelief,
      ],
    ]
  })
  if (rows.length === 0) return undefined
  return {
    id: 'wanted-angles',
    title:
      'Wanted angles in use by work material (high-speed steel), and the facets that make their middle on this head',
    columns: [
      words('work material'),
      ...['radial rake', 'axial rake', 'radial relief', 'axial relief'].flatMap((name) => [
        angle(`${name} from`),
        angle('to'),
      ]),
      angle('grind rake along'),
      angle('rake across'),
      angle('end relief'),
      angle('work-side relief'),
    ],
    rows,
  }
}

import type { Figure } from '../../../figures/figure.ts'
import { sizeFrom } from '../../../figures/measuring.ts'
import type { Table, TableOf } from '../../../figures/table.ts'
import { askedLines } from '../../../measured/inspection-sheet.ts'
import { sizeName } from '../../../measured/measured-value.ts'
import { type Spread, spreadOf, type Toleranced } from '../../../mechanics/uncertainty/spread.ts'
import { facetAngles } from '../bit.ts'
import type { HeadDesign } from '../design.ts'
import { fitProblems } from '../engineering/fit.ts'
import { headAsMade, type MadeSizes } from '../making/as-made.ts'
import { headMeasuring } from '../making/measuring.ts'
import { fitFigures } from './fit.ts'
import { geometryFigures } from './geometry.ts'

const known = (id: string): Figure<HeadDesign>[] =>
  [...geometryFigures, ...fitFigures].filter((figure) => figure.id === id)

/** What tolerances are to leave alone: swing, place of the slot, wall between bore and slot, thread in the wall, the joint. */
const watched: readonly Figure<HeadDesign>[] = [
  ...known('swing'),
  {
    id: 'slot.ahead',
    label: 'Slot ahead of centre',
    kind: 'length',
    source: 'geometry of the layout',
    of: ({ parameters }) => parameters.slot['ahead-of-centre'],
  },
  ...known('wall.slot-bore'),
  {
    id: 'screws.engaged',
    label: 'Thread of a set screw in the wall',
    kind: 'length',
    source: 'geometry of the layout',
    of: ({ parameters, layout }) => Math.min(parameters.step['wall-thickness'], layout.screws.length),
  },
  {
    id: 'fit.interference',
    label: 'Interference of spigot and bore',
    kind: 'length',
    source: 'spigot less bore',
    of: ({ layout: { fit } }) => fit && (fit.interference.least + fit.interference.most) / 2,
  },
  ...known('fit.capacity.torque'),
]

/** Parts that are simulated, and where their numbers start: the same report every time. */
const count = 150
const seed = 417

/** Share of good parts below which, beyond what chance explains, a tolerance is worth tightening, and a tolerance's share of the spread below which it may be relaxed. */
const wanted = 0.997
const idle = 0.01

/** How far a matched spigot stands over its bore: a tolerance of its own, for it is turned to the bore as measured. */
const overBore = 'arbor spigot over its bore'

/** Sizes that are made to others as measured, their limits counted there: a matched spigot, and a slot milled to its bit. */
const follows = ({ layout }: HeadDesign, id: string): boolean =>
  id === 'bit.width' || (id === 'spigot.diameter' && layout.fit?.kind === 'matched')

/** What is ground by hand at the tip moves none of the watched figures. */
const atTheTip: ReadonlySet<string> = new Set(['nose-radius', ...facetAngles.map((f) => f.id)].map((id) => `bit.${id}`))

interface Spreads {
  readonly sizes: readonly Toleranced[]
  readonly spreads: readonly Spread[]
}

/** All tolerances against every watched figure. */
const spreadsOf = (design: HeadDesign): Spreads =>
  design.once('spread of the tolerances', () => {
    const lines = askedLines(headMeasuring(design)).filter(
      ({ id, from, to }) =>
        from !== undefined && to !== undefined && from < to && !follows(design, id) && !atTheTip.has(id),
    )
    const { fit } = design.layout
    const sizes = [
      ...lines.map((line): Toleranced => {
        const ends = [sizeFrom(line.measuring, line.from!), sizeFrom(line.measuring, line.to!)]
        return { id: sizeName(line), low: Math.min(...ends), high: Math.max(...ends) }
      }),
      ...(fit?.kind === 'matched' && fit.interference.least < fit.interference.most
        ? [{ id: overBore, low: fit.interference.least, high: fit.interference.most }]
        : []),
    ]
    const spreads = spreadOf({
      sizes,
      outcome(values) {
        // The watched figures rest on no other engineering than the fit's.
        const made = headAsMade(design, sizesMade(design, sizes, values), fitProblems)
        return watched.map((figure) => (made.ok ? figure.of(made.value) : undefined))
      },
      held: watched.map(({ limit, limitIs = 'most' }) => {
        const value = limit?.(design)
        return value === undefined ? undefined : { value, is: limitIs }
      }),
      count,
      seed,
    })
    return { sizes, spreads }
  })

/** Sizes of one simulated tool; its spigot was turned to its own bore. */
function sizesMade(design: HeadDesign, sizes: readonly Toleranced[], values: readonly number[]): MadeSizes {
  const made = new Map(sizes.map(({ id }, i) => [id, values[i]!]))
  const over = made.get(overBore)
  if (over === undefined) return made
  made.delete(overBore)
  const bore = made.get('body bore.diameter') ?? design.parameters.bore.diameter
  return made.set('arbor spigot.diameter', bore + over)
}

/** What the tolerances do to the watched lengths, and to the joint: worst case, root of the sum of squares, simulation. */
export const spreadTable: TableOf<HeadDesign> = (design) => spreadRows(design, 'length', 'spread', '')
export const spreadOfJointTable: TableOf<HeadDesign> = (design) =>
  spreadRows(design, 'torque', 'spread-joint', ', the joint')

/** A column has one unit: lengths and torques stand in tables of their own. */
function spreadRows(design: HeadDesign, kind: 'length' | 'torque', id: string, of: string): Table | undefined {
  const percent = (share: number | undefined) => (share === undefined ? undefined : 100 * share)
  const rows = watched.flatMap((figure, i) => {
    const { middle, worst, rootSumSquare: root, mean, deviation, good } = spreadsOf(design).spreads[i]!
    if (figure.kind !== kind || middle === undefined) return []
    const ends = [worst?.low, worst?.high, root?.low, root?.high, mean, deviation]
    return [[figure.label, middle, ...ends, percent(good?.share), percent(good?.low)]]
  })
  return rows.length === 0 ? undefined : { id, title: `${titleOf(design)}${of}`, columns: columnsOf(kind), rows }
}

/** Which tolerances bring the spread, and what to do about it. */
export const spreadCausesTable: TableOf<HeadDesign> = (design) => {
  const { spreads, sizes } = spreadsOf(design)
  const rows = watched.flatMap(({ label }, i) => {
    const { causes, good } = spreads[i]!
    return causes
      .slice(0, 4)
      .map(({ id, share }, k) => [
        label,
        id,
        100 * share,
        k === 0 && good !== undefined && good.high < wanted ? 'tighten this one first' : '',
      ])
  })
  const brings = new Set(spreads.flatMap((s) => s.causes.filter((c) => c.share > idle).map((c) => c.id)))
  const free = sizes.filter(({ id }) => !brings.has(id)).map(({ id }) => id)
  if (rows.length === 0) return undefined
  return {
    id: 'spread-causes',
    title: 'Which tolerances bring that spread',
    columns: [
      { label: 'figure', kind: 'text' },
      { label: 'tolerance of', kind: 'text' },
      { label: 'share of the variance', kind: 'ratio', unit: '%' },
      { label: 'advice', kind: 'text' },
    ],
    rows: [
      ...rows,
      ...(free.length > 0
        ? [['none of these', free.join(', '), undefined, 'may be relaxed as far as these figures go']]
        : []),
    ],
  }
}

const titleOf = ({ layout }: HeadDesign): string =>
  `What the tolerances do: ${count} parts simulated with the same numbers every time, limits taken as three standard deviations${layout.fit?.kind === 'matched' ? '; the spigot turned to each bore' : ''}`

const columnsOf = (kind: 'length' | 'torque') =>
  [
    { label: 'figure', kind: 'text' },
    { label: 'middle', kind },
    { label: 'worst case, from', kind },
    { label: 'to', kind },
    { label: 'root of squares, from', kind },
    { label: 'to', kind },
    { label: 'simulated mean', kind },
    { label: 'standard deviation', kind },
    { label: 'good parts', kind: 'ratio', unit: '%' },
    { label: 'at least (95 %)', kind: 'ratio', unit: '%' },
  ] as const

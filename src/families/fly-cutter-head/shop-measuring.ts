import { nearest } from '../../input/nearest.ts'
import type { Problem, Result } from '../../input/problem.ts'
import type { Tables } from '../../tables/read-tables.ts'
import type { Parameters } from './parameters/parameters.ts'

/** Gauge blocks and pins, mm, and angle blocks, rad, that the shop has, in no order; a size twice where it has it twice. */
export interface ShopMeasuring {
  readonly gaugeBlocks: readonly number[]
  readonly angleBlocks: readonly number[]
  readonly gaugePins: readonly number[]
}

export const noMeasuring: ShopMeasuring = { gaugeBlocks: [], angleBlocks: [], gaugePins: [] }

/** Variants of a design share their shop and tables, and a box holds some hundred pins: each is put together once. */
const known = new WeakMap<Parameters['shop'], { readonly tables: Tables; readonly found: Result<ShopMeasuring> }>()

/** The boxed sets that a shop names and what it has besides. Problems: a name that none of the three tables has. */
export function shopMeasuringOf({ shop }: Pick<Parameters, 'shop'>, tables: Tables): Result<ShopMeasuring> {
  const before = known.get(shop)
  if (before?.tables === tables) return before.found
  const found = putTogether(shop, tables)
  known.set(shop, { tables, found })
  return found
}

function putTogether(shop: Parameters['shop'], tables: Tables): Result<ShopMeasuring> {
  const { gaugeBlocks, angleBlocks, gaugePins } = tables
  const names = [...gaugeBlocks, ...angleBlocks, ...gaugePins].map(({ name }) => name)
  const sets = shop['measuring-sets']
  const problems = sets.flatMap((set, at): Problem[] => {
    if (names.includes(set)) return []
    const meant = nearest(set, names)
    const where = { file: '', path: `shop.measuring-sets.${at}` }
    const remedy = meant === undefined ? {} : { remedy: `write ${meant}` }
    return [{ code: 'not-in-table', where, found: set, allowed: names.join(', '), ...remedy }]
  })
  if (problems.length > 0) return { ok: false, problems }
  const all = <Row extends { readonly name: string }>(
    rows: readonly Row[],
    pieces: (row: Row) => readonly number[],
    loose: readonly number[],
  ) =>
    rows
      .filter(({ name }) => sets.includes(name))
      .flatMap(pieces)
      .concat(loose)
  return {
    ok: true,
    value: {
      gaugeBlocks: all(gaugeBlocks, ({ blocks }) => blocks, shop['gauge-blocks']),
      angleBlocks: all(angleBlocks, ({ angles }) => angles, shop['angle-blocks']),
      gaugePins: all(gaugePins, ({ diameters }) => diameters, shop['gauge-pins']),
    },
  }
}

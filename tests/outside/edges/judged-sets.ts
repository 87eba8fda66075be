import { readFileSync } from 'node:fs'
import { obliqueViews, standardViews } from '../../edges/solids.ts'
import { type NamedSet, parameterSets } from '../brep/parameter-sets.ts'

/**
 * The sets that are judged, by number: both hands, 0° and 30° faces, hexagons both ways, round and square bars, every
 * kind of slot and bore, 1 to 6 screws, both sides of the step, and the ones on which the judge was found wanting.
 */
export const judgedSets: readonly number[] = [0, 1, 3, 6, 8, 9, 11, 12, 17, 19, 22, 24, 30, 35, 38, 41]

/** Those whose arbor and bit are judged as well: straight, R8, Morse and 7/24 shanks. */
const withOtherParts: readonly number[] = [0, 3, 9, 12]

export const setOf = (number: number): NamedSet => parameterSets[number]!

/** The parts and views that are asked for of a set. */
export const asked = (number: number) => [
  { id: 'body' as const, views: [...standardViews, ...obliqueViews] },
  ...(withOtherParts.includes(number) ? (['arbor', 'bit'] as const) : []).map((id) => ({
    id,
    views: [standardViews[2]!, ...obliqueViews],
  })),
]

/** Where the judge's answer is kept. */
export const judgedFile = (number: number): URL => new URL(`judged/${number}.json`, import.meta.url)

export const readJudged = (number: number): string => readFileSync(judgedFile(number), 'utf8')

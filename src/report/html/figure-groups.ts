import type { Report } from '../report-schema.ts'

type Figure = Report['figures'][number]

/** Figures that belong together, by the first word of their ids. */
const groups: readonly (readonly [title: string, ...words: string[]])[] = [
  ['Angles in use', 'angle'],
  ['Grinding the bit', 'grind', 'wanted', 'grinder', 'nose'],
  ['Clearance behind the edges', 'heel', 'least-end-relief', 'end-edge'],
  ['Bit clamping', 'clamp'],
  ['Cutting', 'cut', 'feed'],
  ['Finish', 'finish'],
  ['Fit of head and arbor', 'fit', 'shank'],
  ['Other ways to hold the head', 'hold'],
  ['Balance', 'balance'],
  ['Speeds', 'speed'],
  ['Tolerances', 'tolerance'],
  ['Walls', 'wall', 'hub-ratio'],
  ['Masses', 'mass'],
]

const rest = 'Sizes'

/** The figures under headings, in the order of the report; sizes of the tool, which have no heading of their own, first. */
export function groupedFigures(figures: readonly Figure[]): { title: string; figures: readonly Figure[] }[] {
  const titleOf = ({ id }: Figure) => {
    const word = id.split('.')[0]!
    return groups.find(([, ...words]) => words.includes(word))?.[0] ?? rest
  }
  return [rest, ...groups.map(([title]) => title)]
    .map((title) => ({ title, figures: figures.filter((figure) => titleOf(figure) === title) }))
    .filter((group) => group.figures.length > 0)
}

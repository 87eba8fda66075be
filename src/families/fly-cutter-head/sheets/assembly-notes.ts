import { inSentence } from '../../../checks/in-sentence.ts'
import type { DrawnNotes, DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { stickOut } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { clampingOf } from '../engineering/clamping.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { limitNames, neverExceedOf } from '../engineering/never-exceed.ts'
import { catchWords, joiningWords } from '../making/joining-words.ts'
import type { ListedPart } from '../parts-list.ts'
import { written } from '../words.ts'
import { stampedArrow, stampedSpeed } from './stamp-words.ts'

export const partsTable = (items: readonly ListedPart[]): DrawnTable => ({
  kind: 'table',
  title: 'Parts list',
  columns: ['item', 'name', 'off', 'material', 'stock to cut, or to buy'],
  rows: items.map(({ item, name, count, material, stock }) => [`${item}`, name, `${count}`, material, stock]),
})

/** How it goes together, what is stamped on it, what it is run at, what to beware of. */
export function assemblyNotes(design: HeadDesign): DrawnNotes[] {
  return [
    {
      kind: 'notes',
      title: 'Putting it together',
      lines: numbered([...joiningWords(design), ...catchWords(design), bitWords(design)]),
    },
    { kind: 'notes', title: 'Stamp on the head', lines: stampWords(design) },
    { kind: 'notes', title: 'Cautions', lines: cautions },
  ]
}

const numbered = (lines: readonly string[]): string[] => lines.map((line, i) => `${i + 1}. ${line}`)

function bitWords(design: HeadDesign): string {
  const { layout: l } = design
  const torque = written(design, 'torque', clampingOf(design).tightening.torque)
  const length = (value: number) => written(design, 'length', value)
  const screws = l.screws.xs.length > 1 ? 'each set screw, in turn, ' : 'the set screw '
  return `Lay the bit on the slot floor, ${length(stickOut(design))} out of the trailing wall (overhang ${length(l.bit.overhang)} from the corner). Tighten ${screws}to ${torque}, never above; again after the first minute of cutting.`
}

function stampWords(design: HeadDesign): string[] {
  const { cause } = neverExceedOf(design)
  const { speed, runAt } = cuttingOf(design)
  const { layout: l } = design
  const work = inSentence(l.materials.work.title)
  const advised = written(design, 'rotation-speed', runAt)
  return [
    `${stampedSpeed(design)} (limited by: ${limitNames[cause]}); ${stampedArrow(design)}.`,
    speed.advised
      ? `Not stamped: ${advised} is advised for ${work}, for the life of the edge. It is no safety limit.`
      : `Not stamped: no speed of the spindle is slow enough for ${work}; the slowest is ${advised}.`,
  ]
}

/** Of method and trade: common practice, no source. */
const cautions: readonly string[] = [
  'Shop-made tool, unproven until inspected and run up slowly behind a guard, nobody in the plane of the swing.',
  'Turn it one full turn by hand, spindle isolated: clear of clamps, vise handles and column. Key out of the drawbar.',
  'A printed mock-up is turned by hand only, never under power.',
  'Drawbar always: an interrupted cut works a shank loose.',
  'Eye protection; no gloves, loose sleeves or hair. High-speed steel cracks over a chip, an unsupported span or an overtightened screw.',
  'The manual of the machine, local rules and licensed practice come first.',
]

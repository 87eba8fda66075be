import type { SetLevel } from '../set-result.ts'

/** How a level is told: in words, by a sign, and by a hatch; colour only helps. */
export interface LevelLook {
  readonly words: string
  readonly sign: string
  /** Class of an area. */
  readonly look: string
}

export const levelLooks: Readonly<Record<SetLevel, LevelLook>> = {
  none: { words: 'no findings', sign: '', look: 'level-none' },
  note: { words: 'note', sign: '·', look: 'level-note' },
  caution: { words: 'caution', sign: '!', look: 'level-caution' },
  stop: { words: 'STOP', sign: '×', look: 'level-stop' },
  impossible: { words: 'cannot be built', sign: '–', look: 'level-impossible' },
}

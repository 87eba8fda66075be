import type { FindingLever } from '../../../checks/finding.ts'
import type { HeadDesign } from '../design.ts'

/** What to change for more interference at its least, best first. */
export function tighter({ parameters: { fit }, tables }: HeadDesign): readonly FindingLever[] {
  switch (fit.kind) {
    case 'matched':
      return [
        { path: 'fit.interference-ratio', turn: 'up' },
        { path: 'fit.interference-spread', turn: 'down' },
      ]
    case 'iso-286':
      return [...codes(shaftsOf(fit.code).after), ...codes(finer), matched]
    case 'ansi-b4-1':
      return [
        ...classesOf(fit.class, tables.ansiB41).after.map((name) => ({ path: 'fit.class', choose: name })),
        matched,
      ]
    case 'limits':
      return [
        { path: 'fit.spigot-smallest', turn: 'up' },
        { path: 'fit.bore-largest', turn: 'down' },
        { path: 'fit.spigot-smallest', turn: 'up', with: ['fit.spigot-largest'] },
        matched,
      ]
    default:
      return []
  }
}

/** What to change for less interference at its most, best first. */
export function looser({ parameters: { fit }, tables }: HeadDesign): readonly FindingLever[] {
  switch (fit.kind) {
    case 'matched':
      return [
        { path: 'fit.interference-spread', turn: 'down' },
        { path: 'fit.interference-ratio', turn: 'down' },
      ]
    case 'iso-286':
      return [...codes(shaftsOf(fit.code).before), ...codes(finer), matched]
    case 'ansi-b4-1':
      return [
        ...classesOf(fit.class, tables.ansiB41).before.map((name) => ({ path: 'fit.class', choose: name })),
        matched,
      ]
    case 'limits':
      return [
        { path: 'fit.spigot-largest', turn: 'down' },
        { path: 'fit.bore-smallest', turn: 'up' },
        { path: 'fit.spigot-largest', turn: 'down', with: ['fit.spigot-smallest'] },
        matched,
      ]
    default:
      return []
  }
}

const codes = (list: readonly string[]): FindingLever[] => list.map((code) => ({ path: 'fit.code', choose: code }))

/** Bore and spigot made a grade finer, the tightest first: where the tolerance of a usual code is too wide at both ends. */
const finer = ['H6/u5', 'H6/s5', 'H6/r5'] as const

/** The last choice: the bore is made first, and the spigot to it. */
const matched: FindingLever = { path: 'fit.kind', choose: 'matched' }

/** Shafts of the interference fits in use with one hole, loosest first: ISO 286-1. */
const pressing = ['p6', 'r6', 's6', 'u6', 'x6'] as const

function shaftsOf(code: string) {
  const [hole = 'H7', shaft = ''] = code.split('/').map((part) => part.trim())
  const letter = shaft.replace(/\d/g, '')
  const at = pressing.findIndex((held) => held.replace(/\d/g, '') >= letter)
  const from = at < 0 ? pressing.length : at
  const own = pressing[from]?.startsWith(letter) === true
  const written = (shafts: readonly string[]) => shafts.map((held) => `${hole}/${held}`)
  return {
    before: written(pressing.slice(0, from)).toReversed(),
    after: written(pressing.slice(own ? from + 1 : from)),
  }
}

function classesOf(fitClass: string, rows: readonly { readonly fitClass: string }[]) {
  const force = [...new Set(rows.map((row) => row.fitClass))].filter((name) => name.startsWith('FN')).toSorted()
  const at = force.indexOf(fitClass)
  return { before: force.slice(0, Math.max(0, at)).toReversed(), after: force.slice(at + 1) }
}

import type { Amount, Finding, FindingLever } from '../../../checks/finding.ts'
import { inSentence } from '../../../checks/in-sentence.ts'
import type { Rule } from '../../../checks/rule.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf, facetsWantedOf, suitableOf, type TableAngle, tableAngles } from '../engineering/angles.ts'
import { facetPaths, facetsBeyondLimits } from '../engineering/grind.ts'

/** Whether the angles in use are near what the work material wants. */
export const angles: Rule<HeadDesign> = {
  id: 'angles',
  findings(design) {
    const suitable = suitableOf(design)
    const { work } = design.layout.materials
    if (!suitable) {
      return [
        {
          id: 'angles:not-in-table',
          level: 'note',
          text: `The table of work materials has no tool angles for ${work.name}: rakes and reliefs are held against nothing.`,
          levers: [],
        },
      ]
    }
    const tolerance = design.parameters.settings.grind['angle-tolerance']
    const inUse = anglesOf(design)
    return tableAngles.flatMap((name): Finding[] => {
      const { low, high } = suitable[name]
      const value = inUse[name]
      const tooLittle = value < low - tolerance - slack
      if (!tooLittle && value <= high + tolerance + slack) return []
      const range = high - low < slack ? degrees(low) : `${degrees(low)} to ${degrees(high)}`
      const { title, harm } = words[name]
      return [
        {
          id: `angles:${ids[name]}`,
          level: 'caution',
          text: `${title} in use is ${degrees(value)}; ${inSentence(work.title)} wants ${range}: ${tooLittle ? harm.little : harm.much}. ${toGrind(design, name)}`,
          figure: angle(value),
          limit: {
            ...angle(tooLittle ? low - tolerance : high + tolerance),
            reason: `wanted ${range}, give or take ${degrees(tolerance)} (rule of thumb)`,
          },
          levers: leversFor(design, name, tooLittle),
        },
      ]
    })
  },
}

const slack = 1e-9
const degrees = (value: number) => formatQuantity('angle', value, 'mm', { decimals: 1 })
const angle = (value: number): Amount => ({ value, kind: 'angle' })

export const ids: Readonly<Record<TableAngle, string>> = {
  radialRake: 'radial-rake',
  axialRake: 'axial-rake',
  radialRelief: 'radial-relief',
  axialRelief: 'axial-relief',
}

const facetOf = {
  radialRake: 'rakeAlong',
  axialRake: 'rakeAcross',
  radialRelief: 'endRelief',
  axialRelief: 'workSideRelief',
} as const satisfies Record<TableAngle, keyof typeof facetPaths>

const weak = 'the edge is weak, grabs and chips'
const words: Readonly<Record<TableAngle, { title: string; harm: { little: string; much: string } }>> = {
  radialRake: {
    title: 'Radial rake',
    harm: { little: 'the end edge scrapes and pushes instead of cutting', much: weak },
  },
  axialRake: { title: 'Axial rake', harm: { little: 'the chip is pressed down instead of lifted', much: weak } },
  radialRelief: { title: 'Relief behind the end edge', harm: { little: 'the end flank rubs as it wears', much: weak } },
  axialRelief: {
    title: 'Relief behind the work-side edge',
    harm: {
      little: 'without back relief the underside rubs behind its edge and leaves faint skip marks on the finished face',
      much: weak,
    },
  },
}

/** What to grind for the middle of the range, or that nothing on this blank gives it. */
function toGrind(design: HeadDesign, name: TableAngle): string {
  const wanted = facetsWantedOf(design)
  if (!wanted?.ok || facetsBeyondLimits(wanted.value).length > 0) {
    return 'No facet that can be ground on this blank gives it: the slot is too far from the axis.'
  }
  const what = {
    rakeAlong: 'rake along',
    rakeAcross: 'rake across',
    endRelief: 'end relief',
    workSideRelief: 'work-side relief',
  }
  return `Grind ${what[facetOf[name]]} to ${degrees(wanted.value[facetOf[name]])} for the middle.`
}

/** The facet itself first, then the place of the slot, which both rake and relief of the end depend on. */
function leversFor({ parameters: { bit } }: HeadDesign, name: TableAngle, tooLittle: boolean): FindingLever[] {
  const turn = tooLittle ? 'up' : 'down'
  const other = tooLittle ? 'down' : 'up'
  return [
    ...(bit.grind === 'as-given' && bit.facets ? [{ path: facetPaths[facetOf[name]], turn } as const] : []),
    { path: 'bit.grind', choose: 'for-work-material' },
    ...(name === 'radialRake' ? [{ path: 'slot.ahead-of-centre', turn: other } as const] : []),
    ...(name === 'radialRelief' ? [{ path: 'slot.ahead-of-centre', turn } as const] : []),
  ]
}

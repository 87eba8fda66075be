import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { goesThroughAt, groundRunOf, groundSectionOf } from '../engineering/angles.ts'
import { groundStressOf } from '../engineering/ground-stress.ts'

/** Whether grinding leaves a bit that carries the cut. */
export const grind: Rule<HeadDesign> = {
  id: 'grind',
  findings(design) {
    const { parameters, units } = design
    const { share, modulus, blankModulus } = groundSectionOf(design)
    const run = groundRunOf(design)
    const runs = `The facets run ${written(mm(run), units)} along the bit`
    const levers = [
      { path: 'bit.facets.length', turn: 'down' },
      { path: 'bit.facets.rake-along', turn: 'down' },
      { path: 'bit.facets.rake-across', turn: 'down' },
      { path: 'bit.width', turn: 'up' },
    ] as const
    const through = goesThroughAt(design)
    if (through !== undefined) {
      return [
        {
          id: 'grind:through',
          level: 'stop',
          text: `${runs} and go right through it: the tip is ground off.`,
          figure: mm(run),
          limit: { ...mm(through), reason: 'where the facets meet the far side of the bit' },
          levers,
        },
      ]
    }
    const stress = groundStressOf(design)
    const most = parameters.settings.running['bit-stress']
    if (stress === undefined || stress <= most * (1 + 1e-12)) return []
    const stressed = written({ value: stress, kind: 'pressure' }, units)
    return [
      {
        id: 'grind:thin',
        level: 'stop',
        text: `${runs} and leave ${Math.round(100 * share)} % of its section, ${((100 * modulus) / blankModulus).toFixed(1)} % of its strength: the cut bends it there with ${stressed}.`,
        figure: { value: stress, kind: 'pressure' },
        limit: { value: most, kind: 'pressure', reason: 'largest bending stress in the bit (rule of thumb)' },
        levers: [...levers, { path: 'work.feed-per-turn', turn: 'down' }, { path: 'work.depth-of-cut', turn: 'down' }],
      },
    ]
  },
}

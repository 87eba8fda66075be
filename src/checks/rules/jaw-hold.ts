import type { Rule } from '../rule.ts'

/** Whether plain vise jaws can hold the bar while the slot is milled along X. */
export const jawHold: Rule<{
  readonly parameters: {
    readonly stock: {
      readonly shape: 'hexagon' | 'round' | 'square'
      readonly 'slot-runs': 'point-to-point' | 'flat-to-flat'
    }
  }
}> = {
  id: 'jaw-hold',
  findings({ parameters: { stock } }) {
    if (stock.shape === 'hexagon' && stock['slot-runs'] === 'flat-to-flat') {
      return [
        {
          id: 'jaw-hold',
          level: 'caution',
          text: 'A hexagon slotted from flat to flat meets the jaws on its corners: no plain jaw holds it. It takes V-jaws, or a slot from point to point, where the jaws hold the flats beside it.',
          levers: [{ path: 'stock.slot-runs', choose: 'point-to-point' }],
        },
      ]
    }
    if (stock.shape !== 'round') return []
    return [
      {
        id: 'jaw-hold',
        level: 'note',
        text: 'Round bar has no flats for the jaws: hold it in a V-block or soft jaws, and mark the line of the slot before it is tilted.',
        levers: [],
      },
    ]
  },
}

import type { Units } from '../../quantity/kind.ts'
import { mm, type Rule, ratio, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly layout: { readonly inscribed: number }
  readonly parameters: {
    readonly bore: { readonly diameter: number }
    readonly settings: { readonly hub: { readonly wanted: number; readonly least: number } }
  }
}

/** Metal round the bore, which has to carry the fit. */
export const hubWall: Rule<Subject> = {
  id: 'hub-wall',
  findings({ units, layout, parameters: { bore, settings } }) {
    const share = layout.inscribed / bore.diameter
    if (share >= settings.hub.wanted) return []
    const stop = share < settings.hub.least
    return [
      {
        id: 'hub-wall',
        level: stop ? 'stop' : 'caution',
        text: `The bore of ${written(mm(bore.diameter), units)} leaves a hub only ${share.toFixed(2)} times as wide (largest circle inside the bar): ${stop ? 'an interference fit will burst or stretch it' : 'it gives under an interference fit'}.`,
        figure: ratio(share),
        limit: { ...ratio(settings.hub.wanted), reason: 'hub outside over bore (rule of thumb)' },
        levers: [
          { path: 'bore.diameter', turn: 'down' },
          { path: 'stock.size', turn: 'up' },
        ],
      },
    ]
  },
}

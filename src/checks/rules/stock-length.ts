import type { Units } from '../../quantity/kind.ts'
import { mm, type Rule, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly layout: {
    readonly stockLength: number
    readonly depthOnAxis: number
    readonly across: number
    readonly faceAngle: number
  }
  readonly parameters: { readonly settings: { readonly facing: number } }
}

/** Whether the sawn blank is long enough for both ends to clean up. */
export const stockLength: Rule<Subject> = {
  id: 'stock-length',
  findings({ units, layout, parameters }) {
    const longSide = layout.depthOnAxis + (layout.across / 2) * Math.tan(layout.faceAngle)
    const least = longSide + parameters.settings.facing
    if (layout.stockLength >= least - 1e-9) return []
    return [
      {
        id: 'stock-length',
        level: 'stop',
        text: `The blank of ${written(mm(layout.stockLength), units)} is too short: the long side of the head is ${written(mm(longSide), units)}, and the mounting face has to be faced.`,
        figure: mm(layout.stockLength),
        limit: { ...mm(least), reason: 'long side of the head and one facing cut' },
        levers: [
          { path: 'stock.length', turn: 'up' },
          { path: 'face.depth-on-axis', turn: 'down' },
        ],
      },
    ]
  },
}

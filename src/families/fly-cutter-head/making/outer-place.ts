import type { HeadDesign } from '../design.ts'

/** What of the face lies outermost on the bit side, where X is picked up. */
export function outerPlace({ parameters: { stock } }: HeadDesign): 'corner' | 'edge' {
  return stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point' ? 'corner' : 'edge'
}

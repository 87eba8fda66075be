import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import { isGround } from '../engineering/angles.ts'
import { partsList } from '../parts-list.ts'
import { written } from '../words.ts'
import { type BitCuts, cutLetters } from './bit-sections.ts'
import type { BitDrawing } from './bit-views.ts'

/** What the views of the bit do not say. */
export function bitNotes({ design }: BitDrawing, cuts: BitCuts): DrawnNotes {
  const { parameters: p, layout: l } = design
  const length = (value: number) => written(design, 'length', value)
  const { stock } = partsList(design).find(({ id }) => id === 'bit')!
  const letters = cutLetters(cuts)
  const nose = p.bit['nose-radius'] > 0
  return {
    kind: 'notes',
    title: 'Notes',
    lines: [
      `${stock.replace(/^b/, 'B')}. For a tool that turns ${p.rotation} seen from the spindle; for the other hand the mirror image.`,
      ...(isGround(design)
        ? [
            ...(letters.length > 0
              ? [
                  `Facets are true in section${letters.length > 1 ? 's' : ''} ${letters.join(', ')}; their edges lean otherwise: see the checks.`,
                ]
              : []),
            'Turn and lift are what the grinder’s table is set to. Grind the end flank first, then the work-side flank, the rake face last; all three meet in the tip.',
            ...(nose ? ['Hone the nose last, the reliefs kept behind it.'] : []),
          ]
        : [`Used square as bought: no facet is ground${nose ? ', only the nose is honed' : ''}.`]),
      `In the head: ${length(l.bit.overhang)} from the outer corner to the tip, swing ${length(l.bit.swing)}.`,
      'Grinding: eye protection, rest and table close to the wheel, stand aside while it runs up. Dip high-speed steel often enough to keep it in the hand; do not quench it when it is blue.',
      'High-speed steel cracks over a chip: clean the slot before the bit goes in.',
    ],
  }
}

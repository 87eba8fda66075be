import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import type { HeadDesign } from '../design.ts'
import { isGround } from '../engineering/angles.ts'
import { written } from './words.ts'

/** What the views of the bit do not say. */
export function bitNotes(design: HeadDesign): DrawnNotes {
  const { parameters: p, layout: l } = design
  const length = (value: number) => written(design, 'length', value)
  const blank = `${length(p.bit.width)} × ${length(p.bit.height)} × ${length(p.bit.length)}`
  const ground = isGround(design)
  return {
    kind: 'notes',
    title: 'Notes',
    lines: [
      `Blank ${blank}. For a tool that turns ${p.rotation} seen from the spindle; for the other hand the mirror image.`,
      ...(ground
        ? [
            'Angles along and behind an edge are those of the facets on the bit; turn and lift are what the grinder’s table is set to.',
            'Grind the end flank first, then the work-side flank, the rake face last; all three meet in the tip.',
            `Nose: hone a radius of ${length(p.bit['nose-radius'])} between end edge and work-side edge; keep the reliefs behind it.`,
          ]
        : ['Used square as bought: no facet is ground.']),
      `In the head: ${length(l.bit.overhang)} from the outer corner to the tip, swing ${length(l.bit.swing)}.`,
      'Check after grinding: facets with a protractor from the sides of the blank, the tip with a height gauge on the back.',
      'Grinding: eye protection, rest and table close to the wheel, stand aside while it runs up. Dip high-speed steel often enough to keep it in the hand; do not quench it when it is blue.',
      'High-speed steel cracks over a chip: clean the slot before the bit goes in.',
    ],
  }
}

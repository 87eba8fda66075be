import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import type { HeadDesign } from '../design.ts'
import { written } from './words.ts'

/** What the views of the head do not say. Texture and edge breaks are common practice, no source. */
export function bodyNotes(design: HeadDesign): DrawnNotes {
  const { parameters: p, layout: l } = design
  const length = (value: number) => written(design, 'length', value)
  return {
    kind: 'notes',
    title: 'Notes',
    lines: [
      'A mounting face · B bore axis · C mid-plane of the flats · O where B meets the angled face: zero of the tilt.',
      `Blank: ${p.stock.shape} bar ${length(p.stock.size)}, sawn ${length(l.stockLength)} long, faced to ${length(l.prismLength)}.`,
      `Mill the slot to the bit as measured, ${length(p.slot.clearance)} wider.`,
      ...(p.fit.kind === 'matched' ? ['Bore first and measure it: the arbor is turned to that bore.'] : []),
      'Sizes in brackets follow from others: for checking, not to be machined to.',
      `Texture: Ra ${length(0.0016)} bore and mounting face, Ra ${length(0.0032)} slot and face, Ra ${length(0.0063)} the rest.`,
      `Break sharp edges ${length(0.2)} to ${length(0.5)}; the edges of the bore and of the slot floor stay clean.`,
      'Shop-made tool, unproven until inspected and run up slowly behind a guard. Guard, eye protection, and the manual of the machine come first.',
    ],
  }
}

import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { generalLengths } from '../../../tables/iso-2768.ts'
import type { HeadDesign } from '../design.ts'
import { middleOf, offMiddle } from '../making/bore-on-middle.ts'
import { sheetUnits, written } from '../words.ts'
import { flatsFaceY } from './body-views.ts'
import { stampedArrow, stampedSpeed } from './stamp-words.ts'
import { brokenEdges, roughness } from './texture.ts'

/** The trade's round numbers in each unit. */
const textures = {
  mm: { fine: '1.6 µm', medium: '3.2 µm', rough: '6.3 µm' },
  in: { fine: '63 µin', medium: '125 µin', rough: '250 µin' },
} as const

/** What the views of the head do not say. Texture is common practice, no source. */
export function bodyNotes(design: HeadDesign): DrawnNotes {
  const { parameters: p, layout: l } = design
  const length = (value: number) => written(design, 'length', value)
  const { units } = sheetUnits(design)
  const ra = textures[units]
  const bore = p.fit.kind === 'threaded' ? `Ra ${ra.medium}` : `Rz ${roughness(design, p.fit['bore-roughness'])}`
  return {
    kind: 'notes',
    title: 'Notes',
    lines: [
      `A mounting face · B bore axis · C ${flatsFaceY(p.stock) ? 'mid-plane of the flats' : 'plane of B along the slot'} · O where B meets the angled face: zero of the tilt.`,
      // Common practice, no source.
      `B on the middle of the ${middleOf(design)} within ${offMiddle(units)}, and square to A: bored in the clamping that faces A.`,
      `Blank: ${p.stock.shape} bar ${length(p.stock.size)}, sawn ${length(l.stockLength)} long, faced to ${length(l.prismLength)}.`,
      `Mill the slot to the bit as measured, ${length(p.slot.clearance)} wider.`,
      ...(p.fit.kind === 'matched' ? ['Bore first and measure it: the arbor is turned to that bore.'] : []),
      'Sizes in brackets follow from others: for checking, not to be machined to.',
      generalTolerances(design),
      `Texture: bore ${bore}, mounting face Ra ${ra.fine}, slot and angled face Ra ${ra.medium}, the rest Ra ${ra.rough}.`,
      `${brokenEdges(design)}; the edges of the bore and of the slot floor stay clean.`,
      `Stamp the head: ${stampedSpeed(design)}; ${stampedArrow(design)}.`,
      'Shop-made tool, unproven until inspected and run up slowly behind a guard. Guard, eye protection, and the manual of the machine come first.',
    ],
  }
}

/** The general tolerance in figures: inch sheets have no table of their own to look it up in. */
function generalTolerances(design: HeadDesign): string {
  const { units } = sheetUnits(design)
  const number = (value: number) =>
    units === 'mm' ? formatNumber(value, 2, { trim: true }) : formatNumber(value / 25.4, 3, { trim: true })
  const largest = Math.max(design.parameters.stock.size, design.layout.prismLength)
  const steps = generalLengths.filter((_, i) => i === 0 || generalLengths[i - 1]!.upTo < largest)
  const words = steps.map(({ upTo, deviation }) => `up to ${number(upTo)} ±${number(deviation)}`)
  return `Sizes without a tolerance: ISO 2768-m, ${units}: ${words.join(', ')}.`
}

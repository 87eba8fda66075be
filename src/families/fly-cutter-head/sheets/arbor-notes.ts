import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import type { MatchedFit } from '../../../mechanics/fit/matched-fit.ts'
import type { HeadDesign } from '../design.ts'
import { washerCatch } from '../engineering/ways-to-hold.ts'
import { partsList } from '../parts-list.ts'
import { sheetUnits, written } from '../words.ts'
import { brokenEdges, roughness } from './texture.ts'

/** Run-out of spigot and seat to the shank, and the relief at the seat: common practice, no source. */
const runOut = { mm: '0.01 mm', in: '0.0004 in' } as const
const relief = { mm: '1 mm wide and 0.3 mm deep', in: '0.04 in wide and 0.012 in deep' } as const

/** What the views of the arbor do not say. */
export function arborNotes(design: HeadDesign): DrawnNotes {
  const { parameters: p, layout: l } = design
  const { units } = sheetUnits(design)
  const length = (value: number) => written(design, 'length', value)
  const { stock } = partsList(design).find(({ id }) => id === 'arbor')!
  const { shank } = l
  const seats = p.arbor.kind === 'shank'
  return {
    kind: 'notes',
    title: 'Notes',
    lines: [
      `Blank: ${stock}.`,
      ...turningWords(design),
      ...(l.fit?.kind === 'matched'
        ? [matchedWords(l.fit as MatchedFit, length, written(design, 'temperature', 20))]
        : []),
      ...(p.fit.kind === 'ansi-b4-1' ? [`Spigot to ANSI B4.1 class ${p.fit.class} with the bore.`] : []),
      seats
        ? `Spigot and seat run true to the shank within ${runOut[units]}.`
        : `The spigot runs true to the rest of the bar within ${runOut[units]}.`,
      ...(seats ? [reliefWords(design)] : []),
      ...(shank && shank.kind !== 'straight'
        ? [
            `Shank ${shank.name} to its standard: the sizes in brackets are for checking. Blue the taper in a socket, or buy a blank arbor and turn only the head end.`,
          ]
        : []),
      ...(shank?.note === undefined ? [] : [shank.note]),
      ...(shank && shank.drawbarThreads.length > 0
        ? [
            `Drawbar thread: ${shank.drawbarThreads.join(' or ')}, as the drawbar of the machine has it, full for 1.5 diameters at least; leave a 60° mouth for the centre.`,
          ]
        : []),
      ...(p.fit.kind === 'threaded'
        ? []
        : [
            `Texture: spigot Rz ${roughness(design, p.fit['spigot-roughness'])}, ${seats ? 'seat and shank' : 'the rest'} Ra ${units === 'in' ? '32 µin' : '0.8 µm'}.`,
          ]),
      ...tappedWords(design),
      `${brokenEdges(design)}${seats ? '; the edge of the seat stays clean' : ''}.`,
      'Turning: no gloves, no sleeves, chuck key out. Polish with a file or cloth only as the manual of the lathe allows.',
    ],
  }
}

/** What keeps the corner of spigot and seat from standing on the mouth of the bore. */
function reliefWords(design: HeadDesign): string {
  const thread = design.layout.spigotThread
  if (!thread)
    return `Relieve the corner of spigot and seat, ${relief[sheetUnits(design).units]}, so that the shoulder seats.`
  const wide = written(design, 'length', 2 * thread.pitch)
  return `Undercut the thread at the seat, ${wide} wide and below its minor diameter, so that the shoulder seats.`
}

/** On what it is turned, and in which order. */
function turningWords({ parameters: p }: HeadDesign): string[] {
  const hollow = p.arbor['bore-through'] !== undefined
  const centres = hollow
    ? 'Drill it through first; chamfer both mouths 60° to run on the centres.'
    : 'Centre-drill both ends; the centres stay.'
  const last = p.arbor.kind === 'shank' ? 'the spigot and its seat last' : 'the spigot last'
  const turned =
    p.making['spigot-turned-in'] === 'mill-spindle'
      ? `Turn between centres; ${last}, in the spindle of the mill.`
      : `Turn between centres; ${last}, in the same clamping.`
  return [`${centres} ${turned}`]
}

/** The end of the spigot where a screw with its washer keeps the head on. */
function tappedWords(design: HeadDesign): string[] {
  if (design.parameters.fit.catch !== 'screw-and-washer') return []
  const made = washerCatch(design)
  return made === undefined ? [] : [`Tap the end of the spigot for the catch: ${made}.`]
}

const matchedWords = ({ printedOver }: MatchedFit, length: (value: number) => string, at20: string): string =>
  `Measure the bore first and turn the spigot ${length(printedOver.least)} to ${length(printedOver.most)} over it, both at ${at20}. The size drawn is for a bore of nominal size.`

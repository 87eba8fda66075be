import type { MatchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { referenceTemperature } from '../../../quantity/format-quantity.ts'
import { type MeasuredSize, type Operation, operation } from '../../../route/operation.ts'
import { arborStock } from '../arbor-stock.ts'
import type { HeadDesign } from '../design.ts'
import { latheSpeed, millSpeed } from './cutting-data.ts'

/** Run-out of spigot and seat to the shank: common practice, no source. */
const runOut = { mm: '0.01 mm', in: '0.0004 in' } as const

const inSpindle = ({ parameters: { making } }: HeadDesign): boolean => making['spigot-turned-in'] === 'mill-spindle'

/** The arbor: its blank looked at, its upper end turned, its spigot turned to the bore that was measured. */
export function arborOperations(design: HeadDesign): Operation[] {
  return [inspecting(design), upperEnd(design), spigot(design), ...ventFlat(design)]
}

const sizesOf = (design: HeadDesign, features: readonly string[]): MeasuredSize[] =>
  design
    .part('arbor')
    .stock.concat(design.part('arbor').cuts)
    .filter((f) => features.includes(f.id))
    .flatMap((f) =>
      f.dimensions.filter((d) => d.tolerance.kind !== 'reference').map((d) => ({ part: 'arbor', dimension: d.id })),
    )

function inspecting(design: HeadDesign): Operation {
  const { bar, largest, length } = arborStock(design)
  const size = (value: number) => formatLength(value, design.units, { fractions: true })
  const what = bar ? `Round bar ⌀${size(bar.size)}` : `A round bar of at least ⌀${size(largest)}`
  const { shank, materials } = design.layout
  const taper = shank !== undefined && shank.kind !== 'straight'
  return operation({
    id: 'arbor-inspect',
    title: 'Inspect the arbor blank',
    setUp: 'bench',
    machine: 'bench',
    steps: [
      `${what} × ${size(length)}, ${materials.arbor.title}: straight, no cracks, seams or rust pits, thick enough everywhere.`,
      ...(taper
        ? [
            `Or a bought blank arbor ${shank.name} with a soft end: check taper, drawbar thread and run-out between centres.`,
          ]
        : []),
      'Hardened through or of unknown steel: not this one. A file must bite.',
    ],
    why: 'Before any hour goes into it.',
  })
}

function upperEnd(design: HeadDesign): Operation {
  const { parameters: p, layout: l, units } = design
  const size = (value: number) => formatLength(value, units)
  const { largest } = arborStock(design)
  const hollow = p.arbor['bore-through']
  const speed = latheSpeed(design, {
    of: l.materials.arbor,
    diameter: largest,
    feedPerTurn: p.making['turning-feed'],
  })
  const what = p.arbor.kind === 'shank' ? 'shank and shoulder' : 'the bar to length'
  return operation({
    id: 'arbor-turn',
    title: `Turn ${what}`,
    setUp: 'arbor',
    machine: 'lathe',
    steps: [
      'Face and centre both ends.',
      ...(hollow === undefined ? [] : [`Drill ⌀${size(hollow)} right through, then chamfer it to run on the centres.`]),
      p.arbor.kind === 'shank'
        ? `Between centres: shank ${l.shank!.name}, shoulder; leave ${size(inSpindle(design) ? 1 : 0.5)} on the diameter of the spigot.`
        : 'Skim what goes into the collet, if the bar as bought does not run true.',
      ...(l.shank && l.shank.drawbarThreads.length > 0
        ? [`Drawbar thread ${l.shank.drawbarThreads.join(' or ')}, as the machine has it.`]
        : []),
    ],
    tool: { name: 'turning tool' },
    ...(speed && { speed }),
    measure: sizesOf(design, ['shoulder', 'shank', 'arbor-bore']),
    why: inSpindle(design)
      ? 'The shank first: it is what the spigot is turned on.'
      : 'In the clamping of the spigot, or between the same centres: then they run true to each other.',
    needs: ['arbor-inspect'],
  })
}

function spigot(design: HeadDesign): Operation {
  const { parameters: p, layout: l, units } = design
  const size = (value: number) => formatLength(value, units)
  const mill = inSpindle(design)
  const cut = { of: l.materials.arbor, diameter: p.bore.diameter, feedPerTurn: p.making['turning-feed'] }
  const speed = mill ? millSpeed(design, cut) : latheSpeed(design, cut)
  const threaded = p.fit.kind === 'threaded'
  const matched = l.fit?.kind === 'matched' ? (l.fit as MatchedFit) : undefined
  const dimension = design.part('arbor').stock[0]!.dimensions.find((d) => d.id === 'spigot.diameter')!
  return operation({
    id: 'spigot-turn',
    title: threaded ? 'Cut the thread of the spigot' : 'Turn the spigot',
    setUp: mill ? 'spindle' : 'arbor',
    machine: mill ? 'spindle' : 'lathe',
    steps: [
      ...(matched
        ? [
            `To the bore as measured, ${size(matched.printedOver.least)} to ${size(matched.printedOver.most)} over it, both at ${referenceTemperature(units)}. A spigot warm from turning measures large.`,
          ]
        : threaded
          ? [`${dimension.thread}, until the head runs on by hand without shake; the seat square to it.`]
          : ['To the limits; check the bore against its own first.']),
      `Length ${size(p.arbor['spigot-length'])} from the seat${p.arbor['lead-in'] > 0 ? `, lead-in ${size(p.arbor['lead-in'])} × 45°` : ''}; relieve the corner at the seat.`,
      `Spigot and seat true to the shank within ${runOut[units]}.`,
      ...(mill
        ? [
            'The spindle feeds down by the quill, the tool stands in the vise; X sets the diameter, locked for each cut.',
          ]
        : []),
    ],
    tool: { name: mill ? 'turning tool, clamped upright in the vise' : 'turning tool' },
    ...(speed && { speed }),
    measure: sizesOf(design, ['spigot']),
    why: `After the bore, which is what it is turned to. ${
      mill
        ? 'In the mill’s own spindle: it then runs true to the very spindle it works in, whatever shank and socket are like.'
        : 'In the lathe: shank and spigot on the same centres.'
    }`,
    needs: ['arbor-turn', 'bore-size'],
    cautions: mill
      ? [
          'A spindle is no lathe: small cuts, drawbar tight, nobody near a tool that is pulled in.',
          ...(p.machine.drawbar ? [] : ['Without a drawbar the shank walks out of the socket under a side load.']),
        ]
      : ['No gloves, no sleeves, chuck key out.'],
  })
}

function ventFlat(design: HeadDesign): Operation[] {
  const { bore } = design.parameters
  if (bore.kind !== 'blind' || bore.vent !== 'flat') return []
  return [
    operation({
      id: 'vent-flat',
      title: 'Mill or file the vent flat',
      setUp: 'bench',
      machine: 'bench',
      steps: [
        `A flat ${formatLength(bore['vent-size'], design.units)} deep along the spigot up to the seat; stone the edges down.`,
        'Shank in a V-block, soft packing under the jaw: not on the spigot.',
      ],
      depth: bore['vent-size'],
      measure: sizesOf(design, ['vent-flat']),
      why: 'After turning: a tool that meets a flat leaves the spigot out of round. Without it the air under the spigot pushes it out.',
      needs: ['spigot-turn'],
    }),
  ]
}

import { formatLength } from '../../../quantity/format-length.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import { type MeasuredSize, type Operation, operation } from '../../../route/operation.ts'
import { stickOut } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { isGround } from '../engineering/angles.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'
import { latheSpeed } from './cutting-data.ts'
import { headMeasuring } from './measuring.ts'
import { isJoinedFirst } from './tilted-set-up.ts'

const bench = { setUp: 'bench', machine: 'bench' } as const
/** Run-out of the head when it is true: common practice, no source. */
const runOut = { mm: '0.03 mm', in: '0.001 in' } as const

export const measureBit = (design: HeadDesign): Operation =>
  operation({
    ...bench,
    id: 'measure-bit',
    title: 'Measure the bit',
    steps: [
      'The very blank that will be used: width and height at both ends and the middle, the largest counts.',
      `The slot is milled ${formatLength(design.parameters.slot.clearance, design.units)} wider than that.`,
    ],
    measure: [
      { part: 'bit', dimension: 'bit.width' },
      { part: 'bit', dimension: 'bit.height' },
    ],
    why: 'Before the slot: blanks differ by more than the clearance.',
  })

export const deburr = (design: HeadDesign): Operation =>
  operation({
    ...bench,
    id: 'deburr',
    title: 'Deburr',
    steps: [
      `Every outside edge ${design.units === 'mm' ? '0.2 to 0.5 mm' : '0.008 to 0.020 in'}; the outer corners well, they pass hands.`,
      'Edges of the slot floor and of the bore stay clean; no burr where the bit lies and none round the screw holes inside the slot.',
      'Mounting face flat on a stone.',
    ],
    why: 'After the last chip on the head: a burr under a bit or a shoulder is a rock.',
    needs: ['tap'],
  })

/** The head by itself, against the sheet. */
export function inspectHead(design: HeadDesign): Operation {
  return operation({
    ...bench,
    id: 'inspect-head',
    title: 'Inspect the head',
    steps: [
      'Wash it. Fill in the lines of the head in inspection.csv: some from now, some as written down before the clamping was opened; what is out of limits goes back through the report ' +
        `${isJoinedFirst(design) ? 'before it is used' : 'before anything is joined'}.`,
      'Look at the thin walls: bore to slot, wall of the screws; a light in the bore shows a hole in the slot.',
      `Engrave the never-exceed speed, ${turns(design, neverExceedOf(design).notAbove)}, or what the measured sizes leave of it, and the revision.`,
    ],
    measure: all(design, 'body'),
    why: isJoinedFirst(design)
      ? 'As soon as the head is finished: nothing can be mended in the spindle.'
      : 'Before it is joined: with a shank in the middle the head no longer stands on its mounting face, and a bad head would take a good arbor with it.',
    needs: ['deburr'],
  })
}

const all = (design: HeadDesign, part: string): MeasuredSize[] =>
  headMeasuring(design)
    .filter((m) => m.part === part && m.dimension.tolerance.kind !== 'reference')
    .map((m) => ({ part, dimension: m.dimension.id }))

const faces = { leading: 'leading face', end: 'end', underside: 'work side' } as const

const turns = (design: HeadDesign, speed: number): string =>
  formatQuantity('rotation-speed', speed, design.units, { decimals: 0 })

export function grindBit(design: HeadDesign): Operation {
  const { parameters: p } = design
  const size = (value: number) => formatLength(value, design.units, { fractions: true })
  const offs = (['leading', 'end', 'underside'] as const).filter((side) => p.bit['ground-off'][side] > 0)
  return operation({
    ...bench,
    id: 'grind-bit',
    title: 'Cut and grind the bit',
    steps: [
      `Cut the blank to ${size(p.bit.length)}, with a thin wheel, wet; break the sharp ends.`,
      isGround(design)
        ? 'Grind the facets by the table of grinder settings in this report, the rake face last; round the nose.'
        : 'Nothing is to be ground but the nose: stone the edges.',
      ...(offs.length > 0
        ? [
            `At the tip ${offs.map((side) => `${size(p.bit['ground-off'][side])} come off the ${faces[side]}`).join(', ')}.`,
          ]
        : []),
      'Cool it often; blue means soft, grind it away.',
    ],
    measure: [{ part: 'bit', dimension: 'bit.length' }],
    why: 'After it was measured: a ground end tells no width.',
    needs: ['measure-bit'],
    cautions: ['Guards and rest of the grinder set, eyes covered; high-speed steel that is quenched red hot cracks.'],
  })
}

/** True to the spindle it will run in. */
export function finishTrue(design: HeadDesign, before: readonly string[]): Operation {
  const { parameters: p, layout: l } = design
  const round = p.stock.shape === 'round'
  const speed = round
    ? latheSpeed(design, { of: l.materials.body, diameter: p.stock.size, feedPerTurn: p.making['turning-feed'] })
    : undefined
  return operation({
    id: 'true-up',
    title: 'Finish true in the spindle',
    setUp: 'spindle',
    machine: 'spindle',
    steps: [
      'Bit and set screws out, drawbar tight. Turn by hand under an indicator: shoulder, then the head as low as it is whole.',
      `Up to ${runOut[design.units]} of run-out is as good as it gets; more means a burr, a chip or a joint that went in askew.`,
      ...(round
        ? ['A round head is skimmed true with a turning tool in the vise, slow, small cuts, above slot and step only.']
        : ['A head with flats has nothing to turn: what runs out is written down and counts as unbalance.']),
      'Mark shank and spindle, so that it goes in the same way every time.',
    ],
    ...(speed && { speed }),
    why: isJoinedFirst(design)
      ? 'After the joint, which may pull it askew; the tilt was cut from the shank, so only the outside is looked at.'
      : 'After the joint, which may pull it askew, and before a bit is in that could hit hand or indicator.',
    needs: before,
    cautions: round ? ['An interrupted cut over slot and step strikes the tool: not there.'] : [],
  })
}

export function assemble(design: HeadDesign, before: readonly string[]): Operation {
  const { layout: l, units } = design
  const size = (value: number) => formatLength(value, units)
  const torque = l.screws.tighteningTorque
  return operation({
    ...bench,
    id: 'set-bit',
    title: 'Set and clamp the bit',
    steps: [
      'Slot clean, no chip, no burr: high-speed steel over a chip cracks.',
      `Bit on the floor and against the trailing wall, tip ${size(stickOut(design))} beyond the outer end of that wall.`,
      torque === undefined
        ? 'Tighten the screws evenly, in turn.'
        : `Tighten the screws in turn to ${formatQuantity('torque', torque, units)} and not above; then again.`,
    ],
    why: 'Everything that turns is in now: what is checked from here on is the whole tool.',
    needs: before,
  })
}

export function runningIn(design: HeadDesign): Operation[] {
  const cutting = cuttingOf(design)
  const slow = slowest(design)
  return [
    operation({
      id: 'dry-run',
      title: 'Dry run by hand',
      setUp: 'spindle',
      machine: 'spindle',
      steps: [
        'Spindle isolated. Key out of the drawbar.',
        `Turn one full revolution by hand over work, clamps, vise handles and column: ${formatLength(2 * design.sweptRadius, design.units, { decimals: design.units === 'mm' ? 0 : 1 })} of circle must be free all round, at every place of the table that the cut uses.`,
        'Run the table through the whole cut that way, approach and overrun too.',
        'A printed mock-up, if there is one, has done this before: by hand only.',
      ],
      why: 'Before power, every time the set-up changes.',
      needs: ['set-bit'],
    }),
    operation({
      id: 'first-run',
      title: 'First run',
      setUp: 'spindle',
      machine: 'spindle',
      steps: [
        `Guard in place, nobody in the plane of the swing. Slowest speed, ${turns(design, slow)}, in air, for a minute; stop, spindle isolated, tighten the screws again.`,
        `Then step by step to the speed of the job, ${turns(design, cutting.runAt)}; listen at each. Never above ${turns(design, neverExceedOf(design).notAbove)}.`,
        'First cut a tenth of the depth, in scrap. Tighten the screws again after it.',
      ],
      why: 'A shop-made tool is unproven until it has been inspected and run up slowly behind a guard.',
      needs: ['dry-run'],
      cautions: [
        'No gloves, sleeves or loose hair. What shakes is stopped, not pushed through.',
        ...(cutting.runAt > neverExceedOf(design).notAbove
          ? ['The speed of the job lies above the never-exceed speed: do not run it there.']
          : []),
      ],
    }),
  ]
}

const slowest = ({ parameters: { machine } }: HeadDesign): number =>
  Array.isArray(machine.speeds) ? Math.min(...machine.speeds) : machine.speeds.slowest

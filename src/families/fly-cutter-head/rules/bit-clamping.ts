import type { Finding } from '../../../checks/finding.ts'
import { inSentence } from '../../../checks/in-sentence.ts'
import { mm, type Rule, ratio, written } from '../../../checks/rule.ts'
import { screwRowRules } from '../../../mechanics/clamping/screw-row.ts'
import type { HeadDesign } from '../design.ts'
import { clampingOf, type HeldBit, onLeadingSide } from '../engineering/clamping.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { lighterCut, shorterReach, slowerCut, tighterScrews } from './cut-levers.ts'

/**
 * Whether the screws hold the bit, and the bit holds the cut. Where there is no wall behind the bit, or no screw on it,
 * another stop says so, and nothing more is worked out here.
 */
export const bitClamping: Rule<HeadDesign> = {
  id: 'clamp',
  findings(design) {
    const { held } = clampingOf(design)
    return [
      ...fewScrews(design),
      ...wrongSide(design),
      ...wrongPoint(design),
      ...torque(design),
      ...(held ? [...grip(design, held), ...bending(design, held), ...underScrews(design, held)] : []),
    ]
  },
}

function fewScrews({ parameters: { screws } }: HeadDesign): Finding[] {
  if (screws.count >= screwRowRules.leastOnBit) return []
  return [
    {
      id: 'clamp:one-screw',
      level: 'stop',
      text: 'One screw alone holds the bit: if it works loose the bit flies out, and the bit turns about it before that.',
      figure: { value: screws.count, kind: 'count' },
      limit: { value: screwRowRules.leastOnBit, kind: 'count', reason: 'screws on the bit (rule of thumb)' },
      levers: [{ path: 'screws.count', turn: 'up' }],
    },
  ]
}

function wrongSide(design: HeadDesign): Finding[] {
  if (onLeadingSide(design)) return []
  return [
    {
      id: 'clamp:side',
      level: 'caution',
      text: 'The screws push from the trailing side: the cutting force pushes the bit back against the screws instead of into solid metal.',
      levers: [{ path: 'step.side', choose: 'leading' }],
    },
  ]
}

function wrongPoint({ parameters: { screws }, layout }: HeadDesign): Finding[] {
  if (screws.point === 'flat' || screws.point === 'half-dog') return []
  return [
    {
      id: 'clamp:point',
      level: 'caution',
      text: `A ${screws.point} point on a bit of ${inSentence(layout.materials.bit.title)}: the bit is harder than the screw, so that the point only flattens itself and the screw works loose. No holding force of a table for soft shafts applies.`,
      levers: [
        { path: 'screws.point', choose: 'flat' },
        { path: 'screws.point', choose: 'half-dog' },
      ],
    },
  ]
}

function torque(design: HeadDesign): Finding[] {
  const { torque: chosen, largest, standing } = clampingOf(design).tightening
  if (standing !== 'above-table' || largest === undefined) return []
  const show = (value: number) => written({ value, kind: 'torque' }, design.units)
  return [
    {
      id: 'clamp:torque',
      level: 'stop',
      text: `${show(chosen)} is more than a set screw ${design.layout.screws.thread.name} stands (${show(largest)}): socket and key give way, or the bit cracks.`,
      figure: { value: chosen, kind: 'torque' },
      limit: { value: largest, kind: 'torque', reason: 'seating torque in the table of set screws' },
      levers: [{ path: 'screws.tightening-torque', turn: 'down' }],
    },
  ]
}

function grip({ units, parameters }: HeadDesign, { grip: { ratio: share, level }, support }: HeldBit): Finding[] {
  if (level === 'none') return []
  const settings = parameters.settings.screws
  const show = (value: number) => written(mm(value), units)
  return [
    {
      id: 'clamp:grip',
      level,
      text: `${show(support.grip)} of the bit is held and ${show(support.overhang)} stands out beyond its wall: ${share.toFixed(2)} times as much is held as stands out.`,
      figure: ratio(share),
      limit: {
        ...ratio(settings[level === 'caution' ? 'grip-caution' : 'grip-note']),
        reason: 'bit held over bit that stands out (rule of thumb)',
      },
      levers: [
        ...shorterReach,
        { path: 'bit.length', turn: 'up' },
        ...(parameters.slot.runs === 'stopped' ? [{ path: 'slot.runs', choose: 'through' } as const] : []),
      ],
    },
  ]
}

function bending({ units, parameters }: HeadDesign, { bending: found, overhang }: HeldBit): Finding[] {
  if (!found) return []
  const { 'bit-stress': mostStress, 'tip-deflection': mostGive, 'deflection-stop': times } = parameters.settings.running
  const { stress } = found.atWall
  const { deflection } = found
  const show = (value: number) => written(mm(value), units)
  const findings: Finding[] = []
  const levers = [...shorterReach, ...lighterCut]
  if (stress > mostStress) {
    findings.push({
      id: 'clamp:stress',
      level: 'stop',
      text: `The cut bends the bit, ${show(overhang)} of it unsupported, with ${written({ value: stress, kind: 'pressure' }, units)} where it leaves its wall: it stands out too far.`,
      figure: { value: stress, kind: 'pressure' },
      limit: { value: mostStress, kind: 'pressure', reason: 'largest bending stress in the bit (rule of thumb)' },
      levers,
    })
  }
  if (deflection > mostGive) {
    const stop = deflection > times * mostGive
    findings.push({
      id: 'clamp:deflection',
      level: stop ? 'stop' : 'caution',
      text: `The tip gives way by ${show(deflection)} in the cut, ${show(overhang)} of the bit being unsupported: it ${stop ? 'chatters and digs in' : 'sings, and the size wanders'}.`,
      figure: mm(deflection),
      limit: { ...mm(mostGive), reason: 'largest deflection at the tip (rule of thumb)' },
      levers,
    })
  }
  return findings
}

const underScrews = (design: HeadDesign, held: HeldBit): Finding[] =>
  held.row.countOnBit === 0 ? [] : [...pryingOut(design, held), ...slipping(design, held)]

/** Less than half of what is wanted: a bit that strikes the work with twice its force is then out of its slot. */
const levelOf = (factor: number, wanted: number) => (factor < wanted / 2 ? 'stop' : 'caution')

function pryingOut({ parameters }: HeadDesign, { prying }: HeldBit): Finding[] {
  const { factor, factorBestMissing } = prying ?? {}
  const wanted = parameters.settings.screws['hold-factor']
  const levers = [...tighterScrews, ...shorterReach, ...lighterCut]
  if (factor !== undefined && factor < wanted) {
    return [
      {
        id: 'clamp:prying',
        level: levelOf(factor, wanted),
        text: `The cutting force pries the bit off its wall: the screws hold ${Math.max(0, factor).toFixed(2)} times its moment. The bit stands out too far for them.`,
        figure: ratio(factor),
        limit: { ...ratio(wanted), reason: 'moment of the screws over that of the cutting force (rule of thumb)' },
        levers,
      },
    ]
  }
  if (factorBestMissing === undefined || factorBestMissing >= wanted || parameters.screws.count < 2) return []
  return [
    {
      id: 'clamp:prying-one-loose',
      level: 'caution',
      text: `With its best screw loose the bit is held against the cutting force ${Math.max(0, factorBestMissing).toFixed(2)} times over: one screw that works loose is enough.`,
      figure: ratio(factorBestMissing),
      limit: { ...ratio(wanted), reason: 'the same with the best screw missing (rule of thumb)' },
      levers,
    },
  ]
}

function slipping(design: HeadDesign, { hold }: HeldBit): Finding[] {
  const { units, parameters } = design
  const wanted = parameters.settings.screws['hold-factor']
  const at = written({ value: cuttingOf(design).runAt, kind: 'rotation-speed' }, units)
  const ways = [
    { id: 'outward', found: hold.outward, text: `At ${at} the bit is thrown outwards`, levers: slowerCut },
    { id: 'inward', found: hold.inward, text: 'The cut pushes the bit back into its slot', levers: lighterCut },
    { id: 'out-of-slot', found: hold.outOfSlot, text: 'The cut pulls the bit out of its slot', levers: lighterCut },
  ]
  return ways.flatMap(({ id, found: { load, factor }, text, levers }): Finding[] => {
    if (factor === undefined || factor >= wanted) return []
    return [
      {
        id: `clamp:slips-${id}`,
        level: levelOf(factor, wanted),
        text: `${text} with ${written({ value: load, kind: 'force' }, units)}, and the screws hold it ${factor.toFixed(2)} times over at their least force.`,
        figure: ratio(factor),
        limit: { ...ratio(wanted), reason: 'friction of screws and wall over what pulls at the bit (rule of thumb)' },
        levers: [...tighterScrews, ...levers],
      },
    ]
  })
}

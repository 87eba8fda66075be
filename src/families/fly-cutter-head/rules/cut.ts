import type { Finding } from '../../../checks/finding.ts'
import { inSentence } from '../../../checks/in-sentence.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { type CuttingLoad, cuttingOf } from '../engineering/cutting.ts'
import { lighterCut, shorterReach, slowerCut } from './cut-levers.ts'

/** Whether the mill can take the cut: its force, power and travel. */
export const cut: Rule<HeadDesign> = {
  id: 'cut',
  findings(design) {
    const { load } = cuttingOf(design)
    return load
      ? [...power(design, load), ...chip(design, load), ...travel(design)]
      : [noForce(design), ...travel(design)]
  },
}

function noForce({ layout: { materials } }: HeadDesign): Finding {
  return {
    id: 'cut:no-force',
    level: 'caution',
    text: `No cutting force is published for ${inSentence(materials.work.title)}: torque, power, bending of the bit and prying are not checked. Start with a light cut.`,
    levers: [],
  }
}

function power(design: HeadDesign, { motorMean, motorPeak, peakTorque }: CuttingLoad): Finding[] {
  const { units, parameters } = design
  const motor = parameters.machine.power
  const show = (value: number) => written({ value, kind: 'power' }, units)
  const at = written({ value: cuttingOf(design).runAt, kind: 'rotation-speed' }, units)
  const limit = { value: motor, kind: 'power', reason: 'power of the spindle motor, as given for the machine' } as const
  const levers = [...lighterCut, ...slowerCut, ...shorterReach]
  if (motorMean > motor) {
    return [
      {
        id: 'cut:mean-power',
        level: 'stop',
        text: `The cut asks ${show(motorMean)} of the motor, losses of the drive counted in, all the time: a motor of ${show(motor)} stalls.`,
        figure: { value: motorMean, kind: 'power' },
        limit,
        levers,
      },
    ]
  }
  if (motorPeak <= motor) return []
  return [
    {
      id: 'cut:peak-power',
      level: 'caution',
      text: `Each bite of the bit takes ${written({ value: peakTorque, kind: 'torque' }, units)}, at ${at} ${show(motorPeak)} of the motor, losses of the drive counted in: more than it has, so that only the spindle’s momentum carries the bit through.`,
      figure: { value: motorPeak, kind: 'power' },
      limit,
      levers,
    },
  ]
}

function chip(design: HeadDesign, { force }: CuttingLoad): Finding[] {
  const { units, parameters } = design
  const least = parameters.settings.cutting['least-chip']
  const thickness = mm(force.chipThickness)
  const levers = [
    { path: 'work.feed-per-turn', turn: 'up' },
    { path: 'bit.nose-radius', turn: 'down' },
  ] as const
  if (force.chipThickness < least) {
    return [
      {
        id: 'cut:thin-chip',
        level: 'caution',
        text: `The chip is only ${written(thickness, units)} thick: an edge that is not fresh from the stone rubs instead of cutting, and wears.`,
        figure: thickness,
        limit: { ...mm(least), reason: 'least chip that an edge takes off (rule of thumb)' },
        levers,
      },
    ]
  }
  if (force.basis === 'formula') return []
  return [
    {
      id: 'cut:force-bound',
      level: 'note',
      text: `The chip of ${written(thickness, units)} is thinner than cutting forces were measured for: force, torque and power are upper bounds, those of a chip of ${written(mm(force.chips.low), units)}.`,
      figure: thickness,
      limit: { ...mm(force.chips.low), reason: 'thinnest chip that Kienzle’s formula holds for' },
      levers: [],
    },
  ]
}

function travel(design: HeadDesign): Finding[] {
  const { units, parameters } = design
  const { travel: needed } = cuttingOf(design)
  const most = parameters.machine['table-travel']
  if (needed === undefined || most === undefined || needed.travelClear <= most) return []
  const show = (value: number) => written(mm(value), units)
  const stop = needed.travelCut > most
  return [
    {
      id: 'cut:table-travel',
      level: stop ? 'stop' : 'caution',
      text: stop
        ? `The table has to travel ${show(needed.travelCut)} to cut the whole length, more than it has.`
        : `The table’s travel is enough to cut the whole length, but not for the tip to leave the work behind it (${show(needed.travelClear)}): stop the spindle before the table is run back.`,
      figure: mm(needed.travelClear),
      limit: { ...mm(most), reason: 'travel of the table, as given for the machine' },
      levers: [...shorterReach, { path: 'work.length', turn: 'down' }],
    },
  ]
}

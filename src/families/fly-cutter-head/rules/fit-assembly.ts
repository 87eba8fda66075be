import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { heatLimit, isShrunk, jointOfHead, pressedFit, trappedAir } from '../engineering/fit.ts'
import { isJoinedFirst } from '../making/tilted-set-up.ts'
import { looser, tighter } from './fit-levers.ts'

/** Whether head and arbor can be put together the way it is meant. */
export const fitAssembly: Rule<HeadDesign> = {
  id: 'fit-assembly',
  findings(design) {
    if (pressedFit(design) === undefined) return []
    return [...(isShrunk(design) ? byHeat(design) : byPress(design)), ...letsAirOut(design)]
  },
}

function byHeat(design: HeadDesign): Finding[] {
  const joint = jointOfHead(design)
  if (joint === undefined) return []
  const found: Finding[] = []
  const { least, most } = joint
  if (least.interference <= 0) {
    found.push({
      id: 'fit-assembly:heat-adds-nothing',
      level: 'caution',
      text: `Heat never creates interference: at the wrong end of the limits ${least.interference < 0 ? `there is a clearance of ${written(mm(-least.interference), design.units)}` : 'spigot and bore are line to line'}, and cold again the head is as loose as before.`,
      figure: mm(least.interference),
      limit: { ...mm(0), reason: 'heating opens the bore only while it is hot' },
      levers: tighter(design),
    })
  }
  const { heat, both, need } = most.assembly
  if (need === 'none') return found
  const show = (value: number) => written({ value, kind: 'temperature' }, design.units)
  const hardened = design.parameters.settings.fit['heat-limit-hardened']
  const figure = { value: heat.temperature, kind: 'temperature' } as const
  if (!heat.possible) {
    const cold = both?.possible === true
    const help = cold
      ? `: with the arbor cooled to ${show(both.spigotTemperature)} it needs only ${show(both.temperature)}`
      : ', and cooling the arbor does not make up for it'
    found.push({
      id: 'fit-assembly:too-hot',
      level: cold ? 'caution' : 'stop',
      text: `To slip over the tightest spigot the head must have ${show(heat.temperature)}, and ${design.layout.materials.body.title} is spoilt above ${show(heat.limit)}${help}.`,
      figure,
      limit: {
        value: heatLimit(design),
        kind: 'temperature',
        reason: 'warmest that this head may get (rule of thumb)',
      },
      levers: [...looser(design), { path: 'fit.assembly', choose: 'press' }],
    })
  } else if (heat.temperature > hardened) {
    found.push({
      id: 'fit-assembly:beside-hardened',
      level: 'note',
      text: `To slip over the tightest spigot the head must have ${show(heat.temperature)}: take bit and set screws out before it is heated.`,
      figure,
      limit: { value: hardened, kind: 'temperature', reason: 'beside hardened parts (rule of thumb)' },
      levers: looser(design),
    })
  }
  return found
}

function byPress(design: HeadDesign): Finding[] {
  const { face, bore, arbor, units } = design.parameters
  const found: Finding[] = []
  if (face.angle > 0 && !isJoinedFirst(design)) {
    found.push({
      id: 'fit-assembly:angled-face',
      level: 'note',
      text: 'The angled face is no seat for the press, and a loose wedge under it can shoot out: press the arbor in before the face is cut, or into a cup bored out to the face.',
      levers: [
        { path: 'making.join', choose: 'before-tilt' },
        { path: 'fit.assembly', choose: 'heat' },
      ],
    })
  }
  if (arbor['lead-in'] === 0 && bore.chamfer === 0) {
    found.push({
      id: 'fit-assembly:lead-in',
      level: 'caution',
      text: 'Neither spigot nor bore has a chamfer to start by: the spigot goes in askew and shaves the bore.',
      figure: mm(0),
      // Any chamfer would do: the usual one.
      levers: ['arbor.lead-in', 'bore.chamfer'].map((path) => ({ path, choose: units === 'in' ? 25.4 / 32 : 1 })),
    })
  }
  return found
}

function letsAirOut(design: HeadDesign): Finding[] {
  const air = trappedAir(design)
  if (air === undefined) return []
  const force = { value: air.force, kind: 'force' } as const
  const pushes = Number.isFinite(air.force)
    ? ` It pushes the arbor out with ${written(force, design.units)} when it is home`
    : ' It keeps the spigot from going home'
  return [
    {
      id: 'fit-assembly:vent',
      level: 'caution',
      text: `The bore is blind and air cannot leave it.${pushes}, more when it is hot or oiled.`,
      ...(Number.isFinite(air.force) && {
        figure: force,
        limit: { value: 0, kind: 'force', reason: 'air must have a way out' } as const,
      }),
      levers: [
        { path: 'bore.vent', choose: 'hole' },
        { path: 'bore.vent', choose: 'flat' },
      ],
    },
  ]
}

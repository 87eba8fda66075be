import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { heatLimit, isShrunk, trappedAir } from '../engineering/fit.ts'
import { drawbarPull } from '../engineering/shank.ts'
import { figure, most, ofJoint } from './fit-figure.ts'

const heat = 'thermal expansion; clearance and limits are rules of thumb'

/** How head and arbor go together, and what pulls the shank home. */
export const fitAssemblyFigures: readonly Figure<HeadDesign>[] = [
  figure(
    'fit.press-force',
    'Force of the press at full depth, most',
    'force',
    'μ·π·d·L·p at the most interference, the high friction and nothing smoothed',
    ofJoint((j, d) => (isShrunk(d) ? undefined : j.most.pressForce)),
  ),
  figure(
    'fit.head-temperature',
    'Temperature of the head to slip over the largest spigot',
    'temperature',
    heat,
    ofJoint(({ most: { assembly: plan } }) => (plan.need === 'none' ? undefined : plan.heat.temperature)),
    most(heatLimit),
  ),
  figure(
    'fit.head-temperature.cold-arbor',
    'The same with the arbor in liquid nitrogen',
    'temperature',
    heat,
    ofJoint(({ most: { assembly: plan } }) => (plan.need === 'none' ? undefined : plan.both?.temperature)),
    most(heatLimit),
  ),
  figure(
    'fit.assembly-clearance',
    'Room to slip the spigot in',
    'length',
    'max(0.001·d, 0.02 mm) (rule of thumb)',
    ofJoint((j) => j.most.assembly.clearance),
  ),
  figure('fit.trapped-air', 'Force of the air shut in below the spigot', 'force', 'Boyle, without leaks', (d) => {
    const force = trappedAir(d)?.force
    return force !== undefined && Number.isFinite(force) ? force : undefined
  }),
  figure(
    'shank.drawbar-pull',
    'Pull of the drawbar at which the taper carries the wanted torque',
    'force',
    'as of a cone clutch, N = F/(sin α + μ·cos α); textbooks of machine design',
    drawbarPull,
  ),
]

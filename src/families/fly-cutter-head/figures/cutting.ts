import type { Amount } from '../../../checks/finding.ts'
import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { type Cutting, type CuttingLoad, cuttingOf } from '../engineering/cutting.ts'

const speedSource =
  'n = v/(π·D) among the speeds the spindle has; cutting speeds by bit and work: table of work materials'
const kienzle =
  'F = kc1.1·h^−m·a·f (Kienzle; table of work materials) with factors for high-speed steel, wear and rake in use (rules of thumb)'
const bounded = `${kienzle}; an upper bound where the chip is thinner than 0.05 mm`
const meanSource = 'a·w·v·kc at the mean chip (standard milling power formula), over whole turns'
const geometry = 'arc of the tip’s circle over the work, the circle centred on it'

const figure = (
  id: string,
  label: string,
  kind: Amount['kind'],
  source: string,
  of: (cutting: Cutting) => number | undefined,
): Figure<HeadDesign> => ({ id, label, kind, source, of: (design) => of(cuttingOf(design)) })

const loaded = (
  id: string,
  label: string,
  kind: Amount['kind'],
  source: string,
  of: (load: CuttingLoad) => number,
): Figure<HeadDesign> => figure(id, label, kind, source, ({ load }) => load && of(load))

const ofMotor = (of: Figure<HeadDesign>): Figure<HeadDesign> => ({
  ...of,
  limit: (d) => d.parameters.machine.power,
  limitIs: 'most',
})

/** Speed, feed, force and power of the cut. The advised speed is about the life of the edge and no safety limit. */
export const cuttingFigures: readonly Figure<HeadDesign>[] = [
  figure(
    'speed.advised',
    'Advised speed, for the life of the edge (no safety limit)',
    'rotation-speed',
    speedSource,
    ({ speed }) => speed.advised?.runAt,
  ),
  figure(
    'speed.wanted-low',
    'Speeds that suit the edge, from',
    'rotation-speed',
    speedSource,
    (c) => c.speed.wanted.low,
  ),
  figure(
    'speed.wanted-high',
    'Speeds that suit the edge, to',
    'rotation-speed',
    speedSource,
    (c) => c.speed.wanted.high,
  ),
  figure('speed.run', 'Speed that forces and power are worked out for', 'rotation-speed', speedSource, (c) => c.runAt),
  {
    ...figure('speed.cutting', 'Cutting speed at it', 'cutting-speed', 'v = ω·D/2', (c) => c.cuttingSpeed),
    limit: (d) => Math.max(cuttingOf(d).range.high, d.parameters.work['cutting-speed'] ?? 0),
    limitIs: 'most',
  },
  figure(
    'speed.largest-swing',
    'Largest swing that the slowest speed of the spindle suits',
    'length',
    speedSource,
    (c) => c.speed.largestSwing,
  ),
  figure('feed.table', 'Feed of the table in a minute', 'length', 'feed a turn times speed', (c) => c.tableSpeed * 60),
  figure(
    'cut.passes',
    'Passes for the width of the work',
    'count',
    'swing over width (rule of thumb)',
    (c) => c.passes,
  ),
  figure(
    'cut.one-pass-swing',
    'Least swing for one clean pass',
    'length',
    'swing over width (rule of thumb)',
    (c) => c.pass.swingNeeded,
  ),
  figure('cut.pass-width', 'Width cut in one pass', 'length', geometry, (c) => c.passWidth),
  figure(
    'cut.approach',
    'Axis before the near end of the work when the table starts',
    'length',
    geometry,
    (c) => c.travel?.approach,
  ),
  figure(
    'cut.overrun',
    'Axis beyond the far end (negative: short of it) when the whole length is cut',
    'length',
    geometry,
    (c) => c.travel?.overrunCut,
  ),
  figure(
    'cut.overrun-clear',
    'Axis beyond the far end (negative: short of it) when the tip has left the work',
    'length',
    geometry,
    (c) => c.travel?.overrunClear,
  ),
  {
    ...figure(
      'cut.travel',
      'Travel of the table until the tip has left the work',
      'length',
      geometry,
      (c) => c.travel?.travelClear,
    ),
    limit: (d) => d.parameters.machine['table-travel'],
    limitIs: 'most',
  },
  figure(
    'cut.minutes',
    'Time that this travel takes, minutes',
    'ratio',
    'travel over feed of the table',
    (c) => c.travel && c.travel.timeClear / 60,
  ),
  {
    ...loaded(
      'cut.chip',
      'Chip at its thickest',
      'length',
      'depth·feed over length of edge in cut',
      (l) => l.force.chipThickness,
    ),
    limit: (d) => d.parameters.settings.cutting['least-chip'],
    limitIs: 'least',
  },
  loaded(
    'cut.edge',
    'Length of edge in cut',
    'length',
    'nose and straight edge up to the depth of cut',
    (l) => l.force.edge.length,
  ),
  loaded(
    'cut.factor',
    'Factor on the table’s cutting force: bit, wear and rake',
    'ratio',
    kienzle,
    (l) => l.force.factor,
  ),
  loaded('cut.specific', 'Cutting force over section of the chip', 'pressure', bounded, (l) => l.force.specific),
  loaded('cut.force', 'Main cutting force at the thickest chip', 'force', bounded, (l) => l.force.main),
  loaded(
    'cut.force-radial',
    'Thrust towards the axis',
    'force',
    'share of the main force (rule of thumb), square to the edge',
    (l) => l.force.radial,
  ),
  loaded(
    'cut.force-axial',
    'Thrust along the axis, towards the head',
    'force',
    'share of the main force (rule of thumb), square to the edge',
    (l) => l.force.axial,
  ),
  loaded(
    'cut.torque',
    'Peak torque at the spindle',
    'torque',
    'main cutting force times radius of the tip',
    (l) => l.peakTorque,
  ),
  loaded(
    'cut.power-peak',
    'Peak power at the tip',
    'power',
    'main cutting force times cutting speed',
    (l) => l.peakPower,
  ),
  loaded('cut.power-mean', 'Mean power at the tip', 'power', meanSource, (l) => l.mean.power),
  ofMotor(
    loaded(
      'cut.motor-peak',
      'Power of the motor in the peak',
      'power',
      'peak power over the efficiency of the drive (rule of thumb)',
      (l) => l.motorPeak,
    ),
  ),
  ofMotor(
    loaded(
      'cut.motor-mean',
      'Power of the motor on average',
      'power',
      'mean power over the efficiency of the drive (rule of thumb)',
      (l) => l.motorMean,
    ),
  ),
  loaded('cut.share-of-turn', 'Share of the turn in which the bit cuts', 'ratio', geometry, (l) => l.mean.shareOfTurn),
]

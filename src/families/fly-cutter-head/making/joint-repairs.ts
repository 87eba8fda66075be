import type { Finding } from '../../../checks/finding.ts'
import { findingsOf } from '../../../checks/rule.ts'
import type { Repair } from '../../../measured/repair.ts'
import { matchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { type Holding, isAllowed, type WayToHold } from '../../../mechanics/fit/way-to-hold.ts'
import { capital } from '../../../quantity/capital.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import { HeadDesign } from '../design.ts'
import { isShrunk, jointOfHead, pressedFit } from '../engineering/fit.ts'
import { printStep } from '../engineering/fit-limits.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import {
  freshArborOf,
  type Match,
  matchOf,
  type OtherWay,
  otherWaysOf,
  threadForBore,
} from '../engineering/ways-to-hold.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { headRules } from '../rules/head-rules.ts'

const torque = (design: HeadDesign, value: number) => formatQuantity('torque', value, design.units)
const length = (design: HeadDesign, value: number) => formatLength(value, design.units)

/** What else can hold a head as it was made: the cheapest first, weld last of all. */
export function jointRepairs(made: HeadDesign, designed: HeadDesign): Repair[] {
  const joined = pressedFit(made) !== undefined
  return otherWaysOf(made)
    .filter(({ way }) => joined || way !== 'fresh-arbor')
    .flatMap((other) => {
      if (other.way === 'fresh-arbor') return freshRepair(made, designed)
      const repair = otherWay(made, other)
      return other.way === 'screw-and-washer' && joined ? [sleeve(made, matchOf(designed)), repair] : [repair]
    })
}

/** What a wider bore with another fit does: the stops that it brings, and the cautions; undefined where it makes no head. */
function openedTo(
  made: HeadDesign,
  diameter: number,
  fit: Parameters['fit'],
):
  | { readonly design: HeadDesign; readonly stops: readonly Finding[]; readonly cautions: readonly Finding[] }
  | undefined {
  const { parameters: p } = made
  const arbor =
    p.arbor.kind === 'shank'
      ? { ...p.arbor, 'shoulder-diameter': Math.max(p.arbor['shoulder-diameter'], diameter + 1) }
      : p.arbor
  const variant = HeadDesign.from({ ...p, bore: { ...p.bore, diameter }, arbor, fit }, made.tables)
  if (!variant.ok) return undefined
  const known = new Set(findingsOf(headRules, made).map((f) => `${f.level} ${f.id}`))
  const brings = findingsOf(headRules, variant.value).filter((f) => !known.has(`${f.level} ${f.id}`))
  return {
    design: variant.value,
    stops: brings.filter((f) => f.level === 'stop'),
    cautions: brings.filter((f) => f.level === 'caution'),
  }
}

/** Whether it carries the cut with the wanted safety. */
const carriesCut = (made: HeadDesign, most: number): boolean =>
  most > 0 && most >= made.parameters.settings.fit['safety-factor'] * fitLoadOf(made).cutTorque

/** What gives in a jam; nothing where it stands that too. */
function inAJam(made: HeadDesign, most: number): string[] {
  const { jamTorque } = fitLoadOf(made)
  return most >= jamTorque
    ? []
    : [`Should the bit jam, the spindle gives ${torque(made, jamTorque)}: it gives before the motor does.`]
}

/** A fresh arbor, by what the design matches its spigots by. */
function freshRepair(made: HeadDesign, designed: HeadDesign): Repair[] {
  const bore = made.layout.fit?.bore
  const measured = bore !== undefined && bore.smallest === bore.largest
  const size = measured ? bore.smallest : made.parameters.bore.diameter
  const match = matchOf(designed)
  const worked = freshArborOf(made, match, size)
  if (!worked?.ok) return []
  const { turnTo, holding } = worked.value
  const [least, most] = [match.ratio - match.spread, match.ratio + match.spread].map((r) => length(made, r * size))
  const to = measured
    ? `${length(made, turnTo.smallest)} to ${length(made, turnTo.largest)} for a bore of ${length(made, size)}`
    : `${least} to ${most} over it, once it is measured`
  return [
    worthOf(made, titles['fresh-arbor'], {
      way: 'fresh-arbor',
      made: `spigot turned to the bore as measured: ${to}`,
      holding,
    }),
  ]
}

/** How thick the wall of a sleeve must be to be turned and pressed, mm: rule of thumb. */
const sleeveWall = 2.5

/** The bore opened, a sleeve pressed in and bored to the arbor: worked out as the same joint at the sleeve's outside. */
function sleeve(made: HeadDesign, { ratio, spread }: Match): Repair {
  const { parameters: p, layout } = made
  const outside = p.bore.diameter + 2 * sleeveWall
  const base = { id: 'sleeve', title: 'A sleeve in a bore opened up' }
  const opened = openedTo(made, outside, {
    ...pressedFit(made)!,
    kind: 'matched',
    'interference-ratio': ratio,
    'interference-spread': spread,
    'bore-zone': 'H7',
  } as Parameters['fit'])
  const cannot = (says: string): Repair => ({ ...base, would: 'not do', says, cautions: [] })
  if (opened === undefined) return cannot(`A sleeve of ${length(made, outside)} leaves no head round it.`)
  const { design, stops, cautions } = opened
  if (stops.length > 0) return cannot(`Opened to ${length(made, outside)} for a sleeve: ${stops[0]!.text}`)
  const joint = jointOfHead(design)
  const hold = joint && (isShrunk(design) ? joint.least.shrunk : joint.least.pressed)
  const turned = matchedFit({ nominal: outside, ratio, spread, printStep: printStep[made.units] })
  const turnTo = turned.ok
    ? `, turned to ${length(made, turned.value.spigot.smallest)} to ${length(made, turned.value.spigot.largest)} for a bore of just that size`
    : ''
  const most = hold?.torque ?? 0
  return {
    ...base,
    would: hold?.enough === true ? 'do' : 'not do',
    says: `Open the bore to ${length(made, outside)} and measure it; sleeve with a wall of ${length(made, sleeveWall)}${turnTo}; bore it to the arbor when it is in. The hub is then ${(layout.inscribed / outside).toFixed(2)} times its bore and carries ${torque(made, most)}; the cut asks for ${torque(made, fitLoadOf(made).cutTorque)}.`,
    cautions: [
      ...cautions.map((f) => f.text),
      ...inAJam(made, most),
      'The joint of arbor and sleeve must carry the same again: match that fit too.',
    ],
  }
}

const titles: Readonly<Record<WayToHold, string>> = {
  'fresh-arbor': 'A fresh arbor, turned to the bore as measured',
  'retaining-compound': 'Retaining compound',
  'cross-pin': 'A pin across hub and spigot',
  'screw-and-washer': 'Screw and washer from below',
  threaded: 'A threaded arbor',
  keyed: 'A key',
  weld: 'Weld, last of all',
}

function otherWay(made: HeadDesign, other: OtherWay): Repair {
  const { way, holding } = other
  if (way === 'threaded') return threadedRepair(made, other)
  // A screw and washer keep the head on and drive nothing: they are a catch beside a joint, not a joint.
  if (holding.torque > 0 || !holding.catchesHead) return worthOf(made, titles[way], other)
  const failing = failingOf(holding)
  const says =
    failing.length > 0
      ? 'There is no place for it.'
      : `${capital(other.made)}. It keeps the head on and drives nothing: only beside a joint that carries the cut.`
  return {
    id: way,
    title: titles[way],
    would: 'not do',
    says: [says, ...failing.map((c) => c.says)].join(' '),
    cautions: cautionsOf(holding),
  }
}

/** The bore tapped for the thinnest thread it leaves metal for: what that opens in the head counts. */
function threadedRepair(made: HeadDesign, other: OtherWay): Repair {
  const repair = worthOf(made, titles.threaded, other)
  const { parameters: p } = made
  const thread = threadForBore(made)
  if (p.fit.kind === 'threaded' || thread === undefined) return repair
  const opened = openedTo(made, thread.majorDiameter, {
    kind: 'threaded',
    catch: p.fit.catch,
    thread: thread.name,
    hand: p.rotation === 'clockwise' ? 'right' : 'left',
  } as Parameters['fit'])
  const tapped = `Tapped ${thread.name} through a hole of ${length(made, thread.tapDrill)}`
  if (opened === undefined) return { ...repair, would: 'not do', says: `${tapped}, there is no head left round it.` }
  const { stops, cautions } = opened
  if (stops.length > 0) return { ...repair, would: 'not do', says: `${tapped}: ${stops[0]!.text}` }
  return {
    ...repair,
    says: `${repair.says} ${tapped}.`,
    cautions: [...other.holding.cautions, ...cautions.map((f) => f.text)],
  }
}

const failingOf = (holding: Holding) => holding.conditions.filter((c) => !c.met && c.level === 'stop')

const cautionsOf = (holding: Holding): string[] => [
  ...holding.cautions,
  ...holding.conditions.filter((c) => !c.met && c.level !== 'stop').map((c) => c.says),
]

/** Whether a way of holding the head carries the cut, and what to know of it. */
function worthOf(made: HeadDesign, title: string, { way, made: as, holding }: OtherWay): Repair {
  const onlyDrives = holding.axial === 0 ? ' Along the axis it holds nothing: what catches the head does.' : ''
  const works = `${capital(as)}. It carries ${torque(made, holding.torque)}, first to give: ${holding.weakest}; the cut asks for ${torque(made, fitLoadOf(made).cutTorque)}.${onlyDrives}`
  const would = isAllowed(holding) && carriesCut(made, holding.torque) ? 'do' : 'not do'
  return {
    id: way,
    title,
    would,
    says: [works, ...failingOf(holding).map((c) => c.says)].join(' '),
    cautions: [...(would === 'do' ? inAJam(made, holding.torque) : []), ...cautionsOf(holding)],
  }
}

import { findingsOf } from '../../../checks/rule.ts'
import type { Repair } from '../../../measured/repair.ts'
import { matchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { isAllowed, type WayToHold } from '../../../mechanics/fit/way-to-hold.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import { HeadDesign } from '../design.ts'
import { isShrunk, jointOfHead, pressedFit } from '../engineering/fit.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'
import { otherWaysOf } from '../engineering/ways-to-hold.ts'
import { headRules } from '../rules/head-rules.ts'

/**
 * What can still be done with a head as it was made, ranked: as it is with a lower limit, heat, a fresh arbor to the bore as
 * measured, compound, pin, sleeve, screw and washer, thread, key, and weld last of all.
 */
export function headRepairs(made: HeadDesign, designed: HeadDesign): Repair[] {
  const joined = pressedFit(made) !== undefined
  return [
    asItIs(made, designed),
    ...(joined ? [heat(made)] : []),
    ...otherWaysOf(made)
      .filter(({ way }) => joined || way !== 'fresh-arbor')
      .flatMap((other) =>
        other.way === 'screw-and-washer' && joined ? [sleeve(made), otherWay(made, other)] : [otherWay(made, other)],
      ),
  ]
}

const torque = (design: HeadDesign, value: number) => formatQuantity('torque', value, design.units)
const length = (design: HeadDesign, value: number) => formatLength(value, design.units)
const speed = (design: HeadDesign, value: number) => formatQuantity('rotation-speed', value, design.units)

function asItIs(made: HeadDesign, designed: HeadDesign): Repair {
  const stops = findingsOf(headRules, made).filter((f) => f.level === 'stop')
  const [now, before] = [neverExceedOf(made).notAbove, neverExceedOf(designed).notAbove]
  const lower = now < 0.995 * before
  const limit = lower
    ? `Stamp it with the lower never-exceed speed: ${speed(made, now)}, not ${speed(made, before)}.`
    : `The never-exceed speed stays at ${speed(made, before)}.`
  return {
    id: 'as-it-is',
    title: 'Use it as it is',
    would: stops.length === 0 ? 'do' : 'not do',
    says: stops.length === 0 ? limit : stops.map((f) => f.text).join(' '),
    cautions:
      lower && stops.length === 0
        ? ['Mend the figure on the drawing and in the report too, so that nobody runs it at the old one.']
        : [],
  }
}

/** Heating makes assembly easy and never creates interference. */
function heat(made: HeadDesign): Repair {
  const joint = jointOfHead(made)
  const title = isShrunk(made) ? 'Heat, as planned' : 'Shrink it on instead of pressing'
  const base = { id: 'heat', title }
  if (joint === undefined)
    return {
      ...base,
      would: 'not do',
      says: 'Nothing of the joint is whole: heat has nothing to work on.',
      cautions: [],
    }
  const { least, most } = joint
  if (least.effective <= 0) {
    const says =
      most.interference <= 0
        ? `Heat makes no interference: the spigot has ${length(made, -least.interference)} of clearance, and falls out when the head has cooled.`
        : `Heat makes no interference: what is there, ${length(made, Math.max(0, least.interference))}, goes into smoothing the two surfaces or is not there at all.`
    return { ...base, would: 'not do', says, cautions: [] }
  }
  const { shrunk, pressed } = least
  const carries = `Shrunk on dry it carries ${torque(made, shrunk.torque)}, pressed ${torque(made, pressed.torque)}; the cut asks for ${torque(made, fitLoadOf(made).cutTorque)}.`
  return {
    ...base,
    would: shrunk.enough ? (pressed.enough && !isShrunk(made) ? 'not be needed' : 'do') : 'not do',
    says: carries,
    cautions: ['Heat evenly and measure the temperature.', 'No chlorinated cleaner before heat: the fumes are poison.'],
  }
}

/** How thick the wall of a sleeve must be to be turned and pressed, mm: rule of thumb. */
const sleeveWall = 2.5

/** The bore opened, a sleeve pressed in and bored to the arbor: worked out as the same joint at the sleeve's outside. */
function sleeve(made: HeadDesign): Repair {
  const { parameters: p, layout } = made
  const outside = p.bore.diameter + 2 * sleeveWall
  const fit = pressedFit(made)!
  const base = { id: 'sleeve', title: 'A sleeve in a bore opened up' }
  const variant = HeadDesign.from(
    {
      ...p,
      bore: { ...p.bore, diameter: outside },
      arbor: {
        ...p.arbor,
        ...(p.arbor.kind === 'shank' && { 'shoulder-diameter': Math.max(p.arbor['shoulder-diameter'], outside + 1) }),
      },
      fit: {
        ...fit,
        kind: 'matched',
        'interference-ratio': 0.0015,
        'interference-spread': 0.0003,
        'bore-zone': 'H7',
      } as typeof p.fit,
    },
    made.tables,
  )
  const cannot = (says: string): Repair => ({ ...base, would: 'not do', says, cautions: [] })
  if (!variant.ok) return cannot(`A sleeve of ${length(made, outside)} leaves no head round it.`)
  const design = variant.value
  const known = new Set(
    findingsOf(headRules, made)
      .filter((f) => f.level === 'stop')
      .map((f) => f.id),
  )
  const brings = findingsOf(headRules, design).filter((f) => f.level === 'stop' && !known.has(f.id))
  const ratio = layout.inscribed / outside
  if (brings.length > 0) return cannot(`Opened to ${length(made, outside)} for a sleeve: ${brings[0]!.text}`)
  const joint = jointOfHead(design)
  const hold = joint && (isShrunk(design) ? joint.least.shrunk : joint.least.pressed)
  const turned = matchedFit({ nominal: outside, ratio: 0.0015, spread: 0.0003 })
  const turnTo = turned.ok
    ? `, turned to ${length(made, turned.value.spigot.smallest)} to ${length(made, turned.value.spigot.largest)} for a bore of just that size`
    : ''
  return {
    ...base,
    would: hold?.enough === true ? 'do' : 'not do',
    says: `Open the bore to ${length(made, outside)} and measure it; sleeve with a wall of ${length(made, sleeveWall)}${turnTo}; bore it to the arbor when it is in. The hub is then ${ratio.toFixed(2)} times its bore and carries ${torque(made, hold?.torque ?? 0)}; the cut asks for ${torque(made, fitLoadOf(made).cutTorque)}.`,
    cautions: ['The joint of arbor and sleeve must carry the same again: match that fit too.'],
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

function otherWay(made: HeadDesign, { way, made: as, holding }: ReturnType<typeof otherWaysOf>[number]): Repair {
  const load = fitLoadOf(made)
  const failing = holding.conditions.filter((c) => !c.met && c.level === 'stop')
  const carries = holding.torque > 0 && holding.torque >= made.parameters.settings.fit['safety-factor'] * load.cutTorque
  const turned = way === 'fresh-arbor' ? turnedTo(made) : ''
  const works = `${as}${turned}. It carries ${torque(made, holding.torque)} before ${holding.weakest} gives; the cut asks for ${torque(made, load.cutTorque)}.`
  // A screw and washer keep the head on and drive nothing: they are a catch beside a joint, not a joint.
  const onlyCatches = holding.torque === 0 && holding.catchesHead
  const noPlace = onlyCatches && failing.length > 0
  const says = noPlace
    ? 'There is no place for it'
    : onlyCatches
      ? `${as}. It keeps the head on and drives nothing: only beside a joint that carries the cut.`
      : works
  return {
    id: way,
    title: titles[way],
    would: isAllowed(holding) && carries ? 'do' : 'not do',
    says: [noPlace ? `${capital(says)}.` : capital(says), ...failing.map((c) => c.says)].join(' '),
    cautions: [
      ...holding.cautions,
      ...holding.conditions.filter((c) => !c.met && c.level !== 'stop').map((c) => c.says),
    ],
  }
}

/** Limits of a spigot turned to the bore as it is. */
function turnedTo(made: HeadDesign): string {
  const fit = pressedFit(made)!
  const own = fit.kind === 'matched' ? fit : undefined
  const nominal = made.layout.fit?.bore ?? {
    smallest: made.parameters.bore.diameter,
    largest: made.parameters.bore.diameter,
  }
  const bore = (nominal.smallest + nominal.largest) / 2
  const found = matchedFit({
    nominal: bore,
    ratio: own?.['interference-ratio'] ?? 0.0015,
    spread: own?.['interference-spread'] ?? 0.0003,
    measuredBore: { size: bore },
    printStep: made.units === 'in' ? 0.00254 : 0.001,
  })
  if (!found.ok) return ''
  const { smallest, largest } = found.value.spigot
  return `: ${length(made, smallest)} to ${length(made, largest)} for a bore of ${length(made, bore)}`
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

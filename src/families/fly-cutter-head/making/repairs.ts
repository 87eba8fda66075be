import type { Finding } from '../../../checks/finding.ts'
import { findingsOf } from '../../../checks/rule.ts'
import type { MadeLine } from '../../../measured/as-made.ts'
import type { Repair } from '../../../measured/repair.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk, jointOfHead, pressedFit } from '../engineering/fit.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'
import { headRules } from '../rules/head-rules.ts'
import type { MadeSizes } from './as-made.ts'
import { type BeyondFigures, beyondFigures } from './beyond-figures.ts'
import { jointRepairs } from './joint-repairs.ts'

/**
 * What can still be done with a head as it was made, ranked: as it is with a lower limit, heat, a fresh arbor to the bore as
 * measured, compound, pin, sleeve, screw and washer, thread, key, and weld last of all. `lines`: what was measured.
 */
export function headRepairs(made: HeadDesign, designed: HeadDesign, lines: readonly MadeLine[]): Repair[] {
  const ofJoint = [...(pressedFit(made) ? [heat(made)] : []), ...jointRepairs(made, designed)]
  const findings = findingsOf(headRules, made)
  const more = findings.some((f) => f.level === 'stop' && !isOfTheJoint(made, f.id))
  const alone = 'It mends the joint alone: what else stops the tool stays.'
  return [
    asItIs(made, designed, findings, beyondFigures(made, lines)),
    ...ofJoint.map(
      (r): Repair =>
        more && r.would === 'do' ? { ...r, would: 'mend a part of it', cautions: [alone, ...r.cautions] } : r,
    ),
  ]
}

/** Whether another way to hold the head clears a finding. */
const isOfTheJoint = (made: HeadDesign, id: string): boolean =>
  id.startsWith('fit-') || (id === 'never-exceed' && neverExceedOf(made).cause === 'joint')

/** What of a head can still be chosen when these sizes are made: the work, what is tightened, and parts not yet begun. */
export function stillOpen(sizes: MadeSizes): (path: string) => boolean {
  const begun = (part: string) => [...sizes.keys()].some((name) => name.startsWith(`${part} `))
  const paths = [
    'work.',
    'screws.tightening-torque',
    'screws.length',
    'bit.overhang',
    'bit.swing',
    ...(begun('bit') ? [] : ['bit.']),
    ...(begun('arbor') ? [] : ['arbor.', 'fit.']),
  ]
  // A bit of other width or height wants another slot.
  const withSlot = ['bit.width', 'bit.height']
  return (path) => paths.some((p) => path.startsWith(p)) && !withSlot.includes(path)
}

const torque = (design: HeadDesign, value: number) => formatQuantity('torque', value, design.units)
const length = (design: HeadDesign, value: number) => formatLength(value, design.units)
const speed = (design: HeadDesign, value: number) => formatQuantity('rotation-speed', value, design.units)

function asItIs(made: HeadDesign, designed: HeadDesign, findings: readonly Finding[], beyond: BeyondFigures): Repair {
  const stops = [...findings.flatMap((f) => (f.level === 'stop' ? [f.text] : [])), ...beyond.stops]
  const [now, before] = [neverExceedOf(made).notAbove, neverExceedOf(designed).notAbove]
  const lower = now < before - 1e-6
  const known = new Set(findingsOf(headRules, designed).map((f) => f.id))
  const worse = findings.filter((f) => f.level === 'caution' && !known.has(f.id))
  const limit = lower
    ? `Stamp it with the lower never-exceed speed: ${speed(made, now)}, not ${speed(made, before)}.`
    : `The never-exceed speed stays at ${speed(made, before)}.`
  return {
    id: 'as-it-is',
    title: 'Use it as it is',
    would: stops.length === 0 ? 'do' : 'not do',
    says: stops.length === 0 ? limit : stops.join(' '),
    cautions: [
      ...(lower && stops.length === 0
        ? ['Mend the figure on the drawing and in the report too, so that nobody runs it at the old one.']
        : []),
      ...(stops.length === 0 ? worse.map((f) => f.text) : []),
      ...beyond.cautions,
    ],
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

import type { Result } from '../../input/problem.ts'
import { type Joint, type JointInput, jointOf, type Reserve } from './joint.ts'
import type { Limits } from './limits.ts'
import { type MatchedInput, matchedFit } from './matched-fit.ts'
import type { Condition, Holding } from './way-to-hold.ts'

/** A fresh arbor for a bore that came out as it did. */
export interface FreshArborInput {
  /** As of a matched fit; the bore must have been measured. */
  readonly match: MatchedInput & Required<Pick<MatchedInput, 'measuredBore'>>
  /** Everything else of the joint. */
  readonly joint: Omit<JointInput, 'fit'>
  readonly assembly: 'press' | 'heat'
}

/** What to turn, and what that holds. */
export interface FreshArbor {
  /** mm at 20 °C. */
  readonly turnTo: Limits
  readonly joint: Joint
  readonly holding: Holding
}

/**
 * The cheapest repair, to be looked at first: leave the head as it is and turn a new spigot to the measured bore. Grip at
 * the least interference. Problems as `matchedFit` and `jointOf`.
 */
export function freshArbor({ match, joint, assembly }: FreshArborInput): Result<FreshArbor> {
  const fit = matchedFit(match)
  if (!fit.ok) return fit
  const worked = jointOf({ ...joint, fit: fit.value })
  if (!worked.ok) return worked
  const { least, most } = worked.value
  const hold = assembly === 'press' ? least.pressed : least.shrunk
  const conditions: Condition[] = [
    {
      id: 'carries-load',
      met: hold.enough,
      level: 'stop',
      says: 'The least interference must carry the load with the wanted safety.',
      ...(hold.slip === undefined ? {} : { measure: { kind: 'ratio', found: hold.slip, least: joint.safety } }),
      source: 'thick cylinders (Lamé)',
    },
    withstands('hub-strength', 'head', most.hub),
    withstands('arbor-strength', 'arbor', most.shaft),
  ]
  return {
    ok: true,
    value: {
      turnTo: fit.value.spigot,
      joint: worked.value,
      holding: {
        way: 'fresh-arbor',
        axial: hold.axial,
        torque: hold.torque,
        weakest: 'slipping of the joint',
        catchesHead: false,
        conditions,
        cautions: ['Measure bore and spigot at the same temperature, and let both cool down first.'],
      },
    },
  }
}

function withstands(id: string, part: string, { factor, fails }: Reserve): Condition {
  const source = 'thick cylinders (Lamé)'
  if (fails === 'unknown') {
    const says = `No strength of the ${part} is published: whether it withstands the fit is not known.`
    return { id, met: false, level: 'caution', says, source }
  }
  return {
    id,
    met: factor === undefined || factor >= 1,
    // Past the onset of yield a ductile part still presses; a cracked one is scrap.
    level: fails === 'breaks' ? 'stop' : 'caution',
    says: `The most interference must not make the ${part} ${fails === 'breaks' ? 'crack' : 'yield'}.`,
    ...(factor === undefined ? {} : { measure: { kind: 'ratio', found: factor, least: 1 } }),
    source,
  }
}

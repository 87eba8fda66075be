import { cross, dot, scale, type Vec3 } from '../../geometry/vector.ts'
import { type BlankSide, sideDirection } from './blank-side.ts'
import { facetNormals, type GroundFacets } from './facets.ts'

/**
 * One facet on a bench grinder whose table turns and tilts; the wheel's flat face stands upright.
 *
 * Lay the bit on `liesOn` with `up` on top, `towardsWheel` square against the wheel. Turn the bit on the table by
 * `swivel`, positive anticlockwise as you look down on the table. Then tilt the table, bit and all, by `tilt`, about a
 * level line along the wheel's face: positive lifts the edge of the table that is next to the wheel. Slide in: the wheel
 * grinds the facet.
 */
export interface GrinderSetting {
  readonly liesOn: BlankSide
  readonly up: BlankSide
  readonly towardsWheel: BlankSide
  /** rad, −π to π. */
  readonly swivel: number
  /** rad, −π/2 to π/2. */
  readonly tilt: number
}

export interface GrinderSettings {
  readonly rake: GrinderSetting
  readonly end: GrinderSetting
  readonly workSide: GrinderSetting
}

/**
 * Turn and tilt of the grinder's table for each facet. The usual positive angles give positive tilts; which way to turn
 * depends on the hand (−1 clockwise, +1 anticlockwise seen from the spindle), since bits for the two are mirror images.
 * Throws RangeError as `facetNormals` does.
 */
export function grinderSettings(facets: GroundFacets, hand: -1 | 1): GrinderSettings {
  const normals = facetNormals(facets)
  return {
    rake: settingFor(normals.rake, hand, { towardsWheel: 'leading face', up: 'work side', liesOn: 'back' }),
    end: settingFor(normals.end, hand, { towardsWheel: 'outer end', up: 'leading face', liesOn: 'trailing face' }),
    workSide: settingFor(normals.workSide, hand, {
      towardsWheel: 'work side',
      up: 'leading face',
      liesOn: 'trailing face',
    }),
  }
}

function settingFor(
  normal: Vec3,
  hand: -1 | 1,
  laid: Pick<GrinderSetting, 'liesOn' | 'up' | 'towardsWheel'>,
): GrinderSetting {
  const [wheel, up] = [sideDirection[laid.towardsWheel], sideDirection[laid.up]]
  // What lies to the right of someone facing the wheel; the bit's frame is right-handed only when it turns clockwise.
  const right = scale(cross(wheel, up), -hand)
  const [forward, aside] = [dot(normal, wheel), dot(normal, right)]
  // The facet looks ahead by `forward` and to the right by `aside`: turned left by that much it looks straight at the
  // wheel, and lifted by as much as it looks down it stands upright.
  return { ...laid, swivel: Math.atan2(aside, forward), tilt: Math.atan2(-dot(normal, up), Math.hypot(forward, aside)) }
}

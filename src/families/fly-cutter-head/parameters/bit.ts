import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'
import type { GroundFacets } from '../../../mechanics/angles/facets.ts'
import type { Range } from '../../../tables/range.ts'

const deg = Math.PI / 180

/** What a bench grinder's table allows, rad: the limits of every facet, given or worked out. */
export const facetLimits: Readonly<Record<keyof GroundFacets, Range>> = {
  rakeAlong: { low: -30 * deg, high: 45 * deg },
  rakeAcross: { low: -30 * deg, high: 45 * deg },
  endEdgeAngle: { low: -30 * deg, high: 60 * deg },
  endRelief: { low: -5 * deg, high: 45 * deg },
  workSideEdgeAngle: { low: -30 * deg, high: 60 * deg },
  workSideRelief: { low: -5 * deg, high: 45 * deg },
}

/** The bit: its blank, how it is set, and what is ground on it. */
export const bitSection = (f: Fields) => {
  const facet = (says: string, name: keyof GroundFacets) =>
    f.angle({ says, min: facetLimits[name].low, max: facetLimits[name].high, derived: true })
  return z.strictObject({
    width: f.length({ says: 'Of the blank, along the direction of motion.', min: 1, max: 100 }),
    height: f.length({ says: 'Of the blank, square to the angled face.', min: 1, max: 100 }),
    length: f.length({ says: 'Of the blank.', min: 5, max: 500 }),
    material: f.text({ says: 'Key of the materials table.', default: 'hss' }),
    overhang: f.length({
      says: 'Along the bit, from the outer corner of the head (at the face, on the slot mid-line through the axis) to the tip. Give this or the swing.',
      above: 0,
      max: 500,
      derived: true,
    }),
    swing: f.length({
      says: 'Diameter of the circle that the tip runs on. Give this or the overhang.',
      above: 0,
      max: 1000,
      derived: true,
    }),
    'ground-off': z
      .strictObject({
        leading: f.length({ says: 'Ground off the leading face at the tip.', min: 0, max: 50, default: '0 mm' }),
        end: f.length({ says: 'Ground off the end at the tip.', min: 0, max: 50, default: '0 mm' }),
        underside: f.length({ says: 'Ground off the work side at the tip.', min: 0, max: 50, default: '0 mm' }),
      })
      .prefault({})
      .describe('What is ground off the blank at the tip.'),
    grind: f.choice(['as-given', 'for-work-material'], {
      says: 'as-given: the facets below; without them the blank is square as bought. for-work-material: rakes and reliefs worked out so that the angles in use are those the work material wants.',
      default: 'as-given',
    }),
    facets: z
      .strictObject({
        'rake-along': facet(
          'Slope of the rake face along the bit: positive falls away inwards. Left out: 0, or what the work material wants.',
          'rakeAlong',
        ),
        'rake-across': facet(
          'Slope of the rake face away from the work: positive falls away upwards. Left out: 0, or what the work material wants.',
          'rakeAcross',
        ),
        'end-edge-angle': facet(
          'Lean of the end edge away from square: positive leans back above the work. Left out: 0.',
          'endEdgeAngle',
        ),
        'end-relief': facet(
          'Relief behind the end edge. Left out: what the work material wants; as-given needs it.',
          'endRelief',
        ),
        'work-side-edge-angle': facet(
          'Lean of the work-side edge away from the work: positive rises inwards. Left out: 0, or with for-work-material enough to keep the underside off the work.',
          'workSideEdgeAngle',
        ),
        'work-side-relief': facet(
          'Relief behind the work-side edge. Left out: what the work material wants; as-given needs it.',
          'workSideRelief',
        ),
        length: f.length({
          says: 'How far back from the tip, along the bit, the facets run. Left out: 0.75 × bit width.',
          above: 0,
          max: 200,
          derived: true,
        }),
      })
      .optional()
      .describe('Facets of the bit, as ground. Left out: the blank is square, or they are worked out.'),
    'nose-radius': f.length({
      says: 'Round between end edge and work-side edge.',
      min: 0,
      max: 20,
      default: '0.8 mm',
      defaultIn: '1/32 in',
      rule: true,
    }),
  })
}

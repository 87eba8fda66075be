import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

const deg = Math.PI / 180

/** The bit: its blank, how it is set, and what is ground on it. */
export const bitSection = (f: Fields) =>
  z.strictObject({
    width: f.length({ says: 'Of the blank, along the direction of motion.', above: 0, max: 100 }),
    height: f.length({ says: 'Of the blank, square to the angled face.', above: 0, max: 100 }),
    length: f.length({ says: 'Of the blank.', above: 0, max: 500 }),
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
      .prefault({}),
    facets: z
      .strictObject({
        'rake-along': f.angle({
          says: 'Slope of the rake face along the bit.',
          min: -30 * deg,
          max: 45 * deg,
          default: '0 deg',
        }),
        'rake-across': f.angle({
          says: 'Slope of the rake face away from the work.',
          min: -30 * deg,
          max: 45 * deg,
          default: '0 deg',
        }),
        'end-edge-angle': f.angle({
          says: 'Lean of the end edge away from square.',
          min: -30 * deg,
          max: 60 * deg,
          default: '0 deg',
        }),
        'end-relief': f.angle({ says: 'Relief behind the end edge.', min: -5 * deg, max: 45 * deg }),
        'work-side-edge-angle': f.angle({
          says: 'Lean of the work-side edge away from the bit.',
          min: -30 * deg,
          max: 60 * deg,
          default: '0 deg',
        }),
        'work-side-relief': f.angle({ says: 'Relief behind the work-side edge.', min: -5 * deg, max: 45 * deg }),
        length: f.length({
          says: 'How far back from the tip the facets run. Left out: 1.5 × bit width.',
          above: 0,
          max: 200,
          derived: true,
        }),
      })
      .optional(),
    'nose-radius': f.length({
      says: 'Round between end edge and work-side edge.',
      min: 0,
      max: 20,
      default: '0.8 mm',
      rule: true,
    }),
  })

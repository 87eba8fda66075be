import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

const deg = Math.PI / 180

/** Rules of thumb for the cut itself: what it takes, and what it leaves. */
export const cuttingSettings = (f: Fields) =>
  z
    .strictObject({
      'hss-factor': f.ratio({
        says: 'Cutting force of a high-speed-steel edge over that of the table, which holds for carbide.',
        min: 0.5,
        max: 3,
        default: '1.2',
        rule: true,
      }),
      'wear-factor': f.ratio({
        says: 'Cutting force of a worn edge over that of a sharp one.',
        min: 1,
        max: 3,
        default: '1.3',
        rule: true,
      }),
      'per-degree-of-rake': f.ratio({
        says: 'Share of the cutting force that a degree of rake takes off.',
        min: 0,
        max: 0.02,
        default: '0.015',
        rule: true,
      }),
      'table-rake': f.angle({
        says: 'Rake that the table of cutting forces holds for.',
        min: -10 * deg,
        max: 20 * deg,
        default: '6 deg',
        rule: true,
      }),
      'thrust-share': f.ratio({
        says: 'Thrust square to the edge over the main cutting force.',
        min: 0,
        max: 2,
        default: '0.5',
        rule: true,
      }),
      'least-chip': f.length({
        says: 'A thinner chip than this is rubbed off rather than cut.',
        min: 0,
        max: 0.5,
        default: '0.02 mm',
        rule: true,
      }),
      'burn-ratio': f.ratio({
        says: 'Cutting speed over the high end of its range at which the edge burns off before the pass is done.',
        min: 1,
        max: 5,
        default: '1.5',
        rule: true,
      }),
      'drive-efficiency': f.ratio({
        says: 'Share of the motor’s power that reaches the spindle.',
        min: 0.1,
        max: 1,
        default: '0.8',
        rule: true,
      }),
      gap: f.length({
        says: 'Kept between tip and work where the table starts and stops.',
        min: 0,
        max: 50,
        default: '2 mm',
        rule: true,
      }),
    })
    .prefault({})

/** What the running tool may do to itself and to the spindle. */
export const runningSettings = (f: Fields) =>
  z
    .strictObject({
      'unbalance-force': f.force({
        says: 'Largest unbalance force the spindle should feel: 25 N on a small bench mill, 60 N on a knee mill.',
        above: 0,
        max: 1e5,
        default: '25 N',
        rule: true,
      }),
      'tip-speed': f.cuttingSpeed({
        says: 'Never-exceed tip speed.',
        above: 0,
        max: 1e6,
        default: '1500 m/min',
        rule: true,
      }),
      'bit-stress': f.pressure({
        says: 'Largest bending stress in the bit.',
        above: 0,
        max: 5000,
        default: '600 MPa',
        rule: true,
      }),
      'tip-deflection': f.length({
        says: 'Largest deflection at the tip.',
        above: 0,
        max: 5,
        default: '0.05 mm',
        rule: true,
      }),
      'deflection-stop': f.ratio({
        says: 'Deflection over the largest one, beyond which the bit chatters and digs in.',
        min: 1,
        max: 50,
        default: '5',
        rule: true,
      }),
      'never-exceed-share': f.ratio({
        says: 'Never-exceed speed over the lowest of the limits it comes from.',
        above: 0,
        max: 1,
        default: '0.8',
        rule: true,
      }),
      'proof-share': f.ratio({
        says: 'Share of the speed of a proof run that counts as a limit.',
        above: 0,
        max: 1,
        default: '0.6',
        rule: true,
      }),
      'proof-run': f.rotationSpeed({
        says: 'Speed at which this very tool was run up behind a guard and stayed whole. Left out: none on record.',
        above: 0,
        max: 1e5,
        optional: true,
      }),
    })
    .prefault({})

/** How the heavy side is drilled. */
export const balanceSettings = (f: Fields) =>
  z
    .strictObject({
      drills: f.list(f.length({ says: 'Diameter of a drill.', above: 0, max: 50 }), {
        says: 'Drills to take out the heavy side with. Left out: 3 to 12 mm, or 1/8 to 1/2 in.',
        min: 1,
        max: 60,
        derived: true,
      }),
      'point-angle': f.angle({
        says: 'Included angle of their points.',
        min: 60 * deg,
        max: 179 * deg,
        default: '118 deg',
        rule: true,
      }),
      'most-holes': f.count({ says: 'Most holes to drill for balance.', min: 1, max: 30, default: 6, rule: true }),
      spread: f.angle({
        says: 'How far from the heavy side a hole may lie.',
        above: 0,
        max: 90 * deg,
        default: '60 deg',
        rule: true,
      }),
      'depth-step': f.length({
        says: 'Depths are drilled in steps of this.',
        above: 0,
        max: 5,
        default: '0.1 mm',
        rule: true,
      }),
    })
    .prefault({})

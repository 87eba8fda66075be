import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

/** The cut to be taken. */
export const workSection = (f: Fields) =>
  z.strictObject({
    material: f.text({ says: 'Name in the work-materials table.' }),
    width: f.length({ says: 'Width to clear in one pass.', above: 0, max: 2000 }),
    length: f.length({ says: 'Length to be cut. Left out: not used.', above: 0, max: 5000, optional: true }),
    'depth-of-cut': f.length({ says: 'Taken off in one pass.', min: 0.001, max: 50 }),
    'feed-per-turn': f.length({ says: 'Table travel in one turn of the spindle.', above: 0, max: 5 }),
    'cutting-speed': f.cuttingSpeed({
      says: 'Your own choice. Left out: from the table, by bit and work material.',
      above: 0,
      max: 1e5,
      derived: true,
    }),
    'roughness-wanted': f.length({
      says: 'Ra that the surface must have. Left out: not checked.',
      above: 0,
      max: 0.1,
      optional: true,
    }),
    'flatness-wanted': f.length({
      says: 'How flat the surface must be across its width. Left out: not checked.',
      above: 0,
      max: 5,
      optional: true,
    }),
  })

/** What the mill can do. */
export const machineSection = (f: Fields) =>
  z.strictObject({
    speeds: z
      .union([
        f.list(f.rotationSpeed({ says: 'A speed of the spindle.', above: 0, max: 1e5 }), {
          says: 'Every speed that the spindle has, the slowest first.',
          min: 1,
          max: 60,
          ascending: true,
          distinct: true,
        }),
        z
          .strictObject({
            slowest: f.rotationSpeed({ says: 'Slowest speed of a variable drive.', above: 0, max: 1e5 }),
            fastest: f.rotationSpeed({ says: 'Fastest speed of a variable drive.', above: 0, max: 1e5 }),
          })
          .describe('A variable drive: any speed between the two.'),
      ])
      .describe('A list of speeds, or the slowest and the fastest of a variable drive.'),
    power: f.power({ says: 'Of the spindle motor.', above: 0, max: 1e6 }),
    reverse: f.flag({ says: 'Whether the spindle also runs anticlockwise (seen from the spindle looking down).' }),
    'largest-swing': f.length({ says: 'Largest circle that clears column, table and guards.', above: 0, max: 5000 }),
    drawbar: f.flag({ says: 'Whether a drawbar holds the shank in.' }),
    headroom: f.length({ says: 'Spindle nose to table. Left out: not checked.', above: 0, max: 5000, optional: true }),
    'table-travel': f.length({ says: 'Along the cut. Left out: not checked.', above: 0, max: 10000, optional: true }),
    tram: z
      .strictObject({
        along: f.length({
          says: 'Difference that an indicator in the spindle reads between the two points of its circle in the direction of travel.',
          min: -1,
          max: 1,
        }),
        across: f.length({ says: 'The same, between the two points across the travel.', min: -1, max: 1 }),
        span: f.length({ says: 'Diameter of the circle that it swings on.', min: 10, max: 1000 }),
      })
      .describe('How square the spindle stands to the table. Left out: not known.')
      .optional(),
    vise: z
      .strictObject({
        'jaw-height': f.length({ says: 'Bed of the vise to the top of the jaws.', above: 0, max: 500 }),
        'jaw-opening': f.length({ says: 'Widest opening.', above: 0, max: 1000 }),
        'bed-height': f.length({
          says: 'Table to the bed of the vise. Left out: the height above the table is not checked.',
          min: 0,
          max: 500,
          optional: true,
        }),
      })
      .describe('The vise that holds the head while slot, step and holes are cut.'),
  })

/** What lies in the drawer: used to plan set-ups. */
export const shopSection = (f: Fields) =>
  z
    .strictObject({
      parallels: f.list(f.length({ says: 'Height of a pair.', above: 0, max: 200 }), {
        says: 'Heights of the parallels in the drawer.',
        min: 0,
        max: 60,
        distinct: true,
        default: [],
      }),
      'sine-bar': f.length({
        says: 'Centre distance of the sine bar. Left out: none.',
        above: 0,
        max: 500,
        optional: true,
      }),
      'gauge-blocks': f.list(f.length({ says: 'Length of a block.', above: 0, max: 500 }), {
        says: 'Gauge blocks, besides those of a measuring set.',
        min: 0,
        max: 150,
        distinct: true,
        default: [],
      }),
      'angle-blocks': f.list(f.angle({ says: 'Angle of a block.', above: 0, below: Math.PI / 2 }), {
        says: 'Angle blocks, besides those of a measuring set.',
        min: 0,
        max: 60,
        default: [],
      }),
      'gauge-pins': f.list(f.length({ says: 'Diameter of a pin.', above: 0, max: 100 }), {
        says: 'Pins to measure over, besides those of a measuring set.',
        min: 0,
        max: 150,
        default: [],
      }),
      'measuring-sets': f.list(f.text({ says: 'Name of a set: metric-47, shop-12, gauge-metric-tenths.' }), {
        says: 'Boxed sets, by their names in the tables of gauge blocks, angle blocks and gauge pins.',
        min: 0,
        max: 20,
        default: [],
      }),
      cutters: f.list(
        z
          .strictObject({
            diameter: f.length({ says: 'Diameter of the cutter or drill.', above: 0, max: 200 }),
            reach: f.length({ says: 'How far it stands out of its holder.', above: 0, max: 300 }),
            kind: f.choice(['end-mill', 'face-mill', 'drill', 'reamer'], { says: 'What it is.', default: 'end-mill' }),
          })
          .describe('One cutter.'),
        {
          says: 'Cutters with their reach: the route picks from them and sees whether they get there. Left out: any, by size.',
          min: 0,
          max: 60,
          default: [],
        },
      ),
    })
    .prefault({})

export const drawingSection = (f: Fields) =>
  z
    .strictObject({
      sheet: f.choice(['A4', 'A3', 'letter', 'tabloid'], { says: 'Paper.', default: 'A4' }),
      projection: f.choice(['first-angle', 'third-angle'], {
        says: 'Which way the views are folded out.',
        default: 'first-angle',
      }),
      'shown-in': f.choice(['file-units', 'mm', 'in', 'both'], {
        says: 'Units of the figures on the sheets.',
        default: 'file-units',
      }),
    })
    .prefault({})

export const mockUpSection = (f: Fields) =>
  z
    .strictObject({
      scale: f.ratio({ says: 'Size of the printed model over the real one.', above: 0, max: 10, default: '1' }),
      clearance: f.length({
        says: 'Added to bores and slots of the printed model.',
        min: 0,
        max: 2,
        default: '0.2 mm',
        rule: true,
      }),
      threads: f.choice(['tap-size', 'plain'], {
        says: 'Threaded holes of the printed model: at tap size to be tapped, or plain at the thread’s diameter.',
        default: 'tap-size',
      }),
      bodies: f.choice(['separate', 'one-piece'], {
        says: 'Bit and arbor stub as bodies of their own, or printed with the head in one piece.',
        default: 'separate',
      }),
      orientation: f.choice(['mounting-face-down', 'as-drawn'], {
        says: 'How the model lies on the print bed.',
        default: 'mounting-face-down',
      }),
    })
    .prefault({})

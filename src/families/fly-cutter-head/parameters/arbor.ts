import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

/** What goes into the bore and into the spindle. */
export const arborSection = (f: Fields) => {
  const common = {
    material: f.text({ says: 'Key of the materials table.' }),
    'spigot-length': f.length({ says: 'Part of the arbor that goes into the bore.', above: 0, max: 500 }),
    'lead-in': f.length({
      says: 'Chamfer on the end of the spigot, 45°.',
      min: 0,
      max: 10,
      default: '1 mm',
      defaultIn: '0.04 in',
      rule: true,
    }),
    'bore-through': f.length({
      says: 'Diameter of a hole along the whole arbor. Left out: solid.',
      above: 0,
      max: 150,
      optional: true,
    }),
  }
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('shank').describe('A shank from the table, turned to a spigot with a shoulder.'),
      shank: f.text({ says: 'Name in the shanks table: straight-20, morse-2, r8, 7-24-30.' }),
      'shoulder-diameter': f.length({ says: 'Disc that seats on the mounting face.', above: 0, max: 300 }),
      'shoulder-thickness': f.length({ says: 'From the mounting face to the shank.', min: 0.1, max: 200 }),
      ...common,
    }),
    z.strictObject({
      kind: z.literal('straight').describe('A straight round bar of the bore’s diameter, without a shoulder.'),
      'length-above': f.length({ says: 'Length that stands out of the mounting face.', above: 0, max: 500 }),
      ...common,
    }),
  ])
}

/** How spigot and bore are fitted and joined. */
export const fitSection = (f: Fields) => {
  const kept = {
    catch: f.choice(['none', 'pin', 'screw-and-washer', 'shoulder-below'], {
      says: 'What keeps the head from dropping off should the joint slip.',
      default: 'none',
    }),
    'pin-diameter': f.length({
      says: 'Of the pin across hub and spigot. Left out: about a quarter of the bore.',
      min: 0.5,
      max: 50,
      derived: true,
    }),
  }
  const pressing = {
    ...kept,
    assembly: f.choice(['press', 'heat'], { says: 'Pressed cold, or shrunk on with heat.', default: 'press' }),
    'bore-roughness': f.length({ says: 'Rz of the bore.', min: 0, max: 0.1, default: '6.3 um', rule: true }),
    'spigot-roughness': f.length({ says: 'Rz of the spigot.', min: 0, max: 0.1, default: '6.3 um', rule: true }),
  }
  return z
    .discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('matched').describe('Bore first, measure it, turn the spigot to that bore.'),
        ...pressing,
        'interference-ratio': f.ratio({
          says: 'Interference over diameter.',
          min: 0,
          max: 0.01,
          default: '0.0015',
          rule: true,
        }),
        'interference-spread': f.ratio({
          says: 'Plus or minus, over diameter.',
          min: 0,
          max: 0.005,
          default: '0.0003',
          rule: true,
        }),
        'bore-zone': f.text({ says: 'ISO 286 zone that the bore is made to.', default: 'H7' }),
      }),
      z.strictObject({
        kind: z.literal('iso-286').describe('A hole and a shaft code.'),
        ...pressing,
        code: f.text({ says: 'Such as H7/s6.' }),
      }),
      z.strictObject({
        kind: z.literal('ansi-b4-1').describe('A class of the inch standard.'),
        ...pressing,
        class: f.text({ says: 'Such as FN2.' }),
      }),
      z.strictObject({
        kind: z.literal('limits').describe('Limits of bore and spigot given outright.'),
        ...pressing,
        'bore-smallest': f.length({ says: 'Smallest bore diameter.', above: 0, max: 250 }),
        'bore-largest': f.length({ says: 'Largest bore diameter.', above: 0, max: 250 }),
        'spigot-smallest': f.length({ says: 'Smallest spigot diameter.', above: 0, max: 250 }),
        'spigot-largest': f.length({ says: 'Largest spigot diameter.', above: 0, max: 250 }),
      }),
      z.strictObject({
        kind: z
          .literal('threaded')
          .describe('The head is screwed on the spigot against its shoulder; bore.diameter is the major diameter.'),
        ...kept,
        thread: f.text({ says: 'A row of the threads table: M20, 3/4-10.' }),
        hand: f.choice(['right', 'left'], { says: 'Hand of the thread.', default: 'right' }),
      }),
    ])
    .prefault({ kind: 'matched' })
}

import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

/** Figures that no standard sets. Each is a rule of thumb of the trade that the shop may change. */
export const settingsSection = (f: Fields) =>
  z
    .strictObject({
      'chord-tolerance': f.length({
        says: 'How far flats of the solid may lie from the round face.',
        min: 0.0005,
        max: 1,
        default: '0.02 mm',
      }),
      facing: f.length({ says: 'Taken off each sawn end.', min: 0, max: 20, default: '1 mm', rule: true }),
      walls: z
        .strictObject({
          'bore-to-slot': f.length({
            says: 'Least metal between bore and slot.',
            min: 0,
            max: 50,
            default: '3 mm',
            rule: true,
          }),
          'bore-to-slot-share': f.ratio({
            says: 'The same as a share of the bore diameter; the larger counts.',
            min: 0,
            max: 1,
            default: '0.12',
            rule: true,
          }),
          'beside-thread': f.ratio({
            says: 'Least metal beside a thread, over its diameter.',
            min: 0,
            max: 3,
            default: '0.5',
            rule: true,
          }),
          other: f.length({
            says: 'Least metal between any other two features.',
            min: 0,
            max: 50,
            default: '2 mm',
            rule: true,
          }),
          never: f.length({
            says: 'A thinner wall than this stops the job.',
            min: 0,
            max: 20,
            default: '1 mm',
            rule: true,
          }),
        })
        .prefault({}),
      hub: z
        .strictObject({
          wanted: f.ratio({
            says: 'Hub outside over bore, below which the hub is thin.',
            min: 1,
            max: 5,
            default: '1.8',
            rule: true,
          }),
          least: f.ratio({
            says: 'Hub outside over bore, below which it will not hold.',
            min: 1,
            max: 5,
            default: '1.5',
            rule: true,
          }),
        })
        .prefault({}),
      screws: z
        .strictObject({
          spacing: f.ratio({
            says: 'Least spacing over thread diameter.',
            min: 1,
            max: 10,
            default: '2.5',
            rule: true,
          }),
          'from-end': f.ratio({
            says: 'Least distance from screw axis to the end of the wall, over thread diameter.',
            min: 0.5,
            max: 10,
            default: '1',
            rule: true,
          }),
          friction: f.ratio({
            says: 'Between screw point and bit, and bit and wall.',
            min: 0.02,
            max: 0.5,
            default: '0.12',
            rule: true,
          }),
          'torque-factor': f.ratio({ says: 'K in T = K·d·F.', min: 0.05, max: 0.5, default: '0.2', rule: true }),
          scatter: f.ratio({
            says: 'Share of the screw force that may be missing.',
            min: 0,
            max: 0.9,
            default: '0.35',
            rule: true,
          }),
          'hold-factor': f.ratio({
            says: 'Wanted between holding force and load.',
            min: 1,
            max: 10,
            default: '3',
            rule: true,
          }),
        })
        .prefault({}),
      swing: z
        .strictObject({
          'over-width': f.ratio({
            says: 'Swing over width of work for one clean pass.',
            min: 1,
            max: 3,
            default: '1.1',
            rule: true,
          }),
        })
        .prefault({}),
      'body-clearance': z
        .strictObject({
          least: f.length({
            says: 'Least height of head and screws above the cut surface.',
            min: 0,
            max: 50,
            default: '1 mm',
            rule: true,
          }),
          'depths-of-cut': f.ratio({
            says: 'The same in depths of cut; the larger counts.',
            min: 0,
            max: 20,
            default: '2',
            rule: true,
          }),
        })
        .prefault({}),
      fit: z
        .strictObject({
          smoothing: f.ratio({
            says: 'Share of Rz of both faces that is lost in fitting.',
            min: 0,
            max: 1,
            default: '0.8',
            rule: true,
          }),
          'friction-pressed': f.ratio({
            says: 'Of a pressed joint.',
            min: 0.01,
            max: 0.5,
            default: '0.08',
            rule: true,
          }),
          'friction-shrunk': f.ratio({
            says: 'Of a dry shrunk joint.',
            min: 0.01,
            max: 0.5,
            default: '0.15',
            rule: true,
          }),
          'safety-factor': f.ratio({
            says: 'Wanted between joint capacity and demand.',
            min: 1,
            max: 10,
            default: '2',
            rule: true,
          }),
          ambient: f.temperature({ says: 'Temperature of the shop.', min: -20, max: 60, default: '20 °C' }),
        })
        .prefault({}),
      running: z
        .strictObject({
          'unbalance-force': f.force({
            says: 'Largest unbalance force the spindle should feel.',
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
        })
        .prefault({}),
    })
    .prefault({})

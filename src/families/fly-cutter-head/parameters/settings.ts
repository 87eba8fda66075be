import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'
import { setUpSettings } from './making.ts'
import { balanceSettings, cuttingSettings, runningSettings } from './running.ts'

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
      facing: f.length({
        says: 'Taken off each sawn end.',
        min: 0,
        max: 20,
        default: '1 mm',
        defaultIn: '0.04 in',
        rule: true,
      }),
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
        .prefault({})
        .describe('Least metal that must be left.'),
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
        .prefault({})
        .describe('How wide the hub must be round the bore.'),
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
          'screw-side': f.ratio({
            says: 'Share of the friction at the screw points that counts, since they tilt in their threads; the wall counts in full.',
            min: 0,
            max: 1,
            default: '0.5',
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
          excess: f.ratio({
            says: 'Share by which the screw force may be larger than its torque says.',
            min: 0,
            max: 2,
            default: '0.25',
            rule: true,
          }),
          'incomplete-thread': f.ratio({
            says: 'What countersink and bevels take off the engaged thread, in pitches.',
            min: 0,
            max: 5,
            default: '1',
            rule: true,
          }),
          'strength-factor': f.ratio({
            says: 'Wanted between what tapped wall and thread bear and the largest screw force.',
            min: 1,
            max: 10,
            default: '1.5',
            rule: true,
          }),
          'grip-caution': f.ratio({
            says: 'Bit held over bit that stands out, below which it is held poorly.',
            min: 0,
            max: 10,
            default: '1',
            rule: true,
          }),
          'grip-note': f.ratio({
            says: 'The same, below which it could be held better.',
            min: 0,
            max: 10,
            default: '1.5',
            rule: true,
          }),
        })
        .prefault({})
        .describe('How set screws stand in their wall, and what they must hold.'),
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
        .prefault({})
        .describe('How much wider than the work the tool should swing.'),
      grind: z
        .strictObject({
          'angle-tolerance': f.angle({
            says: 'How far an angle in use may lie outside what the work material wants.',
            min: 0,
            max: (45 * Math.PI) / 180,
            default: '5 deg',
            rule: true,
          }),
          'minor-edge-angle': f.angle({
            says: 'Least angle in use between the work-side edge and the cut surface: below it the underside rubs.',
            min: 0,
            max: (30 * Math.PI) / 180,
            default: '1 deg',
            rule: true,
          }),
          'heel-clearance': f.length({
            says: 'Least height above the cut surface of everything behind the work-side edge.',
            min: 0,
            max: 5,
            default: '0.05 mm',
            rule: true,
          }),
        })
        .prefault({})
        .describe('What the ground bit must have in use.'),
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
        .prefault({})
        .describe('How far everything but the bit stays above the cut surface.'),
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
          'friction-pressing': f.ratio({
            says: 'High friction while it is pressed in: what the press has to overcome.',
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
          'cut-factor': f.ratio({
            says: 'Demand on the joint over the peak load of the cut: an interrupted cut strikes.',
            min: 1,
            max: 10,
            default: '2',
            rule: true,
          }),
          'jam-factor': f.ratio({
            says: 'Demand on the joint over the torque of the motor, should the bit jam: the spindle adds its momentum.',
            min: 1,
            max: 10,
            default: '1.5',
            rule: true,
          }),
          'heat-limit-steel': f.temperature({
            says: 'Warmest that a head of plain steel or iron may get when it is shrunk on.',
            min: 60,
            max: 600,
            default: '300 °C',
            rule: true,
          }),
          'heat-limit-hardened': f.temperature({
            says: 'The same beside hardened parts: bit and set screws left in, a hardened arbor.',
            min: 60,
            max: 600,
            default: '200 °C',
            rule: true,
          }),
          'heat-limit-aluminium': f.temperature({
            says: 'The same for a head of aluminium.',
            min: 60,
            max: 400,
            default: '150 °C',
            rule: true,
          }),
          'compound-shear': f.pressure({
            says: 'Shear strength of a retaining compound that is counted on.',
            above: 0,
            max: 60,
            default: '10 MPa',
            rule: true,
          }),
          'weld-stress': f.pressure({
            says: 'Shear stress allowed on the throat of a weld that is struck at every turn.',
            above: 0,
            max: 300,
            default: '60 MPa',
            rule: true,
          }),
          ambient: f.temperature({ says: 'Temperature of the shop.', min: -20, max: 60, default: '20 °C' }),
        })
        .prefault({})
        .describe('Figures of the joint of head and arbor.'),
      'set-up': setUpSettings(f).describe('What a clamping must leave and hold.'),
      cutting: cuttingSettings(f).describe('Forces of the cut, and where it starts and stops.'),
      running: runningSettings(f).describe('What the running tool may do to itself and to the spindle.'),
      balance: balanceSettings(f).describe('How the heavy side is drilled.'),
    })
    .prefault({})

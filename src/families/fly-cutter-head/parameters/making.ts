import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

/** How the shop goes about it: the order of work, the machines, and what the tools take. */
export const makingSection = (f: Fields) =>
  z
    .strictObject({
      join: f.choice(['after-face', 'before-tilt'], {
        says: 'after-face: the head is finished by itself and joined last, clamped on its flats throughout. before-tilt: joined while both ends are square, a seat to press on; the tilt is then held by the shank.',
        default: 'after-face',
      }),
      'bored-in': f.choice(['lathe', 'mill'], {
        says: 'lathe: mounting face and bore in one clamping, square to each other. mill: no four-jaw chuck is needed, and the readout finds the middle.',
        default: 'lathe',
      }),
      'spigot-turned-in': f.choice(['lathe', 'mill-spindle'], {
        says: 'lathe: shank and spigot between the same centres. mill-spindle: by a turning tool in the vise, true to the very spindle it will run in.',
        default: 'lathe',
      }),
      'tool-material': f.choice(['hss', 'carbide'], {
        says: 'Of the cutters that the head is made with.',
        default: 'hss',
      }),
      flutes: f.count({ says: 'Teeth of the end mills.', min: 1, max: 12, default: 4 }),
      'feed-per-tooth': f.ratio({
        says: 'Feed per tooth of an end mill over its diameter, unless the table of work materials has less.',
        above: 0,
        max: 0.05,
        default: '0.005',
        rule: true,
      }),
      'most-per-tooth': f.length({
        says: 'Most feed per tooth, however large the cutter.',
        above: 0,
        max: 2,
        default: '0.06 mm',
        defaultIn: '0.0025 in',
        rule: true,
      }),
      'drill-feed': f.ratio({
        says: 'Feed a turn of a drill over its diameter.',
        above: 0,
        max: 0.1,
        default: '0.015',
        rule: true,
      }),
      'turning-feed': f.length({
        says: 'Feed a turn when the bore is finished and the spigot turned.',
        above: 0,
        max: 1,
        default: '0.08 mm',
        defaultIn: '0.003 in',
        rule: true,
      }),
      'slot-pass': f.ratio({
        says: 'Depth of one pass in a slot or step over the diameter of the end mill.',
        above: 0,
        max: 3,
        default: '0.5',
        rule: true,
      }),
      'deepest-pass': f.length({
        says: 'Deepest single pass of a mill, however large the cutter.',
        above: 0,
        max: 50,
        default: '4 mm',
        defaultIn: '0.16 in',
        rule: true,
      }),
      'facing-pass': f.ratio({
        says: 'Depth of one facing pass over the diameter of the cutter.',
        above: 0,
        max: 1,
        default: '0.1',
        rule: true,
      }),
      'left-to-finish': f.length({
        says: 'Left on floor and each wall of the slot for the finishing cuts.',
        min: 0,
        max: 3,
        default: '0.2 mm',
        defaultIn: '0.008 in',
        rule: true,
      }),
      'left-in-bore': f.length({
        says: 'Left on the diameter when the bore is drilled, for boring or reaming it to size.',
        min: 0,
        max: 10,
        default: '0.5 mm',
        defaultIn: '0.02 in',
        rule: true,
      }),
      'left-by-saw': f.length({
        says: 'Left on the angled face when the wedge is sawn off.',
        min: 0,
        max: 10,
        default: '1 mm',
        defaultIn: '0.04 in',
        rule: true,
      }),
    })
    .prefault({})

/** What a clamping must leave and hold. */
export const setUpSettings = (f: Fields) =>
  z
    .strictObject({
      clearance: f.length({
        says: 'Kept between the deepest cut and the jaws.',
        min: 0,
        max: 50,
        default: '1 mm',
        defaultIn: '0.04 in',
        rule: true,
      }),
      'clearance-shell-mill': f.length({
        says: 'The same under a face or shell mill.',
        min: 0,
        max: 50,
        default: '2 mm',
        defaultIn: '0.08 in',
        rule: true,
      }),
      'least-grip': f.length({
        says: 'Least flat for the jaws to hold.',
        min: 0,
        max: 200,
        default: '12 mm',
        defaultIn: '0.5 in',
        rule: true,
      }),
      'grip-share': f.ratio({
        says: 'The same over the height of what is held; the larger counts.',
        min: 0,
        max: 1,
        default: '1/3',
        rule: true,
      }),
      'never-grip': f.ratio({
        says: 'Share of the wanted grip below which the work is not held at all.',
        min: 0,
        max: 1,
        default: '0.5',
        rule: true,
      }),
      'film-coefficient': f.ratio({
        says: 'Heat that still air and walls of an oven give to the head, in W to a square metre and kelvin: for the time it takes.',
        above: 0,
        max: 1000,
        default: '20',
        rule: true,
      }),
    })
    .prefault({})

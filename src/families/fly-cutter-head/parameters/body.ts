import { z } from 'zod'
import type { Fields } from '../../../input/fields.ts'

const deg = Math.PI / 180

/** Bar stock the head is cut from. */
export const stockSection = (f: Fields) =>
  z.strictObject({
    shape: f.choice(['hexagon', 'round', 'square'], { says: 'Section of the bar.' }),
    size: f.length({ says: 'Across flats (hexagon, square) or diameter (round).', above: 0, max: 500 }),
    'slot-runs': f.choice(['point-to-point', 'flat-to-flat'], {
      says: 'Hexagon only: whether the slot runs from point to point, or across the flats from flat to flat.',
      default: 'point-to-point',
    }),
    length: f.length({
      says: 'Length of the sawn blank. Left out: long enough for the face to clean up, and facing on both ends.',
      above: 0,
      max: 1000,
      derived: true,
    }),
    material: f.text({ says: 'Key of the materials table.' }),
  })

/** The angled face that the slot is cut into. */
export const faceSection = (f: Fields) =>
  z.strictObject({
    angle: f.angle({ says: 'Tilt of the face; the bit side is the long side.', min: 0, max: 30 * deg }),
    'depth-on-axis': f.length({
      says: 'From the mounting face down the spindle axis to the angled face.',
      above: 0,
      max: 500,
    }),
  })

export const slotSection = (f: Fields) => {
  const common = {
    'ahead-of-centre': f.length({
      says: 'How far the leading wall of the slot lies ahead of the spindle axis in the direction of motion; negative: behind.',
      min: -250,
      max: 250,
    }),
    depth: f.length({ says: 'Square to the angled face.', above: 0, max: 200 }),
    clearance: f.length({
      says: 'Slot width over bit width.',
      min: 0,
      max: 5,
      default: '0.04 mm',
      defaultIn: '0.0015 in',
      rule: true,
    }),
  }
  return z.discriminatedUnion('runs', [
    z.strictObject({ runs: z.literal('through').describe('From side to side of the head.'), ...common }),
    z.strictObject({
      runs: z.literal('stopped').describe('From the bit side to a stop beyond the axis.'),
      ...common,
      'beyond-axis': f.length({
        says: 'How far the slot runs past the axis, along the face, to the deepest point of its end.',
        min: -250,
        max: 250,
      }),
      'cutter-diameter': f.length({
        says: 'End mill that leaves the end of the slot. Left out: as wide as the slot.',
        min: 0.1,
        max: 100,
        derived: true,
      }),
    }),
  ])
}

/** The step beside the slot: it leaves the wall that the set screws go through. */
export const stepSection = (f: Fields) =>
  z.strictObject({
    'wall-thickness': f.length({ says: 'Metal left between slot and step.', above: 0, max: 200 }),
    depth: f.length({ says: 'Square to the angled face.', above: 0, max: 200 }),
    side: f.choice(['leading', 'trailing'], {
      says: 'Which side of the slot. Screws on the leading side push the bit against solid metal.',
      default: 'leading',
    }),
  })

export const screwsSection = (f: Fields) =>
  z.strictObject({
    thread: f.text({ says: 'Set screw thread, a row of the set-screw table: M6, 1/4-20.' }),
    count: f.count({ says: 'Number of set screws in the row.', min: 1, max: 6 }),
    spacing: f.length({
      says: 'Centre to centre. Left out: 2.5 × thread diameter.',
      above: 0,
      max: 250,
      derived: true,
    }),
    'first-from-corner': f.length({
      says: 'Along the face, from the outer corner (where face, outside and slot mid-line would meet on the bit side) in to the first screw.',
      min: 0,
      max: 500,
    }),
    height: f.length({ says: 'Screw axis above the angled face, into the head.', above: 0, max: 200 }),
    length: f.length({
      says: 'Length of the set screw. Left out: the shortest standard length that fills the wall.',
      above: 0,
      max: 200,
      derived: true,
    }),
    point: f.choice(['flat', 'half-dog', 'cup', 'cone'], {
      says: 'Point of the set screws. High-speed steel is harder than the screw: a cup or cone only dents itself.',
      default: 'flat',
    }),
    'tightening-torque': f.torque({
      says: 'Left out: the seating torque of the set-screw table.',
      above: 0,
      max: 1e6,
      derived: true,
    }),
  })

export const boreSection = (f: Fields) => {
  const common = {
    diameter: f.length({ says: 'Nominal bore for the arbor.', above: 0, max: 200 }),
    chamfer: f.length({
      says: 'Lead-in at the mouth, 45°, measured on the radius.',
      min: 0,
      finest: 0.001,
      max: 20,
      default: '1 mm',
      defaultIn: '0.04 in',
      rule: true,
    }),
  }
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('blind').describe('Ends in the metal.'),
      ...common,
      depth: f.length({ says: 'Full-diameter depth from the mounting face.', above: 0, max: 500 }),
      bottom: f.choice(['flat', 'drill-point'], { says: 'Shape of the bottom.' }),
      'point-angle': f.angle({
        says: 'Included angle of the drill point.',
        min: 60 * deg,
        max: 179 * deg,
        default: '118 deg',
      }),
      vent: f.choice(['none', 'hole', 'flat'], {
        says: 'How air leaves when the arbor goes in: a small hole on to the face, or a flat along the spigot.',
      }),
      'vent-size': f.length({
        says: 'Diameter of the vent hole, or depth of the flat.',
        min: 0.1,
        max: 20,
        default: '2 mm',
        defaultIn: '5/64 in',
        rule: true,
      }),
    }),
    z.strictObject({ kind: z.literal('through').describe('Runs out into slot and face.'), ...common }),
  ])
}

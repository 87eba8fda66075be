import { z } from 'zod'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { choiceField, countField, flagField, listField, textField } from './plain-field.ts'
import { type QuantityOptions, quantityField } from './quantity-field.ts'

/**
 * Builders of zod fields for a file with these units. Each takes `says`, one sentence for the user, and gives a
 * schema that reads what the trade writes, puts out internal units, and words its own problems.
 */
export function fields(units: Units) {
  const quantity =
    (kind: QuantityKind) =>
    <const Options extends QuantityOptions>(options: Options) =>
      quantityField(kind, units, options)
  return {
    length: quantity('length'),
    angle: quantity('angle'),
    torque: quantity('torque'),
    power: quantity('power'),
    rotationSpeed: quantity('rotation-speed'),
    cuttingSpeed: quantity('cutting-speed'),
    temperature: quantity('temperature'),
    temperatureDifference: quantity('temperature-difference'),
    mass: quantity('mass'),
    force: quantity('force'),
    pressure: quantity('pressure'),
    density: quantity('density'),
    expansion: quantity('expansion'),
    ratio: quantity('ratio'),
    count: countField,
    choice: choiceField,
    text: textField,
    flag: flagField,
    list: listField,
    section,
  }
}

/** A group of fields; unknown keys in it are errors. Where all may be left out, add `.prefault({})`. */
function section<Shape extends z.core.$ZodLooseShape>(
  shape: Shape,
  options: { readonly says: string; readonly title?: string },
) {
  const title = options.title === undefined ? {} : { title: options.title }
  return z.strictObject(shape).meta({ description: options.says, ...title })
}

/** The builders of one file, for the functions that make the sections of a schema. */
export type Fields = ReturnType<typeof fields>

import { toJsonSchema } from '../../input/json-schema.ts'
import { chosenFamily, familyOperand, unitsOption } from '../chosen-family.ts'
import type { Command } from '../command.ts'

export const schemaCommand: Command = {
  name: 'schema',
  says: 'Prints the JSON Schema of a parameter set, from which an editor completes and checks',
  operands: [familyOperand],
  options: [unitsOption],
  details: [],
  example: 'schema fly-cutter-head > fly-cutter-head.schema.json',
  run({ operands: [name = ''], values }, { stdout }) {
    const family = chosenFamily(name)
    if (!family.ok) return family
    const units = values.get('--units') === 'in' ? 'in' : 'mm'
    const schema = toJsonSchema(family.value.schema(units), `${name}, bare lengths in ${units}`)
    stdout.write(`${JSON.stringify(schema, null, 2)}\n`)
    return { ok: true, exit: 0 }
  },
}

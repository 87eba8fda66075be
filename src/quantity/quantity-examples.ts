import type { QuantityKind, Units } from './kind.ts'
import { unitSymbol } from './unit-table.ts'

const examples: Readonly<Record<QuantityKind, { readonly mm: readonly string[]; readonly in: readonly string[] }>> = {
  length: { mm: ['12.5', '12.5 mm', '1/2 in'], in: ['0.5', '1/2 in', '2-1/4 in', '10 thou', '12.5 mm'] },
  angle: { mm: ['8', '8 deg', '7 deg 30 min'], in: ['8', '8 deg', '7 deg 30 min'] },
  torque: { mm: ['7.2', '7.2 N·m', '64 in·lbf'], in: ['64', '64 in·lbf', '5 ft·lbf', '7.2 N·m'] },
  power: { mm: ['1.5', '1.5 kW', '2 hp'], in: ['2', '2 hp', '1.5 kW'] },
  'rotation-speed': { mm: ['500', '500 rev/min'], in: ['500', '500 rev/min'] },
  'cutting-speed': { mm: ['30', '30 m/min', '90 ft/min'], in: ['90', '90 ft/min', '30 m/min'] },
  temperature: { mm: ['20', '20 °C', '68 °F'], in: ['68', '68 °F', '20 °C'] },
  'temperature-difference': { mm: ['40', '40 °C', '72 °F'], in: ['72', '72 °F', '40 °C'] },
  mass: { mm: ['1.2', '1.2 kg', '500 g'], in: ['2', '2 lb', '8 oz', '1.2 kg'] },
  force: { mm: ['800', '800 N', '1.2 kN'], in: ['180', '180 lbf', '800 N'] },
  pressure: { mm: ['350', '350 MPa', '50 ksi'], in: ['50000', '50000 psi', '50 ksi', '350 MPa'] },
  density: { mm: ['7850', '7850 kg/m³', '7.85 g/cm³'], in: ['0.284', '0.284 lb/in³'] },
  expansion: { mm: ['11.5e-6', '11.5 µm/(m·K)'], in: ['6.4e-6', '6.4 µin/(in·°F)'] },
  ratio: { mm: ['0.12', '12 %'], in: ['0.12', '12 %'] },
}

/** Ways to write a quantity of this kind; the first is a bare number. Each is understood by `parseQuantity`. */
export function quantityExamples(kind: QuantityKind, units: Units): readonly string[] {
  return examples[kind][units]
}

/** What may stand here, in words: `a length such as 12.5 (mm), 12.5 mm or 1/2 in`. */
export function allowedQuantity(kind: QuantityKind, units: Units): string {
  const [bare = '', ...others] = examples[kind][units]
  const symbol = unitSymbol(kind, units)
  const all = [symbol === '' ? bare : `${bare} (${symbol})`, ...others]
  const last = all.pop() ?? ''
  return `${quantityNoun(kind)} such as ${all.join(', ')} or ${last}`
}

/** The kind as a noun with its article: `a length`, `an angle`. */
export function quantityNoun(kind: QuantityKind): string {
  return `${kind === 'angle' || kind === 'expansion' ? 'an' : 'a'} ${kind.replace('-', ' ')}`
}

import { inGramMillimetres } from '../../mechanics/balance/unbalance-force.ts'
import type { QuantityKind, Units } from '../../quantity/kind.ts'
import { toUnit } from '../../quantity/to-unit.ts'
import { unitSymbol } from '../../quantity/unit-table.ts'
import { steady } from '../steady.ts'

/** A number that a picture shows, as `report.json` carries it. */
export interface Reading {
  /** Unique in its picture. */
  readonly id: string
  readonly label: string
  readonly value: number
  readonly unit: string
}

/** Makes readings in the units of the file. */
export class Readings {
  private readonly units: Units

  constructor(units: Units) {
    this.units = units
  }

  /** `value` in the internal unit of its kind. */
  of(id: string, label: string, kind: QuantityKind, value: number): Reading {
    return { id, label, value: steady(toUnit(kind, value, this.units)), unit: unitSymbol(kind, this.units) }
  }

  length(id: string, label: string, value: number): Reading {
    return this.of(id, label, 'length', value)
  }

  angle(id: string, label: string, value: number): Reading {
    return this.of(id, label, 'angle', value)
  }

  /** A length in mm that a micrometer decides: thousandths of a millimetre, or of an inch. */
  fine(id: string, label: string, value: number): Reading {
    const inches = this.units === 'in'
    return { id, label, value: steady(inches ? (value / 25.4) * 1000 : value * 1000), unit: inches ? 'thou' : 'µm' }
  }

  /** An unbalance in kg·mm: g·mm in files of either unit, as ISO 21940 and balancing shops have it. */
  unbalance(id: string, label: string, value: number): Reading {
    return { id, label, value: steady(inGramMillimetres(value)), unit: 'g·mm' }
  }
}

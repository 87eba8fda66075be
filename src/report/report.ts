import { type Amount, changesOf } from '../checks/finding.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import { figuresOf } from '../figures/figure.ts'
import { type Column, type TableCell, tablesOf } from '../figures/table.ts'
import { isQuantityKind } from '../input/field-meta.ts'
import type { ParameterRow } from '../input/walk-parameters.ts'
import type { Dimension } from '../part/dimension.ts'
import { featuresOf } from '../part/part.ts'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import { cautions } from './cautions.ts'
import { picturesInReport } from './pictures.ts'
import type { Report } from './report-schema.ts'
import { routeInReport } from './route.ts'
import { steady } from './steady.ts'

/** The dimension and fit report of a design: everything the other reports and `--json` show. */
export function reportOf(
  { family, design, rows }: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
): Report {
  const { units } = design
  const shown = (kind: Amount['kind'], value: number) => steady(kind === 'count' ? value : toUnit(kind, value, units))
  const unit = (kind: Amount['kind']) => (kind === 'count' ? '' : unitSymbol(kind, units))
  const columnUnit = ({ kind, unit: own }: Column) => own ?? (kind === 'text' ? '' : unit(kind))
  const tableCell = (cell: TableCell, { kind }: Column) =>
    typeof cell !== 'number' ? (cell ?? '') : shown(kind === 'text' ? 'count' : kind, cell)
  const amount = ({ kind, value }: Amount) => ({ value: shown(kind, value), unit: unit(kind) })
  return {
    revision,
    family: family.name,
    title: design.parameters.title,
    units,
    stops: findings.filter((f) => f.level === 'stop').length,
    parameters: rows.map((row) => parameterOf(row, units)),
    figures: figuresOf(family.figures, design).map(({ id, label, kind, value, limit, source }) => ({
      id,
      label,
      value: shown(kind, value),
      unit: unit(kind),
      ...(limit && { limit: shown(kind, limit.value), limitIs: limit.is }),
      source,
    })),
    tables: tablesOf(family.tables, design).map(({ id, title, columns, rows }) => ({
      id,
      title,
      columns: columns.map((column) => ({ label: column.label, unit: columnUnit(column) })),
      rows: rows.map((row) => row.map((cell, at) => tableCell(cell, columns[at]!))),
    })),
    pictures: picturesInReport(family.pictures(design), units),
    walls: design.walls.all().map(({ between, distance, meant }) => ({
      between: [...between] as [string, string],
      distance: shown('length', distance),
      minimum: meant ? null : shown('length', family.leastWall(design, ...between)),
      meant,
      unit: unit('length'),
    })),
    findings: findings.map(({ id, level, text, figure, limit, remedy }) => ({
      id,
      level,
      text,
      ...(figure && { figure: amount(figure) }),
      ...(limit && { limit: { ...amount(limit), reason: limit.reason } }),
      ...(remedy && { parameter: remedy.path, remedy: remedyOf(remedy, rows, shown, unit) }),
    })),
    dimensions: [
      ...design.scene.parts.flatMap(({ part }) =>
        featuresOf(part).flatMap((f) => f.dimensions.map((d) => dimensionOf(part.id, d, units))),
      ),
      ...family
        .furtherDimensions(design)
        .flatMap(({ of, dimensions }) => dimensions.map((d) => dimensionOf(of, d, units))),
    ],
    ...routeInReport(family, design),
    parts: design.scene.parts.map(({ part }) => {
      const { volume, centroid } = design.volume(part.id)
      return {
        id: part.id,
        label: part.label,
        material: part.material,
        volume: { value: steady(units === 'in' ? volume / 25.4 ** 3 : volume), unit: units === 'in' ? 'in³' : 'mm³' },
        mass: amount({ kind: 'mass', value: design.mass(part.id) }),
        centroid: centroid.map((x) => shown('length', x)) as [number, number, number],
      }
    }),
    cautions: [...cautions],
  }
}

function parameterOf(row: ParameterRow, units: Units): Report['parameters'][number] {
  const kind = row.kind === 'list' ? row.itemKind : row.kind
  const show = (value: unknown) =>
    typeof value === 'number' && kind !== undefined && isQuantityKind(kind)
      ? steady(toUnit(kind, value, units))
      : (value as string | boolean | number)
  const value = Array.isArray(row.value) ? row.value.map(show) : show(row.value)
  return { path: row.path, value, unit: row.unit, origin: row.origin, says: row.says }
}

function remedyOf(
  remedy: NonNullable<JudgedFinding['remedy']>,
  rows: readonly ParameterRow[],
  shown: (kind: QuantityKind, value: number) => number,
  unit: (kind: QuantityKind) => string,
) {
  const [first, ...also] = changesOf(remedy).map(({ path, to, kind: own }) => {
    const kind = own ?? rows.find((r) => r.path === path)?.kind
    return kind !== undefined && isQuantityKind(kind) && typeof to === 'number'
      ? { path, to: shown(kind, to), unit: unit(kind) }
      : { path, to, unit: '' }
  })
  return { text: remedy.text, ...first!, ...(also.length > 0 && { also }) }
}

function dimensionOf(part: string, d: Dimension, units: Units): Report['dimensions'][number] {
  const kind = d.kind === 'angle' ? 'angle' : 'length'
  const show = (value: number) => steady(toUnit(kind, value, units))
  return {
    part,
    id: d.id,
    label: d.label,
    kind: d.kind,
    value: show(d.value),
    unit: unitSymbol(kind, units),
    ...(d.tolerance.kind === 'limits' && { lower: show(d.tolerance.lower), upper: show(d.tolerance.upper) }),
    reference: d.tolerance.kind === 'reference',
    ...(d.thread !== undefined && { thread: d.thread }),
  }
}

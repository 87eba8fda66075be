import type { Amount } from '../checks/finding.ts'
import type { AnyFamily, Design } from '../families/family.ts'
import { askedLines } from '../measured/inspection-sheet.ts'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import type { Operation, Place, WorkSetUp } from '../route/operation.ts'
import type { Report } from './report-schema.ts'
import { steady } from './steady.ts'

type Route = Pick<Report, 'setUps' | 'route'>

/** Clampings and steps of the work, every number in the file's units and the readout's places in both. */
export function routeInReport(family: AnyFamily, design: Design): Route {
  const { units } = design
  const amount = ({ kind, value }: Amount) => ({
    value: steady(kind === 'count' ? value : toUnit(kind, value, units)),
    unit: kind === 'count' ? '' : unitSymbol(kind, units),
  })
  const of = (kind: QuantityKind, value: number) => amount({ kind, value })
  const asked = new Map(askedLines(family.measuring(design)).map((line) => [`${line.part} ${line.id}`, line]))
  return {
    setUps: family.setUps(design).map((setUp) => setUpInReport(setUp, amount)),
    route: family.route(design).map((o, at) => ({
      number: at + 1,
      id: o.id,
      title: o.title,
      setUp: o.setUp,
      machine: o.machine,
      steps: [...o.steps],
      ...(o.tool && {
        tool: {
          name: o.tool.name,
          ...(o.tool.diameter !== undefined && { diameter: of('length', o.tool.diameter) }),
          ...(o.tool.reachNeeded !== undefined && { reachNeeded: of('length', o.tool.reachNeeded) }),
          ...(o.tool.reach !== undefined && { reach: of('length', o.tool.reach) }),
        },
      }),
      ...(o.speed && { speed: speedInReport(o.speed, units, of) }),
      ...(o.depth !== undefined && { depth: of('length', o.depth) }),
      ...(o.passes !== undefined && { passes: o.passes }),
      ...(o.travel && {
        travel: {
          approach: of('length', o.travel.approach),
          cut: of('length', o.travel.cut),
          overrun: of('length', o.travel.overrun),
        },
      }),
      places: o.places.map((place) => ({ name: place.name, mm: placeIn(place, 1), in: placeIn(place, 25.4) })),
      measure: o.measure.map(({ part, dimension }) => {
        const line = asked.get(`${part} ${dimension}`)
        if (!line) throw new Error(`operation ${o.id} measures ${part} ${dimension}, which is not there`)
        const isThread = line.measuring.dimension.kind === 'thread'
        const says = line.measuring.reading?.says
        return {
          part,
          id: dimension,
          label: line.label,
          how: line.measuring.how,
          ...(says !== undefined && { reading: says }),
          ...(isThread
            ? { thread: line.measuring.dimension.thread ?? '' }
            : {
                nominal: of(line.kind, line.nominal),
                ...(line.from !== undefined && { from: of(line.kind, line.from) }),
                ...(line.to !== undefined && { to: of(line.kind, line.to) }),
              }),
        }
      }),
      why: o.why,
      needs: [...o.needs],
      cautions: [...o.cautions],
    })),
  }
}

function setUpInReport(
  { id, title, tilt, held, datum, figures, notes }: WorkSetUp,
  amount: (a: Amount) => { value: number; unit: string },
): Report['setUps'][number] {
  return {
    id,
    title,
    ...(tilt !== 0 && { tilt: amount({ kind: 'angle', value: tilt }) }),
    held,
    datum,
    figures: figures.map(({ id, label, amount: figure, limit }) => ({
      id,
      label,
      ...amount(figure),
      ...(limit && { limit: amount(limit.amount).value, limitIs: limit.is }),
    })),
    notes: [...notes],
  }
}

function speedInReport(
  { turns, atMost, surface, feed, feedPerTurn }: NonNullable<Operation['speed']>,
  units: Units,
  of: (kind: QuantityKind, value: number) => { value: number; unit: string },
): NonNullable<Report['route'][number]['speed']> {
  const perMinute = units === 'mm' ? 60 : 60 / 25.4
  return {
    turns: of('rotation-speed', turns),
    atMost,
    surface: of('cutting-speed', surface),
    ...(feedPerTurn !== undefined && { feedPerTurn: of('length', feedPerTurn) }),
    ...(feed !== undefined && { feed: { value: steady(feed * perMinute), unit: `${units}/min` } }),
  }
}

const placeIn = ({ x, y, z }: Place, scale: number) => ({
  ...(x !== undefined && { x: steady(x / scale) }),
  ...(y !== undefined && { y: steady(y / scale) }),
  ...(z !== undefined && { z: steady(z / scale) }),
})

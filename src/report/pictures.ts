import type { Pictures } from '../figures/pictures.ts'
import type { Units } from '../quantity/kind.ts'
import { entriesOf, isLeftOut } from './html/picture-kinds.ts'
import { Readings } from './html/reading.ts'
import type { Report } from './report-schema.ts'

/** Every number that the pictures show, or why a picture is missing: `report.json` carries what `report.html` draws. */
export function picturesInReport(pictures: Pictures, units: Units): Report['pictures'] {
  const make = new Readings(units)
  return entriesOf(pictures).map(({ id, kind, data }) => ({
    id,
    title: kind.title,
    ...(isLeftOut(data) ? { leftOut: data.leftOut } : {}),
    readings: isLeftOut(data) ? [] : [...kind.readings(data, make)],
  }))
}

import type { Pictures } from '../../figures/pictures.ts'
import { amountText, labelText } from '../amount-text.ts'
import type { Report } from '../report-schema.ts'
import { escaped } from './escape.ts'
import type { Show } from './picture.ts'
import { entriesOf, isLeftOut } from './picture-kinds.ts'

/** The pictures as figures of the page; numbers in them are those of the report. */
export function drawnPictures(report: Report, pictures: Pictures): string[] {
  return entriesOf(pictures).map(({ id, kind, data }) => {
    const title = `<h3>${escaped(kind.title)}</h3>`
    if (isLeftOut(data)) return `<section id="${id}">${title}<p>Not drawn. ${escaped(data.leftOut)}</p></section>`
    const readings = report.pictures.find((p) => p.id === id)?.readings ?? []
    const show: Show = (name, exact) => {
      const reading = readings.find((r) => r.id === name)
      if (reading === undefined) throw new RangeError(`picture ${id}: no reading ${name}`)
      const text = exact ? amountText : labelText
      return text(reading.value, reading.unit).replace(' ', '\u{a0}')
    }
    const { drawing, says } = kind.draw(data, show)
    const picture = drawing.element(id, kind.title, says)
    return `<figure id="${id}">${title}\n${picture}\n<figcaption>${escaped(says)}</figcaption></figure>`
  })
}

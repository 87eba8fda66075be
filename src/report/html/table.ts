import { escaped } from './escape.ts'

export interface HtmlColumn {
  readonly head: string
  /** Figures stand to the right. */
  readonly isNumber?: boolean
}

/** A table with a head row; the first cell of a row names it. `kind`: a class, for widths. */
export function htmlTable(
  kind: string,
  caption: string,
  columns: readonly HtmlColumn[],
  rows: readonly (readonly string[])[],
): string {
  const className = ({ isNumber }: HtmlColumn) => (isNumber === true ? ' class="number"' : '')
  const head = columns.map((column) => `<th scope="col"${className(column)}>${escaped(column.head)}</th>`).join('')
  const body = rows.map((row) => {
    const cells = row.map((cell, i) =>
      i === 0
        ? `<th scope="row"${className(columns[i]!)}>${escaped(cell)}</th>`
        : `<td${className(columns[i]!)}>${escaped(cell)}</td>`,
    )
    return `<tr>${cells.join('')}</tr>`
  })
  return [
    `<table class="${kind}">`,
    `<caption>${escaped(caption)}</caption>`,
    `<thead><tr>${head}</tr></thead>`,
    '<tbody>',
    ...body,
    '</tbody>',
    '</table>',
  ].join('\n')
}

/** Where a cell begins: line and column from 1, as an editor counts them. */
export interface CellPlace {
  readonly line: number
  readonly column: number
}

/**
 * Where every cell of a CSV text (RFC 4180) begins, row by row. A cell in quotation marks may hold separators, line ends
 * and doubled quotation marks. Line ends are LF or CR LF.
 */
export function cellPlaces(text: string, separator: string): CellPlace[][] {
  let row: CellPlace[] = [{ line: 1, column: 1 }]
  const rows = [row]
  let line = 1
  let lineStart = 0
  let isCellStart = true
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]
    if (sign === '"' && isCellStart) {
      for (at++; at < text.length && (text[at] !== '"' || text[at + 1] === '"'); at++) {
        if (text[at] === '"') at++
        if (text[at] !== '\n') continue
        line++
        lineStart = at + 1
      }
      isCellStart = false
    } else if (sign === separator) {
      row.push({ line, column: at + 2 - lineStart })
      isCellStart = true
    } else if (sign === '\n') {
      line++
      lineStart = at + 1
      row = [{ line, column: 1 }]
      rows.push(row)
      isCellStart = true
    } else isCellStart = false
  }
  return rows
}

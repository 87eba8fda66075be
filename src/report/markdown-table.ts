/** Words with the signs that Markdown would take for its own made plain. */
export const plain = (words: string): string => words.replace(/[\\`*_{}[\]<>#|]/g, (sign) => `\\${sign}`)

/** A table: a head line, the rule below it, a line a row. Cells are as Markdown reads them. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [line(head), line(head.map(() => '---')), ...rows.map(line)]
}

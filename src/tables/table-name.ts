/** The tables, as their files are named in `seeds/` (with `.json`). */
export const tableNames = [
  'threads',
  'set-screws',
  'bit-blanks',
  'bar-stock',
  'shanks',
  'materials',
  'work-materials',
  'iso-286',
  'ansi-b4-1',
  'gauge-blocks',
  'angle-blocks',
  'gauge-pins',
] as const

export type TableName = (typeof tableNames)[number]

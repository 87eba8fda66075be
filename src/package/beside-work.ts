import { sheetsPdf } from '../drawing/pdf/sheets-pdf.ts'
import type { Sheet } from '../drawing/sheet/sheet.ts'
import { styleOf } from '../drawing/style.ts'
import { families } from '../families/families.ts'
import type { CommonParameters } from '../families/family.ts'
import type { Result } from '../input/problem.ts'
import type { Tables } from '../tables/read-tables.ts'
import { loadFont } from './load-font.ts'
import { solidFiles } from './solid-files.ts'

/** What the solids of a design follow from. Plain data, as all jobs: it goes from thread to thread. */
export interface SolidsJob {
  /** Name of a family that builds a design from these parameters. */
  readonly family: string
  readonly parameters: CommonParameters
  readonly tables: Tables
  readonly revision: string
}

export interface PdfJob {
  readonly sheets: readonly Sheet[]
  readonly facts: { readonly title: string; readonly subject: string }
}

/** The parts of making a package that need nothing from the thread that draws, or only its finished sheets. */
export const besideWork = {
  solids({ family: name, parameters, tables, revision }: SolidsJob): Result<Map<string, Uint8Array>> {
    const family = families.find((f) => f.name === name)
    const design = family?.build(parameters, tables)
    if (!family || !design?.ok) throw new RangeError(`no ${name} of these parameters`)
    return solidFiles(family, design.value, revision)
  },
  pdf: ({ sheets, facts }: PdfJob): Uint8Array => sheetsPdf(sheets, facts, styleOf(), loadFont()),
} as const

export type BesideWork = typeof besideWork

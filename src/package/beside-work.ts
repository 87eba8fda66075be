import { sheetsPdf } from '../drawing/pdf/sheets-pdf.ts'
import type { Sheet } from '../drawing/sheet/sheet.ts'
import { styleOf } from '../drawing/style.ts'
import { loadFont } from './load-font.ts'
import { solidFiles } from './solid-files.ts'

/** Plain data, as the solids' job: it goes from thread to thread. */
export interface PdfJob {
  readonly sheets: readonly Sheet[]
  readonly facts: { readonly title: string; readonly subject: string }
}

/**
 * The parts of making a package that need nothing from the thread that draws, or only its finished sheets. Nothing of the
 * families is loaded for them.
 */
export const besideWork = {
  solids: solidFiles,
  pdf: ({ sheets, facts }: PdfJob): Uint8Array => sheetsPdf(sheets, facts, styleOf(), loadFont()),
} as const

export type BesideWork = typeof besideWork

import type { z } from 'zod'
import { checkDocument } from '../input/check-document.ts'
import { byPosition } from '../input/print-problem.ts'
import type { Problem, Result } from '../input/problem.ts'
import { type ReadDocument, readDocument } from '../input/read-document.ts'
import type { Units } from '../quantity/kind.ts'
import { type AngleBlockSetRow, angleBlocksSchema, readAngleBlocks } from './angle-blocks.ts'
import { type AnsiB41Row, ansiB41Schema, readAnsiB41 } from './ansi-b4-1.ts'
import { type BarStockRow, barStockSchema, readBarStock } from './bar-stock.ts'
import { type BitBlankRow, bitBlanksSchema, readBitBlanks } from './bit-blanks.ts'
import { type GaugeBlockSetRow, gaugeBlocksSchema, readGaugeBlocks } from './gauge-blocks.ts'
import { type GaugePinSetRow, gaugePinsSchema, readGaugePins } from './gauge-pins.ts'
import { type Iso286Row, iso286Schema, readIso286 } from './iso-286.ts'
import { type MaterialRow, materialsSchema, readMaterials } from './materials.ts'
import { readPlainJson } from './plain-json.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { readSetScrews, type SetScrewRow, setScrewsSchema } from './set-screws.ts'
import { readShanks, type ShankRow, shanksSchema } from './shanks.ts'
import type { TableName } from './table-name.ts'
import { readThreads, type ThreadRow, threadsSchema } from './threads.ts'
import { readWorkMaterials, type WorkMaterialRow, workMaterialsSchema } from './work-materials.ts'

/** All seed data, in internal units (see `QuantityKind`), checked against each other. */
export interface Tables {
  readonly threads: readonly ThreadRow[]
  readonly setScrews: readonly SetScrewRow[]
  readonly bitBlanks: readonly BitBlankRow[]
  readonly barStock: readonly BarStockRow[]
  readonly shanks: readonly ShankRow[]
  readonly materials: readonly MaterialRow[]
  readonly workMaterials: readonly WorkMaterialRow[]
  readonly iso286: readonly Iso286Row[]
  readonly ansiB41: readonly AnsiB41Row[]
  readonly gaugeBlocks: readonly GaugeBlockSetRow[]
  readonly angleBlocks: readonly AngleBlockSetRow[]
  readonly gaugePins: readonly GaugePinSetRow[]
}

/** A table file as it was found; `file` is only named in problems. */
export interface TableText {
  readonly file: string
  readonly text: string
}

/**
 * Reads and checks all tables. Everything wrong in all of them is reported together, like bad user input. A table that
 * is broken is not also held against the tables that name its rows.
 */
export function readTables(texts: Readonly<Record<TableName, TableText>>): Result<Tables> {
  const problems: Problem[] = []
  const read = <File, Row>(
    name: TableName,
    schema: (units: Units) => z.ZodType<File>,
    rows: (file: File) => RowsRead<Row>,
  ): readonly Row[] | undefined => {
    const result = readTable(texts[name], schema, rows)
    if (result.ok) return result.value
    problems.push(...result.problems)
    return undefined
  }

  const threads = read('threads', threadsSchema, readThreads)
  const workMaterials = read('work-materials', workMaterialsSchema, readWorkMaterials)
  const materials = read('materials', materialsSchema, (file) => readMaterials(file, workMaterials))
  const setScrews = read('set-screws', setScrewsSchema, (file) => readSetScrews(file, threads, materials))
  const bitBlanks = read('bit-blanks', bitBlanksSchema, (file) => readBitBlanks(file, materials))
  const barStock = read('bar-stock', barStockSchema, readBarStock)
  const shanks = read('shanks', shanksSchema, (file) => readShanks(file, threads))
  const iso286 = read('iso-286', iso286Schema, readIso286)
  const ansiB41 = read('ansi-b4-1', ansiB41Schema, readAnsiB41)
  const gaugeBlocks = read('gauge-blocks', gaugeBlocksSchema, readGaugeBlocks)
  const angleBlocks = read('angle-blocks', angleBlocksSchema, readAngleBlocks)
  const gaugePins = read('gauge-pins', gaugePinsSchema, readGaugePins)

  if (
    threads === undefined ||
    workMaterials === undefined ||
    materials === undefined ||
    setScrews === undefined ||
    bitBlanks === undefined ||
    barStock === undefined ||
    shanks === undefined ||
    iso286 === undefined ||
    ansiB41 === undefined ||
    gaugeBlocks === undefined ||
    angleBlocks === undefined ||
    gaugePins === undefined
  ) {
    return { ok: false, problems }
  }
  return {
    ok: true,
    value: {
      threads,
      setScrews,
      bitBlanks,
      barStock,
      shanks,
      materials,
      workMaterials,
      iso286,
      ansiB41,
      gaugeBlocks,
      angleBlocks,
      gaugePins,
    },
  }
}

function readTable<File, Row>(
  { file, text }: TableText,
  schema: (units: Units) => z.ZodType<File>,
  rows: (content: File) => RowsRead<Row>,
): Result<readonly Row[]> {
  const plain = readPlainJson(text)
  const parsed = plain === undefined ? undefined : schema(unitsOf(plain)).safeParse(plain)
  if (parsed?.success === true) {
    const { rows: good, faults } = rows(parsed.data)
    if (faults.length === 0) return { ok: true, value: good }
  }
  // Something is wrong, or written in a way that has to be looked at: read again, with positions.
  const document = readDocument(text, file)
  if (!document.ok) return document
  const content = checkDocument(document.value, file, schema(unitsOf(document.value.raw)))
  if (!content.ok) return content
  const result = rows(content.value)
  if (result.faults.length === 0) return { ok: true, value: result.rows }
  return {
    ok: false,
    problems: result.faults.map((fault) => problemOf(fault, document.value, file)).toSorted(byPosition),
  }
}

/** The unit of bare numbers. Anything but the two is a problem of its own, found by the schema. */
function unitsOf(raw: unknown): Units {
  return typeof raw === 'object' && raw !== null && 'units' in raw && raw.units === 'in' ? 'in' : 'mm'
}

function problemOf(fault: RowFault, document: ReadDocument, file: string): Problem {
  return {
    code: fault.code,
    where: { file, ...document.locate(fault.path, 'value'), path: fault.path.join('.') },
    found: fault.found ?? document.writtenAt(fault.path),
    allowed: fault.allowed,
    ...(fault.remedy === undefined ? {} : { remedy: fault.remedy }),
  }
}

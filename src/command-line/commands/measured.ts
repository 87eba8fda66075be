import { join, parse, resolve } from 'node:path'
import { printable } from '../../input/plain-text.ts'
import type { Problem } from '../../input/problem.ts'
import { asMade } from '../../measured/as-made.ts'
import { askedLines, hasNumber } from '../../measured/inspection-sheet.ts'
import { readValues } from '../../measured/read-values.ts'
import { wouldWords } from '../../measured/repair.ts'
import { manifestName } from '../../package/manifest.ts'
import { packagePlace } from '../../package/package-place.ts'
import { readTextFile } from '../../package/read-file.ts'
import { revisionOf } from '../../package/revision.ts'
import { writePackage } from '../../package/write-package.ts'
import type { AsMadeReport } from '../../report/as-made.ts'
import type { Command } from '../command.ts'
import { commandProblem } from '../command-problem.ts'
import { openPlace } from '../open-place.ts'
import { fileOperand, readParameters, standardInput } from '../read-parameters.ts'
import { tablesOption } from '../shop-tables.ts'

export const measuredCommand: Command = {
  name: 'measured',
  says: 'Reads what came out, and says what that means and what can still be done',
  operands: [fileOperand, { name: 'VALUES', says: 'the filled-in inspection.csv of its package, or YAML' }],
  options: [
    { name: '--out', value: 'DIR', says: 'folder for the report; what it lies in has to be there' },
    { name: '--any-revision', says: 'take a sheet that was printed for other parameters' },
    tablesOption,
    { name: '--json', says: 'the report as one JSON object on standard output, and nothing else there' },
  ],
  details: [
    [
      'Measured values take the place of the nominal ones, everything else keeps its tolerance, and all is computed again.',
      'Sizes that were not measured may stay empty. YAML holds revision, then the sizes under each part:',
      '  revision: 1a2b3c4d',
      '  body:',
      '    bore.diameter: 20.014',
    ].join('\n'),
    [
      'Without --out the report goes beside FILE: head.yaml gives head-as-made, and the package in head stays as it is. The',
      'folder is written whole or not at all, as with make. Exit 1 when something stops the tool as it was made.',
    ].join('\n'),
  ],
  example: 'measured head.yaml head/inspection.csv',
  async run({ operands: [file = '', sheet = ''], values, switches }, world) {
    const { machine, cwd, stdout } = world
    const out = values.get('--out') ?? besides(file)
    if (out === undefined) {
      const problem = commandProblem('standard input, and no --out', 'a folder for the report', 'add --out DIR')
      return { ok: false, problems: [problem] }
    }
    const place = packagePlace(cwd, out)
    if (!place.ok) return place
    const opened = openPlace(place.value, 'as-made', world)
    if (!opened.ok) return opened

    const read = await readParameters(file, values.get('--tables'), world)
    if (!read.ok) return read
    const { family, design } = read.value
    const text = readTextFile(resolve(cwd, sheet), sheet, 'a sheet with measured values')
    const source = text.ok ? text.value : text.text
    const texts = new Map(source === undefined ? [] : [[sheet, source]])
    if (!text.ok) return { ok: false, problems: text.problems, texts }
    const revision = revisionOf(read.value)
    const measured = readValues(text.value, sheet, {
      sizes: askedLines(family.measuring(design)).filter(hasNumber),
      units: design.units,
      revision,
      anyRevision: switches.has('--any-revision'),
    })
    if (!measured.ok) return { ...measured, texts }
    const made = asMade(family, design, measured.value)
    if (!made.ok) return { ok: false, problems: made.problems.map(aboutSheet), texts }
    const { asMadeFiles, madeMark } = await import('../../package/as-made-files.ts')
    const marks = { revision, asMade: madeMark(revision, measured.value) }
    const files = asMadeFiles(read.value, made.value, marks)
    if (!files.ok) return files
    const written = writePackage(place.value, files.value.files, marks.asMade, machine)
    if (!written.ok) return written
    for (const line of written.value.notes) opened.value(line)

    const { report } = files.value
    if (switches.has('--json')) stdout.write(`${JSON.stringify(report, null, 2)}\n`)
    else {
      const names = [...written.value.manifest.files.map(({ name }) => name), manifestName]
      stdout.write(
        [...summary(report), '', printable(`Written to ${out}`), ...names.map((name) => `  ${name}`), ''].join('\n'),
      )
    }
    return { ok: true, exit: report.stops > 0 ? 1 : 0 }
  },
}

/** What would help in a parameter file is no help at a cell with a measured value. */
function aboutSheet(problem: Problem): Problem {
  return { ...problem, remedy: 'measure again, and write what the tool shows' }
}

/** Beside the parameters and their package; undefined for standard input, which has no name. */
function besides(file: string): string | undefined {
  if (file === standardInput) return undefined
  const { dir, name } = parse(file)
  return join(dir, `${name}-as-made`)
}

function summary(report: AsMadeReport): string[] {
  const bad = report.sizes.filter((s) => s.verdict === 'too large' || s.verdict === 'too small')
  const told = [...report.findings.new, ...report.findings.stay.filter((f) => f.level === 'stop')]
  return [
    printable(`${report.title}, as made`),
    `${report.sizes.length} sizes measured, ${bad.length} outside their limits`,
    ...bad.map((s) => printable(`  ${s.part} ${s.id}: ${s.verdict}, ${s.reading} ${s.unit} for ${s.from} to ${s.to}`)),
    ...(told.length > 0 ? ['', ...told.map((f) => printable(`${f.level.toUpperCase()} ${f.text}`))] : []),
    '',
    'What can still be done:',
    ...report.repairs.map((r) => printable(`  ${r.title}: ${wouldWords[r.would]}`)),
  ]
}

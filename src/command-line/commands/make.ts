import { join, parse } from 'node:path'
import type { CommonParameters, Design } from '../../families/family.ts'
import type { ReadDesign } from '../../families/read-design.ts'
import { type JudgedFinding, judged } from '../../families/variants.ts'
import { printable } from '../../input/plain-text.ts'
import type { Result } from '../../input/problem.ts'
import { besideNobody, besideThread } from '../../package/beside.ts'
import { manifestName } from '../../package/manifest.ts'
import { packagePlace } from '../../package/package-place.ts'
import { revisionOf } from '../../package/revision.ts'
import { solidsJob } from '../../package/solids-job.ts'
import { writePackage } from '../../package/write-package.ts'
import type { Command, Unable } from '../command.ts'
import { commandProblem } from '../command-problem.ts'
import { openPlace } from '../open-place.ts'
import { heading, printFindings } from '../print-findings.ts'
import { fileOperand, readParameters, standardInput } from '../read-parameters.ts'
import { tablesOption } from '../shop-tables.ts'
import type { World } from '../world.ts'

export const makeCommand: Command = {
  name: 'make',
  says: 'Writes the package: solids, report and the list of what is in it',
  operands: [fileOperand],
  options: [
    { name: '--out', value: 'DIR', says: 'folder for the package; what it lies in has to be there' },
    tablesOption,
    { name: '--json', says: 'what was written as one JSON object on standard output, and nothing else there' },
  ],
  details: [
    [
      'Without --out the package goes beside FILE, into a folder of its name: head.yaml gives head, and a FILE without',
      'extension, head, gives head-package. Standard input has no name and needs --out.',
    ].join('\n'),
    [
      'The folder is written whole or not at all. It may be missing, empty, or a package written earlier in which nothing',
      'was changed by hand; anything else is left alone. With a stop the package is written too, and says so.',
    ].join('\n'),
  ],
  example: 'make head.yaml --out out/head',
  async run({ operands: [file = ''], values, switches }, world) {
    const { machine, cwd, stdout } = world
    const out = outFolder(file, values.get('--out'))
    if (!out.ok) return out
    const place = packagePlace(cwd, out.value)
    if (!place.ok) return place
    const opened = openPlace(place.value, 'package', world)
    if (!opened.ok) return opened

    const made = await packageOf(file, values.get('--tables'), world)
    if (!made.ok) return made
    const { read, findings, revision, files } = made.value
    const { design } = read
    const written = writePackage(place.value, files, revision, machine)
    if (!written.ok) return written
    for (const text of written.value.notes) opened.value(text)

    const stops = findings.filter(({ level }) => level === 'stop').length
    const names = [...written.value.manifest.files.map(({ name }) => name), manifestName]
    if (switches.has('--json')) {
      const { files } = written.value.manifest
      stdout.write(`${JSON.stringify({ revision, folder: place.value.target, stops, files }, null, 2)}\n`)
    } else {
      const warning = 'The package is written all the same. Do not make this tool as it is.'
      stdout.write(
        [
          heading(read, revision),
          '',
          ...printFindings(findings, design.units),
          ...(stops > 0 ? [warning] : []),
          '',
          printable(`Written to ${out.value}`),
          ...names.map((name) => `  ${name}`),
          '',
        ].join('\n'),
      )
    }
    return { ok: true, exit: stops > 0 ? 1 : 0 }
  },
}

interface Made {
  readonly read: ReadDesign<CommonParameters, Design>
  readonly findings: readonly JudgedFinding[]
  readonly revision: string
  readonly files: ReadonlyMap<string, Uint8Array | string>
}

/** Reads the parameters and works out the files, with a second thread where there may be one. */
async function packageOf(
  file: string,
  tablesFolder: string | undefined,
  world: World,
): Promise<{ readonly ok: true; readonly value: Made } | Unable> {
  const beside = world.threads > 1 ? besideThread() : besideNobody
  try {
    const read = await readParameters(file, tablesFolder, world)
    if (!read.ok) return read
    const { family, design } = read.value
    const revision = revisionOf(read.value)
    const solids = beside.solids(solidsJob(read.value, revision))
    // Only here, because this brings in large libraries, and the other commands need none.
    const { packageFiles } = await import('../../package/package-files.ts')
    const findings = judged(family, design, true)
    const files = await packageFiles(read.value, findings, revision, beside, solids)
    return files.ok ? { ok: true, value: { read: read.value, findings, revision, files: files.value } } : files
  } finally {
    await beside.end()
  }
}

/** Where the package goes, as a name from the current folder. */
function outFolder(file: string, out: string | undefined): Result<string> {
  if (out !== undefined) return { ok: true, value: out }
  if (file === standardInput) {
    const problem = commandProblem('standard input, and no --out', 'a folder for the package', 'add --out DIR')
    return { ok: false, problems: [problem] }
  }
  const { dir, name, ext } = parse(file)
  return { ok: true, value: join(dir, ext === '' ? `${name}-package` : name) }
}

import { join, parse } from 'node:path'
import type { CommonParameters, Design } from '../../families/family.ts'
import type { ReadDesign } from '../../families/read-design.ts'
import { printable } from '../../input/plain-text.ts'
import type { Problem, Result } from '../../input/problem.ts'
import { manifestName } from '../../package/manifest.ts'
import { packagePlace } from '../../package/package-place.ts'
import { revisionOf } from '../../package/revision.ts'
import { sweepFiles } from '../../package/sweep-files.ts'
import { sweptOn, threadsFor } from '../../package/sweep-threads.ts'
import { sweepTable } from '../../package/target.ts'
import { writePackage } from '../../package/write-package.ts'
import type { Axis } from '../../sweep/axis.ts'
import { chosenFigures } from '../../sweep/chosen-figures.ts'
import { countSets, isFree, readAxes, type Sweep, sweepOf } from '../../sweep/sweep.ts'
import { sweepJson } from '../../sweep/sweep-json.ts'
import type { Command } from '../command.ts'
import { commandProblem } from '../command-problem.ts'
import { openPlace } from '../open-place.ts'
import { ProgressLine } from '../progress-line.ts'
import { fileOperand, readParameters, standardInput } from '../read-parameters.ts'
import { tablesOption } from '../shop-tables.ts'

export const sweepCommand: Command = {
  name: 'sweep',
  says: 'Tries one or two parameters over many values: table and pictures of what comes out and where nothing stops the job',
  operands: [fileOperand],
  options: [
    {
      name: '--vary',
      value: 'PATH=FROM..TO:STEPS',
      says: 'a parameter and its values, or PATH=A,B,C; once or twice',
      repeats: true,
      undashed: true,
    },
    {
      name: '--figures',
      value: 'ID,ID',
      says: 'figures to show, by their ids in report.json; the usual ones unless given',
      undashed: true,
    },
    { name: '--out', value: 'DIR', says: 'folder for table and page; what it lies in has to be there' },
    { name: '--cores', value: 'N', says: 'processor cores to use; all of them unless given', undashed: true },
    tablesOption,
    { name: '--json', says: 'the results as one JSON object on standard output; files only with --out' },
  ],
  details: [
    [
      'STEPS is how many values there are, both ends included: slot.depth=8..12:5 tries 8, 9, 10, 11 and 12. Values are',
      'written as in the file: a bare number takes its units; 12.5 mm, 1/2 in, 8 deg, 500 rev/min. With spaces, put all of it',
      "in quotes: --vary 'face.angle=5 deg..10 deg:11'. A choice takes a list: --vary screws.thread=M5,M6,M8.",
    ].join('\n'),
    [
      'Without --out the folder goes beside FILE and is named after the parameters: head.yaml gives head-sweep-slot-depth. It',
      'holds sweep.csv, sweep.html and the list of both, and is written whole or not at all. It may be missing, empty, or an',
      'earlier sweep in which nothing was changed by hand; anything else is left alone.',
    ].join('\n'),
    'A set that cannot be built stands in the table with its problem. Where none can, nothing is written.',
  ],
  example: 'sweep head.yaml --vary slot.depth=8..12:41 --vary bore.depth=20..30:21',
  exits: 'Exit status: 0 at least one set without a stop, 1 none, 2 something could not be read or done.',
  async run({ operands: [file = ''], values, repeated, switches }, world) {
    const { machine, cwd, stdout, stderr, threads } = world
    const cores = coresOf(values.get('--cores'))
    if (!cores.ok) return cores
    const read = await readParameters(file, values.get('--tables'), world)
    if (!read.ok) return read
    const { family } = read.value
    const axes = readAxes(repeated.get('--vary') ?? [], read.value)
    const figures = chosenFigures(values.get('--figures'), family.sweepFigures, family.figures)
    if (!axes.ok || !figures.ok) {
      return { ok: false, problems: [axes, figures].flatMap((part) => (part.ok ? [] : part.problems)) }
    }
    const isWritten = !switches.has('--json') || values.has('--out')
    const out = isWritten ? outFolder(file, values.get('--out'), axes.value) : undefined
    if (out?.ok === false) return out
    // Before the work: whoever waits for it should not be told afterwards that it has no place.
    const place = out && packagePlace(cwd, out.value)
    if (place?.ok === false) return place
    const opened = place && openPlace(place.value, 'sweep', world)
    if (opened?.ok === false) return opened

    const most = Math.min(cores.value ?? Number.POSITIVE_INFINITY, threads)
    const sweep = await swept(read.value, axes.value, figures.value, most, new ProgressLine(stderr))
    if (sweep.sets.every(({ level }) => level === 'impossible')) return { ok: false, problems: whyNone(sweep, file) }
    if (place !== undefined) {
      const written = writePackage(place.value, sweepFiles(sweep), sweep.revision, machine)
      if (!written.ok) return written
      for (const text of written.value.notes) opened?.value(text)
    }
    if (switches.has('--json')) stdout.write(`${JSON.stringify(sweepJson(sweep), null, 2)}\n`)
    else stdout.write(`${[...summary(sweep), '', `Written to ${out?.value}`, ...files].map(printable).join('\n')}\n`)
    return { ok: true, exit: sweep.sets.some(isFree) ? 0 : 1 }
  },
}

const files = [sweepTable, 'sweep.html', manifestName].map((name) => `  ${name}`)

async function swept(
  read: ReadDesign<CommonParameters, Design>,
  axes: readonly Axis[],
  figures: Parameters<typeof sweepOf>[3],
  threads: number,
  progress: ProgressLine,
): Promise<Sweep> {
  const { family, design } = read
  const sets = countSets(axes)
  const job = {
    family: family.name,
    parameters: design.parameters,
    tables: design.tables,
    axes: axes.map(({ path, points }) => ({ path, points })),
    figures: figures.map(({ id }) => id),
  }
  try {
    const results = await sweptOn(threadsFor(sets, threads), job, (done) =>
      progress.show(`${done} of ${sets} sets, ${Math.floor((100 * done) / sets)} %`),
    )
    return sweepOf(read, revisionOf(read), axes, figures, results)
  } finally {
    progress.end()
  }
}

function coresOf(written: string | undefined): Result<number | undefined> {
  if (written === undefined) return { ok: true, value: undefined }
  const cores = /^\d{1,3}$/.test(written) ? Number(written) : 0
  if (cores >= 1) return { ok: true, value: cores }
  return { ok: false, problems: [commandProblem(`--cores ${written}`, 'a whole number from 1 to 999')] }
}

/** Named after the parameters, so that one sweep does not take the place of another. */
function outFolder(file: string, out: string | undefined, axes: readonly Axis[]): Result<string> {
  if (out !== undefined) return { ok: true, value: out }
  if (file === standardInput) {
    const remedy = 'add --out DIR, or --json'
    return { ok: false, problems: [commandProblem('standard input, and no --out', 'a folder for the sweep', remedy)] }
  }
  const { dir, name } = parse(file)
  const paths = axes.map(({ path }) => path.replaceAll('.', '-'))
  return { ok: true, value: join(dir, [name, 'sweep', ...paths].join('-')) }
}

/** Every problem once, about the file with a value of the sweep in it. */
function whyNone({ sets }: Sweep, file: string): Problem[] {
  const all = sets.flatMap(({ problems }) => problems)
  const nameOf = ({ code, where }: Problem) => `${code} ${where.path}`
  const first = all.filter((problem, at) => all.findIndex((other) => nameOf(other) === nameOf(problem)) === at)
  const shown = `${file === standardInput ? '(standard input)' : file}, with any value of --vary`
  return first.map((problem) => ({ ...problem, where: { ...problem.where, file: shown } }))
}

function summary(sweep: Sweep): string[] {
  const { title, family, revision, axes, sets, stops } = sweep
  const free = sets.filter(isFree).length
  const impossible = sets.filter(({ level }) => level === 'impossible').length
  return [
    `${title}: ${family}, revision ${revision}`,
    `${sets.length} sets over ${axes.map(({ path }) => path).join(' and ')}`,
    '',
    free === 0 ? 'No set is without a stop.' : `${free} ${free === 1 ? 'set is' : 'sets are'} without a stop.`,
    ...(impossible > 0 ? [`${impossible} cannot be built.`] : []),
    ...stops.map(({ id, sets: count }) => `  ${id} stops ${count}`),
  ]
}

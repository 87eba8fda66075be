import { Readable } from 'node:stream'
import type { Amount } from '../../src/checks/finding.ts'
import { runCommand } from '../../src/command-line/run-command.ts'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import type { ReadDesign } from '../../src/families/read-design.ts'
import type { JudgedFinding } from '../../src/families/variants.ts'
import { printable } from '../../src/input/plain-text.ts'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { formatQuantity } from '../../src/quantity/format-quantity.ts'
import { fromUnit } from '../../src/quantity/to-unit.ts'
import type { Report } from '../../src/report/report-schema.ts'

/** Where what `check` prints for a parameter set is not what the report in its package says. */
export async function agreementFaults(
  text: string,
  { family, design }: ReadDesign<CommonParameters, Design>,
  judged: readonly JudgedFinding[],
  report: Report,
): Promise<string[]> {
  const { exit, out } = await checked(text)
  const faults: string[] = []
  const same = (what: string, printed: unknown, said: unknown) => {
    if (printed !== said) faults.push(`${what}: check prints ${printed}, the report says ${said}`)
  }
  // From the report's nine digits.
  const shown = (kind: Amount['kind'], value: number) =>
    kind === 'count' ? String(value) : formatQuantity(kind, fromUnit(kind, value, design.units), design.units)

  const lines = out.split('\n')
  same('heading', lines[0], printable(`${report.title}: ${report.family}, revision ${report.revision}`))
  same('exit status', exit, report.stops > 0 ? 1 : 0)
  const at = lines.indexOf('Figures')
  const findings = printedFindings(lines.slice(2, at))
  same('findings', findings.map((f) => f.id).join(' '), report.findings.map((f) => f.id).join(' '))
  report.findings.forEach((said, i) => {
    const printed = findings[i]
    if (printed?.id !== said.id) return
    same(`level of ${said.id}`, printed.level, said.level)
    same(`text of ${said.id}`, printed.text, printable(said.text))
    // The report says a unit, not what kind of thing it measures.
    const [figureKind, limitKind] = [judged[i]?.figure?.kind ?? 'count', judged[i]?.limit?.kind ?? 'count']
    const held = said.limit && ` against ${shown(limitKind, said.limit.value)}: ${said.limit.reason}`
    const figure = said.figure && printable(`${shown(figureKind, said.figure.value)}${held ?? ''}`)
    if (!agree(printed.figure, figure)) same(`figure of ${said.id}`, printed.figure, figure)
  })

  const printed = lines.slice(at + 1).filter((line) => line !== '')
  same('how many figures', printed.length, report.figures.length)
  report.figures.forEach(({ id, label, value, limit, limitIs }, i) => {
    const kind = family.figures.find((f) => f.id === id)?.kind ?? 'count'
    const held = limit === undefined ? '' : `  (at ${limitIs} ${shown(kind, limit)})`
    const line = printed[i] ?? ''
    const [name, rest] = [`  ${printable(label)}`, printable(`${shown(kind, value)}${held}`)]
    if (!line.startsWith(name) || !agree(line.slice(name.length).trim(), rest)) same(`figure ${id}`, line, rest)
  })
  return faults
}

/** The same words, and numbers as near as nine digits tell: at a half the last printed place may go either way. */
function agree(printed: string | undefined, said: string | undefined): boolean {
  if (printed === undefined || said === undefined) return printed === said
  const number = /-?\d+(?:\.(\d+))?/g
  const [a, b] = [[...printed.matchAll(number)], [...said.matchAll(number)]]
  if (printed.replaceAll(number, '#') !== said.replaceAll(number, '#')) return false
  return a.every(([one, places = ''], i) => {
    const [other, others = ''] = b[i]!
    const last = 10 ** -Math.max(places.length, others.length)
    return (
      one === other ||
      Math.abs(Number(one) - Number(other)) <= 1.01 * Math.min(last, 0.1) + 2e-8 * Math.abs(Number(one))
    )
  })
}

/** Without remedies, which take most of the time and have a judge of their own. */
async function checked(text: string): Promise<{ exit: number; out: string }> {
  let out = ''
  const stdout = {
    write: (more: string) => {
      out += more
    },
  }
  const machine = { disk: systemDisk, processes: systemProcesses }
  const world = { cwd: '/', stdin: Readable.from([text]), stdout, stderr: stdout, machine, threads: 1 }
  return { exit: await runCommand(['check', '-', '--no-remedies'], world), out }
}

interface Printed {
  readonly level: string
  readonly text: string
  readonly figure?: string
  readonly id?: string
}

function printedFindings(lines: readonly string[]): Printed[] {
  const findings: Printed[] = []
  for (const line of lines) {
    const [, level, text] = /^(stop|caution|note) {2}(.*)$/.exec(line) ?? []
    const [, key, value] = /^ {4}(figure|check) +(.*)$/.exec(line) ?? []
    if (level !== undefined) findings.push({ level, text: text! })
    else if (key !== undefined) findings.push({ ...findings.pop()!, [key === 'check' ? 'id' : key]: value! })
  }
  return findings
}

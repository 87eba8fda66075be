import { judged } from '../../families/variants.ts'
import { revisionOf } from '../../package/revision.ts'
import { reportOf } from '../../report/report.ts'
import type { Command } from '../command.ts'
import { heading, printFigures, printFindings } from '../print-findings.ts'
import { fileOperand, readParameters } from '../read-parameters.ts'
import { tablesOption } from '../shop-tables.ts'

export const checkCommand: Command = {
  name: 'check',
  says: 'Says what would not work, what to know and what comes out; writes nothing',
  operands: [fileOperand],
  options: [
    { name: '--json', says: 'the report as one JSON object on standard output, and nothing else there' },
    tablesOption,
    { name: '--no-remedies', says: 'do not work out which change of which parameter would clear a finding' },
  ],
  details: ['A stop would not work or is unsafe; a caution works, but know this; a note is worth knowing.'],
  example: 'check head.yaml',
  async run({ operands: [file = ''], values, switches }, world) {
    const read = await readParameters(file, values.get('--tables'), world)
    if (!read.ok) return read
    const { family, design } = read.value
    const findings = judged(family, design, !switches.has('--no-remedies'))
    const revision = revisionOf(read.value)
    const text = switches.has('--json')
      ? JSON.stringify(reportOf(read.value, findings, revision), null, 2)
      : [
          heading(read.value, revision),
          '',
          ...printFindings(findings, design.units),
          '',
          'Figures',
          ...printFigures(read.value),
        ].join('\n')
    world.stdout.write(`${text}\n`)
    return { ok: true, exit: findings.some(({ level }) => level === 'stop') ? 1 : 0 }
  },
}

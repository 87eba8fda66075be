import { basename, resolve } from 'node:path'
import { printable } from '../../input/plain-text.ts'
import type { Problem } from '../../input/problem.ts'
import { diskProblem, systemCode } from '../../package/disk-problem.ts'
import { isBadName } from '../../package/package-place.ts'
import { chosenFamily, familyOperand, unitsOption } from '../chosen-family.ts'
import type { Command } from '../command.ts'
import { standardInput } from '../read-parameters.ts'
import { templateOf } from '../template.ts'

export const newCommand: Command = {
  name: 'new',
  says: 'Writes a parameter set to start from, with comments; never over a file that is there',
  operands: [familyOperand, { name: 'FILE', says: 'where to write it; FAMILY.yaml unless given', optional: true }],
  options: [unitsOption],
  details: [],
  example: 'new fly-cutter-head head.yaml',
  run({ operands: [name = '', file = `${name}.yaml`], values }, { cwd, machine, stdout }) {
    const family = chosenFamily(name)
    if (!family.ok) return family
    const refused = nameProblem(file)
    if (refused !== undefined) return { ok: false, problems: [refused] }
    const text = templateOf(family.value.name, values.get('--units') === 'in' ? 'in' : 'mm')
    try {
      machine.disk.createFile(resolve(cwd, file), text)
    } catch (error) {
      return { ok: false, problems: [unwritten(error, file)] }
    }
    stdout.write(printable(`Wrote ${file}. Change it to suit, then: cutterwright check ${file}`).concat('\n'))
    return { ok: true, exit: 0 }
  },
}

/** Names that the other commands do not take, or take for something else. */
function nameProblem(file: string): Problem | undefined {
  const name = basename(file)
  const found =
    file === standardInput
      ? '-, which means standard input'
      : isBadName(name)
        ? `the name ${name}, which Windows does not take`
        : undefined
  if (found === undefined) return undefined
  const allowed = 'a name that every computer of the shop takes'
  return { code: 'not-writable', where: { file }, found, allowed, remedy: 'choose another name' }
}

function unwritten(error: unknown, file: string) {
  if (systemCode(error) !== 'EEXIST') return diskProblem(error, file, 'a new file')
  const remedy = 'choose another name, or remove it first'
  return {
    code: 'target-not-ours',
    where: { file },
    found: 'something that is there already',
    allowed: 'a new file',
    remedy,
  } as const
}

import { nearest } from '../input/nearest.ts'
import { printable } from '../input/plain-text.ts'
import { printProblems } from '../input/print-problem.ts'
import type { Outcome, Unable } from './command.ts'
import { commandProblem } from './command-problem.ts'
import { commands } from './commands.ts'
import { commandHelp, generalHelp } from './help.ts'
import { parseArguments } from './parse-arguments.ts'
import { version } from './version.ts'
import type { World } from './world.ts'

/**
 * Runs one command line (without the names of node and program). Gives the exit status: 0 no stop, 1 a stop, 2 when
 * something could not be read or done; then the reasons are on stderr. It never throws: what should not happen is
 * told in a line.
 */
export async function runCommand(args: readonly string[], world: World): Promise<number> {
  try {
    const outcome = await run(args, world)
    if (outcome.ok) return outcome.exit
    world.stderr.write(`${printProblems(outcome.problems, outcome.texts)}\n`)
  } catch (error) {
    const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error)
    const line = printable(words.replace(/\s+/g, ' ')).slice(0, 300)
    world.stderr.write(`this is a defect of cutterwright: ${line}\nPlease report it, with the file that caused it.\n`)
  }
  return 2
}

function run(args: readonly string[], world: World): Promise<Outcome> | Outcome {
  const [name, ...rest] = args
  if (name === '--help' && rest.length === 0) return tell(generalHelp(), world)
  if (name === '--version' && rest.length === 0) return tell(`${version()}\n`, world)
  const command = commands.find((c) => c.name === name)
  if (command === undefined) return unknownCommand(name)
  const end = rest.indexOf('--')
  if (rest.slice(0, end === -1 ? undefined : end).includes('--help')) return tell(commandHelp(command), world)
  const given = parseArguments(command, rest)
  return given.ok ? command.run(given.value, world) : given
}

function tell(text: string, { stdout }: World): { ok: true; exit: 0 } {
  stdout.write(text)
  return { ok: true, exit: 0 }
}

function unknownCommand(name: string | undefined): Unable {
  const names = [...commands.map((command) => command.name), '--help', '--version']
  const near = name === undefined ? undefined : nearest(name, names)
  const remedy = near === undefined ? 'see cutterwright --help' : `did you mean ${near}?`
  const found = name === undefined ? 'no command' : name === '' ? 'an empty name' : name
  return { ok: false, problems: [commandProblem(found, names.join(', '), remedy)] }
}

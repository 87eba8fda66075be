import { families } from '../families/families.ts'
import type { Command, Option } from './command.ts'
import { commands } from './commands.ts'

const exitCodes = 'Exit status: 0 no stop, 1 at least one stop, 2 something could not be read or done.'

export function generalHelp(): string {
  return lines(
    'cutterwright: from one parameter set to solid, drawings and report of a shop-made cutter or holder.',
    '',
    ...table(commands.map((command) => [usage(command), command.says])),
    '',
    ...table([
      ['--help', 'this text, or with a command its own'],
      ['--version', 'the version'],
    ]),
    '',
    'Families:',
    ...table(families.map(({ name, says }) => [name, says])),
    '',
    'To begin:',
    ...[...commands].slice(0, 3).map(({ example }) => `  cutterwright ${example}`),
    '',
    exitCodes,
  )
}

export function commandHelp(command: Command): string {
  const operands = command.operands.map(({ name, says }): [string, string] => [name, says])
  const options = command.options.map((option): [string, string] => [written(option), option.says])
  return lines(
    `cutterwright ${usage(command)}`,
    '',
    `${command.says}.`,
    '',
    ...table([...operands, ...options, ['--help', 'this text']]),
    '',
    ...command.details.flatMap((paragraph) => [paragraph, '']),
    'Example:',
    `  cutterwright ${command.example}`,
    '',
    command.exits ?? exitCodes,
  )
}

function usage({ name, operands, options }: Command): string {
  const names = operands.map((operand) => (operand.optional ? `[${operand.name}]` : operand.name))
  return [name, ...names, ...options.map((option) => `[${written(option)}]`)].join(' ')
}

const written = ({ name, value }: Option): string => (value === undefined ? name : `${name} ${value}`)

/** Two columns; where that would be too wide for a terminal, the second goes on a line of its own. */
function table(rows: readonly (readonly [string, string])[]): string[] {
  const widest = Math.max(...rows.map(([name]) => name.length))
  const fits = widest <= 24 && rows.every(([, says]) => widest + says.length <= 112)
  return rows.flatMap(([name, says]) => (fits ? [`  ${name.padEnd(widest)}  ${says}`] : [`  ${name}`, `      ${says}`]))
}

const lines = (...all: string[]): string => `${all.join('\n')}\n`

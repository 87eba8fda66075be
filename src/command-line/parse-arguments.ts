import { parseArgs } from 'node:util'
import { nearest } from '../input/nearest.ts'
import type { Problem, Result } from '../input/problem.ts'
import type { Arguments, Command, Option } from './command.ts'
import { commandProblem } from './command-problem.ts'

/**
 * Arguments after the name of the command. Node's parser takes them apart; what fits the command is judged here, all
 * of it in one go and in our words. `--` ends the options, `-` alone is an operand.
 */
export function parseArguments(command: Command, args: readonly string[]): Result<Arguments> {
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      command.options.map(({ name, value }) => [name.slice(2), { type: value === undefined ? 'boolean' : 'string' }]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  })
  const problems: Problem[] = []
  const operands: string[] = []
  const values = new Map<string, string>()
  const repeated = new Map<string, string[]>()
  const switches = new Set<string>()
  const unknown = new Set<number>()
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value)
    if (token.kind !== 'option') continue
    const option = command.options.find(({ name }) => name === token.rawName)
    const written = args[token.index] ?? token.rawName
    if (option === undefined) {
      // `-out` comes as three options of one letter at one place.
      if (!unknown.has(token.index)) problems.push(unknownOption(written, command))
      unknown.add(token.index)
    } else if (option.repeats) {
      const problem = valueProblem(option, token.value, token.inlineValue === true)
      if (problem !== undefined) problems.push(problem)
      repeated.set(option.name, [...(repeated.get(option.name) ?? []), token.value ?? ''])
    } else if (values.has(option.name) || switches.has(option.name)) {
      problems.push(commandProblem(`${option.name} twice`, 'each option once'))
    } else if (option.value === undefined) {
      if (token.value !== undefined) problems.push(commandProblem(written, `${option.name} alone, without a value`))
      switches.add(option.name)
    } else {
      const problem = valueProblem(option, token.value, token.inlineValue === true)
      if (problem !== undefined) problems.push(problem)
      values.set(option.name, token.value ?? '')
    }
  }
  // Behind an option that is not known, what seems one name too many may be its value.
  problems.push(...operandProblems(command, operands, unknown.size === 0))
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: { operands, values, repeated, switches } }
}

function unknownOption(written: string, { name, options }: Command): Problem {
  const names = [...options.map((option) => option.name), '--help']
  const near = nearest(written.replace(/=.*/s, ''), names)
  const remedy = near === undefined ? `see cutterwright ${name} --help` : `did you mean ${near}?`
  return commandProblem(written, names.join(', '), remedy)
}

function valueProblem({ name, value, choices, undashed }: Option, given: string | undefined, inline: boolean) {
  if (given === undefined || given === '') return commandProblem(`${name} without a value`, `${name} ${value}`)
  // A number below nothing is refused by who reads it, with what it should be.
  if (undashed && /^-[\d.]/.test(given)) return undefined
  if (!inline && given.startsWith('-') && given.length > 1) {
    if (undashed) return commandProblem(`${name} with ${given} behind it`, `${name} ${value}`)
    const remedy = `where it begins with a dash, write ${name}=${given}`
    return commandProblem(`${name} with ${given} behind it`, `${name} ${value}`, remedy)
  }
  if (choices === undefined || choices.includes(given)) return undefined
  const near = nearest(given, choices)
  const allowed = choices.map((choice) => `${name} ${choice}`).join(', ')
  return commandProblem(`${name} ${given}`, allowed, near && `did you mean ${near}?`)
}

function operandProblems({ name, operands }: Command, given: readonly string[], noSpare: boolean): Problem[] {
  const missing = operands.slice(given.length).filter(({ optional }) => optional === undefined)
  const spare = noSpare ? given.slice(operands.length) : []
  const usage = ['cutterwright', name, ...operands.map((o) => (o.optional ? `[${o.name}]` : o.name))].join(' ')
  return [
    ...missing.map((operand) => commandProblem(`no ${operand.name}`, usage, `add ${operand.says}`)),
    ...spare.map((extra) => commandProblem(extra, usage, 'put a name with spaces in quotes')),
    ...given.filter((text) => text === '').map(() => commandProblem('an empty name', usage)),
  ]
}

import type { Command } from './command.ts'
import { checkCommand } from './commands/check.ts'
import { makeCommand } from './commands/make.ts'
import { measuredCommand } from './commands/measured.ts'
import { newCommand } from './commands/new.ts'
import { schemaCommand } from './commands/schema.ts'
import { sweepCommand } from './commands/sweep.ts'

/** Every command, in the order in which a job needs them. */
export const commands: readonly Command[] = [
  newCommand,
  checkCommand,
  makeCommand,
  measuredCommand,
  sweepCommand,
  schemaCommand,
]

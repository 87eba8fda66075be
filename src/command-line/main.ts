#!/usr/bin/env node
import './short-run.ts'
import { processWorld } from './process-world.ts'
import { runCommand } from './run-command.ts'

const exit = await runCommand(process.argv.slice(2), processWorld())
// Not by process.exit: what is still on its way to a pipe would be lost. Output that could not be written is worse than a stop.
process.exitCode = Math.max(exit, Number(process.exitCode ?? 0))

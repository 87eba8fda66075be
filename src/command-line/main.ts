#!/usr/bin/env node
import './short-run.ts'
import { processWorld } from './process-world.ts'
import { runCommand } from './run-command.ts'

// Not by process.exit: what is still on its way to a pipe would be lost.
process.exitCode = await runCommand(process.argv.slice(2), processWorld())

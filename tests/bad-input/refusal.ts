import { expect, vi } from 'vitest'
import { commands } from '../../src/command-line/commands.ts'
import { runCommand } from '../../src/command-line/run-command.ts'
import type { World } from '../../src/command-line/world.ts'
import type { Problem } from '../../src/input/problem.ts'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { folderState } from '../package/folder-state.ts'

export interface Ran {
  readonly exit: number
  readonly out: string
  readonly err: string
  /** What the command gave, before it was worded; empty where it did its work. */
  readonly problems: readonly Problem[]
}

/** A command line typed in a folder: what it says, and the problems behind the words. */
export async function ran(cwd: string, args: readonly string[]): Promise<Ran> {
  const text = { out: '', err: '' }
  const world: World = {
    cwd,
    stdin: emptyStream(),
    stdout: {
      write: (t) => {
        text.out += t
      },
    },
    stderr: {
      write: (t) => {
        text.err += t
      },
    },
    machine: { disk: systemDisk, processes: systemProcesses },
    threads: 1,
  }
  const command = commands.find(({ name }) => name === args[0])
  if (command === undefined) throw new Error(`no command ${args[0]}`)
  const spy = vi.spyOn(command, 'run')
  const exit = await runCommand(args, world)
  const outcome = await spy.mock.results[0]?.value
  spy.mockRestore()
  return { exit, ...text, problems: outcome === undefined || outcome.ok ? [] : outcome.problems }
}

/** The same, for what has to be refused: with 2, without a trace of the stack, and without anything written. */
export async function refused(cwd: string, args: readonly string[]): Promise<Ran> {
  const before = folderState(cwd)
  const run = await ran(cwd, args)
  expect({ exit: run.exit, out: run.out }).toEqual({ exit: 2, out: '' })
  expect(run.err).not.toMatch(/\n\s+at |\.ts:\d|defect/)
  expect(run.err).not.toMatch(/[^\P{Cc}\n]/u)
  expect(folderState(cwd)).toEqual(before)
  return run
}

async function* emptyStream(): AsyncGenerator<string> {}

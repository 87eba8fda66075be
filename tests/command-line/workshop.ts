import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { runCommand } from '../../src/command-line/run-command.ts'
import type { World } from '../../src/command-line/world.ts'
import { systemDisk } from '../../src/package/disk.ts'
import type { Machine } from '../../src/package/machine.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { projectRoot } from '../package/spawned.ts'

export interface Run {
  readonly exit: number
  readonly out: string
  readonly err: string
}

/** A command line as if typed in `cwd`, without a process. */
export async function typed(
  cwd: string,
  args: readonly string[],
  {
    input = '',
    machine = { disk: systemDisk, processes: systemProcesses },
    threads = 1,
  }: { input?: string | Uint8Array; machine?: Machine; threads?: number } = {},
): Promise<Run> {
  let out = ''
  let err = ''
  const world: World = {
    cwd,
    stdin: Readable.from([input]),
    stdout: {
      write: (text) => {
        out += text
      },
    },
    stderr: {
      write: (text) => {
        err += text
      },
    },
    machine,
    threads,
  }
  const exit = await runCommand(args, world)
  return { exit, out, err }
}

/** The starting parameter set, with some of its text replaced; each of the texts has to be there. */
export function headText(...edits: readonly (readonly [string, string])[]): string {
  let text = readFileSync(join(projectRoot, 'templates', 'fly-cutter-head', 'parameters.yaml'), 'utf8')
  for (const [from, to] of edits) {
    if (!text.includes(from)) throw new Error(`no ${from} in the template`)
    text = text.replace(from, to)
  }
  return text
}

/** A bore so deep that it breaks into the slot. */
export const deepBore = ['depth: 24', 'depth: 33'] as const

/** Writes a parameter set into the folder and gives its name. */
export function headFile(folder: string, text: string = headText(), name = 'head.yaml'): string {
  writeFileSync(join(folder, name), text)
  return name
}

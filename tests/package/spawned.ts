import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'

export const projectRoot: string = join(import.meta.dirname, '..', '..')

export interface Ended {
  readonly exit: number | null
  readonly signal: NodeJS.Signals | null
  readonly out: string
  readonly err: string
}

export interface Spawned {
  readonly ended: Promise<Ended>
  kill(): void
}

/** A process of its own, from TypeScript as in a clone. `path` from the top of the project. */
export function spawned(
  path: string,
  args: readonly string[],
  options: { cwd?: string; input?: string } = {},
): Spawned {
  return spawnedNode(['--import', import.meta.resolve('tsx'), join(projectRoot, path), ...args], options)
}

interface Options {
  readonly cwd?: string
  readonly input?: string
  /** Number of the user, and of the group, as whom it runs; only an administrator may choose. */
  readonly user?: number
}

/** Node itself, without anything between. */
export const spawnedNode = (args: readonly string[], options: Options = {}): Spawned =>
  spawnedProgram(process.execPath, args, options)

export function spawnedProgram(program: string, args: readonly string[], { cwd, input, user }: Options = {}): Spawned {
  const child = spawn(program, args, {
    stdio: 'pipe',
    shell: process.platform === 'win32' && program !== process.execPath,
    ...(cwd !== undefined && { cwd }),
    ...(user !== undefined && { uid: user, gid: user }),
  })
  const text = { out: '', err: '' }
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    text.out += chunk
  })
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => {
    text.err += chunk
  })
  child.stdin.on('error', () => undefined).end(input ?? '')
  const ended = once(child, 'close').then(([exit, signal]) => ({ exit, signal, ...text }))
  return { ended, kill: () => child.kill('SIGKILL') }
}

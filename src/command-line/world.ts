import type { Machine } from '../package/machine.ts'

/** Where text goes; a process's streams are such, and a list of strings can be. */
export interface Sink {
  write(text: string): unknown
  /** True for a terminal, where a line may be written over. */
  readonly isTTY?: boolean | undefined
}

/** All that a command knows of the world outside, so that a test needs no process. */
export interface World {
  /** Absolute folder from which relative names are taken. */
  readonly cwd: string
  readonly stdin: AsyncIterable<Uint8Array | string>
  readonly stdout: Sink
  readonly stderr: Sink
  readonly machine: Machine
  /** Threads that a command may use, this one among them. */
  readonly threads: number
}

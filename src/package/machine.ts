import type { Disk } from './disk.ts'
import type { Processes } from './processes.ts'

/** What a package is written with; a test hands in one that fails where it wants. */
export interface Machine {
  readonly disk: Disk
  readonly processes: Processes
}

import type { Processes } from '../../src/package/processes.ts'

/** A process by its number, in a world in which only the `running` ones live. */
export const fakeProcess = (pid: number, running: readonly number[] = []): Processes => ({
  self: () => ({ pid, host: 'bench', at: 0, birth: `b${pid}` }),
  isRunning: (holder) => running.includes(holder.pid),
})

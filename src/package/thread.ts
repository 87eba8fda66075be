import { Worker } from 'node:worker_threads'

/** The files of this folder that run as a thread of their own. */
export type ThreadFile = 'sweep-thread' | 'beside-thread'

/**
 * Starts a thread. In a clone the sources run as they are, and a thread has to bring the loader itself: Node 20 does not
 * hand on to a thread the one that this process came with. Built, all files lie in one folder.
 */
export function startThread(file: ThreadFile, workerData?: unknown): Worker {
  const isSource = import.meta.url.endsWith('.ts')
  const entry = new URL(isSource ? `./${file}.ts` : `./${file}.js`, import.meta.url)
  if (!isSource) return new Worker(entry, { workerData })
  const loader = JSON.stringify(import.meta.resolve('tsx/esm/api'))
  const loaded = `import(${loader}).then(({ register }) => { register(); return import(${JSON.stringify(entry.href)}) })`
  return new Worker(loaded, { eval: true, execArgv: [], workerData })
}

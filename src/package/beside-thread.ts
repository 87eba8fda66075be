import { parentPort } from 'node:worker_threads'
import type { BesideJob } from './beside.ts'
import { besideWork } from './beside-work.ts'

/** The thread beside the one that draws: does jobs in the order in which they come, and posts what comes of each. */
parentPort?.on('message', ({ work, job }: BesideJob) => {
  parentPort?.postMessage(work === 'solids' ? besideWork.solids(job) : besideWork.pdf(job))
})

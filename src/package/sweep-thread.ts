import { parentPort, workerData } from 'node:worker_threads'
import { chunksOf, type SweepWork } from './sweep-threads.ts'

/** One thread of a sweep: takes sets as long as there are any, and posts what came of them. */
const { job, counters } = workerData as SweepWork
parentPort?.postMessage([...chunksOf(job, counters)])

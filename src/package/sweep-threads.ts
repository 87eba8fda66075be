import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Worker } from 'node:worker_threads'
import { families } from '../families/families.ts'
import type { CommonParameters } from '../families/family.ts'
import type { Axis } from '../sweep/axis.ts'
import { type SetResult, setResult } from '../sweep/set-result.ts'
import { changeAt, countSets } from '../sweep/sweep.ts'
import type { Tables } from '../tables/read-tables.ts'
import { startThread } from './thread.ts'

/** All that a thread needs to work out any set of a sweep. Plain data. */
export interface SweepJob {
  readonly family: string
  readonly parameters: CommonParameters
  readonly tables: Tables
  readonly axes: readonly Pick<Axis, 'path' | 'points'>[]
  readonly figures: readonly string[]
}

/** A job with what its threads share: the next set that nobody has taken, and how many are done. */
export interface SweepWork {
  readonly job: SweepJob
  readonly counters: Int32Array<SharedArrayBuffer>
}

/** Sets that a thread takes at a time: a few milliseconds of work, so that all end together. */
const chunk = 8

/** Below this many sets a second thread costs more to start than it saves. */
const worthThreads = 200

/** Threads that a sweep is worth, of those that there are. */
export const threadsFor = (sets: number, threads: number): number => (sets < worthThreads ? 1 : Math.min(16, threads))

/** Results of a run of sets, and the number of the first. */
export interface Chunk {
  readonly first: number
  readonly results: readonly SetResult[]
}

/** Takes sets as long as there are any. */
export function* chunksOf(job: SweepJob, counters: Int32Array<SharedArrayBuffer>): Generator<Chunk> {
  const family = families.find(({ name }) => name === job.family)
  if (family === undefined) throw new RangeError(`no family ${job.family}`)
  const figures = job.figures.map((id) => family.figures.find((figure) => figure.id === id)!)
  const sets = countSets(job.axes)
  for (;;) {
    const first = Atomics.add(counters, 0, chunk)
    if (first >= sets) return
    const results: SetResult[] = []
    for (let index = first; index < Math.min(first + chunk, sets); index++) {
      results.push(setResult(family, job.parameters, job.tables, changeAt(job.axes, index), figures))
    }
    Atomics.add(counters, 1, results.length)
    yield { first, results }
  }
}

/**
 * Works a sweep out on so many threads, this one among them, and gives the results in the order of the sets: the same
 * ones, however many threads there are. `done` is called now and then with how many sets are done. A thread that fails
 * ends all, with its error.
 */
export async function sweptOn(threads: number, job: SweepJob, done: (sets: number) => void): Promise<SetResult[]> {
  const counters = new Int32Array(new SharedArrayBuffer(8))
  const helpers = Array.from({ length: threads - 1 }, () => helper({ job, counters }))
  // A failure must not go unheard while this thread is still at its own sets.
  const helped = Promise.all(helpers.map(({ chunks }) => chunks))
  let failure: unknown
  helped.catch((error: unknown) => {
    failure = error
  })
  try {
    const chunks: Chunk[] = []
    for (const own of chunksOf(job, counters)) {
      chunks.push(own)
      done(Atomics.load(counters, 1))
      await nextTurn()
      if (failure !== undefined) break
    }
    const results = new Array<SetResult>(countSets(job.axes))
    for (const { first, results: part } of [...chunks, ...(await helped).flat()]) {
      part.forEach((result, at) => {
        results[first + at] = result
      })
    }
    return results
  } finally {
    await Promise.all(helpers.map(({ worker }) => worker.terminate()))
  }
}

/** Starts one more thread. */
function helper(work: SweepWork): { readonly worker: Worker; readonly chunks: Promise<Chunk[]> } {
  const worker = startThread('sweep-thread', work)
  const chunks = new Promise<Chunk[]>((resolve, reject) => {
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', (code) => reject(new Error(`a thread of the sweep ended with ${code}`)))
  })
  return { worker, chunks }
}

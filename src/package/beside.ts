import type { BesideWork, PdfJob } from './beside-work.ts'
import type { SolidsJob } from './solids-job.ts'
import { startThread } from './thread.ts'

export type BesideJob =
  | { readonly work: 'solids'; readonly job: SolidsJob }
  | { readonly work: 'pdf'; readonly job: PdfJob }

/** Whoever works beside the thread that draws. A promise is rejected where the work throws. */
export interface Beside {
  solids(job: SolidsJob): Promise<ReturnType<BesideWork['solids']>>
  pdf(job: PdfJob): Promise<ReturnType<BesideWork['pdf']>>
  end(): Promise<unknown>
}

/** Nobody: this thread does it, and loads only then what it needs. */
export const besideNobody: Beside = {
  solids: (job) => heard(import('./beside-work.ts').then(({ besideWork }) => besideWork.solids(job))),
  pdf: (job) => heard(import('./beside-work.ts').then(({ besideWork }) => besideWork.pdf(job))),
  end: async () => undefined,
}

/** A failure that nobody waits for any more, because something else failed first, must not end the process. */
function heard<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => undefined)
  return promise
}

/** A thread of its own. It loads while the one that started it still reads parameters. */
export function besideThread(): Beside {
  const worker = startThread('beside-thread')
  const waiting: { resolve(answer: unknown): void; reject(error: Error): void }[] = []
  let failure: Error | undefined
  const fail = (error: Error) => {
    failure = error
    for (const { reject } of waiting.splice(0)) reject(error)
  }
  worker.on('message', (answer) => waiting.shift()?.resolve(answer))
  worker.once('error', fail)
  worker.once('exit', (code) => fail(new Error(`the thread beside ended with ${code}`)))
  const ask = <T>(job: BesideJob) =>
    heard(
      new Promise<T>((resolve, reject) => {
        if (failure) return reject(failure)
        waiting.push({ resolve: (answer) => resolve(answer as T), reject })
        worker.postMessage(job)
      }),
    )
  return {
    solids: (job) => ask({ work: 'solids', job }),
    pdf: (job) => ask({ work: 'pdf', job }),
    end: () => worker.terminate(),
  }
}

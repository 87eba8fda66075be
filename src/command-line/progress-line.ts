import type { Sink } from './world.ts'

/** Shortest time between two looks of a line, ms: faster cannot be read. */
const pause = 200

/** A line that is written over as work goes on; on anything but a terminal nothing is written at all. */
export class ProgressLine {
  private readonly sink: Sink
  private last = Number.NEGATIVE_INFINITY
  private isShown = false

  constructor(sink: Sink) {
    this.sink = sink
  }

  show(words: string): void {
    const now = performance.now()
    if (this.sink.isTTY !== true || now - this.last < pause) return
    this.last = now
    this.isShown = true
    this.sink.write(`\r${words}\u001b[K`)
  }

  /** Clears the line, if there is one. */
  end(): void {
    if (this.isShown) this.sink.write('\r\u001b[K')
    this.isShown = false
  }
}

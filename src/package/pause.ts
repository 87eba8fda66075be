/** Waits without giving the turn to anything else in this process. Milliseconds, at most a second in practice. */
export function pause(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds)
}

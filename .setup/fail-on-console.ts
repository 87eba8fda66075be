// The core never prints: a stray console call in a test run is a defect.
import { afterEach, expect, vi } from 'vitest'

const spies = (['log', 'warn', 'error', 'info', 'debug'] as const).map((name) => vi.spyOn(console, name))
afterEach(() => {
  const calls = spies.flatMap((spy) => spy.mock.calls)
  for (const spy of spies) spy.mockClear()
  expect(calls, 'nothing writes to the console').toEqual([])
})

import { expect } from 'vitest'
import type { Result } from '../../../src/input/problem.ts'
import type { Measured } from '../../../src/mechanics/measuring/measured.ts'

/** The value of a result that must be good. */
export function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** Codes and paths of a result that must not be good. */
export function faults<T>(result: Result<T>): string[] {
  return result.ok ? ['good'] : result.problems.map(({ code, where }) => `${code} ${where.path}`)
}

/** Holds every slope against the central difference of the measuring function itself, within 1e-6 of the largest. */
export function expectSlopes<Name extends string>(
  at: Readonly<Record<Name, number>>,
  measure: (readings: Readonly<Record<Name, number>>) => Measured<Name>,
): void {
  const { slopes } = measure(at)
  expect(Object.keys(slopes).sort()).toEqual(Object.keys(at).sort())
  const scale = Math.max(1, ...Object.values<number>(slopes).map(Math.abs))
  for (const name of Object.keys(at) as Name[]) {
    const step = 1e-5
    const off = (way: number) => measure({ ...at, [name]: at[name] + way * step }).size
    const difference = (off(1) - off(-1)) / (2 * step)
    expect(Math.abs(slopes[name] - difference) / scale, name).toBeLessThan(1e-6)
  }
}

import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { judged, remedied } from '../../src/families/variants.ts'
import { headFrom } from './random-heads.ts'

/**
 * The remedy of a finding in words, once it is shown to clear it and to bring no stop; `none` where the finding says that no
 * single change does, and undefined for a note without one, which there is no need to clear.
 */
export function shownRemedy(design: HeadDesign, id: string): string | undefined {
  const findings = judged(flyCutterHead, design, true)
  const finding = findings.find((f) => f.id === id)!
  const { remedy, noRemedy, level } = finding
  if (!remedy) {
    expect(noRemedy, `${id} without a remedy and without a word about it`).toBe(level === 'note' ? undefined : true)
    return noRemedy && 'none'
  }
  const after = remedied(flyCutterHead, design, remedy)
  if (!after.ok) throw new Error(`${remedy.text}: ${JSON.stringify(after.problems)}`)
  const left = findingsOf(flyCutterHead.rules, after.value)
  expect(left.map((f) => f.id)).not.toContain(id)
  const stops = findings.filter((f) => f.level === 'stop').map((f) => f.id)
  expect(left.filter((f) => f.level === 'stop' && !stops.includes(f.id)).map((f) => f.id)).toEqual([])
  return remedy.text
}

/** A mistake of a test's table: its name, what makes it, and the finding that it is. */
export type Mistake = readonly [name: string, changes: Parameters<typeof headFrom>[1][], id: string]

/** Every one of them has a remedy that clears it, or is named as one that no single change clears. */
export function everyFindingAbove(mistakes: readonly Mistake[], noSingleChange: readonly string[] = []): void {
  describe('every finding above', () => {
    it.each(mistakes)('comes with a remedy that clears it, or says that none does: %s', (name, changes, id) => {
      const remedy = shownRemedy(headFrom('parameters', ...changes), id)
      expect(remedy === 'none').toBe(noSingleChange.includes(name))
    })
  })
}

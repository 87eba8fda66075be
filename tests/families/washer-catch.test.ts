import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/checks/rule.ts'
import { washerCatch } from '../../src/families/fly-cutter-head/engineering/ways-to-hold.ts'
import { catchWords } from '../../src/families/fly-cutter-head/making/joining-words.ts'
import { headRepairs } from '../../src/families/fly-cutter-head/making/repairs.ts'
import { partsList } from '../../src/families/fly-cutter-head/parts-list.ts'
import { headRules } from '../../src/families/fly-cutter-head/rules/head-rules.ts'
import { headFrom } from './random-heads.ts'

type Change = [string, string]
const through: Change = [
  'kind: blind\n  diameter: 20\n  depth: 24\n  bottom: flat\n  vent: hole',
  'kind: through\n  diameter: 14',
]
const caught: Change = ['catch: pin', 'catch: screw-and-washer']
/** A slot that ends short of the axis, on the bit side: its deepest place at 7° stands end·cos 7° away from it. */
const stopped = (end: number): Change => ['runs: through', `runs: stopped\n  beyond-axis: ${-end}`]
const stops = (...changes: Change[]) =>
  findingsOf(headRules, headFrom('parameters', ...changes))
    .filter(({ id }) => id.startsWith('fit-catch:'))
    .map(({ id, level, text }) => `${level} ${id}: ${text.slice(0, 24)}`)

describe('a screw and washer that catch the head', () => {
  it('have no seat where the slot runs over the bore, as it does in a fly cutter: nothing offers them', () => {
    const head = headFrom('parameters', through, caught)
    expect(washerCatch(head)).toBeUndefined()
    expect(stops(through, caught)[0]).toBe('stop fit-catch:washer: Slot or step cuts into t')
    expect(partsList(head).at(-1)!.stock).toContain('none holds')
    expect(catchWords(head)[0]).toContain('find no place')
    const repair = headRepairs(head, head, []).find(({ id }) => id === 'screw-and-washer')!
    expect(repair).toMatchObject({
      would: 'not do',
      says: expect.stringMatching(/^There is no place for it\. Slot or step/),
    })
    expect(repair.says).not.toContain('keeps the head on')
  })

  it('would stand beyond the floor of a blind bore', () => {
    expect(washerCatch(headFrom('parameters', caught))).toBeUndefined()
    expect(stops(caught)).toEqual(['stop fit-catch:blind: Screw and washer cannot '])
  })

  it('sit round a bore that slot and step leave alone: washer of 1.5 × 14 = 21, slot 10.5/cos 7° = 10.579 away', () => {
    expect(washerCatch(headFrom('parameters', through, caught, stopped(10.58)))).toBe(
      'screw M6, washer of 21 mm, spot-faced square to the bore',
    )
    expect(washerCatch(headFrom('parameters', through, caught, stopped(10.57)))).toBeUndefined()
    // The step's wall, 2.4 + 9 off the axis, has to stay outside too.
    const thin: Change = ['wall-thickness: 9', 'wall-thickness: 8']
    expect(washerCatch(headFrom('parameters', through, caught, stopped(10.58), thin))).toBeUndefined()
    expect(stops(through, caught, stopped(10.58))).toEqual([])
  })
})

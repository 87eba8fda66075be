import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { recoverAtStart } from '../../src/package/recover.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { type Failure, failingDisk, quickDisk } from './failing-disk.ts'
import { fakeProcess } from './fake-processes.ts'
import { folderState, leftovers } from './folder-state.ts'
import { earlierFiles, newFiles, placeAt, problemsOf, stateOf } from './small-packages.ts'
import { temporaryFolder } from './temporary-folder.ts'

const root = temporaryFolder()
const newState = stateOf(newFiles, '00000002')
const never = Number.POSITIVE_INFINITY

/** What may stand at the target before a run, and what the folder then holds. */
const beginnings = {
  nothing: undefined,
  'an empty folder': {},
  'an earlier package': stateOf(earlierFiles, '00000001'),
} as const
type Beginning = keyof typeof beginnings

function begin(beginning: Beginning): string {
  const parent = join(root(), 'out')
  rmSync(parent, { recursive: true, force: true })
  mkdirSync(parent)
  if (beginning === 'an empty folder') mkdirSync(join(parent, 'head'))
  if (beginning === 'an earlier package') run(parent, 1, earlierFiles, '00000001')
  return parent
}

const run = (parent: string, pid: number, files = newFiles, revision = '00000002', disk = quickDisk) =>
  writePackage(placeAt(parent), files, revision, { disk, processes: fakeProcess(pid) })

const recoverNow = (parent: string, pid: number, disk = quickDisk) =>
  recoverAtStart(placeAt(parent), { disk, processes: fakeProcess(pid) })

/** The steps of a run that goes well. */
function stepsOf(beginning: Beginning): string[] {
  const parent = begin(beginning)
  const { disk, steps } = failingDisk(never, 'refused')
  run(parent, 2, newFiles, '00000002', disk)
  return steps.map((step) => step.replaceAll(`${parent}/`, ''))
}

it('the steps of a run, in order: lock, files, two renames, tidying', () => {
  expect(stepsOf('an earlier package')).toEqual([
    expect.stringMatching(/^createFile \.head\.lock /),
    expect.stringMatching(/^syncFolder /),
    'makeFolder .head.writing',
    expect.stringMatching(/^createFile \.head\.writing\/arbor\.stl/),
    expect.stringMatching(/^createFile \.head\.writing\/body\.stl/),
    expect.stringMatching(/^createFile \.head\.writing\/report\.md/),
    expect.stringMatching(/^createFile \.head\.writing\/contents\.json/),
    'syncFolder .head.writing',
    'rename head .head.before',
    'rename .head.writing head',
    expect.stringMatching(/^syncFolder /),
    'removeFolder .head.before',
    'removeFile .head.lock',
  ])
})

describe.each(Object.keys(beginnings) as Beginning[])('with %s at the target', (beginning) => {
  const count = () => stepsOf(beginning).length
  const whole = (parent: string) => {
    const state = folderState(join(parent, 'head'))
    expect([beginnings[beginning], newState]).toContainEqual(state)
    return state
  }

  it('a step that is refused is undone: the folder is as it was, or new and whole, and nothing else is left', () => {
    for (let at = 1; at <= count(); at++) {
      const parent = begin(beginning)
      const { disk, steps } = failingDisk(at, 'refused', 'ENOSPC')
      const result = run(parent, 2, newFiles, '00000002', disk)
      const step = steps[at - 1] ?? ''
      if (result.ok) {
        expect(whole(parent), step).toEqual(newState)
        // Only tidying may fail without making the run fail.
        expect(step).toMatch(/^(?:removeFile|removeFolder|syncFolder)/)
      } else {
        expect(problemsOf(result)[0]).toMatchObject({ code: 'not-writable', found: 'a full disk' })
        expect(folderState(join(parent, 'head')), step).toEqual(beginnings[beginning])
        expect(leftovers(parent, 'head'), step).toEqual([])
      }
      expect(run(parent, 3).ok, step).toBe(true)
      expect(whole(parent)).toEqual(newState)
      expect(leftovers(parent, 'head')).toEqual([])
    }
  })

  it('after a death at any step the next start brings back the earlier state or keeps the new one, and says so', () => {
    const reached = new Set<string>()
    for (const failure of ['dead before', 'dead within'] satisfies Failure[]) {
      for (let at = 1; at <= count(); at++) {
        const parent = begin(beginning)
        const { disk, steps } = failingDisk(at, failure)
        run(parent, 2, newFiles, '00000002', disk)
        const step = `${failure} ${steps[at - 1]}`
        const left = leftovers(parent, 'head').filter((name) => !name.includes('.lock'))

        const recovered = recoverNow(parent, 3)
        expect(recovered.ok && recovered.value !== undefined, step).toBe(left.length > 0)
        const state = whole(parent)
        expect(leftovers(parent, 'head'), step).toEqual([])
        reached.add(state === undefined || state['arbor.stl'] === undefined ? 'earlier' : 'new')

        expect(run(parent, 4).ok, step).toBe(true)
        expect(whole(parent)).toEqual(newState)
        expect(leftovers(parent, 'head')).toEqual([])
      }
    }
    expect([...reached].sort()).toEqual(['earlier', 'new'])
  })

  it('a run that follows a death at once, without a start of its own, recovers and says so', () => {
    for (let at = 1; at <= count(); at++) {
      const parent = begin(beginning)
      run(parent, 2, newFiles, '00000002', failingDisk(at, 'dead before').disk)
      const left = leftovers(parent, 'head').filter((name) => !name.includes('.lock'))
      const result = run(parent, 3, earlierFiles, '00000001')
      expect(result.ok && result.value.notes.length).toBe(left.length > 0 ? 1 : 0)
      expect(folderState(join(parent, 'head'))).toEqual(stateOf(earlierFiles, '00000001'))
      expect(leftovers(parent, 'head')).toEqual([])
    }
  })
})

describe('after a death between the two renames', () => {
  const dieBetween = () => {
    const parent = begin('an earlier package')
    const between = stepsOf('an earlier package').indexOf('rename .head.writing head') + 1
    begin('an earlier package')
    run(parent, 2, newFiles, '00000002', failingDisk(between, 'dead before').disk)
    expect(leftovers(parent, 'head')).toEqual(['.head.before', '.head.lock', '.head.writing'])
    expect(folderState(join(parent, 'head'))).toBeUndefined()
    return parent
  }

  it('the earlier package comes back', () => {
    const parent = dieBetween()
    expect(recoverNow(parent, 3)).toEqual({
      ok: true,
      value: 'head: an earlier run was cut short; the package from before it is back in place',
    })
    expect(folderState(join(parent, 'head'))).toEqual(beginnings['an earlier package'])
  })

  it('an empty folder that a script made anew does not keep it from coming back', () => {
    const parent = dieBetween()
    mkdirSync(join(parent, 'head'))
    expect(recoverNow(parent, 3).ok).toBe(true)
    expect(folderState(join(parent, 'head'))).toEqual(beginnings['an earlier package'])
  })

  it('work that somebody put there since is left alone, and so is the earlier package, until it is moved', () => {
    const parent = dieBetween()
    const head = join(parent, 'head')
    mkdirSync(head)
    writeFileSync(join(head, 'notes.txt'), 'mine')
    for (const pid of [3, 4]) {
      const [problem] = problemsOf(recoverNow(parent, pid))
      expect(problem).toMatchObject({ code: 'target-not-ours', where: { file: 'head' } })
      expect(problem?.remedy).toContain('.head.before')
    }
    expect(problemsOf(run(parent, 5))[0]?.code).toBe('target-not-ours')
    expect(folderState(head)).toEqual({ 'notes.txt': 'mine' })
    expect(folderState(join(parent, '.head.before'))).toEqual(beginnings['an earlier package'])
    rmSync(head, { recursive: true })
    expect(recoverNow(parent, 6).ok).toBe(true)
    expect(folderState(head)).toEqual(beginnings['an earlier package'])
    expect(leftovers(parent, 'head')).toEqual([])
  })
})

it('a death while recovering from a death is recovered from as well', () => {
  let deaths = 0
  const { length } = stepsOf('an earlier package')
  for (let at = 1; at <= length; at++) {
    const dead = begin('an earlier package')
    run(dead, 2, newFiles, '00000002', failingDisk(at, 'dead within').disk)
    const kept = join(root(), 'kept')
    rmSync(kept, { recursive: true, force: true })
    cpSync(dead, kept, { recursive: true })
    for (let second = 1; ; second++) {
      rmSync(dead, { recursive: true })
      cpSync(kept, dead, { recursive: true })
      const { disk, steps } = failingDisk(second, 'dead within')
      recoverNow(dead, 3, disk)
      if (steps.length < second) break
      deaths++
      expect(recoverNow(dead, 4).ok).toBe(true)
      expect([beginnings['an earlier package'], newState]).toContainEqual(folderState(join(dead, 'head')))
      expect(leftovers(dead, 'head')).toEqual([])
    }
  }
  expect(deaths).toBeGreaterThan(20)
})

it('a start at a place where no run died writes nothing', () => {
  const parent = begin('an earlier package')
  const { disk, steps } = failingDisk(never, 'refused')
  expect(recoverNow(parent, 2, disk)).toEqual({ ok: true, value: undefined })
  expect(steps).toEqual([])
})

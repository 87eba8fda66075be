import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Disk, systemDisk } from '../../src/package/disk.ts'
import { type Lock, takeLock } from '../../src/package/lock.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { systemError } from './failing-disk.ts'
import { fakeProcess } from './fake-processes.ts'
import { placeAt, problemsOf } from './small-packages.ts'
import { temporaryFolder } from './temporary-folder.ts'

const parent = temporaryFolder()
const take = (pid: number, running: readonly number[], disk: Disk = systemDisk) =>
  takeLock(placeAt(parent()), { disk, processes: fakeProcess(pid, running) })
function taken(pid: number, running: readonly number[]): Lock {
  const result = take(pid, running)
  if (!result.ok) throw new Error(result.problems[0]?.found)
  return result.value
}

describe('the lock of a place', () => {
  it('goes to one run at a time, and the second is told who has it', () => {
    const first = taken(1, [])
    const [problem] = problemsOf(take(2, [1]))
    expect(problem).toEqual({
      code: 'target-busy',
      where: { file: 'head' },
      found: 'another run that is writing there (process 1 on bench)',
      allowed: 'one run at a time',
      remedy: 'wait until it is done; if there is none, remove .head.lock',
    })
    first.release()
    expect(readdirSync(parent())).toEqual([])
    expect(taken(2, [1]).afterDeath).toBe(false)
  })

  it('of a dead run goes to the next, which knows of the death', () => {
    taken(1, [])
    const second = taken(2, [])
    expect(second.afterDeath).toBe(true)
    expect(readdirSync(parent())).toEqual(['.head.lock.2'])
    expect(problemsOf(take(3, [2]))[0]?.code).toBe('target-busy')
    second.release()
    expect(readdirSync(parent())).toEqual([])
  })

  it('is to be had after any number of deaths', () => {
    for (let pid = 1; pid <= 10; pid++) expect(taken(pid, []).afterDeath).toBe(pid > 1)
    taken(11, []).release()
    expect(readdirSync(parent())).toEqual([])
  })

  it('that was left says so to the next run, even of the same process', () => {
    taken(1, [1]).leave()
    expect(taken(1, [1]).afterDeath).toBe(true)
  })

  it('a lock that says nothing was left by a run that died while making it', () => {
    for (const text of ['', '{"pi', '{"pid":12,"host":"ben']) {
      writeFileSync(join(parent(), '.head.lock'), text)
      const lock = taken(2, [1])
      expect(lock.afterDeath).toBe(true)
      lock.release()
    }
  })

  it('a file of its name that is no lock is somebody’s own, and stays', () => {
    for (const text of ['my keys', '{ }', '"x"', '{"pid":-1,"host":"bench","at":0,"birth":""}']) {
      for (const name of ['.head.lock', '.head.lock.2']) {
        writeFileSync(join(parent(), name), text)
        expect(problemsOf(take(2, [1, -1]))).toMatchObject([
          { code: 'target-not-ours', where: { file: name }, found: 'something in the way of writing head' },
        ])
        expect(readdirSync(parent())).toEqual([name])
        expect(readFileSync(join(parent(), name), 'utf8')).toBe(text)
        rmSync(join(parent(), name))
      }
    }
  })

  it('two runs that begin at the same moment do not both get it', () => {
    // The rival writes its lock just after the first look, or just after this run wrote its own.
    for (const moment of ['before', 'after'] as const) {
      rmSync(join(parent(), '.head.lock'), { force: true })
      rmSync(join(parent(), '.head.lock.2'), { force: true })
      const rival = JSON.stringify(fakeProcess(7).self())
      const disk: Disk = {
        ...systemDisk,
        createFile: (path, content) => {
          if (moment === 'before') writeFileSync(join(parent(), '.head.lock'), rival)
          systemDisk.createFile(path, content)
          if (moment === 'after') writeFileSync(join(parent(), '.head.lock.2'), rival)
        },
      }
      expect(problemsOf(take(2, [7], disk))[0]?.found).toContain('process 7')
      const left = moment === 'before' ? '.head.lock' : '.head.lock.2'
      expect(readdirSync(parent())).toEqual([left])
      expect(readFileSync(join(parent(), left), 'utf8')).toBe(rival)
    }
  })

  it('a run whose own lock was taken for a dead one gives up', () => {
    const disk: Disk = {
      ...systemDisk,
      createFile: (path, content) => {
        systemDisk.createFile(path, content)
        rmSync(path)
      },
    }
    expect(problemsOf(take(2, [], disk))[0]?.code).toBe('target-busy')
    expect(readdirSync(parent())).toEqual([])
  })

  it('a lock that cannot be read is nobody’s to pass by', () => {
    const disk: Disk = {
      ...systemDisk,
      read: (path) => {
        if (path.endsWith('.lock')) throw systemError('EACCES')
        return systemDisk.read(path)
      },
    }
    expect(problemsOf(take(2, [], disk))[0]?.code).toBe('not-writable')
    expect(readdirSync(parent())).toEqual([])
    mkdirSync(join(parent(), '.head.lock'))
    expect(problemsOf(take(2, []))[0]?.code).toBe('not-writable')
  })
})

describe('a process that holds a lock', () => {
  const self = systemProcesses.self()

  it('is known to run while it does', () => {
    expect(self).toMatchObject({ pid: process.pid, host: hostname() })
    expect(systemProcesses.isRunning(self)).toBe(true)
  })

  it('is gone when its number is, or when another process has that number', () => {
    // Above the largest number that a system gives.
    expect(systemProcesses.isRunning({ ...self, pid: 2 ** 30 })).toBe(false)
    expect(systemProcesses.isRunning({ ...self, birth: `${self.birth}0` })).toBe(self.birth === '')
  })

  it('is judged by the start of the computer where the system gives processes no start mark', () => {
    expect(systemProcesses.isRunning({ ...self, birth: '' })).toBe(true)
    expect(systemProcesses.isRunning({ ...self, birth: '', at: 0 })).toBe(false)
  })

  it('on another computer cannot be asked, so it counts as running', () => {
    expect(systemProcesses.isRunning({ ...self, host: `not-${hostname()}`, pid: 2 ** 30 })).toBe(true)
  })
})

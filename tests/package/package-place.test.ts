import { join, parse, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { packagePlace } from '../../src/package/package-place.ts'

const cwd = resolve('/jobs/heads')
const place = (named: string) => {
  const result = packagePlace(cwd, named)
  if (!result.ok) throw new Error(result.problems[0]?.found)
  return result.value
}
const refused = (named: string) => {
  const result = packagePlace(cwd, named)
  return result.ok ? undefined : result.problems[0]
}

describe('where a package goes', () => {
  it('is taken from the current folder, its working names beside it', () => {
    expect(place('out/head/')).toMatchObject({
      parent: join(cwd, 'out'),
      target: join(cwd, 'out', 'head'),
      writing: join(cwd, 'out', '.head.writing'),
      before: join(cwd, 'out', '.head.before'),
    })
    expect(place('../head').target).toBe(resolve('/jobs/head'))
    expect(place(resolve('/other/head')).target).toBe(resolve('/other/head'))
  })

  it('names what lies beside it as the user would', () => {
    const shown = (named: string) => place(named).show(place(named).before)
    expect(shown('head')).toBe('.head.before')
    expect(shown('out/head')).toBe(join('out', '.head.before'))
    expect(shown('../head')).toBe(join('..', '.head.before'))
    expect(shown(resolve('/other/head'))).toBe(resolve('/other/.head.before'))
  })

  it('is never the current folder, one above it, or the top of a disk', () => {
    expect(refused('.')).toMatchObject({ code: 'target-not-ours', found: 'the current folder' })
    expect(refused('..')?.found).toBe('a folder above this one')
    expect(refused('out/../..')?.found).toBe('a folder above this one')
    expect(refused(parse(cwd).root)?.found).toBe('the top of a disk')
    expect(refused('..head')).toBeUndefined()
  })
})

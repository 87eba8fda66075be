import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import type { CommonParameters, Design } from '../../../src/families/family.ts'
import { flyCutterHead } from '../../../src/families/fly-cutter-head/family.ts'
import type { ReadDesign } from '../../../src/families/read-design.ts'
import { solidFiles } from '../../../src/package/solid-files.ts'
import { solidsJob } from '../../../src/package/solids-job.ts'
import { forRandomHeads } from '../../families/random-heads.ts'
import { admeshFaults } from '../admesh.ts'
import { needs } from '../installed.ts'

const heads = Number(process.env.HEADS ?? 12)

it('admesh (Debian admesh) finds no fault in any STL of random heads, all in place and the mock-up with them', (test) => {
  needs(test, 'admesh')
  const folder = mkdtempSync(join(tmpdir(), 'stl-'))
  try {
    forRandomHeads(heads, (design) => {
      const read = { family: flyCutterHead, design } as unknown as ReadDesign<CommonParameters, Design>
      const files = solidFiles(solidsJob(read, 'a1b2c3d4'))
      if (!files.ok) throw new Error(JSON.stringify(files.problems))
      const solids = [...files.value].filter(([name]) => name.endsWith('.stl'))
      expect(solids.map(([name]) => name)).toEqual(expect.arrayContaining(['body.stl', 'assembly.stl', 'mock-up.stl']))
      for (const [name, bytes] of solids) {
        writeFileSync(join(folder, name), bytes)
        expect(admeshFaults(join(folder, name)), name).toEqual([])
      }
    })
  } finally {
    rmSync(folder, { recursive: true })
  }
})

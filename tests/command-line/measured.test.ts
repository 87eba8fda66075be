import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { headFile, typed } from './workshop.ts'

const folder = temporaryFolder()

it('a size beyond its limits is told with them: a spigot is turned to the bore as measured, not to the nominal size', async () => {
  headFile(folder())
  const values = 'body:\n  bore.diameter: 20.014\narbor:\n  spigot.diameter: 20.005\n'
  writeFileSync(join(folder(), 'values.yaml'), values)
  const { exit, out } = await typed(folder(), ['measured', 'head.yaml', 'values.yaml', '--any-revision'])
  expect(exit).toBe(1)
  expect(out).toContain('  arbor spigot.diameter: too small, 20.005 mm for 20.039 to 20.05\n')
})

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { families } from '../../src/families/families.ts'
import { shapeOf } from '../../src/input/schema-tree.ts'
import { projectRoot } from '../package/spawned.ts'
import { typed } from './workshop.ts'

interface Schema {
  readonly type?: string
  readonly properties?: Record<string, Schema>
  readonly required?: string[]
  readonly additionalProperties?: boolean
  readonly anyOf?: Schema[]
  readonly oneOf?: Schema[]
  readonly description?: string
}

async function printed(...args: string[]): Promise<Schema & { title: string; $schema: string }> {
  const { exit, out, err } = await typed('/', ['schema', 'fly-cutter-head', ...args])
  expect({ exit, err }).toEqual({ exit: 0, err: '' })
  return JSON.parse(out)
}

describe('the schema that is printed', () => {
  it('has every section of the parameter set, with what must be there and nothing else allowed', async () => {
    const schema = await printed()
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#')
    const shape = shapeOf(families[0]!.schema('mm'))
    expect(Object.keys(schema.properties ?? {})).toEqual(Object.keys(shape ?? {}))
    expect(schema.additionalProperties).toBe(false)
    expect(schema.required).toEqual(expect.arrayContaining(['family', 'title', 'units', 'rotation', 'stock', 'bit']))
    expect(schema.required).not.toContain('settings')
  })

  it('says in which unit a bare number is', async () => {
    const depth = (schema: Schema) => schema.properties?.face?.properties?.['depth-on-axis']?.description
    expect(depth(await printed())).toContain('A bare number is in mm.')
    expect(depth(await printed('--units', 'in'))).toContain('A bare number is in in.')
    expect((await printed('--units', 'in')).title).toBe('fly-cutter-head, bare lengths in in')
  })

  it.each(['parameters.yaml', 'parameters-inch.yaml'])('knows every key that %s writes', async (name) => {
    const schema = await printed()
    const unknown: string[] = []
    const walk = (value: unknown, here: Schema | undefined, path: string) => {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return
      const branches = [here, ...(here?.anyOf ?? []), ...(here?.oneOf ?? [])]
      for (const [key, inner] of Object.entries(value)) {
        const found = branches.map((branch) => branch?.properties?.[key]).find((branch) => branch !== undefined)
        if (found === undefined) unknown.push(`${path}${key}`)
        else walk(inner, found, `${path}${key}.`)
      }
    }
    walk(parse(readFileSync(join(projectRoot, 'templates', 'fly-cutter-head', name), 'utf8')), schema, '')
    expect(unknown).toEqual([])
  })
})

import { families } from '../families/families.ts'
import type { AnyFamily } from '../families/family.ts'
import { nearest } from '../input/nearest.ts'
import type { Result } from '../input/problem.ts'
import type { Option } from './command.ts'

export const familyOperand = { name: 'FAMILY', says: `the kind of tool: ${families.map((f) => f.name).join(', ')}` }

export const unitsOption: Option = {
  name: '--units',
  value: 'mm|in',
  choices: ['mm', 'in'],
  says: 'unit of bare lengths; mm unless given',
}

/** The family of that name. */
export function chosenFamily(name: string): Result<AnyFamily> {
  const family = families.find((f) => f.name === name)
  if (family !== undefined) return { ok: true, value: family }
  const names = families.map((f) => f.name)
  const near = nearest(name, names)
  return {
    ok: false,
    problems: [
      {
        code: 'unknown-choice',
        where: { file: '(command line)', path: 'FAMILY' },
        found: name,
        allowed: names.join(', '),
        ...(near !== undefined && { remedy: `did you mean ${near}?` }),
      },
    ],
  }
}

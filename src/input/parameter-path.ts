import { own } from './schema-tree.ts'

/** The value at a dotted path, `screws.count` or `bits.0.width`; undefined where there is none. */
export function readParameter(value: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((here, step) => own(here, step), value)
}

/**
 * A copy of the parameter set in which one value is another; what is not on the path is shared, nothing is changed
 * in place. Sections that are missing on the way are made. Throws RangeError where the path goes through a plain
 * value or to an item a list does not have.
 */
export function withParameter<Value>(value: Value, path: string, newValue: unknown): Value {
  return replaced(value, path.split('.'), newValue, path) as Value
}

function replaced(here: unknown, steps: readonly string[], newValue: unknown, path: string): unknown {
  const [step, ...rest] = steps
  if (step === undefined) return newValue
  if (Array.isArray(here)) {
    const index = Number(step)
    if (!Number.isInteger(index) || index < 0 || index >= here.length) throw new RangeError(`no item at ${path}`)
    return here.with(index, replaced(here[index], rest, newValue, path))
  }
  if (here !== undefined && (typeof here !== 'object' || here === null)) throw new RangeError(`no section at ${path}`)
  // A computed key makes an own property whatever its name, where an assignment to `__proto__` would not.
  return { ...here, [step]: replaced(own(here, step), rest, newValue, path) }
}

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Operation, operation } from '../../src/route/operation.ts'
import { ordered } from '../../src/route/order.ts'

const step = (id: string, needs: readonly string[] = []): Operation =>
  operation({ id, title: id, setUp: 'bench', machine: 'bench', steps: [], why: '', needs })

const ids = (operations: readonly Operation[]) => operations.map((o) => o.id)

describe('the order of operations', () => {
  it('is the order given, where nothing in it needs what comes later', () => {
    expect(ids(ordered([step('saw'), step('face', ['saw']), step('measure')]))).toEqual(['saw', 'face', 'measure'])
  })

  it('brings forward what is needed, and puts off only what needs it', () => {
    expect(ids(ordered([step('face'), step('join', ['turn']), step('slot'), step('turn')]))).toEqual([
      'face',
      'slot',
      'turn',
      'join',
    ])
  })

  it('puts every operation after all that it needs, once each, whatever the list', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.nat(20), { maxLength: 4 }), { maxLength: 20 }), fc.gen(), (needs, gen) => {
        // Needs of earlier ones only, so that there is no ring; then shuffled.
        const steps = needs.map((of, i) => step(`${i}`, of.filter((n) => n < i).map(String)))
        const shuffled = steps
          .map((s) => ({ s, at: gen(fc.double, { noNaN: true }) }))
          .sort((a, b) => a.at - b.at)
          .map(({ s }) => s)
        const out = ids(ordered(shuffled))
        expect(out.toSorted()).toEqual(ids(steps).toSorted())
        for (const { id, needs: before } of steps) {
          for (const need of before) expect(out.indexOf(need)).toBeLessThan(out.indexOf(id))
        }
      }),
      { numRuns: 200, seed: 1 },
    )
  })

  it('is a defect where operations wait for each other, need what is not there, or share an id', () => {
    expect(() => ordered([step('a', ['b']), step('b', ['a']), step('c')])).toThrow('wait for each other: a, b')
    expect(() => ordered([step('a', ['x'])])).toThrow('needs x')
    expect(() => ordered([step('a'), step('a')])).toThrow('one id')
  })
})

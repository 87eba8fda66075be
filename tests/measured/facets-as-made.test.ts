import { describe, expect, it } from 'vitest'
import { facetAngles } from '../../src/families/fly-cutter-head/bit.ts'
import { headAsMade } from '../../src/families/fly-cutter-head/making/as-made.ts'
import { headMeasuring } from '../../src/families/fly-cutter-head/making/measuring.ts'
import { headFrom } from '../families/random-heads.ts'

const deg = Math.PI / 180
const given = headFrom('parameters')
const workedOut = headFrom('parameters', [/ {2}facets:\n( {4}.*\n)+/, '  grind: for-work-material\n'])

function made(design: typeof given, sizes: readonly (readonly [string, number])[]) {
  const head = headAsMade(design, new Map(sizes.map(([id, value]) => [`bit bit.${id}`, value])))
  if (!head.ok) throw new Error(JSON.stringify(head.problems))
  return head.value
}

describe('a bit as it was ground', () => {
  it('asks for every angle that leans, with a protractor, and for the nose', () => {
    const asked = headMeasuring(given).filter(({ part }) => part === 'bit')
    const angles = asked.filter(({ dimension }) => dimension.kind === 'angle')
    expect(angles.map(({ dimension }) => dimension.id)).toEqual([
      'bit.rake-along',
      'bit.rake-across',
      'bit.end-relief',
      'bit.work-side-relief',
    ])
    for (const { how } of angles) expect(how).toContain('protractor')
    expect(asked.find(({ dimension }) => dimension.id === 'bit.nose-radius')?.dimension.value).toBe(0.8)
  })

  it.each([
    ['given', given],
    ['worked out for the work', workedOut],
  ] as const)('takes measured angles in the place of those that were %s, and keeps the others', (_, design) => {
    const { facets } = design.layout.bit
    const head = made(design, [
      ['end-relief', 12 * deg],
      ['nose-radius', 0.6],
      ['ground-length', 5],
    ])
    expect(head.layout.bit.facets).toEqual({ ...facets, endRelief: 12 * deg })
    expect(head.layout.bit.groundLength).toBe(5)
    expect(head.parameters.bit['nose-radius']).toBe(0.6)
    expect(head.layout.bit.inUse.radialRelief).toBeGreaterThan(design.layout.bit.inUse.radialRelief)
  })

  it('keeps facets that nobody measured as they were', () => {
    for (const design of [given, workedOut]) {
      const head = made(design, [['ground-length', 5]])
      expect(head.layout.bit.facets).toEqual(design.layout.bit.facets)
      expect(head.layout.bit.groundLength).toBe(5)
    }
  })

  it('reads back every angle of the drawing: as designed where it was met', () => {
    const { facets } = given.layout.bit
    const all = facetAngles.flatMap(({ id, facet }) => (facets[facet] === 0 ? [] : [[id, facets[facet]] as const]))
    expect(made(given, all).layout.bit.inUse).toEqual(given.layout.bit.inUse)
  })
})

import type { Shape3D } from 'replicad'
import { describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { chordTolerance, libraryHead } from './library-head.ts'
import { exactly, finely } from './measure.ts'
import { type NamedSet, parameterSets, templates } from './parameter-sets.ts'
import { rawHead } from './raw-head.ts'
import type { RawSet } from './raw-set.ts'
import { farthestStray, straysBetween } from './skin-contract.ts'
import { apart, withManifolds } from './triangles.ts'

type Head = ReturnType<typeof libraryHead>

function expectSameMass(shape: Shape3D, head: Head, id: string) {
  const exact = exactly(shape)
  const { volume, centroid } = head.volume(id)
  expect(exact.solids).toBe(1)
  expect(Math.abs(volume / exact.volume - 1), `volume of ${id}`).toBeLessThan(1e-4)
  expect(Math.hypot(...centroid.map((v, i) => v - exact.centroid[i]!)), `centroid of ${id}`).toBeLessThan(0.01)
}

function expectSameSkin(shape: Shape3D, head: Head, id: string) {
  const [made, fine] = [head.mesh(id), finely(shape)]
  const { made: madeStray, exact: exactStray } = straysBetween(made, fine, shape)
  expect(madeStray, `${id} from the judge's`).toBeLessThan(farthestStray)
  expect(exactStray, `the judge's from ${id}`).toBeLessThan(farthestStray)
  withManifolds([made, fine], (one, other) => {
    expect(one!.status()).toBe('NoError')
    expect(one!.genus()).toBe(other!.genus())
    expect(apart(one!, other!), `${id} apart`).toBeLessThanOrEqual(chordTolerance)
  })
}

// The first 28 sets hold every arbor four times: for the rest the mass will do.
const wholly = new Set([...parameterSets.slice(0, 28), ...templates])

describe.each([...parameterSets, ...templates])('$name', (set) => {
  const raw = rawHead(set.text)
  const head = libraryHead(set)

  it('has a body, an arbor, a bit and its screws', () => {
    const screws = Array.from({ length: raw.figures.screws.count }, (_, i) => `screw-${i + 1}`)
    expect(head.ids.toSorted()).toEqual(['arbor', 'bit', 'body', ...screws])
  })
  it('has the right arbor', () => {
    const arbor = raw.arbor()
    expectSameMass(arbor, head, 'arbor')
    if (wholly.has(set)) expectSameSkin(arbor, head, 'arbor')
  })
  it('has the right screws in place', () => {
    const screws = raw.screws()
    for (const [i, screw] of screws.entries()) expectSameMass(screw, head, `screw-${i + 1}`)
    expectSameSkin(screws.at(-1)!, head, `screw-${screws.length}`)
  })
  it('puts the screws on the side that its step names', () => {
    // The motion of the bit at its own place: Z × r, the other way round when clockwise.
    const [screw, bit] = [head.volume('screw-1').centroid, head.volume('bit').centroid]
    const anticlockwise = [-bit[1], bit[0]] as const
    const ahead = (screw[1] - bit[1]) * Math.sign(anticlockwise[1]) * (/^rotation: clockwise/m.test(set.text) ? -1 : 1)
    expect(Math.sign(ahead)).toBe(/^ +side: trailing/m.test(set.text) ? -1 : 1)
  })
})

/** Angles along, across, edge, relief, work-side edge and relief, degrees: what is left out stands at 0. */
const grinds = [
  { 'rake-along': '12 deg', 'rake-across': '-8 deg', 'end-relief': '9 deg', 'work-side-relief': '7 deg' },
  { 'end-edge-angle': '25 deg', 'end-relief': '14 deg', 'work-side-edge-angle': '6 deg', 'work-side-relief': '11 deg' },
  { 'rake-along': '-5 deg', 'rake-across': '20 deg', 'end-relief': '4 deg', 'work-side-relief': '-2 deg' },
] as const
/** Square sets ground in these ways, the facets to their own length and to the usual one. */
const groundSets = parameterSets.slice(0, 12).map(({ name, text }, i): NamedSet => {
  const set = parse(text) as RawSet
  const facets = { ...grinds[i % 3]!, ...(i % 2 === 0 && { length: `${4 + i} mm` }) }
  const off = { leading: '1.6 mm', end: '0.9 mm', underside: '1.2 mm' }
  return { name: `${name}, ground`, text: stringify({ ...set, bit: { ...set.bit, 'ground-off': off, facets } }) }
})

describe.each([...parameterSets, ...groundSets, ...templates])('$name', (set) => {
  it('has the right bit in place', () => {
    const [bit, head] = [rawHead(set.text).bit(), libraryHead(set)]
    expectSameMass(bit, head, 'bit')
    expectSameSkin(bit, head, 'bit')
  })
})

describe.each(templates)('the template $name', (set) => {
  it('has a ground bit', () => {
    expect(rawHead(set.text).figures.bit.ground).toBe(true)
  })
  it('has the right body', () => {
    const [body, head] = [rawHead(set.text).body(), libraryHead(set)]
    expectSameMass(body, head, 'body')
    expectSameSkin(body, head, 'body')
  })
})

describe('overhang and swing', () => {
  const ground = parameterSets.map(({ name, text }, i): NamedSet => {
    const set = parse(text) as RawSet
    const off = { leading: `${i % 4} mm`, end: `${(i % 3) / 2} mm`, underside: `${(i % 5) / 10} mm` }
    return { name, text: stringify({ ...set, bit: { ...set.bit, 'ground-off': off } }) }
  })
  it.each([...parameterSets, ...ground, ...templates])('$name', (set) => {
    const { figures, tip } = rawHead(set.text)
    const { overhang, swing } = libraryHead(set)
    expect(swing / 2).toBeCloseTo(tip().radius, 9)
    expect(overhang).toBeCloseTo(tip().x - figures.corner, 9)
  })
})

import type { Manifold } from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { chirality } from './chirality.ts'
import { chordTolerance, libraryHead } from './library-head.ts'
import { exactly, finely } from './measure.ts'
import type { NamedSet } from './parameter-sets.ts'
import { rawHead } from './raw-head.ts'
import { farthestStray, straysBetween } from './skin-contract.ts'
import { apart, mirroredInY, withManifolds } from './triangles.ts'

/**
 * Below this the two meshes of one body no longer agree on the sign: measured, chords of 0.02 mm move the figure by up
 * to 3.1e-5. Such a head is all but its own mirror image, and only the difference in volume tells its hand.
 */
const undecided = 1e-4

/** Every claim that the B-rep judge makes on the body of a head, and that the chirality is decided for `handed` sets. */
export function describeBodies(sets: readonly NamedSet[], handed: number) {
  /** Names of sets on which the B-rep kernel itself fails: one in each half of the sets is borne, none is known. */
  const judgeErrors: string[] = []
  let decided = 0

  describe.each(sets.map((set, i) => ({ ...set, i })))('$name', ({ i, ...set }) => {
    const judge = once(() => judgeBody(set))
    const library = once(() => compareBodies(set, judge()))
    it('is one sound solid for the judge', () => {
      const { solids, volume, fineVolume } = judge()
      if (solids !== 1 || Math.abs(fineVolume / volume - 1) > 1e-4) judgeErrors.push(set.name)
      expect(judgeErrors.length, judgeErrors.join('; ')).toBeLessThanOrEqual(1)
    })
    it('differs by less than the chord tolerance', () => {
      expect(library().apart).toBeLessThanOrEqual(chordTolerance)
    })
    it('nowhere strays from the true skin', () => {
      const { strays } = library()
      expect(strays.made, 'library from judge').toBeLessThan(farthestStray)
      expect(strays.exact, 'judge from library').toBeLessThan(farthestStray)
    })
    it('reports the volume', () => {
      expect(Math.abs(library().volume / judge().volume - 1)).toBeLessThan(1e-4)
    })
    it('reports the centroid', () => {
      expect(distance(library().centroid, judge().centroid)).toBeLessThan(0.01)
    })
    it('has a mesh in one piece with as many handles', () => {
      expect(library()).toMatchObject({ status: 'NoError', pieces: 1, genus: judge().genus })
    })
    it('has the right hand in its STL', () => {
      const [made, right] = [library().chirality, judge().chirality]
      if (Math.abs(right) >= undecided) decided++
      // With a sign that is decided this keeps the sign as well.
      expect(Math.abs(made - right)).toBeLessThan(undecided / 2)
    })
    // Both hands are judged outright by the tests above, so every second set will do.
    if (i % 2 === 1) return
    it('is mirrored by the other hand', () => {
      const mirrored = mirroredInY(libraryHead(withOtherHand(set)).mesh('body'))
      const { made, exact } = straysBetween(mirrored, judge().fine, judge().body, 300)
      expect(made, 'library from judge').toBeLessThan(farthestStray)
      expect(exact, 'judge from library').toBeLessThan(farthestStray)
    })
  })

  it(`the hand shows in the STL of at least ${handed} bodies`, () => {
    expect(decided).toBeGreaterThanOrEqual(handed)
  })
}

/** What the judge makes of a set, measured on its own. */
function judgeBody({ text }: NamedSet) {
  const body = rawHead(text).body()
  const fine = finely(body)
  const measured = withManifolds([fine], (solid) => ({ fineVolume: solid!.volume(), genus: solid!.genus() }))
  return { body, fine, ...measured, ...exactly(body), chirality: chirality(fine) }
}

/** What the library makes of it, beside the judge's. */
function compareBodies(set: NamedSet, { body, fine }: ReturnType<typeof judgeBody>) {
  const head = libraryHead(set)
  const mesh = head.mesh('body')
  return withManifolds([mesh, fine], (made, judged) => ({
    ...head.volume('body'),
    status: made!.status(),
    genus: made!.genus(),
    pieces: pieces(made!),
    chirality: chirality(head.stl('body')),
    apart: apart(made!, judged!),
    strays: straysBetween(mesh, fine, body),
  }))
}

function pieces(solid: Manifold): number {
  const parts = solid.decompose()
  for (const part of parts) part.delete()
  return parts.length
}

const withOtherHand = ({ name, text }: NamedSet): NamedSet => ({
  name: `${name}, other hand`,
  text: text.replace(/^rotation: (\w+)/m, (_, hand) =>
    hand === 'clockwise' ? 'rotation: anticlockwise' : 'rotation: clockwise',
  ),
})

const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((v, i) => v - b[i]!))

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined
  return () => {
    done ??= { value: work() }
    return done.value
  }
}

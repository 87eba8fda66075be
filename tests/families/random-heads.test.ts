import type { ManifoldToplevel } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Change, changesOf, type Finding, type Remedy } from '../../src/checks/finding.ts'
import { findingsOf } from '../../src/checks/rule.ts'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { judged, remedied } from '../../src/families/variants.ts'
import { figuresOf } from '../../src/figures/figure.ts'
import { readParameter } from '../../src/input/parameter-path.ts'
import type { Result } from '../../src/input/problem.ts'
import { solidOf } from '../../src/part/part.ts'
import { Walls } from '../../src/part/wall.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { stlOf } from '../../src/solid/stl.ts'
import { kernelSolid, loadKernel } from '../part/manifold-cell.ts'
import { forRandomHeads, tables } from './random-heads.ts'

let kernel: ManifoldToplevel
beforeAll(async () => {
  kernel = await loadKernel()
})

describe('any head that can be laid out', () => {
  it('is made of closed manifold solids of the right volume', () => {
    forRandomHeads(24, (design) => {
      for (const { part } of design.scene.parts) {
        const { volume } = design.volume(part.id)
        if (volume < 1) continue
        const mesh = meshOf(solidOf(part), 0.02, part.id)
        expect(mesh).toMatchObject({ ok: true })
        if (!mesh.ok) return
        const solid = kernelSolid(kernel, mesh.value)
        expect(solid.status()).toBe('NoError')
        expect(Math.abs(solid.volume() - volume)).toBeLessThan(0.02 * solid.surfaceArea())
        expect(stlOf([mesh.value], part.id).ok).toBe(true)
        solid.delete()
      }
    })
  })

  it('mirrored to the other hand has the mirrored solid, the same walls and the same findings', () => {
    forRandomHeads(24, (design) => {
      const p = design.parameters
      const other = HeadDesign.from(
        {
          ...p,
          rotation: p.rotation === 'clockwise' ? 'anticlockwise' : 'clockwise',
          machine: { ...p.machine, reverse: true },
        },
        tables,
      )
      const self = HeadDesign.from({ ...p, machine: { ...p.machine, reverse: true } }, tables)
      if (!other.ok || !self.ok) throw new Error('a mirrored head must be a head')
      const [a, b] = [self.value, other.value]
      expect(b.swing).toBeCloseTo(a.swing, 9)
      expect(b.sweptRadius).toBeCloseTo(a.sweptRadius, 7)
      const [va, vb] = [a.volume('body'), b.volume('body')]
      expect(vb.volume).toBeCloseTo(va.volume, 3)
      expect(vb.centroid[1]).toBeCloseTo(-va.centroid[1], 4)
      expect(vb.centroid[0]).toBeCloseTo(va.centroid[0], 4)
      const walls = (d: HeadDesign) => d.walls.all().map((w) => [w.between.join('/'), w.distance] as const)
      walls(a).forEach(([name, distance], i) => {
        expect(walls(b)[i]![0]).toBe(name)
        expect(walls(b)[i]![1]).toBeCloseTo(distance, 6)
      })
      const ids = (d: HeadDesign) => findingsOf(flyCutterHead.rules, d).map((f) => `${f.level} ${f.id}`)
      expect(ids(b)).toEqual(ids(a))
    })
  })

  it('has the same thin walls whether they are measured or only asked for up to a limit', () => {
    forRandomHeads(30, (design) => {
      const body = design.part('body')
      const measured = new Walls(body)
      for (const limit of [0.5, 3, 12]) {
        const asked = new Walls(body)
        for (const [a, b] of measured.pairs()) {
          const wall = measured.between(a, b)
          const thin = wall !== undefined && wall.distance < limit
          expect(asked.thinnerThan(a, b, limit)?.distance ?? 'thicker', `${a}/${b} ${limit}`).toEqual(
            thin ? expect.closeTo(wall.distance, 5) : 'thicker',
          )
        }
      }
    })
  })

  it('yields finite figures and findings with finite numbers', () => {
    forRandomHeads(60, (design) => {
      for (const figure of figuresOf(flyCutterHead.figures, design)) expect(Number.isFinite(figure.value)).toBe(true)
      for (const finding of findingsOf(flyCutterHead.rules, design)) {
        expect(finding.text).not.toMatch(/NaN|undefined|Infinity|null/)
        if (finding.figure) expect(Number.isFinite(finding.figure.value)).toBe(true)
        if (finding.limit) expect(Number.isFinite(finding.limit.value)).toBe(true)
      }
    })
  })

  it('has remedies that clear their finding, bring no stop, and half of which would not do', () => {
    let [halved, impossible, whole, remedies] = [0, 0, 0, 0]
    forRandomHeads(20, (design) => {
      const findings = judged(flyCutterHead, design, true)
      const stops = new Set(findings.filter((f) => f.level === 'stop').map((f) => f.id))
      const brings = (after: readonly Finding[]) => after.find((f) => f.level === 'stop' && !stops.has(f.id))?.id
      for (const { id, remedy } of findings) {
        if (!remedy) continue
        remedies++
        const after = found(remedied(flyCutterHead, design, remedy))!
        expect(after.map((f) => f.id)).not.toContain(id)
        expect(brings(after), `${id}: ${remedy.text}`).toBeUndefined()
        const half = halfOf(design, remedy)
        if (!half) {
          whole++
          continue
        }
        const short = found(remedied(flyCutterHead, design, half))
        // A half-way value that makes no head at all does not clear anything either.
        if (!short) impossible++
        else {
          halved++
          const does = !short.some((f) => f.id === id) && brings(short) === undefined
          expect(does, `half of: ${remedy.text}, for ${id}`).toBe(false)
        }
      }
    })
    // Words and numbers of screws have no half; every other remedy was halved, and hardly one made no head.
    expect(halved + impossible + whole).toBe(remedies)
    expect(halved).toBeGreaterThan(200)
    expect(impossible).toBeLessThan(5)
  })
})

const found = (built: Result<HeadDesign>) => (built.ok ? findingsOf(flyCutterHead.rules, built.value) : undefined)

/** Half of what a remedy changes; undefined for words, and for whole numbers, which have no half. */
function halfOf(design: HeadDesign, remedy: Remedy): Remedy | undefined {
  const filled = flyCutterHead.filledIn(design)
  const half = ({ path, to }: Change) => {
    const now = readParameter(design.parameters, path) ?? readParameter(filled, path)
    return typeof to === 'number' && typeof now === 'number' && path !== 'screws.count'
      ? { path, to: (now + to) / 2 }
      : undefined
  }
  const changes = changesOf(remedy).map(half)
  const [first, ...also] = changes.filter((change) => change !== undefined)
  return first && also.length + 1 === changes.length ? { ...first, also, text: '' } : undefined
}

import { describe, expect, it } from 'vitest'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { anglesOf, groundBitOf } from '../../src/families/fly-cutter-head/engineering/angles.ts'
import { cellVertices } from '../../src/geometry/cell-vertices.ts'
import { pointFrom } from '../../src/geometry/frame.ts'
import { distance, type Vec3 } from '../../src/geometry/vector.ts'
import { anglesInUse } from '../../src/mechanics/angles/angles-in-use.ts'
import { sweptRadius } from '../../src/mechanics/angles/swept-radius.ts'
import { tipOf } from '../../src/mechanics/angles/tip-setting.ts'
import { middleOf, suitableAngles } from '../../src/mechanics/angles/wanted-angles.ts'
import { forRandomHeads, headFrom, tables } from './random-heads.ts'

/** The same head with the bit ground for its work, for either hand; undefined where it cannot be ground so. */
function groundForWork({ parameters: p }: HeadDesign, rotation: 'clockwise' | 'anticlockwise') {
  const { facets: _, ...bit } = p.bit
  const built = HeadDesign.from(
    { ...p, rotation, bit: { ...bit, grind: 'for-work-material' }, machine: { ...p.machine, reverse: true } },
    tables,
  )
  return built.ok ? built.value : undefined
}

const cornersOfPart = (design: HeadDesign): Vec3[] =>
  design.part('bit').stock.flatMap(({ cells }) => cells.flatMap(cellVertices))

function cornersOfMechanics(design: HeadDesign): Vec3[] {
  const { tip, head, tail } = groundBitOf(design)
  const bare = design.part('bit').stock[0]!.cells.length === 1
  return [...head.corners, ...(tail?.corners ?? [])]
    .filter(({ between }) => !(bare && tail && between.includes('end of grinding')))
    .map(({ at }) => pointFrom(tip.bit, at))
}

function expectTheSame(one: readonly Vec3[], other: readonly Vec3[]) {
  const missing = (from: readonly Vec3[], list: readonly Vec3[]) =>
    from.filter((p) => !list.some((q) => distance(p, q) < 2e-6))
  expect(missing(one, other)).toEqual([])
  expect(missing(other, one)).toEqual([])
}

describe('the bit of the part model and the bit of the mechanics', () => {
  it('have the same corners, ground or not', () => {
    forRandomHeads(60, (design) => expectTheSame(cornersOfPart(design), cornersOfMechanics(design)))
  })

  it('have the same corners when ground for the work, for either hand', () => {
    let heads = 0
    forRandomHeads(40, (design) => {
      for (const rotation of ['clockwise', 'anticlockwise'] as const) {
        const ground = groundForWork(design, rotation)
        if (!ground) continue
        heads++
        expectTheSame(cornersOfPart(ground), cornersOfMechanics(ground))
      }
    })
    expect(heads).toBeGreaterThan(40)
  })

  it('stand on the same tip: layout and mechanics work it out each for itself', () => {
    forRandomHeads(60, ({ layout: { bit } }) => {
      const tip = tipOf(bit.setting)
      expect(distance(tip.point, bit.tip)).toBeLessThan(1e-9)
      expect(tip.radius).toBeCloseTo(bit.tipRadius, 9)
    })
  })

  it('sweep the same circle, and the tool as a whole no smaller one', () => {
    forRandomHeads(60, (design) => {
      const { radius } = sweptRadius(groundBitOf(design))
      expect(radius).toBeCloseTo(Math.max(...cornersOfPart(design).map(([x, y]) => Math.hypot(x, y))), 6)
      expect(design.sweptRadius).toBeGreaterThan(radius - 1e-6)
    })
  })
})

describe('a bit ground for the work material', () => {
  it('has in use the middle of what the material wants, more relief only where the heel asks for it', () => {
    let exact = 0
    forRandomHeads(40, (design) => {
      const ground = groundForWork(design, 'clockwise')
      const suitable = suitableAngles(design.layout.materials.work)
      if (!ground || !suitable.ok) return
      const wanted = middleOf(suitable.value)
      const inUse = anglesOf(ground)
      // The rake is flat where the wanted one would lie outside the blank by a fraction of a degree.
      if (Math.abs(inUse.radialRake - wanted.radialRake) > 1e-9) return
      exact++
      expect(inUse.axialRake).toBeCloseTo(wanted.axialRake, 9)
      expect(inUse.axialRelief).toBeCloseTo(wanted.axialRelief, 9)
      expect(inUse.radialRelief).toBeGreaterThan(wanted.radialRelief - 1e-9)
    })
    expect(exact).toBeGreaterThan(20)
  })

  it('is filled in, and given back as facets of one’s own it is the same bit', () => {
    const design = groundForWork(headFrom('parameters'), 'clockwise')!
    const { facets } = design.layout.bit
    const again = HeadDesign.from(
      {
        ...design.parameters,
        bit: {
          ...design.parameters.bit,
          grind: 'as-given',
          facets: {
            'rake-along': facets.rakeAlong,
            'rake-across': facets.rakeAcross,
            'end-relief': facets.endRelief,
            'work-side-relief': facets.workSideRelief,
          },
        },
      },
      tables,
    )
    if (!again.ok) throw new Error(JSON.stringify(again.problems))
    expect(again.value.layout.bit.facets).toEqual(facets)
    expectTheSame(cornersOfPart(again.value), cornersOfPart(design))
  })

  it('keeps its underside off the work on a level face too', () => {
    const { parameters } = headFrom('parameters', ['angle: 7 deg', 'angle: 0 deg'])
    const level = HeadDesign.from({ ...parameters, work: { ...parameters.work, material: 'brass' } }, tables)
    if (!level.ok) throw new Error(JSON.stringify(level.problems))
    const ground = groundForWork(level.value, 'clockwise')!
    // Brass wants no rake that would lift the edge: it is the work-side edge itself that is ground off by 1°.
    expect(ground.layout.bit.facets.workSideEdgeAngle).toBeGreaterThan(0)
    expect(anglesOf(ground).minorCuttingEdgeAngle).toBeCloseTo(Math.PI / 180, 3)
  })

  it('mirrored to the other hand has the same angles in use', () => {
    forRandomHeads(20, (design) => {
      const [one, other] = [groundForWork(design, 'clockwise'), groundForWork(design, 'anticlockwise')]
      expect(one === undefined).toBe(other === undefined)
      if (!one || !other) return
      for (const [name, value] of Object.entries(anglesOf(one))) {
        expect(anglesOf(other)[name as keyof ReturnType<typeof anglesOf>]).toBeCloseTo(value, 9)
      }
    })
  })
})

describe('angles in use of a design', () => {
  it('are those of its facets at its setting', () => {
    forRandomHeads(20, (design) => {
      const { facets, setting } = design.layout.bit
      expect(anglesInUse(facets, setting)).toEqual({ ok: true, value: anglesOf(design) })
    })
  })
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type DrillingInput, type DrillPlan, drilling, drillingRules } from '../../../src/mechanics/balance/drilling.ts'
import { staticBalance } from '../../../src/mechanics/balance/static-balance.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: DrillingInput = {
  unbalance: [0.6, -0.2],
  aim: 0.05,
  density: 7850,
  metal: { innerRadius: 12, outerRadius: 23, depth: 20 },
  drills: [5, 6, 7],
  leastWall: 2,
  mostHoles: 5,
  ...drillingRules,
}

const plansOf = (change: Partial<DrillingInput>): readonly DrillPlan[] => {
  const found = workedOut(drilling({ ...input, ...change }))
  if (found.kind !== 'plans') throw new Error(found.kind)
  return found.plans
}

/** Mass, kg, of one hole and its point, from a stack of thin discs: the second road. */
function massDrilled(drill: number, depth: number, pointAngle: number, density: number): number {
  const slices = 20_000
  const end = depth + drill / 2 / Math.tan(pointAngle / 2)
  let volume = 0
  for (let i = 0; i < slices; i++) {
    const down = ((i + 0.5) / slices) * end
    const radius = down <= depth ? drill / 2 : (end - down) * Math.tan(pointAngle / 2)
    volume += (Math.PI * radius ** 2 * end) / slices
  }
  return volume * density * 1e-9
}

it('one hole of 7 on the heavy side, worked by hand', () => {
  // Circle of radius 23 − 2 − 3.5 = 17.5. |U| = 0.63246; 0.58246 has to go: V = 0.58246/(7.85e-6·17.5) = 4239.8 mm³,
  // far more than one hole of at most 15.9 deep can bring (611.9 + 27.0 for the point): several are needed.
  const [plan] = plansOf({ unbalance: [0.09, 0], aim: 0.01, drills: [7] })
  // 0.08/(7.85e-6·17.5) = 582.3 mm³; area 38.4845; point 2.103, a third 0.701: depth 15.131 − 0.701 = 14.43 → 14.5.
  expect(plan).toMatchObject({ drill: 7, holes: 1, radius: 17.5 })
  expect(plan!.depth).toBeCloseTo(14.5, 9)
  expect(plan!.centres[0]![0]).toBeCloseTo(17.5, 9)
  expect(plan!.remains).toBeCloseTo(0.09 - 7.85e-6 * 17.5 * 38.4845 * 15.201, 6)
})

const radial = fc.tuple(
  fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  fc.double({ min: -0.5, max: 0.5, noNaN: true }),
)

it('what a plan promises is what weighing the drilled tool gives', () => {
  fc.assert(
    fc.property(radial, fc.double({ min: 0.02, max: 0.1, noNaN: true }), (unbalance, aim) => {
      const found = workedOut(drilling({ ...input, unbalance, aim }))
      const plans = found.kind === 'plans' ? found.plans : found.kind === 'cannot' ? [found.nearest] : []
      for (const plan of plans) {
        if (plan === undefined) continue
        const mass = massDrilled(plan.drill, plan.depth, input.pointAngle, input.density)
        expect(plan.mass / (plan.holes * mass)).toBeCloseTo(1, 6)
        const after = workedOut(
          staticBalance([
            { mass: 1, centroid: [unbalance[0], unbalance[1], 0] },
            ...plan.centres.map(([x, y]) => ({ mass: -mass, centroid: [x, y, 0] as const })),
          ]),
        )
        expect(after.amount).toBeCloseTo(Math.abs(plan.remains), 6)
        if (found.kind === 'plans') expect(plan.remains).toBeLessThanOrEqual(aim * (1 + 1e-6))
      }
    }),
  )
})

it('holes keep the wall to each other, to the ring and to the bottom, and stay on the heavy side', () => {
  fc.assert(
    fc.property(radial, fc.double({ min: 0.5, max: 3, noNaN: true }), (unbalance, leastWall) => {
      const found = workedOut(drilling({ ...input, unbalance, leastWall }))
      const plans = found.kind === 'plans' ? found.plans : found.kind === 'cannot' ? [found.nearest] : []
      const heavy = Math.atan2(unbalance[1], unbalance[0])
      for (const plan of plans) {
        if (plan === undefined) continue
        const r = plan.drill / 2
        const point = r / Math.tan(input.pointAngle / 2)
        expect(plan.depth + point + leastWall).toBeLessThanOrEqual(input.metal.depth + 1e-9)
        expect(plan.centres.length).toBe(plan.holes)
        for (const [i, [x, y]] of plan.centres.entries()) {
          expect(Math.hypot(x, y) + r + leastWall).toBeLessThanOrEqual(input.metal.outerRadius + 1e-9)
          expect(Math.hypot(x, y) - r - leastWall).toBeGreaterThanOrEqual(input.metal.innerRadius - 1e-9)
          expect(Math.cos(Math.atan2(y, x) - heavy)).toBeGreaterThanOrEqual(Math.cos(input.halfAngle) - 1e-9)
          for (const [u, v] of plan.centres.slice(i + 1)) {
            expect(Math.hypot(x - u, y - v)).toBeGreaterThanOrEqual(plan.drill + leastWall - 1e-9)
          }
        }
      }
    }),
  )
})

it('the fewest holes come first, and one hole fewer would not have done', () => {
  const plans = plansOf({ unbalance: [0.18, 0] })
  expect(plans.map(({ holes }) => holes)).toEqual(plans.map(({ holes }) => holes).toSorted((a, b) => a - b))
  for (const { holes, drill } of plans) {
    if (holes === 1) continue
    const fewer = workedOut(drilling({ ...input, unbalance: [0.18, 0], drills: [drill], mostHoles: holes - 1 }))
    expect(fewer.kind).toBe('cannot')
  }
  expect(plans.some(({ holes }) => holes > 1)).toBe(true)
})

it('what drilling cannot take out is said, with the plan that comes nearest', () => {
  const found = workedOut(drilling(input))
  if (found.kind !== 'cannot') throw new Error(found.kind)
  expect(found.nearest!.removes).toBeGreaterThan(0)
  expect(found.nearest!.remains).toBeGreaterThan(input.aim)
  // No other drill does better at its deepest.
  for (const drill of input.drills) {
    const alone = workedOut(drilling({ ...input, drills: [drill] }))
    if (alone.kind !== 'cannot') throw new Error(alone.kind)
    expect(alone.nearest!.removes).toBeLessThanOrEqual(found.nearest!.removes)
  }
})

it('a ring too narrow, a plate too thin and an empty drawer take no hole', () => {
  const nothing = { kind: 'cannot', nearest: undefined }
  expect(workedOut(drilling({ ...input, metal: { ...input.metal, innerRadius: 15 } }))).toEqual(nothing)
  expect(workedOut(drilling({ ...input, metal: { ...input.metal, depth: 3 } }))).toEqual(nothing)
  expect(workedOut(drilling({ ...input, drills: [] }))).toEqual(nothing)
})

it('a drill whose point alone takes too much is no plan', () => {
  const unbalance = [0.0005, 0] as const
  expect(workedOut(drilling({ ...input, unbalance, aim: 0.0001, depthStep: 0.01, drills: [7] })).kind).toBe('cannot')
  expect(plansOf({ unbalance, aim: 0.0001, depthStep: 0.01, drills: [2, 7] }).map(({ drill }) => drill)).toEqual([2])
})

it('a tool within the aim needs no hole', () => {
  expect(workedOut(drilling({ ...input, aim: 1 }))).toEqual({ kind: 'not-needed' })
})

it('a ring turned inside out is refused', () => {
  const metal = { innerRadius: 20, outerRadius: 20, depth: 0 }
  expect(problemsOf(drilling({ ...input, metal, halfAngle: 2, mostHoles: 0 }))).toEqual([
    ['out-of-range', 'metal.outerRadius'],
    ['out-of-range', 'metal.depth'],
    ['out-of-range', 'mostHoles'],
    ['out-of-range', 'halfAngle'],
  ])
})

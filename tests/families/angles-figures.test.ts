import { describe, expect, it } from 'vitest'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { anglesOf, facetsWantedOf, suitableOf } from '../../src/families/fly-cutter-head/engineering/angles.ts'
import { cuttingOf } from '../../src/families/fly-cutter-head/engineering/cutting.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { figuresOf } from '../../src/figures/figure.ts'
import { tablesOf } from '../../src/figures/table.ts'
import { headFrom, tables } from './random-heads.ts'

type Change = [string | RegExp, string]

const deg = Math.PI / 180
const figures = (...changes: Change[]) => {
  const design = headFrom('parameters', ...changes)
  const all = new Map(figuresOf(flyCutterHead.figures, design).map((f) => [f.id, f]))
  return (id: string) => all.get(id)!.value
}
const table = (design: HeadDesign, id: string) => tablesOf(flyCutterHead.tables, design).find((t) => t.id === id)!

const square: Change[] = [
  [/ {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/, ''],
  ['leading: 0.6', 'leading: 0'],
]
// The demo: hexagon 46 across flats, face 7°, 10 × 10 bit 27 out of the corner, 0.5 proud of the face.
const out = 46 / Math.sqrt(3) + 27 * Math.cos(7 * deg) - 0.5 * Math.sin(7 * deg)

describe('figures of a square bit 2.4 mm ahead of centre', () => {
  const figure = figures(...square)
  const radius = Math.hypot(out, 2.4)
  const lead = Math.asin(2.4 / radius)

  it('radial rake is −asin(e/R), axial rake 0', () => {
    expect(figure('angle.radial-rake')).toBeCloseTo(-lead, 12)
    expect(figure('angle.axial-rake')).toBeCloseTo(0, 12)
    expect(figure('tip.lead')).toBeCloseTo(lead, 12)
  })

  it('its place ahead of centre relieves the end by as much, and takes (e/R)·tan a off the underside', () => {
    expect(figure('angle.radial-relief')).toBeCloseTo(lead, 12)
    expect(Math.tan(figure('angle.axial-relief'))).toBeCloseTo((-2.4 / radius) * Math.tan(7 * deg), 12)
  })

  it('its end edge reaches up t·cos a, and its upper corner at the heel sweeps widest', () => {
    expect(figure('end-edge.reach')).toBeCloseTo(10 * Math.cos(7 * deg), 6)
    const upper = out + 10 * Math.sin(7 * deg)
    expect(figure('swept-diameter.bit')).toBeCloseTo(2 * Math.hypot(upper, 7.6), 6)
    expect(figure('swept-diameter')).toBeCloseTo(figure('swept-diameter.bit'), 6)
  })

  it('its heel wants half the arc from tip to heel as relief', () => {
    const least = (lead + Math.asin(7.6 / radius)) / 2
    expect(figure('least-end-relief.in-use')).toBeCloseTo(least, 12)
    const asGround = Math.atan(Math.cos(7 * deg) * Math.tan(least - lead))
    expect(figure('least-end-relief.as-ground')).toBeCloseTo(asGround, 12)
    // Square underneath, the heel at the height of the tip is the one that counts.
    expect(figure('least-end-relief.exact')).toBeCloseTo(asGround, 3)
  })

  it('its heel stands out by √(x² + 7.6²) − R, 10 mm behind the tip, at the height of the tip', () => {
    expect(figure('heel.end.clearance')).toBeCloseTo(radius - Math.hypot(out, 7.6), 9)
    expect(figure('heel.end.behind')).toBeCloseTo(10, 9)
    expect(figure('heel.end.above')).toBeCloseTo(0, 9)
    expect(figure('heel.end.radius')).toBeCloseTo(Math.hypot(out, 7.6), 9)
    expect(figure('heel.work-side.clearance')).toBeCloseTo(0, 9)
  })
})

describe('figures of a square bit on centre', () => {
  it('edges lie as the face is tilted: κr 90° − a, κr′ a, a right angle between them', () => {
    const figure = figures(...square, [/ahead-of-centre: 2.4/, 'ahead-of-centre: 0'])
    expect(figure('angle.cutting-edge')).toBeCloseTo(83 * deg, 12)
    expect(figure('angle.minor-edge')).toBeCloseTo(7 * deg, 12)
    expect(figure('angle.corner')).toBeCloseTo(90 * deg, 12)
    // A round of 0.8 between two edges at right angles takes 0.8 of each and lifts off by r·(sin + cos − 1) of κr′.
    expect(figure('nose.edge-taken')).toBeCloseTo(0.8, 12)
    expect(figure('nose.lift')).toBeCloseTo(0.8 * (Math.sin(7 * deg) + Math.cos(7 * deg) - 1), 12)
  })
})

describe('figures of the ground demo bit', () => {
  const design = headFrom('parameters')
  const figure = figures()

  it('rakes by ISO 3002: tan γo = tan γp·cos κr + tan γf·sin κr, tan λs = tan γp·sin κr − tan γf·cos κr', () => {
    const [f, p, k] = [figure('angle.radial-rake'), figure('angle.axial-rake'), figure('angle.cutting-edge')]
    expect(Math.tan(figure('angle.orthogonal-rake'))).toBeCloseTo(
      Math.tan(p) * Math.cos(k) + Math.tan(f) * Math.sin(k),
      12,
    )
    expect(Math.tan(figure('angle.inclination'))).toBeCloseTo(Math.tan(p) * Math.sin(k) - Math.tan(f) * Math.cos(k), 12)
  })

  it('are within half a degree of what the table wants for aluminium: 16, 35, 12, 8', () => {
    expect(Math.abs(figure('angle.radial-rake') / deg - 16)).toBeLessThan(0.5)
    expect(Math.abs(figure('angle.axial-rake') / deg - 35)).toBeLessThan(0.5)
    expect(Math.abs(figure('angle.radial-relief') / deg - 12)).toBeLessThan(0.5)
    expect(Math.abs(figure('angle.axial-relief') / deg - 8)).toBeLessThan(0.5)
  })

  it('facets to grind, ground, give the wanted angles to 1e-9 rad', () => {
    const wanted = facetsWantedOf(design)!
    if (!wanted.ok) throw new Error(JSON.stringify(wanted.problems))
    const { parameters } = design
    const built = HeadDesign.from(
      {
        ...parameters,
        bit: {
          ...parameters.bit,
          facets: {
            'rake-along': wanted.value.rakeAlong,
            'rake-across': wanted.value.rakeAcross,
            'end-relief': wanted.value.endRelief,
            'work-side-relief': wanted.value.workSideRelief,
          },
        },
      },
      tables,
    )
    if (!built.ok) throw new Error(JSON.stringify(built.problems))
    const inUse = anglesOf(built.value)
    for (const name of ['radialRake', 'axialRake', 'radialRelief', 'axialRelief'] as const) {
      const { low, high } = suitableOf(design)![name]
      expect(Math.abs(inUse[name] - (low + high) / 2)).toBeLessThan(1e-9)
    }
  })

  it('rake face on the grinder: turned clockwise by the rake along, lifted by atan(tan across·cos along)', () => {
    expect(figure('grinder.rake.swivel')).toBeCloseTo(-22 * deg, 12)
    expect(figure('grinder.rake.tilt')).toBeCloseTo(Math.atan(Math.tan(33.5 * deg) * Math.cos(22 * deg)), 12)
    expect(figure('grinder.end.tilt')).toBeCloseTo(10 * deg, 12)
    expect(figure('grinder.work-side.tilt')).toBeCloseTo(8 * deg, 12)
    const other = figures(['rotation: clockwise', 'rotation: anticlockwise'])
    expect(other('grinder.rake.swivel')).toBeCloseTo(22 * deg, 12)
    expect(other('grinder.rake.tilt')).toBeCloseTo(figure('grinder.rake.tilt'), 12)
  })

  it('stress where a plain rake ends is F·L over t·b²/6 of what is left', () => {
    const plain: Change[] = [
      [/rake-along: .*\n/, 'rake-along: 20 deg\n'],
      [/rake-across: .*\n/, 'rake-across: 0 deg\n'],
      [/work-side-relief: .*\n/, 'work-side-relief: 0 deg\n'],
    ]
    const left = 10 - 0.6 - 6 * Math.tan(20 * deg)
    const force = cuttingOf(headFrom('parameters', ...plain)).load!.force.main
    expect(figures(...plain)('grind.section-left')).toBeCloseTo(left / 10, 9)
    expect(figures(...plain)('grind.stress')).toBeCloseTo((force * 6 * 6) / (10 * left ** 2), 6)
  })
})

describe('tables of the bit', () => {
  const design = headFrom('parameters')

  it('angles in use stand beside what is wanted and what was ground', () => {
    const { rows, columns } = table(design, 'angles-in-use')
    expect(columns.map(({ label }) => label)).toEqual([
      'angle',
      'in use',
      'wanted from',
      'to',
      'made by',
      'ground',
      'for the middle',
    ])
    expect(rows[0]!.slice(2, 6)).toEqual(
      [16 * deg, 16 * deg, 'rake along', 22 * deg].map((v) => (typeof v === 'number' ? expect.closeTo(v, 9) : v)),
    )
    expect(rows[1]!.slice(2, 4)).toEqual([expect.closeTo(35 * deg, 9), expect.closeTo(35 * deg, 9)])
  })

  it('wanted angles are listed for every work material that the table has angles for', () => {
    const { rows } = table(design, 'wanted-angles')
    expect(rows.map(([name]) => name)).toEqual(tables.workMaterials.filter((w) => w.hssAngles).map((w) => w.name))
    const steel = rows.find(([name]) => name === 'mild-steel')!
    // Lathe table: side rake 12 to 18 → radial, back rake 8 to 15 → axial, side relief 10 to 12, front relief 8.
    expect(steel.slice(1, 9)).toEqual([12, 18, 8, 15, 10, 12, 8, 8].map((v) => expect.closeTo(v * deg, 9)))
  })

  it('a heel that asks for more relief than the table raises what is wanted', () => {
    // A 16 mm bit at a radius of 33 wants ½·(asin(2.4/R) + asin(13.6/R)), more than 12°.
    const wide = headFrom('parameters', ['width: 10 ', 'width: 16 '], ['overhang: 27', 'overhang: 7'])
    const radius = wide.layout.bit.tipRadius
    const lead = Math.asin(1.8 / radius)
    const least = (lead + Math.asin((16 - 2.4) / radius)) / 2
    expect(least).toBeGreaterThan(12 * deg)
    expect(suitableOf(wide)!.radialRelief.low).toBeCloseTo(least, 12)
    expect(suitableOf(wide)!.radialRelief.high).toBeGreaterThan(least)
  })

  it('facets have no table where nothing is ground', () => {
    const ids = (d: HeadDesign) => tablesOf(flyCutterHead.tables, d).map(({ id }) => id)
    expect(ids(design)).toContain('facets')
    expect(ids(headFrom('parameters', ...square))).not.toContain('facets')
  })
})

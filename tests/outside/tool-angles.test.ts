import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { along, dot, length, subtract, unit, type Vec3 } from '../../src/geometry/vector.ts'
import type { Result } from '../../src/input/problem.ts'
import { type AnglesInUse, anglesInUse } from '../../src/mechanics/angles/angles-in-use.ts'
import { type GroundFacets, unground } from '../../src/mechanics/angles/facets.ts'
import { facetsToGrind } from '../../src/mechanics/angles/facets-to-grind.ts'
import { type BitBlank, groundBit } from '../../src/mechanics/angles/ground-bit.ts'
import { heelOf } from '../../src/mechanics/angles/heel.ts'
import { leastEndReliefAtTip } from '../../src/mechanics/angles/least-end-relief.ts'
import { orthogonalFrom, sideAndBackFrom } from '../../src/mechanics/angles/rake-conversion.ts'
import { lifeGainFromRelief } from '../../src/mechanics/angles/relief-and-wear.ts'
import { sweptRadius } from '../../src/mechanics/angles/swept-radius.ts'
import { type Tip, type TipSetting, tipOf } from '../../src/mechanics/angles/tip-setting.ts'
import { suitableAngles } from '../../src/mechanics/angles/wanted-angles.ts'
import { loadTables } from '../../src/package/load-tables.ts'
import { solidOf } from '../../src/part/part.ts'
import { jscadSolid } from '../../src/solid/jscad.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { findRow } from '../../src/tables/find-row.ts'
import { cell, figure, readReference } from './reference/read-reference.ts'

const deg = Math.PI / 180
const inch = 25.4

function good<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new Error(JSON.stringify(result.problems, null, 2))
}
const tables = good(loadTables())

const level: TipSetting = {
  hand: -1,
  faceAngle: 0,
  depthOnAxis: 40,
  along: 50,
  height: 0,
  ahead: 0,
  groundOffLeading: 0,
}

describe('rake conversions against worked examples', () => {
  // A Textbook of Production Engineering, examples 14.13 and 14.12 (p. 572), as recomputed in a public textbook companion.
  it('example 14.13: back rake 8°, side rake 4°, side cutting-edge angle 15° give 5.93° orthogonal rake, 6.7° inclination', () => {
    const { orthogonalRake, inclination } = orthogonalFrom({ axialRake: 8 * deg, radialRake: 4 * deg }, (90 - 15) * deg)
    expect(Math.abs(orthogonalRake / deg - 5.93)).toBeLessThan(0.01)
    expect(Math.abs(inclination / deg - 6.7)).toBeLessThan(0.05)
  })

  it('example 14.12: orthogonal rake 10°, no inclination, edge at 75° give 2.61° back rake, 9.67° side rake', () => {
    const { axialRake, radialRake } = sideAndBackFrom({ orthogonalRake: 10 * deg, inclination: 0 }, 75 * deg)
    expect(Math.abs(axialRake / deg - 2.61)).toBeLessThan(0.01)
    expect(Math.abs(radialRake / deg - 9.67)).toBeLessThan(0.01)
  })
})

describe('relief and wear against a worked problem', () => {
  // Manufacturing Science, problem 8 (p. 212), as recomputed in a public textbook companion.
  it('problem 8: relief of 7° instead of 3° gives 134 % more life where flank wear limits it', () => {
    expect(Math.abs(lifeGainFromRelief(3 * deg, 7 * deg) - 1.34)).toBeLessThan(0.005 * 1.34)
  })
})

describe('the tip off centre', () => {
  // No published number was found; asin(h/R) is the geometry of any lathe tool off centre height (common practice, no
  // source). A fly cutter is the boring case: the tip ahead of centre loses rake and gains clearance.
  it.each([
    [0.5, 10, 2.866],
    [1, 25, 2.292],
    [0.01 * inch, 0.5 * inch, 1.146],
    [0.02 * inch, 0.5 * inch, 2.292],
  ])('%f mm ahead on a radius of %f mm turns rake and clearance by %f°', (ahead, radius, expected) => {
    const setting = { ...level, ahead, along: Math.sqrt(radius ** 2 - ahead ** 2) }
    const angles = good(anglesInUse({ ...unground, rakeAlong: 10 * deg, endRelief: 10 * deg }, setting))
    expect(Math.abs(10 - angles.radialRake / deg - expected)).toBeLessThan(0.001)
    expect(Math.abs(angles.radialRelief / deg - 10 - expected)).toBeLessThan(0.001)
  })

  // Facts of the trade: common practice, no source.
  it('a 1/2 in bit 0.010 in ahead of centre keeps nearly all its rake after the rake face is ground, and is not far behind', () => {
    const setting = { ...level, faceAngle: 10 * deg, ahead: 0.01 * inch, along: 2 * inch }
    expect(good(anglesInUse(unground, setting)).radialRake).toBeLessThan(0)
    // 0.020 in off the leading face to grind the rake: the tip is then as far behind centre as it was ahead.
    const ground = { ...setting, groundOffLeading: 0.02 * inch }
    const { lead } = tipOf(ground)
    expect(lead).toBeLessThan(0)
    expect(Math.abs(lead)).toBeLessThan(0.3 * deg)
    const { radialRake } = good(anglesInUse({ ...unground, rakeAlong: 12 * deg }, ground))
    expect(Math.abs(radialRake - 12 * deg)).toBeLessThan(0.5 * deg)
  })

  it('the further ahead the more negative the rake, the further behind the more positive', () => {
    const rakes = [-3, -1, 0, 1, 3].map(
      (ahead) => good(anglesInUse(unground, { ...level, faceAngle: 10 * deg, ahead })).radialRake,
    )
    expect(rakes.toSorted((a, b) => b - a)).toEqual(rakes)
    expect(Math.sign(rakes[0]!)).toBe(1)
    expect(Math.sign(rakes[4]!)).toBe(-1)
  })

  it('a bit without back relief rubs behind its work-side edge, which leaves the faint skip pattern', () => {
    const blank = blankOf(12.7)
    const facets = { ...unground, endRelief: 12 * deg }
    const rubbing = good(heelOf(good(groundBit(blank, facets, level)), 0.5)).workSide.clearance
    expect(Math.abs(rubbing)).toBeLessThan(1e-9)
    const relieved = { ...facets, workSideRelief: 8 * deg }
    expect(good(heelOf(good(groundBit(blank, relieved, level)), 0.5)).workSide.clearance).toBeGreaterThan(1.5)
  })
})

describe('angles by work material', () => {
  // Machine Shop Essentials, Table A-I-1, as printed for lathe tools.
  it.each([
    ['aluminium', 'aluminum'],
    ['grey-iron', 'cast iron'],
    ['copper', 'copper'],
    ['tool-steel', 'tool steel (unhardened)'],
  ])('%s: the printed side rake runs along the bit, the printed back rake across it', (name, printed) => {
    const reference = readReference('hss-angles').find((row) => cell(row, 'material') === printed)!
    const found = findRow(tables.workMaterials, name)
    if (!found.ok) throw new Error(`no row ${name}`)
    const angles = good(suitableAngles(found.row))
    for (const [range, column] of [
      [angles.radialRake, 'side_rake'],
      [angles.axialRake, 'back_rake'],
      [angles.radialRelief, 'side_relief'],
      [angles.axialRelief, 'front_relief'],
    ] as const) {
      expect(range.low / deg).toBeCloseTo(figure(reference, column), 9)
      expect(range.high / deg).toBeCloseTo(figure(reference, column), 9)
    }
  })

  it('aluminium gets its 35° on the face that the end edge does not need it on', () => {
    const found = findRow(tables.workMaterials, 'aluminium')
    if (!found.ok) throw new Error('no aluminium')
    const { radialRake, axialRake } = good(suitableAngles(found.row))
    expect([radialRake.high / deg, axialRake.high / deg].map((v) => Math.round(v))).toEqual([16, 35])
  })

  // Article on tool bits, seen on a public page: front relief about 8°, side relief 10 to 15°, the smallest that clears.
  it('front relief is about 8° and side relief 10° to 15°, and 10° clears the heel of any usual bit and swing', () => {
    for (const row of tables.workMaterials) {
      if (row.hssAngles === undefined) continue
      const { radialRelief, axialRelief } = good(suitableAngles(row))
      expect(radialRelief.low / deg).toBeGreaterThan(9.99)
      expect(radialRelief.high / deg).toBeLessThan(15.01)
      if (row.name === 'plastic') continue
      expect(Math.abs(axialRelief.low / deg - 8)).toBeLessThan(2.01)
    }
    for (const [width, swing] of [
      [0.25, 2],
      [0.375, 3],
      [0.5, 4],
      [0.5, 8],
    ] as const) {
      const setting = { ...level, along: (swing / 2) * inch }
      const least = good(leastEndReliefAtTip(setting, width * inch, 0)).asGround
      expect(least).toBeLessThan(10 * deg)
      // Cut short, so that the tail does not come out on the far side.
      const blank = { ...blankOf(width * inch), length: setting.along }
      const heel = heelOf(good(groundBit(blank, { ...unground, endRelief: 10 * deg }, setting)), 0.5)
      expect(good(heel).end.clearance).toBeGreaterThan(0)
    }
  })
})

function blankOf(size: number): BitBlank {
  return { width: size, height: size, length: 80, groundOffEnd: 0, groundOffWorkSide: 0, groundLength: 80 }
}

/** The template's head with another bit: rotation, face angle in degrees, mm ahead of centre, mm and degrees ground. */
interface Case {
  readonly name: string
  readonly rotation: 'clockwise' | 'anticlockwise'
  readonly face: number
  readonly ahead: number
  readonly off: { readonly leading: number; readonly end: number; readonly underside: number }
  readonly facets: GroundFacets | undefined
}

const ground = (angles: readonly [number, number, number, number, number, number]): GroundFacets => ({
  rakeAlong: angles[0] * deg,
  rakeAcross: angles[1] * deg,
  endEdgeAngle: angles[2] * deg,
  endRelief: angles[3] * deg,
  workSideEdgeAngle: angles[4] * deg,
  workSideRelief: angles[5] * deg,
})

const cases: Case[] = [
  {
    name: 'square, its leading face ground back',
    rotation: 'clockwise',
    face: 7,
    ahead: 2.4,
    off: { leading: 0.6, end: 0, underside: 0 },
    facets: undefined,
  },
  {
    name: 'ground for aluminium, ahead of centre',
    rotation: 'clockwise',
    face: 7,
    ahead: 2.4,
    off: { leading: 0.6, end: 0.3, underside: 0.2 },
    facets: ground([18, 33, 6, 14, 2, 9]),
  },
  {
    name: 'the same, anticlockwise',
    rotation: 'anticlockwise',
    face: 7,
    ahead: 2.4,
    off: { leading: 0.6, end: 0.3, underside: 0.2 },
    facets: ground([18, 33, 6, 14, 2, 9]),
  },
  {
    name: 'behind centre on a steep face, negative rake across',
    rotation: 'anticlockwise',
    face: 12,
    ahead: -2,
    off: { leading: 1.5, end: 1, underside: 0.8 },
    facets: ground([6, -5, 20, 16, -3, 11]),
  },
  {
    name: 'level, a heel that stands out and an underside that rubs',
    rotation: 'clockwise',
    face: 0.5,
    ahead: 1,
    off: { leading: 0.4, end: 0.5, underside: 0 },
    facets: ground([4, 3, 1, 2, 0, 0]),
  },
]

describe.each(cases)('a bit cut from its own mesh: $name', ({ rotation, face, ahead, off, facets }) => {
  let skin: Vec3[][]
  let setting: TipSetting
  let blank: BitBlank
  let tip: Tip
  const cut = facets ?? unground

  beforeAll(() => {
    const design = good(readDesign(flyCutterHead, templateWith(), 'template', tables)).design
    const { parameters: p, layout } = design
    const part = design.scene.parts.find(({ part: { id } }) => id === 'bit')!.part
    // The model that is written out: closed mesh, through the solid modeller. Nothing below knows a normal of it.
    skin = jscadSolid(good(meshOf(solidOf(part), 0.02, 'bit'))).polygons.map(({ vertices }) =>
      vertices.map(([x, y, z]): Vec3 => [x, y, z]),
    )
    setting = {
      hand: layout.hand,
      faceAngle: layout.faceAngle,
      depthOnAxis: layout.depthOnAxis,
      along: layout.bit.tipInFace[0],
      height: layout.bit.tipInFace[2],
      ahead: p.slot['ahead-of-centre'],
      groundOffLeading: p.bit['ground-off'].leading,
    }
    blank = {
      width: p.bit.width,
      height: p.bit.height,
      length: p.bit.length,
      groundOffEnd: p.bit['ground-off'].end,
      groundOffWorkSide: p.bit['ground-off'].underside,
      groundLength: layout.bit.groundLength,
    }
    tip = tipOf(setting)
  })

  function templateWith(): string {
    const path = new URL('../../templates/fly-cutter-head/parameters.yaml', import.meta.url)
    const swaps: [RegExp, string][] = [
      [/rotation: \w+/, `rotation: ${rotation}`],
      [/angle: 7 deg/, `angle: ${face} deg`],
      [/ahead-of-centre: [\d.]+/, `ahead-of-centre: ${ahead}`],
      [
        / {4}leading: [\d.]+[^\n]*\n(?: {2}#[^\n]*\n)*(?: {2}facets:\n(?: {4}[^\n]*\n)+)/,
        `${offText()}${facetsText()}`,
      ],
    ]
    return swaps.reduce(
      (text, [from, to]) => {
        if (!from.test(text)) throw new Error(`the template has no ${from}`)
        return text.replace(from, to)
      },
      readFileSync(path, 'utf8'),
    )
  }

  function offText(): string {
    return `    leading: ${off.leading}\n    end: ${off.end}\n    underside: ${off.underside}\n`
  }

  function facetsText(): string {
    if (facets === undefined) return ''
    const line = (key: string, angle: number) => `    ${key}: ${angle / deg} deg\n`
    return [
      '  facets:\n',
      line('rake-along', facets.rakeAlong),
      line('rake-across', facets.rakeAcross),
      line('end-edge-angle', facets.endEdgeAngle),
      line('end-relief', facets.endRelief),
      line('work-side-edge-angle', facets.workSideEdgeAngle),
      line('work-side-relief', facets.workSideRelief),
    ].join('')
  }

  it('the mesh has a corner where the tip is said to be', () => {
    const nearest = Math.min(...skin.flat().map((p) => length(subtract(p, tip.point))))
    expect(nearest).toBeLessThan(1e-9)
  })

  it('sections of the mesh show the angles in use', () => {
    const use = good(anglesInUse(cut, setting))
    const measured = measure(skin, tip)
    for (const [name, value] of Object.entries(measured) as [keyof typeof measured, number][]) {
      expect(Math.abs(value - use[name]), name).toBeLessThan(1e-9)
    }
  })

  it('what is measured on the mesh gives back the facets that were ground', () => {
    const { cuttingEdgeAngle, minorCuttingEdgeAngle, ...rest } = measure(skin, tip)
    const again = good(
      facetsToGrind(
        {
          ...rest,
          endEdge: { kind: 'in-use', angle: cuttingEdgeAngle },
          workSideEdge: { kind: 'in-use', angle: minorCuttingEdgeAngle },
        },
        setting,
      ),
    )
    for (const key of Object.keys(cut) as (keyof GroundFacets)[]) {
      expect(Math.abs(again[key] - cut[key]), key).toBeLessThan(1e-6)
    }
  })

  it('no corner of the mesh runs further out than the swept radius, and one runs there', () => {
    const furthest = Math.max(...skin.flat().map(([x, y]) => Math.hypot(x, y)))
    expect(sweptRadius(good(groundBit(blank, cut, setting))).radius).toBeCloseTo(furthest, 6)
  })

  it('the least clearance behind the end edge, swept over the corners of the mesh, is that of the heel', () => {
    const depth = 0.8
    const { end } = good(heelOf(good(groundBit(blank, cut, setting)), depth))
    const swept = leastBehindEndEdge(skin, tip, depth)
    expect(Math.abs(swept.clearance - end.clearance)).toBeLessThan(1e-5)
    expect(length(subtract(swept.at, end.at))).toBeLessThan(0.02)
  })

  it('the lowest place of the mesh off the work-side edge, swept through the cut plane, is that of its heel', () => {
    const { workSide } = good(heelOf(good(groundBit(blank, cut, setting)), 0.8))
    const swept = leastBehindWorkSideEdge(skin, tip)
    expect(Math.abs(swept - workSide.clearance)).toBeLessThan(1e-9)
  })
})

/**
 * Where the mesh comes nearest again to the circle of its own end edge at the same height, from the cut plane up to the
 * depth of cut. On the edge itself the clearance is 0 and it opens from there; so every corner line of the mesh is walked
 * in short steps for the places where the clearance is less than on either side of them, and for the line's ends: a heel,
 * or as high up as the work reaches.
 */
function leastBehindEndEdge(skin: readonly Vec3[][], tip: Tip, depth: number): { clearance: number; at: Vec3 } {
  const height = (p: Vec3) => dot(subtract(p, tip.point), tip.up)
  const lines = cornerLines(skin)
  // Of the corner lines that leave the tip, the end edge is the one that rises most.
  const climbs = lines.flatMap(([a, b]): Vec3[] => {
    const [near, far] = length(subtract(a, tip.point)) < length(subtract(b, tip.point)) ? [a, b] : [b, a]
    return length(subtract(near, tip.point)) < 1e-9 ? [unit(subtract(far, near))] : []
  })
  const climb = climbs.reduce((best, d) => (dot(d, tip.up) > dot(best, tip.up) ? d : best))
  const edgeAt = (h: number) => along(tip.point, climb, h / dot(climb, tip.up))
  const clearance = (p: Vec3) => {
    const edge = edgeAt(height(p))
    return Math.hypot(edge[0], edge[1]) - Math.hypot(p[0], p[1])
  }
  const onEdge = (p: Vec3) => length(subtract(p, edgeAt(height(p)))) < 1e-6
  let least = { clearance: Infinity, at: tip.point }
  for (const [a, b] of lines) {
    const within = clipped(
      a,
      b,
      (p) => height(p) + 1e-9,
      (p) => depth - height(p),
    )
    if (within === undefined) continue
    const [from, to] = within
    const steps = 4000
    const places = Array.from({ length: steps + 1 }, (_, i) => along(from, subtract(to, from), i / steps))
    const clear = places.map(clearance)
    places.forEach((at, i) => {
      if (onEdge(at) || clear[i]! >= least.clearance) return
      const lineEnds = i === 0 || i === steps
      if (!lineEnds && (clear[i]! > clear[i - 1]! || clear[i]! > clear[i + 1]!)) return
      least = { clearance: clear[i]!, at }
    })
  }
  return least
}

/** Height above the cut plane of the lowest corner of the mesh that is not on the work-side edge, or that dips below. */
function leastBehindWorkSideEdge(skin: readonly Vec3[][], tip: Tip): number {
  const height = (p: Vec3) => dot(subtract(p, tip.point), tip.up)
  const fromTip = cornerLines(skin).flatMap(([a, b]): [Vec3, Vec3][] => {
    if (length(subtract(a, tip.point)) < 1e-9) return [[a, b]]
    return length(subtract(b, tip.point)) < 1e-9 ? [[b, a]] : []
  })
  // Of the corner lines that leave the tip, the work-side edge is the one that runs inwards most.
  const inwards = ([a, b]: [Vec3, Vec3]) => -dot(unit(subtract(b, a)), tip.outward)
  const [start, end] = fromTip.reduce((best, line) => (inwards(line) > inwards(best) ? line : best))
  const run = subtract(end, start)
  const offEdge = (p: Vec3) => {
    const t = Math.max(0, Math.min(1, dot(subtract(p, start), run) / dot(run, run)))
    return length(subtract(p, along(start, run, t)))
  }
  return Math.min(...skin.flat().map((p) => (offEdge(p) < 1e-6 && height(p) > -1e-6 ? Infinity : height(p))))
}

/** The lines along which flat faces of the skin meet at an angle, each whole, found from the polygons alone. */
function cornerLines(skin: readonly Vec3[][]): [Vec3, Vec3][] {
  const key = (p: Vec3) => p.map((v) => Math.round(v * 1e6)).join()
  const byEdge = new Map<string, { line: [Vec3, Vec3]; normals: Vec3[] }>()
  for (const corners of skin) {
    const normal = normalOf(corners)
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % corners.length]!
      const id = [key(p), key(q)].sort().join(' ')
      const known = byEdge.get(id)
      if (known) known.normals.push(normal)
      else byEdge.set(id, { line: [p, q], normals: [normal] })
    })
  }
  const bent = [...byEdge.values()].filter(({ normals: [a, b] }) => b === undefined || dot(a!, b) < 1 - 1e-9)
  return joined(bent.map(({ line }) => line))
}

/** Lines that carry on from each other straight, made one: their joints are no corners. */
function joined(lines: [Vec3, Vec3][]): [Vec3, Vec3][] {
  const whole = [...lines]
  for (let i = 0; i < whole.length; i++) {
    for (let k = i + 1; k < whole.length; k++) {
      const [a, b] = whole[i]!
      const other = whole[k]!
      for (const [p, q] of [other, [other[1], other[0]] as const]) {
        const from = length(subtract(p, b)) < 1e-7 ? a : length(subtract(p, a)) < 1e-7 ? b : undefined
        if (from === undefined || dot(unit(subtract(q, p)), unit(subtract(p, from))) < 1 - 1e-9) continue
        whole[i] = [from, q]
        whole.splice(k, 1)
        k = i
        break
      }
    }
  }
  return whole
}

function normalOf(corners: readonly Vec3[]): Vec3 {
  const sum: [number, number, number] = [0, 0, 0]
  corners.forEach((p, i) => {
    const q = corners[(i + 1) % corners.length]!
    sum[0] += (p[1] - q[1]) * (p[2] + q[2])
    sum[1] += (p[2] - q[2]) * (p[0] + q[0])
    sum[2] += (p[0] - q[0]) * (p[1] + q[1])
  })
  return unit(sum)
}

/** What of a line lies where two linear functions are not negative. */
function clipped(a: Vec3, b: Vec3, ...insides: ((p: Vec3) => number)[]): [Vec3, Vec3] | undefined {
  let [low, high] = [0, 1]
  for (const inside of insides) {
    const [at, by] = [inside(a), inside(b) - inside(a)]
    if (Math.abs(by) < 1e-12) {
      if (at < 0) return undefined
    } else if (by > 0) low = Math.max(low, -at / by)
    else high = Math.min(high, -at / by)
  }
  return low > high ? undefined : [along(a, subtract(b, a), low), along(a, subtract(b, a), high)]
}

/** Angles in use, read from sections of a skin made of flat polygons, near the tip. rad. */
function measure(
  skin: readonly Vec3[][],
  tip: Tip,
): Pick<
  AnglesInUse,
  'radialRake' | 'axialRake' | 'radialRelief' | 'axialRelief' | 'cuttingEdgeAngle' | 'minorCuttingEdgeAngle'
> {
  const local = (v: Vec3): Vec3 => [dot(v, tip.outward), dot(v, tip.motion), dot(v, tip.up)]
  const { point, outward, up } = tip
  // Cutting 0.2 mm above the tip and 0.2 mm inside it; both cuts have a corner on one of the edges.
  const levelCut = cornerOf(section(skin, up, dot(up, point) + 0.2), along(point, up, 0.2))
  const higherCut = cornerOf(section(skin, up, dot(up, point) + 0.5), along(point, up, 0.5))
  const uprightCut = cornerOf(section(skin, outward, dot(outward, point) - 0.2), along(point, outward, -0.2))
  const innerCut = cornerOf(section(skin, outward, dot(outward, point) - 0.5), along(point, outward, -0.5))
  const [flank, rake] = levelCut.arms.map(local).toSorted((a, b) => a[1] - b[1])
  const [under, face] = uprightCut.arms.map(local).toSorted((a, b) => a[1] - b[1])
  const endEdge = local(subtract(higherCut.at, levelCut.at))
  const workSideEdge = local(subtract(innerCut.at, uprightCut.at))
  return {
    radialRake: Math.atan(rake![1] / rake![0]),
    radialRelief: Math.atan(flank![0] / flank![1]),
    axialRake: Math.atan(-face![1] / face![2]),
    axialRelief: Math.atan(-under![2] / under![1]),
    cuttingEdgeAngle: Math.atan2(endEdge[2], endEdge[0]),
    minorCuttingEdgeAngle: Math.atan2(workSideEdge[2], -workSideEdge[0]),
  }
}

/** Where a plane crosses the polygons: a segment each. Corners in the plane itself are avoided by the choice of plane. */
function section(skin: readonly Vec3[][], normal: Vec3, offset: number): [Vec3, Vec3][] {
  return skin.flatMap((corners) => {
    const crossings: Vec3[] = []
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % corners.length]!
      const [hp, hq] = [dot(normal, p) - offset, dot(normal, q) - offset]
      if (hp < 0 !== hq < 0) crossings.push(along(p, subtract(q, p), hp / (hp - hq)))
    })
    const [a, b] = crossings
    return a !== undefined && b !== undefined ? [[a, b] as [Vec3, Vec3]] : []
  })
}

const nearestTo = (points: readonly Vec3[], target: Vec3): Vec3 =>
  points.reduce((best, p) => (length(subtract(p, target)) < length(subtract(best, target)) ? p : best))

/** The section's corner nearest to a place, and the directions in which its two sides leave it. */
function cornerOf(segments: readonly [Vec3, Vec3][], place: Vec3): { at: Vec3; arms: [Vec3, Vec3] } {
  const at = nearestTo(segments.flat(), place)
  const arms = segments.flatMap(([a, b]) => {
    if (length(subtract(b, a)) < 1e-6) return []
    if (length(subtract(a, at)) < 1e-7) return [unit(subtract(b, a))]
    return length(subtract(b, at)) < 1e-7 ? [unit(subtract(a, b))] : []
  })
  const [one, other] = arms
  if (one === undefined || other === undefined || arms.length !== 2) throw new Error(`${arms.length} sides at a corner`)
  return { at, arms: [one, other] }
}

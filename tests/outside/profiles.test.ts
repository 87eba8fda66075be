// Not one line of src between the file and the judge: profiles.dxf as another reader has it, cut from the bar by a mesh
// kernel, against the part model's own cells.
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Manifold, ManifoldToplevel, Mat4 } from 'manifold-3d'
import { beforeAll, describe, expect, it } from 'vitest'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import type { JudgedFinding } from '../../src/families/variants.ts'
import { isInside } from '../../src/geometry/solid.ts'
import type { Vec3 } from '../../src/geometry/vector.ts'
import { profileFile } from '../../src/package/profile-file.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads, headFrom } from '../families/random-heads.ts'
import { kernelCell, loadKernel } from '../part/manifold-cell.ts'
import { type ReadProfile, readProfiles } from './dxf-profiles.ts'
import { needs } from './installed.ts'

let kernel: ManifoldToplevel
beforeAll(async () => {
  kernel = await loadKernel()
})

function fileOf(design: HeadDesign, stop?: string): string {
  const read = { family: flyCutterHead, design } as unknown as Parameters<typeof profileFile>[0]
  const findings = stop === undefined ? [] : [{ level: 'stop', text: stop } as JudgedFinding]
  const made = profileFile(read, findings, '1a2b3c4d')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value
}

const round = [
  ['shape: hexagon', 'shape: round'],
  [/ {2}slot-runs.*\n/, ''],
  ['  runs: through', '  runs: stopped\n  beyond-axis: 8\n  cutter-diameter: 6'],
] as [string | RegExp, string][]
const samples: readonly (readonly [string, HeadDesign])[] = [
  ['the demo', headFrom('parameters')],
  ['the inch template', headFrom('parameters-inch')],
  ['a round bar with a stopped slot', headFrom('parameters', ...round)],
  ['the other hand', headFrom('parameters', ['rotation: clockwise', 'rotation: anticlockwise'])],
]

/** Columns x, y, z and the place of a frame. */
const matrix = (...columns: (readonly [number, number, number])[]): Mat4 =>
  columns.flatMap((c, i) => [...c, i === 3 ? 1 : 0]) as unknown as Mat4

/** The three set-ups from the parameters alone: x to the bit side, z to the cutter. */
function framesOf({ parameters: p, layout }: HeadDesign): Record<'mounting' | 'tilted' | 'laid', Mat4> {
  const [c, s, h] = [Math.cos(p.face.angle), Math.sin(p.face.angle), p.face['depth-on-axis']]
  const ahead = p.rotation === 'clockwise' ? -1 : 1
  const e = p.slot['ahead-of-centre']
  // The step's wall: the wall's thickness outside the slot, on the leading or on the trailing side.
  const [t, beyond] =
    p.step.side === 'leading'
      ? [ahead, e + p.step['wall-thickness']]
      : [-ahead, layout.slot.width - e + p.step['wall-thickness']]
  return {
    mounting: matrix([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 0]),
    tilted: matrix([c, 0, -s], [0, -1, 0], [-s, 0, -c], [0, 0, -h]),
    laid: matrix([1, 0, 0], [0, 0, -t], [0, t, 0], [0, t * beyond, 0]),
  }
}

const tall = 300

/** What a cutter takes out that follows each outline down to the depth in its name. */
function sunk({ polygons, depth = tall }: ReadProfile, frame: Mat4): Manifold {
  const bodies = polygons.map((p) => {
    const loop = p.map(([x, y]) => [x, y] as [number, number])
    return new kernel.CrossSection([loop], 'EvenOdd').extrude(depth).translate([0, 0, -depth])
  })
  return kernel.Manifold.union(bodies).transform(frame)
}

/** Of a circle about the bore's axis, mm. */
const radiusOf = (p: ReadProfile): number => Math.hypot(...(p.polygons[0]![0] as [number, number]))

/** The head, cut from the bar by the file. */
function headFromFile(design: HeadDesign): Manifold {
  const { profiles } = readProfiles(fileOf(design))
  const { mounting, tilted, laid } = framesOf(design)
  const { Manifold } = kernel
  const take = (name: string, frame: Mat4) => {
    const found = profiles.get(name)
    return found ? [sunk(found, frame)] : []
  }
  const bar = sunk({ ...profiles.get('STOCK')!, depth: design.layout.prismLength }, mounting)
  const above = Manifold.cube([tall, tall, tall])
    .translate([-tall / 2, -tall / 2, 0])
    .transform(tilted)
  const bore = profiles.get('BORE')!
  const cuts = [
    above,
    ...take('SLOT', tilted),
    ...take('STEP', tilted),
    ...take('BORE', mounting),
    ...take('VENT', mounting),
    ...take('SCREW-HOLE', laid),
  ]
  const point = /POINT-([\d.]+)DEG/.exec(bore.layer)
  if (point) {
    const deep = radiusOf(bore) / slope(point[1]!)
    cuts.push(Manifold.cylinder(deep, 0, radiusOf(bore), 256).translate([0, 0, -bore.depth! - deep]))
  }
  const chamfer = profiles.get('BORE-CHAMFER')
  if (chamfer) {
    const [deep, large] = [chamfer.depth!, radiusOf(chamfer)]
    expect(chamfer.layer).toMatch(/_45DEG$/)
    cuts.push(Manifold.cylinder(deep, large - deep, large, 256).translate([0, 0, -deep]))
  }
  return bar.subtract(Manifold.union(cuts))
}

function headFromPart(design: HeadDesign): Manifold {
  const { stock, cuts } = design.part('body')
  const cells = (features: typeof stock) =>
    kernel.Manifold.union(features.flatMap((f) => f.cells).map((c) => kernelCell(kernel, c, 'inside')))
  return cells(stock).subtract(cells(cuts))
}

/** The sequence of van der Corput to a base: spread evenly from 0 to 1, the same every time. */
function spread(index: number, base: number): number {
  let [out, part] = [0, 1 / base]
  for (let n = index + 1; n > 0; n = Math.floor(n / base)) {
    out += part * (n % base)
    part /= base
  }
  return out
}

/** Whether a place is outside the blank or cut away, by the file. */
function cutByFile(profiles: ReadonlyMap<string, ReadProfile>, design: HeadDesign): (p: Vec3) => boolean {
  const frames = framesOf(design)
  const seen = (frame: Mat4, p: Vec3) =>
    [0, 4, 8].map((at) => [0, 1, 2].reduce((sum, k) => sum + (p[k]! - frame[12 + k]!) * frame[at + k]!, 0)) as number[]
  const within = (polygon: readonly (readonly [number, number])[], [x, y]: readonly number[]) =>
    polygon.reduce((odd, [ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length]!
      return ay > y! !== by > y! && x! < ax + ((y! - ay) / (by - ay)) * (bx - ax) ? !odd : odd
    }, false)
  const sinks = (name: string, frame: Mat4) => {
    const { polygons = [], depth = tall } = profiles.get(name) ?? {}
    return (p: Vec3) => {
      const q = seen(frame, p)
      return q[2]! < 0 && q[2]! > -depth && polygons.some((polygon) => within(polygon, q))
    }
  }
  const blank = sinks('STOCK', frames.mounting)
  const cuts = [
    ...['SLOT', 'STEP'].map((name) => sinks(name, frames.tilted)),
    ...['BORE', 'VENT'].map((name) => sinks(name, frames.mounting)),
    sinks('SCREW-HOLE', frames.laid),
  ]
  const [bore, chamfer] = ['BORE', 'BORE-CHAMFER'].map((name) => profiles.get(name))
  const point = /POINT-([\d.]+)DEG/.exec(bore!.layer)
  return (p) => {
    const [out, deep] = [Math.hypot(p[0], p[1]), -p[2]]
    if (!blank(p) || seen(frames.tilted, p)[2]! > 0 || cuts.some((c) => c(p))) return true
    if (chamfer && deep < chamfer.depth! && out < radiusOf(chamfer) - deep) return true
    return point !== null && deep > bore!.depth! && out < radiusOf(bore!) - (deep - bore!.depth!) * slope(point[1]!)
  }
}

/** Radius of a point per mm of its height. */
const slope = (angle: string): number => Math.tan((Number(angle) * Math.PI) / 360)

/** Metal that only one of the two has, over the metal of the bar. */
function unlike(design: HeadDesign): number {
  const [a, b] = [headFromFile(design), headFromPart(design)]
  const bar = kernelCell(kernel, design.part('body').stock[0]!.cells[0]!, 'inside').volume()
  return (a.subtract(b).volume() + b.subtract(a).volume()) / bar
}

describe('profiles.dxf', () => {
  it.each(samples)('of %s, cut from the bar as its layers say, makes the head', (_, design) => {
    expect(unlike(design)).toBeLessThan(2e-4)
  })

  it('of any head makes the head, broken through or not: by a mesh kernel', () => {
    forRandomHeads(6, (design) => expect(unlike(design)).toBeLessThan(3e-4))
  })

  it('of any head makes the head, broken through or not: by asking at 2000 places in the bar', () => {
    forRandomHeads(30, (design) => {
      const solid = solidOf(design.part('body'))
      const cut = cutByFile(readProfiles(fileOf(design)).profiles, design)
      const { size } = design.parameters.stock
      const asked = Array.from({ length: 2000 }, (_, i) =>
        [spread(i, 2) - 0.5, spread(i, 3) - 0.5, -spread(i, 5)].map(
          (t, k) => t * (k < 2 ? 1.2 * size : design.layout.prismLength),
        ),
      ) as unknown as Vec3[]
      const wrong = asked.filter((p) => {
        const metal = isInside(solid, p)
        // Chords of round outlines leave a hair's breadth at a wall undecided.
        const beside = [0, 1, 2].flatMap((k) => [-0.01, 0.01].map((d) => p.map((v, i) => (i === k ? v + d : v))))
        return metal === cut(p) && beside.every((q) => isInside(solid, q as unknown as Vec3) === metal)
      })
      expect(wrong).toEqual([])
      expect(asked.filter((p) => isInside(solid, p)).length).toBeGreaterThan(50)
    })
  })

  it('with one size of it wrong by a tenth, or in the other hand, makes another head', () => {
    const [, demo] = samples[0]!
    const part = headFromPart(demo)
    const off = (design: HeadDesign) => {
      const made = headFromFile(design)
      return (made.subtract(part).volume() + part.subtract(made).volume()) / 75000
    }
    expect(off(demo)).toBeLessThan(2e-4)
    expect(off(samples[3]![1])).toBeGreaterThan(0.05)
    expect(off(headFrom('parameters', ['ahead-of-centre: 2.4', 'ahead-of-centre: 2.5']))).toBeGreaterThan(4e-4)
    expect(off(headFrom('parameters', ['depth: 10.5', 'depth: 10.6']))).toBeGreaterThan(4e-4)
  })

  it.each([
    ['the demo', samples[0]![1], 4, 'millimetres'],
    ['the inch template', samples[1]![1], 1, 'inches'],
  ] as const)('of %s is read by another reader: units, layers, lines, arcs and circles', (_, design, units, word) => {
    const text = fileOf(design)
    const { header, layers, origins, profiles } = readProfiles(text)
    expect(header).toMatchObject({ $INSUNITS: units, $ACADVER: 'AC1021' })
    expect([...origins.keys()]).toEqual(['ORIGIN_MOUNTING-SIDE', 'ORIGIN_TILTED-FACE', 'ORIGIN_STEP-SIDE'])
    expect(origins.get('ORIGIN_MOUNTING-SIDE')).toEqual([0, 0])
    for (const layer of layers) expect(layer).toMatch(/^[A-Z0-9._-]{3,80}$/)
    const [first] = text.split('\n').slice(1)
    expect(first).toBe(
      `cutterwright ${design.parameters.title}: profiles for CAM in ${word}, true size, revision 1a2b3c4d`,
    )
    const kinds = new Set([...profiles.values()].flatMap((p) => p.kinds))
    expect([...kinds].toSorted()).toEqual(['CIRCLE', 'LINE'])
    expect(readProfiles(fileOf(samples[2]![1])).profiles.get('FACE')!.kinds).toEqual(['ARC'])
    expect(text).not.toMatch(/\n(TEXT|MTEXT|DIMENSION|ELLIPSE|SPLINE|LWPOLYLINE)\n/)
  })

  it('has the zero of the tilted face inside its outline, and no set-up within another', () => {
    for (const [name, design] of samples) {
      const { origins, profiles } = readProfiles(fileOf(design))
      const reach = (words: readonly string[], zero: readonly [number, number]) => {
        const xs = words.flatMap((w) => profiles.get(w)?.polygons.flat() ?? []).map((p) => p[0] + zero[0])
        return [Math.min(...xs), Math.max(...xs)] as const
      }
      const [a, b, c] = [...origins.values()] as [readonly [number, number], ...(readonly [number, number])[]]
      const [, endOfFirst] = reach(['STOCK', 'BORE-CHAMFER'], a)
      const [start, end] = reach(['FACE', 'SLOT', 'STEP'], b!)
      expect(start - endOfFirst, name).toBeGreaterThanOrEqual(20 - 1e-5)
      expect(reach(['SCREW-HOLE'], c!)[0] - end, name).toBeGreaterThanOrEqual(20 - 1e-5)
      expect(start).toBeLessThan(b![0])
    }
  })

  it('is the same to the last byte however often it is written', () => {
    for (const [, design] of samples) expect(fileOf(design)).toBe(fileOf(design))
    expect(fileOf(headFrom('parameters'))).toBe(fileOf(samples[0]![1]))
  })

  it('passes the audit of ezdxf (Debian python3-ezdxf) with nothing to mend', (test) => {
    needs(test, 'ezdxf')
    const folder = mkdtempSync(join(tmpdir(), 'profiles-'))
    try {
      const texts = [...samples.map(([, d]) => fileOf(d)), fileOf(samples[0]![1], 'wall −0.42 mm: ⌀20 H7 is too deep')]
      expect(texts.at(-1)).toContain('\nSTOP: wall -0.42 mm: %%c20 H7 is too deep\n')
      const files = texts.map((text, i) => {
        const file = join(folder, `${i}.dxf`)
        writeFileSync(file, text)
        return file
      })
      const script = [
        'import sys, json, ezdxf',
        'from ezdxf import recover',
        'out = []',
        'for f in sys.argv[1:]:',
        '    d = ezdxf.readfile(f)',
        '    a = d.audit()',
        '    e, b = recover.readfile(f)',
        '    out.append([len(a.errors), len(a.fixes), len(b.errors), len(b.fixes), len(d.modelspace())])',
        'print(json.dumps(out))',
      ].join('\n')
      const answer = execFileSync('/usr/bin/python3', ['-c', script, ...files], { encoding: 'utf8' })
      const judged = JSON.parse(answer) as number[][]
      for (const [i, [errors, fixes, faults, mended, count]] of judged.entries()) {
        expect([errors, fixes, faults, mended], `file ${i}`).toEqual([0, 0, 0, 0])
        expect(count).toBeGreaterThan(25)
      }
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})

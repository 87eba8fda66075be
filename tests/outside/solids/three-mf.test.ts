import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { CommonParameters, Design } from '../../../src/families/family.ts'
import { flyCutterHead } from '../../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../../src/families/read-design.ts'
import { solidFiles } from '../../../src/package/solid-files.ts'
import { solidsJob } from '../../../src/package/solids-job.ts'
import { manifoldOf } from '../brep/triangles.ts'
import '../brep/kernels.ts'
import { readStl } from '../../../src/solid/stl.ts'
import { tables, templateText } from '../../families/random-heads.ts'
import { readThreeMf } from './read-three-mf.ts'

const made = (extra = '') => {
  const read = readDesign(flyCutterHead, `${templateText('parameters')}\n${extra}`, 'head', tables)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const files = solidFiles(solidsJob(read.value as unknown as ReadDesign<CommonParameters, Design>, 'a1b2c3d4'))
  if (!files.ok) throw new Error(JSON.stringify(files.problems))
  return { design: read.value.design, file: (name: string) => files.value.get(name)! }
}
const size = (bytes: Uint8Array) => {
  const points = readStl(bytes).flat()
  return [0, 1, 2].map((k) => Math.max(...points.map((p) => p[k]!)) - Math.min(...points.map((p) => p[k]!)))
}
const volumeOf = (bytes: Uint8Array) => {
  const facets = readStl(bytes)
  const solid = manifoldOf({
    coordinates: facets.flat(2),
    corners: facets.flatMap((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]),
  })
  const [volume, parts] = [solid.volume(), solid.decompose()]
  const count = parts.length
  for (const p of parts) p.delete()
  solid.delete()
  return { volume, count }
}

// Read back by the reference library of the 3MF Consortium, strictly (npm: @3mfconsortium/lib3mf).
describe('assembly.3mf', () => {
  const { design, file } = made()

  it('is read by the reference library without a warning: each part a closed body with its name and colour', async () => {
    const { warnings, unit, objects, colours, items } = await readThreeMf(file('assembly.3mf'))
    expect(warnings).toBe(0)
    expect(unit).toBe('mm')
    expect(objects.map((o) => o.name)).toEqual(design.scene.parts.map(({ part }) => part.label))
    for (const o of objects) expect([o.name, o.closed]).toEqual([o.name, true])
    expect(items).toBe(objects.length)
    expect(new Set(colours).size).toBe(4)
  })

  it('comes out the same to the last byte, whatever the time zone', () => {
    const zone = process.env.TZ
    try {
      for (const other of ['Pacific/Kiritimati', 'America/St_Johns', 'UTC']) {
        process.env.TZ = other
        expect(made().file('assembly.3mf')).toEqual(file('assembly.3mf'))
      }
    } finally {
      if (zone === undefined) delete process.env.TZ
      else process.env.TZ = zone
    }
  })
})

describe('the mock-up', () => {
  const head = made().file('body.stl')

  it('lies on the bed, mounting face down, each body beside the others and closed', async () => {
    const { file, design } = made()
    const { warnings, objects } = await readThreeMf(file('mock-up.3mf'))
    expect(warnings).toBe(0)
    expect(objects.map((o) => [o.name, o.closed])).toEqual([
      ['Head, mock-up', true],
      ['Arbor, mock-up', true],
      ['Bit, mock-up', true],
    ])
    const points = readStl(file('mock-up.stl')).flat()
    expect(Math.min(...points.map((p) => p[2]!))).toBeCloseTo(0, 4)
    // On the bed the head is a ring round the bore: a hexagon less the mouth of the chamfered bore, wider by 0.2 mm.
    const onBed = readStl(file('mock-up.stl')).filter((t) => t.every((p) => Math.abs(p[2]!) < 1e-3))
    expect(onBed.length).toBeGreaterThan(20)
    expect(volumeOf(file('mock-up.stl')).count).toBe(3)
    expect(design.parameters['mock-up'].orientation).toBe('mounting-face-down')
  })

  it('says in its own file that it is turned by hand, never under power', () => {
    const model = strFromU8(unzipSync(made().file('mock-up.3mf'))['3D/3dmodel.model']!)
    expect(model).toMatch(/<metadata name="Description">[^<]*turned by hand[^<]*never under power/)
  })

  it('has its bore and slot wider by the clearance, and nothing else', () => {
    const eased = made('mock-up:\n  orientation: as-drawn\n  clearance: 0.4 mm\n')
    const tight = made('mock-up:\n  orientation: as-drawn\n  clearance: 0 mm\n')
    const difference = volumeOf(tight.file('mock-up.stl')).volume - volumeOf(eased.file('mock-up.stl')).volume
    // A ring 0.2 mm wide round a bore of ⌀20 × 24 with a chamfer, and 0.4 mm more slot, 9.5 deep, across the hexagon at
    // that height; the chamfer ring and the slope of the face are left out: within 5 %.
    const ring = (Math.PI / 4) * (20.4 ** 2 - 20 ** 2) * 24
    const slot = 0.4 * 9.5 * (46 * (2 / Math.sqrt(3)) - 2.6 / Math.sqrt(3))
    expect(difference / (ring + slot)).toBeGreaterThan(0.95)
    expect(difference / (ring + slot)).toBeLessThan(1.05)
  })

  it('is smaller by its scale', () => {
    const [whole, half] = ['1', '0.5'].map((scale) => size(made(`mock-up:\n  scale: ${scale}\n`).file('mock-up.stl')))
    expect(half![1]! / whole![1]!).toBeCloseTo(0.5, 3)
    expect(half![2]! / whole![2]!).toBeCloseTo(0.5, 3)
  })

  it('has its threads at tap size or plain at the thread’s diameter', () => {
    const [tap, plain] = ['tap-size', 'plain'].map(
      (threads) => volumeOf(made(`mock-up:\n  threads: ${threads}\n`).file('mock-up.stl')).volume,
    )
    // Two holes through a wall of 9 mm less half the clearance: M6 for its tap drill of 5 mm. Flats take off up to 1 %.
    const holes = 2 * (Math.PI / 4) * (36 - 25) * 8.9
    expect((tap! - plain!) / holes).toBeGreaterThan(0.98)
    expect((tap! - plain!) / holes).toBeLessThan(1.01)
  })

  it('can be one piece: head, arbor and bit grown together, one closed body with the bit’s tip where it belongs', async () => {
    const { file, design } = made('mock-up:\n  bodies: one-piece\n')
    const { objects } = await readThreeMf(file('mock-up.3mf'))
    expect(objects.map((o) => [o.name, o.closed])).toEqual([['Head, arbor and bit, mock-up', true]])
    const { volume, count } = volumeOf(file('mock-up.stl'))
    expect(count).toBe(1)
    expect(volume).toBeGreaterThan(volumeOf(head).volume)
    const { tip } = design.layout.bit
    const points = readStl(file('mock-up.stl')).flat()
    const low = Math.min(...points.map((p) => p[0]!))
    const top = Math.max(...points.map((p) => p[2]!))
    // Laid out from x = 0: from the far side of the head to the outer end of the bit, on its back above the tip.
    const right = Math.max(...points.map((p) => p[0]!))
    const halfHead = 46 / Math.sqrt(3)
    expect(right - low).toBeCloseTo(tip[0] + 10 * Math.sin((7 * Math.PI) / 180) + halfHead, 2)
    expect(Math.min(...points.map((p) => p[2]!))).toBeCloseTo(0, 4)
    expect(top).toBeGreaterThan(-tip[2])
  })
})

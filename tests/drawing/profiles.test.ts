import { describe, expect, it } from 'vitest'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { originLayer, type Profile, profilesDxf } from '../../src/drawing/profiles.ts'
import { sampleProfiles } from './sample-profiles.ts'

const [slot, bore] = sampleProfiles as [Profile, Profile]

describe('profiles for CAM', () => {
  it('have a layer a feature with its depth in the name, and nothing but lines, arcs and circles', () => {
    const made = profilesDxf(sampleProfiles, 'mm')
    if (!made.ok) throw new Error('refused')
    expect(made.value.layers.map((l) => l.name)).toEqual(['SLOT_DEPTH_12.7MM', 'FIT-BORE_THROUGH', originLayer])
    expect(new Set(made.value.entities.map((e) => e.kind))).toEqual(new Set(['line', 'arc', 'circle']))
    expect(made.value.dimensions).toEqual([])
    expect(dxfFile(made.value)).not.toMatch(/\nTEXT\n|\nMTEXT\n|\nDIMENSION\n/)
  })

  it('mark the origin of each plane, once, on a layer of its own', () => {
    const made = profilesDxf([slot, { ...bore, origin: slot.origin }], 'mm')
    if (!made.ok) throw new Error('refused')
    expect(made.value.entities.filter((e) => e.layer === originLayer).length).toBe(2)
    expect(made.value.entities.find((e) => e.kind === 'circle')).toMatchObject({ center: [0, 0], radius: 12.5 })
  })

  it('are in inches for an inch job, layer names too', () => {
    const made = profilesDxf(sampleProfiles, 'in')
    if (!made.ok) throw new Error('refused')
    expect(made.value.layers[0]!.name).toBe('SLOT_DEPTH_0.5IN')
    expect(made.value.entities.find((e) => e.kind === 'circle')).toMatchObject({ radius: 12.5 / 25.4 })
  })

  it('are refused where an outline is open or a feature comes twice', () => {
    const open = { ...slot, loops: [slot.loops[0]!.slice(1)] }
    const made = profilesDxf([open, bore, bore], 'mm')
    expect(made.ok ? [] : made.problems.map((p) => [p.code, p.where.path])).toEqual([
      ['unsound-solid', 'slot'],
      ['contradiction', 'fit bore'],
    ])
  })

  it.each([
    [
      'a gap of a hundredth',
      [
        { kind: 'line', from: [0, 0], to: [5, 0] },
        { kind: 'line', from: [5, 0.01], to: [0, 0] },
      ],
    ],
    ['a single line', [{ kind: 'line', from: [0, 0], to: [5, 0] }]],
    ['no edges', []],
    ['half a circle', [{ kind: 'arc', center: [0, 0], radius: 2, start: 0, end: Math.PI }]],
  ] as [string, Profile['loops'][number]][])('%s is no closed outline', (_, loop) => {
    expect(profilesDxf([{ ...slot, loops: [loop] }], 'mm').ok).toBe(false)
  })
})

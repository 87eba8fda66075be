import { describe, expect, it } from 'vitest'
import type { DxfDocument } from '../../src/drawing/dxf/dxf-document.ts'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { profileLayer } from '../../src/drawing/profile-layer.ts'
import { profilesDxf } from '../../src/drawing/profiles.ts'
import type { Outline, SetUp } from '../../src/profiles/profile.ts'
import { bore, sampleProfiles, setUp, slot } from './sample-profiles.ts'

function made(setUps: readonly SetUp[], units: 'mm' | 'in', stops: readonly string[] = []): DxfDocument {
  const document = profilesDxf(setUps, units, { comments: ['revision 12345678'], stops })
  if (!document.ok) throw new Error(JSON.stringify(document.problems))
  return document.value
}

describe('profiles for CAM', () => {
  it('have a layer a feature with its depth in the name, and nothing but lines, arcs and circles', () => {
    const { layers, entities, dimensions } = made(sampleProfiles, 'mm')
    expect(layers.map((l) => l.name)).toEqual([
      'SLOT_DEPTH_12.7MM',
      'FIT-BORE_THROUGH',
      'ORIGIN_SLOT-SIDE',
      'ORIGIN_BORE-SIDE',
    ])
    expect(new Set(entities.map((e) => e.kind))).toEqual(new Set(['line', 'arc', 'circle']))
    expect(dimensions).toEqual([])
    expect(dxfFile(made(sampleProfiles, 'mm'))).not.toMatch(/\nTEXT\n|\nMTEXT\n|\nDIMENSION\n/)
  })

  it('name thread, blank and notes too, in signs that every CAM takes', () => {
    const named = [
      { ...bore, name: 'screw-hole', thread: '1/4-28', depth: 7.9375, notes: ['through wall'] },
      { ...bore, name: 'screw-hole', thread: 'M6', depth: 9 },
      { ...slot, name: 'face', depth: 0, blankAbove: 7.2068 },
      { ...bore, depth: 21, notes: ['point 118deg'] },
      { ...bore, thread: 'M20x2.5 LH', notes: ['ø & more'] },
    ].map((p) => profileLayer(p, 'mm'))
    expect(named).toEqual([
      'SCREW-HOLE_0.25-28_TAPDRILL_DEPTH_7.938MM_THROUGH-WALL',
      'SCREW-HOLE_M6_TAPDRILL_DEPTH_9MM',
      'FACE_DEPTH_0MM_BLANK-ABOVE_7.207MM',
      'FIT-BORE_DEPTH_21MM_POINT-118DEG',
      'FIT-BORE_M20X2.5-LH_TAPDRILL_THROUGH_-MORE',
    ])
    for (const name of named) expect(name).toMatch(/^[A-Z0-9._-]+$/)
  })

  it('of several set-ups stand clear of one another, the first at zero, the next at a round number', () => {
    const { entities, comments } = made(sampleProfiles, 'mm')
    expect(entities.find((e) => e.kind === 'circle')).toMatchObject({ center: [80, 0], radius: 12.5 })
    expect(comments).toEqual([
      'revision 12345678',
      'set-up slot side: zero at X 0 Y 0 of this file = corner; X along the slot; Z out of the metal to the cutter',
      'set-up bore side: zero at X 80 Y 0 of this file = corner; X along the slot; Z out of the metal to the cutter',
    ])
    expect(made(sampleProfiles, 'in').comments![2]).toContain('zero at X 3.5 Y 0')
  })

  it('mark the zero of each set-up by an arrow each along x and y, the longer one along x', () => {
    const marks = made(sampleProfiles, 'mm').entities.filter((e) => e.layer === 'ORIGIN_BORE-SIDE')
    expect(marks.map((e) => (e.kind === 'line' ? [e.from, e.to] : e.kind))).toEqual([
      [
        [75, 0],
        [90, 0],
      ],
      [
        [80, -5],
        [80, 5],
      ],
      [
        [90, 0],
        [88, -1],
      ],
      [
        [90, 0],
        [88, 1],
      ],
      [
        [80, 5],
        [79, 3],
      ],
      [
        [80, 5],
        [81, 3],
      ],
    ])
  })

  it('are in inches for an inch job, layer names too', () => {
    const { layers, entities, units } = made(sampleProfiles, 'in')
    expect([units, layers[0]!.name]).toEqual(['in', 'SLOT_DEPTH_0.5IN'])
    expect(entities.find((e) => e.kind === 'circle')).toMatchObject({ radius: 12.5 / 25.4 })
  })

  it('begin with comments, which end nothing and cut nothing', () => {
    expect(dxfFile(made(sampleProfiles, 'mm')).startsWith('999\nrevision 12345678\n999\nset-up slot side')).toBe(true)
    const document = { ...made(sampleProfiles, 'mm'), comments: ['two\nlines'] }
    expect(() => dxfFile(document)).toThrow(RangeError)
  })

  it('of a job that must not be made say so above everything, on a layer of its own', () => {
    const text = `the bore opens into the slot ${'and so on '.repeat(20)}at last`
    const { layers, entities } = made(sampleProfiles, 'mm', [text, 'no reverse'])
    expect(layers.at(-1)!.name).toBe('STOP')
    const words = entities.flatMap((e) => (e.kind === 'text' ? [e] : []))
    expect(words.map((w) => w.text).join(' ')).toBe(`STOP: ${text} STOP: no reverse`)
    expect(Math.max(...words.map((w) => w.text.length))).toBeLessThanOrEqual(80)
    for (const w of words) {
      expect(w.layer).toBe('STOP')
      expect(w.at[1]).toBeGreaterThan(12.5)
    }
    expect(words[0]!.at[1]).toBeGreaterThan(words[1]!.at[1])
  })

  it('are refused where an outline is open or missing, or a layer comes twice', () => {
    const open = { ...slot, outlines: [slot.outlines[0]!.slice(1)] }
    const refused = profilesDxf([setUp('a', open, bore), setUp('b', bore, { ...slot, depth: 1, outlines: [] })], 'mm')
    expect(refused.ok ? [] : refused.problems.map((p) => [p.code, p.where.path])).toEqual([
      ['unsound-solid', 'slot'],
      ['contradiction', 'fit bore'],
      ['unsound-solid', 'slot'],
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
    ['half a circle', [{ kind: 'arc', centre: [0, 0], radius: 2, start: 0, end: Math.PI }]],
    [
      'a circle and more',
      [
        { kind: 'circle', centre: [0, 0], radius: 2 },
        { kind: 'circle', centre: [0, 0], radius: 2 },
      ],
    ],
  ] as [string, Outline][])('%s is no closed outline', (_, outline) => {
    expect(profilesDxf([setUp('a', { ...slot, outlines: [outline] })], 'mm').ok).toBe(false)
  })
})

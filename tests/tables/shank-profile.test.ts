import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { growingFaults, readPiece } from '../../src/tables/shank-profile.ts'
import { problemsOf, shippedText } from './shipped-texts.ts'

const path = ['rows', 0, 'profile', 0]
const read = (written: Parameters<typeof readPiece>[0]) => readPiece(written, path, 'mm')
const faultOf = (written: Parameters<typeof readPiece>[0]) => {
  const result = read(written)
  return result.ok ? undefined : result.fault
}

describe('readPiece', () => {
  it('a length alone is a cylinder', () => {
    expect(read({ from: 20, length: 60 })).toEqual({ ok: true, piece: { from: 20, to: 20, length: 60 }, taper: 0 })
  })

  it('two of to, length and taper give the third', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (from, length) => {
          const byLength = read({ from, length, taper: '7:24' })
          if (!byLength.ok) throw new Error(byLength.fault.allowed)
          const { to } = byLength.piece
          expect(to).toBeCloseTo(from - (7 / 24) * length, 9)
          const byEnd = read({ from, to, taper: '7:24' })
          const both = read({ from, to, length })
          expect(byEnd.ok && byEnd.piece.length).toBeCloseTo(length, 9)
          expect(both.ok && both.taper).toBeCloseTo(7 / 24, 9)
        },
      ),
    )
  })

  it('all three must agree within 0.001 in', () => {
    expect(read({ from: 24, to: 17.02, length: 24, taper: '7:24' }).ok).toBe(true)
    expect(faultOf({ from: 24, to: 17.03, length: 24, taper: '7:24' })).toMatchObject({
      code: 'contradiction',
      path: [...path, 'to'],
      allowed: '17 mm, by the length and the taper',
    })
  })

  it.each([
    ['nothing but a diameter', { from: 20 }, 'missing-key'],
    ['an upper diameter alone', { from: 20, to: 18 }, 'missing-key'],
    ['a taper alone', { from: 20, taper: '7:24' }, 'missing-key'],
    ['a taper nobody can read', { from: 20, length: 10, taper: '7/24' }, 'not-a-quantity'],
    ['an upper diameter above the lower', { from: 20, to: 21, length: 10 }, 'out-of-range'],
    ['a cone past its point', { from: 20, length: 100, taper: '7:24' }, 'out-of-range'],
    ['a taper between equal diameters', { from: 20, to: 20, taper: '7:24' }, 'contradiction'],
  ] as const)('refuses %s', (_, written, code) => {
    expect(faultOf(written)?.code).toBe(code)
  })
})

it('a profile may step down, not up', () => {
  const pieces = [
    { from: 20, to: 18, length: 10 },
    { from: 17, to: 17, length: 5 },
  ]
  expect(growingFaults(pieces, ['profile'], 'mm')).toEqual([])
  expect(growingFaults(pieces.toReversed(), ['profile'], 'mm')).toMatchObject([{ path: ['profile', 1, 'from'] }])
})

describe('in the table', () => {
  const table = JSON.parse(shippedText('shanks'))
  const withProfile = (name: string, profile: unknown[]) =>
    problemsOf({
      shanks: JSON.stringify({
        ...table,
        rows: table.rows.map((row: { name: string }) => (row.name === name ? { ...row, profile } : row)),
      }),
    })

  it('a straight shank has no cone, a tapered one begins with one', () => {
    expect(withProfile('straight-20', [{ from: 20, to: 18, length: 60 }])).toMatchObject([
      { code: 'contradiction', found: 'a cone in a straight shank' },
    ])
    expect(withProfile('morse-2', [{ from: 18, length: 60 }])).toMatchObject([
      { code: 'contradiction', found: 'a cylinder at the gauge plane of a morse shank' },
    ])
  })

  it('a shank that gets thicker upwards, at the diameter that is too large', () => {
    const problems = withProfile('7-24-30', [
      { from: 31.75, length: 48.4, taper: '7:24' },
      { from: 18, length: 20 },
    ])
    expect(problems).toMatchObject([{ code: 'contradiction', found: '18', where: { path: 'rows.17.profile.1.from' } }])
  })

  it('a drawbar thread that is in no table', () => {
    const text = shippedText('shanks').replace('["7/16-20"]', '["7/16-21"]')
    expect(problemsOf({ shanks: text })).toMatchObject([{ code: 'not-in-table', found: '"7/16-21"' }])
  })
})

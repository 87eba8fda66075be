import { describe, expect, it } from 'vitest'
import { acrossCorners, massPerMetre, sectionArea } from '../../src/tables/bar-section.ts'

describe('by elementary geometry', () => {
  it('a hexagon lies between its two circles', () => {
    const corners = acrossCorners({ shape: 'hexagon', size: 30 })
    expect(corners * Math.cos(Math.PI / 6)).toBeCloseTo(30, 12)
    const area = sectionArea({ shape: 'hexagon', size: 30 })
    // Six triangles of base half the corner diameter and height half the flats.
    expect(area).toBeCloseTo((6 * (corners / 2) * 15) / 2, 9)
  })

  it('square and round', () => {
    expect(acrossCorners({ shape: 'square', size: 3 })).toBeCloseTo(Math.hypot(3, 3), 12)
    expect(sectionArea({ shape: 'square', size: 3 })).toBe(9)
    expect(acrossCorners({ shape: 'round', size: 25 })).toBe(25)
    expect(sectionArea({ shape: 'round', size: 2 })).toBeCloseTo(Math.PI, 12)
  })

  it('a metre of 20 mm square steel', () => {
    expect(massPerMetre({ shape: 'square', size: 20 }, 7850)).toBeCloseTo(3.14, 9)
  })
})

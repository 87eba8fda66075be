import { describe, expect, it } from 'vitest'
import { lowestOfBar } from '../../src/families/fly-cutter-head/lowest-point.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads } from './random-heads.ts'
import { solidReach } from './solid-reach.ts'

describe('the lowest point of a head', () => {
  it('in closed form is the one that the convex cells of the solid have', () => {
    let stopped = 0
    forRandomHeads(120, (design) => {
      if (design.layout.slot.end) stopped++
      const reach = solidReach(solidOf(design.part('body')), [0, 0, -1])
      const lowest = lowestOfBar(design.parameters, design.layout)
      expect(lowest === undefined).toBe(reach === undefined)
      if (reach && lowest !== undefined) expect(lowest).toBeCloseTo(-reach.distance, 7)
    })
    expect(stopped).toBeGreaterThan(30)
  })
})

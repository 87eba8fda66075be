import { describe, expect, it } from 'vitest'
import { milledBarOf } from '../../src/families/fly-cutter-head/engineering/milled-bar.ts'
import { solidOf } from '../../src/part/part.ts'
import { boundaryOf } from '../../src/solid/boundary.ts'
import { enclosed } from '../../src/solid/volume.ts'
import { forRandomHeads } from './random-heads.ts'

describe('volume and centroid of the bar with face, slot and step', () => {
  it('in closed form are those of a skin of 400 flats a turn, to 1e-7', () => {
    const known = { through: 0, stopped: 0 }
    forRandomHeads(120, (design) => {
      const milled = milledBarOf(design.parameters, design.layout)
      if (!milled) return
      known[design.layout.slot.end ? 'stopped' : 'through']++
      const body = design.part('body')
      const cuts = body.cuts.filter(({ id }) => ['face', 'slot', 'step'].includes(id))
      const skin = enclosed(boundaryOf(solidOf({ ...body, cuts }), { kind: 'equal-area', flats: 400 }))
      expect(Math.abs(milled.volume / skin.volume - 1)).toBeLessThan(1e-7)
      for (const k of [0, 1, 2] as const) {
        const off = Math.abs(milled.centroid[k] - skin.moment[k] / skin.volume)
        expect(off / design.parameters.stock.size).toBeLessThan(1e-7)
      }
    })
    expect(known.through).toBeGreaterThan(20)
    expect(known.stopped).toBeGreaterThan(20)
  })
})

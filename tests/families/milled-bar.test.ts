import { describe, expect, it } from 'vitest'
import { milledBarOf } from '../../src/families/fly-cutter-head/engineering/milled-bar.ts'
import { solidOf } from '../../src/part/part.ts'
import { boundaryOf } from '../../src/solid/boundary.ts'
import { enclosed } from '../../src/solid/volume.ts'
import { forRandomHeads } from './random-heads.ts'

const carriedOn = (coarse: number, fine: number) => fine + (fine - coarse) / 15

describe('volume and centroid of the bar with face, slot and step', () => {
  it('in closed form are those of skins of 120 and 240 flats a turn, carried on to infinitely many, to 1e-7', () => {
    const known = { through: 0, stopped: 0 }
    forRandomHeads(120, (design) => {
      const milled = milledBarOf(design.parameters, design.layout)
      if (!milled) return
      known[design.layout.slot.end ? 'stopped' : 'through']++
      const body = design.part('body')
      const cuts = body.cuts.filter(({ id }) => ['face', 'slot', 'step'].includes(id))
      const solid = solidOf({ ...body, cuts })
      const [coarse, fine] = ([120, 240] as const).map((flats) =>
        enclosed(boundaryOf(solid, { kind: 'equal-area', flats })),
      )
      // What is left of the error falls with the fourth power of their number.
      const volume = carriedOn(coarse!.volume, fine!.volume)
      expect(Math.abs(milled.volume / volume - 1)).toBeLessThan(1e-7)
      for (const k of [0, 1, 2] as const) {
        const off = Math.abs(milled.centroid[k] - carriedOn(coarse!.moment[k], fine!.moment[k]) / volume)
        expect(off / design.parameters.stock.size).toBeLessThan(1e-7)
      }
    })
    expect(known.through).toBeGreaterThan(20)
    expect(known.stopped).toBeGreaterThan(20)
  })
})

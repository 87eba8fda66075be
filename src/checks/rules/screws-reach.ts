import type { Part } from '../../part/part.ts'
import type { Walls } from '../../part/wall.ts'
import type { Units } from '../../quantity/kind.ts'
import type { Finding } from '../finding.ts'
import { mm, type Rule, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly walls: Walls
  part(id: string): Part
}

/** Contacts that are meant and do not come about: a screw hole that misses the slot or the step, a vent that ends in metal. */
export const screwsReach: Rule<Subject> = {
  id: 'open',
  findings(design) {
    const { cuts } = design.part('body')
    const found: Finding[] = []
    const report = (id: string, text: string, gap: number | undefined, levers: Finding['levers']) =>
      found.push({
        id,
        level: 'stop',
        text,
        ...(gap !== undefined && { figure: mm(gap) }),
        limit: { ...mm(0), reason: 'the two must open into each other' },
        levers,
      })
    for (const hole of cuts.filter((f) => f.role === 'clamp-screw')) {
      if (!design.walls.cutsMetal(hole.id)) {
        report(`open:${hole.id}`, `The ${hole.label} lies outside the metal.`, 0, hole.governedBy)
        continue
      }
      for (const role of ['bit-seat', 'screw-step'] as const) {
        const other = cuts.find((f) => f.role === role)!
        const wall = design.walls.between(...inOrder(cuts, hole.id, other.id))
        if (!wall || wall.distance === 0) continue
        report(
          `open:${hole.id}/${other.id}`,
          `The ${hole.label} misses the ${other.label} by ${written(mm(wall.distance), design.units)}.`,
          wall.distance,
          hole.governedBy,
        )
      }
    }
    for (const vent of cuts.filter((f) => f.role === 'vent')) {
      // A bore that runs out of the metal leaves nothing for it to go through, and the air gets out there.
      if (!design.walls.cutsMetal(vent.id)) continue
      const ways = cuts.filter((f) => vent.opensInto.includes(f.id) && f.role !== 'fit-bore')
      const gapTo = (id: string) => design.walls.between(...inOrder(cuts, vent.id, id))?.distance ?? Infinity
      if (ways.some((f) => gapTo(f.id) === 0)) continue
      const gaps = ways.map((f) => gapTo(f.id))
      report(
        `open:${vent.id}`,
        'The vent ends in solid metal: no air can leave the bore.',
        gaps.some(Number.isFinite) ? Math.min(...gaps) : undefined,
        vent.governedBy,
      )
    }
    return found
  },
}

function inOrder(cuts: Part['cuts'], a: string, b: string): [string, string] {
  return cuts.findIndex((f) => f.id === a) < cuts.findIndex((f) => f.id === b) ? [a, b] : [b, a]
}

import type { Role } from '../../part/feature.ts'
import type { Part } from '../../part/part.ts'
import type { Walls } from '../../part/wall.ts'
import { capital } from '../../quantity/capital.ts'
import type { Units } from '../../quantity/kind.ts'
import type { Finding, FindingLever } from '../finding.ts'
import { mm, type Rule, written } from '../rule.ts'

export interface WallSettings {
  readonly 'bore-to-slot': number
  readonly 'bore-to-slot-share': number
  readonly 'beside-thread': number
  readonly other: number
  readonly never: number
}

interface Subject {
  readonly units: Units
  readonly walls: Walls
  part(id: string): Part
  readonly parameters: { readonly settings: { readonly walls: WallSettings } }
}

/** Every contact that is not meant: an opening, a wall too thin to leave, a wall thinner than wanted. */
export const walls: Rule<Subject> = {
  id: 'wall',
  findings(design, only) {
    const found: Finding[] = []
    for (const [a, b] of design.walls.pairs()) {
      const id = `wall:${a}/${b}`
      if ((only !== undefined && only !== id) || design.walls.isMeant(a, b)) continue
      const { least, never, reason } = leastWall(design, a, b)
      const wall = design.walls.thinnerThan(a, b, least)
      if (!wall) continue
      const between = [labelOf(design, a), labelOf(design, b)] as const
      const opening = wall.distance === 0 && b !== 'outside' ? design.walls.opening(a, b) : undefined
      const size = opening?.map((x) => written(mm(x), design.units)).join(' × ')
      const text =
        wall.distance === 0
          ? `${capital(between[0])} and ${between[1]} break into each other${size ? `: an opening of ${size}` : ''}.`
          : `Only ${written(mm(wall.distance), design.units)} of metal between ${between[0]} and ${between[1]}.`
      found.push({
        id,
        level: wall.distance < never ? 'stop' : 'caution',
        text,
        figure: mm(wall.distance),
        limit: { ...mm(least), reason },
        levers: [...leversOf(design, a), ...leversOf(design, b)],
      })
    }
    return found
  },
}

/** Least metal wanted between two cuts of the body, mm, the wall that stops the job, and why. */
export function leastWall(
  design: Pick<Subject, 'part' | 'parameters'>,
  a: string,
  b: string,
): { least: number; never: number; reason: string } {
  const settings = design.parameters.settings.walls
  const features = [a, b].map((id) => design.part('body').cuts.find((f) => f.id === id))
  const roles: (Role | undefined)[] = features.map((f) => f?.role)
  const never = settings.never
  const thread = features.find((f) => f?.thread)?.thread
  if (thread) {
    // The hole is modelled at its tap drill; the thread reaches half the difference further.
    const depth = (thread.majorDiameter - thread.tapDrill) / 2
    const least = settings['beside-thread'] * thread.majorDiameter + depth
    return { least, never, reason: 'metal beside a thread, and its depth (rule of thumb)' }
  }
  if (roles.includes('fit-bore') && roles.includes('bit-seat')) {
    const bore = features.find((f) => f?.role === 'fit-bore')!
    const diameter = bore.dimensions.find((d) => d.kind === 'diameter')!.value
    const least = Math.max(settings['bore-to-slot'], settings['bore-to-slot-share'] * diameter)
    return { least, never, reason: 'metal between bore and slot (rule of thumb)' }
  }
  return { least: settings.other, never: Math.min(never, settings.other), reason: 'least wall (rule of thumb)' }
}

function labelOf(design: Subject, id: string): string {
  return id === 'outside' ? 'the outside' : (design.part('body').cuts.find((f) => f.id === id)?.label ?? id)
}

function leversOf(design: Subject, id: string): readonly FindingLever[] {
  const body = design.part('body')
  const feature = id === 'outside' ? body.stock[0] : body.cuts.find((f) => f.id === id)
  return feature?.governedBy ?? []
}

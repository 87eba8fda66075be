import { formatLength } from '../../../quantity/format-length.ts'
import type { RouteTool } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'

export type CutterKind = HeadDesign['parameters']['shop']['cutters'][number]['kind']

/** A cutter for a cut: out of the shop's list where it has one, otherwise one of a usual size. */
export interface Cutter {
  readonly kind: CutterKind
  readonly diameter: number
  /** mm; undefined: not in the list. */
  readonly reach: number | undefined
  readonly reachNeeded: number
}

/** End mills that every dealer has, mm (usual sizes, no source). */
const usualMills = {
  mm: [2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 25],
  in: [1 / 16, 3 / 32, 1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1].map((inches) => inches * 25.4),
} as const

/** Included angle of a jobber drill's point, rad: common practice, no source. */
export const jobberPoint = (118 * Math.PI) / 180

/** How far the full diameter of a drill comes out on the far side, mm: by its point alone the hole is not through (common practice, no source). */
export const breakThrough = 0.5

/** Drills by steps of this, mm, where nothing else is said. */
const drillStep = { mm: 0.5, in: 25.4 / 64 } as const

/**
 * The end mill for a cut no wider than `most` mm and a reach of `reach` mm: the largest in the list that does both, or the
 * largest that is narrow enough; where the list has none, the largest usual one. Undefined where even those are too wide.
 */
export function endMill(design: HeadDesign, most: number, reach: number): Cutter | undefined {
  const listed = design.parameters.shop.cutters.filter((c) => c.kind === 'end-mill' && c.diameter <= most + 1e-9)
  const largest = (rows: readonly { diameter: number; reach: number }[]) =>
    rows.reduce<(typeof rows)[number] | undefined>((a, b) => (a && a.diameter >= b.diameter ? a : b), undefined)
  const own = largest(listed.filter((c) => c.reach >= reach - 1e-9)) ?? largest(listed)
  if (own) return { kind: 'end-mill', diameter: own.diameter, reach: own.reach, reachNeeded: reach }
  const diameter = usualMills[design.units].findLast((d) => d <= most + 1e-9)
  return diameter === undefined ? undefined : { kind: 'end-mill', diameter, reach: undefined, reachNeeded: reach }
}

/** The end mill for a step `width` mm wide: the narrowest that covers it, otherwise the widest; such that reach far enough first. */
export function coveringMill(design: HeadDesign, width: number, reach: number): Cutter {
  const rows = design.parameters.shop.cutters
    .filter((c) => c.kind === 'end-mill')
    .toSorted((a, b) => a.diameter - b.diameter)
  const covering = (cutters: readonly { diameter: number; reach: number }[]) =>
    cutters.find((c) => c.diameter >= width) ?? cutters.at(-1)
  const own = covering(rows.filter((c) => c.reach >= reach - 1e-9)) ?? covering(rows)
  if (own) return { kind: 'end-mill', diameter: own.diameter, reach: own.reach, reachNeeded: reach }
  const sizes = usualMills[design.units]
  const diameter = sizes.find((d) => d >= width) ?? sizes.at(-1)!
  return { kind: 'end-mill', diameter, reach: undefined, reachNeeded: reach }
}

/** What a face `width` mm wide is milled with: the narrowest of the list that covers it, otherwise the widest. */
export function facingCutter(design: HeadDesign, width: number): Cutter {
  const mills = design.parameters.shop.cutters
    .filter((c) => c.kind === 'end-mill' || c.kind === 'face-mill')
    .toSorted((a, b) => a.diameter - b.diameter)
  const own = mills.find((c) => c.diameter >= width) ?? mills.at(-1)
  if (own) return { kind: own.kind, diameter: own.diameter, reach: own.reach, reachNeeded: 0 }
  return { kind: 'end-mill', diameter: usualMills[design.units].at(-2)!, reach: undefined, reachNeeded: 0 }
}

/** A drill or reamer of just this diameter, mm, that must reach so far. */
export function roundTool(design: HeadDesign, kind: 'drill' | 'reamer', diameter: number, reach: number): Cutter {
  const listed = design.parameters.shop.cutters
    .filter((c) => c.kind === kind && Math.abs(c.diameter - diameter) < 0.01)
    .toSorted((a, b) => b.reach - a.reach)
  return { kind, diameter, reach: listed[0]?.reach, reachNeeded: reach }
}

/** The largest drill no wider than `most` mm: of the list, or of the usual steps. */
export function drillUpTo(design: HeadDesign, most: number, reach: number): Cutter {
  const listed = design.parameters.shop.cutters
    .filter((c) => c.kind === 'drill' && c.diameter <= most + 1e-9 && c.diameter >= 0.6 * most)
    .toSorted((a, b) => b.diameter - a.diameter)
  const own = listed.find((c) => c.reach >= reach) ?? listed[0]
  if (own) return { kind: 'drill', diameter: own.diameter, reach: own.reach, reachNeeded: reach }
  const step = drillStep[design.units]
  const diameter = Math.max(step, step * Math.floor(most / step + 1e-9))
  return { kind: 'drill', diameter, reach: undefined, reachNeeded: reach }
}

/** What a drill leaves for a reamer on the diameter, mm: less is rubbed, more chokes it (common practice, no source). */
export const leftToReam = { least: 0.1, best: 0.2, most: 0.4 } as const

/** The drill before a reamer of `size` mm: of the list if it leaves the reamer what it wants, otherwise a usual one. */
export function drillToReam(design: HeadDesign, size: number, reach: number): Cutter {
  const off = (left: number) => Math.abs(left - leftToReam.best)
  const listed = design.parameters.shop.cutters
    .filter((c) => c.kind === 'drill' && leavesToReam(size - c.diameter))
    .toSorted((a, b) => off(size - a.diameter) - off(size - b.diameter))
  const own = listed.find((c) => c.reach >= reach - 1e-9) ?? listed[0]
  const diameter = own?.diameter ?? usualToReam(design, size)
  return { kind: 'drill', diameter, reach: own?.reach, reachNeeded: reach }
}

const leavesToReam = (left: number): boolean => left >= leftToReam.least - 1e-9 && left <= leftToReam.most + 1e-9

/** In inches the next 64th below; where that leaves too much, and in millimetres, the nearest tenth of one; half of a pin that is thinner than that. */
function usualToReam({ units }: HeadDesign, size: number): number {
  const fraction = drillStep.in * Math.ceil(size / drillStep.in - 1 - 1e-9)
  if (units === 'in' && leavesToReam(size - fraction)) return fraction
  return Math.max(size / 2, Math.round(10 * (size - leftToReam.best) - 1e-9) / 10)
}

/** What a deep hole asks for: from about four diameters on the chips no longer come out by themselves (common practice, no source). */
export const pecking = (depth: number, diameter: number): string[] =>
  depth > 4 * diameter
    ? [
        `More than ${Math.floor(depth / diameter)} diameters deep: peck, draw the drill right out and clear its flutes each time, oil.`,
      ]
    : []

const names: Readonly<Record<CutterKind, string>> = {
  'end-mill': 'end mill',
  'face-mill': 'face mill',
  drill: 'drill',
  reamer: 'reamer',
}

/** The cutter as an operation names it. `called`: a drill that is not called by its size. */
export function asTool({ units }: HeadDesign, cutter: Cutter, called?: string): RouteTool {
  const size = formatLength(cutter.diameter, units, { fractions: true })
  const also = called === undefined || called === size.replace(' in', '') ? '' : ` (${called})`
  return {
    name: `${names[cutter.kind]} ⌀${size}${also}`,
    diameter: cutter.diameter,
    ...(cutter.reachNeeded > 0 && { reachNeeded: cutter.reachNeeded }),
    ...(cutter.reach !== undefined && { reach: cutter.reach }),
  }
}

import type { FindingLever } from '../../../checks/finding.ts'
import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'

/** Set screws of the table that are thinner than these, of the same system, the thickest first; down to about half as strong. */
export function thinnerScrews({ tables, layout }: Pick<HeadDesign, 'tables' | 'layout'>): readonly FindingLever[] {
  const { system, majorDiameter } = layout.screws.screw
  return tables.setScrews
    .filter(
      (row) =>
        row.system === system && row.majorDiameter < majorDiameter - 1e-6 && row.majorDiameter > 0.6 * majorDiameter,
    )
    .toSorted((a, b) => b.majorDiameter - a.majorDiameter)
    .map((row) => ({ path: 'screws.thread', choose: row.name }))
}

export const fewerScrews: readonly FindingLever[] = [{ path: 'screws.count', turn: 'down' }]

const throughSlot: FindingLever = { path: 'slot.runs', choose: 'through' }

/**
 * A rule about the holes of the body, with what else helps a screw hole than moving it: a thinner screw, one fewer, the
 * step on the leading side, a slot that does not stop short of it.
 */
export const withScrewLevers = (rule: Rule<HeadDesign>): Rule<HeadDesign> => ({
  id: rule.id,
  findings: (design, only) =>
    rule.findings(design, only).map((finding) => {
      const { id } = finding
      if (!id.includes('screw-hole')) return finding
      const { step, slot } = design.parameters
      return {
        ...finding,
        levers: [
          ...finding.levers,
          ...(slot.runs === 'stopped' && id.endsWith('/slot')
            ? [{ path: 'slot.beyond-axis', turn: 'up' } as const]
            : []),
          ...(step.side === 'trailing' ? [{ path: 'step.side', choose: 'leading' } as const] : []),
          ...thinnerScrews(design),
          ...fewerScrews,
          ...(slot.runs === 'stopped' && id.endsWith('/slot') ? [throughSlot] : []),
          ...(id.endsWith('/outside') ? [{ path: 'face.angle', turn: 'up' } as const] : []),
        ],
      }
    }),
})

import { z } from 'zod'
import type { Amount, Finding } from '../checks/finding.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { AsMade, MadeLine } from '../measured/as-made.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import { cautions } from './cautions.ts'
import { steady } from './steady.ts'

const number = z.number()
const amount = z.strictObject({ value: number, unit: z.string() })
const told = z.strictObject({ id: z.string(), level: z.enum(['stop', 'caution', 'note']), text: z.string() })

/** What `as-made.json` holds: values in the unit beside them. */
export const asMadeSchema = z.strictObject({
  revision: z.string(),
  /** Mark of the parameters and the measured values together. */
  asMade: z.string(),
  title: z.string(),
  units: z.enum(['mm', 'in']),
  stops: z.int(),
  sizes: z.array(
    z.strictObject({
      part: z.string(),
      id: z.string(),
      label: z.string(),
      unit: z.string(),
      /** What the tool showed, and within what it should. */
      reading: number,
      from: number.optional(),
      to: number.optional(),
      /** The size that this means, and the nominal one. */
      size: number,
      nominal: number,
      verdict: z.enum(['good', 'too large', 'too small', 'no limits']),
      beyond: number.optional(),
    }),
  ),
  unmeasured: z.array(z.strictObject({ part: z.string(), id: z.string(), label: z.string() })),
  changed: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      unit: z.string(),
      designed: number.nullable(),
      made: number.nullable(),
      limit: number.optional(),
      limitIs: z.enum(['least', 'most']).optional(),
      /** Whether it is beyond its limit as made. */
      beyondLimit: z.boolean(),
    }),
  ),
  findings: z.strictObject({ new: z.array(told), gone: z.array(told), stay: z.array(told) }),
  repairs: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      would: z.enum(['do', 'mend a part of it', 'not do', 'not be needed']),
      says: z.string(),
      cautions: z.array(z.string()),
    }),
  ),
  /** Parts of the tool as it was made. */
  parts: z.array(z.strictObject({ id: z.string(), label: z.string(), mass: amount })),
  cautions: z.array(z.string()),
})

export type AsMadeReport = z.output<typeof asMadeSchema>

/** The report on a tool as it was made. */
export function asMadeReport(
  { design, lines, unmeasured, changed, findings, repairs }: AsMade<Design>,
  parameters: CommonParameters,
  marks: { readonly revision: string; readonly asMade: string },
): AsMadeReport {
  const { units } = design
  const shown = (kind: Amount['kind'], value: number) => steady(kind === 'count' ? value : toUnit(kind, value, units))
  const unit = (kind: Amount['kind']) => (kind === 'count' ? '' : unitSymbol(kind, units))
  const tell = ({ id, level, text }: Finding) => ({ id, level, text })
  return {
    ...marks,
    title: parameters.title,
    units,
    stops: [...findings.new, ...findings.stay].filter((f) => f.level === 'stop').length,
    sizes: lines.map((line) => sizeOf(line, shown, unit)),
    unmeasured: unmeasured.map(({ part, id, label }) => ({ part, id, label })),
    changed: changed.map(({ designed, made }) => {
      const { id, label, kind } = (made ?? designed)!
      const limit = made?.limit
      const beyond =
        limit !== undefined && (limit.is === 'most' ? made!.value > limit.value : made!.value < limit.value)
      return {
        id,
        label,
        unit: unit(kind),
        designed: designed ? shown(kind, designed.value) : null,
        made: made ? shown(kind, made.value) : null,
        ...(limit && { limit: shown(kind, limit.value), limitIs: limit.is }),
        beyondLimit: beyond,
      }
    }),
    findings: { new: findings.new.map(tell), gone: findings.gone.map(tell), stay: findings.stay.map(tell) },
    repairs: repairs.map((r) => ({ ...r, cautions: [...r.cautions] })),
    parts: design.scene.parts.map(({ part }) => ({
      id: part.id,
      label: part.label,
      mass: { value: shown('mass', design.mass(part.id)), unit: unit('mass') },
    })),
    cautions: [...cautions],
  }
}

function sizeOf(
  { asked, reading, size, verdict, beyond }: MadeLine,
  shown: (kind: Amount['kind'], value: number) => number,
  unit: (kind: Amount['kind']) => string,
): AsMadeReport['sizes'][number] {
  const { part, id, label, kind, from, to, measuring } = asked
  return {
    part,
    id,
    label: measuring.reading ? `${label}, ${measuring.reading.says}` : label,
    unit: unit(kind),
    reading: shown(kind, reading),
    ...(from !== undefined && { from: shown(kind, from) }),
    ...(to !== undefined && { to: shown(kind, to) }),
    size: shown(kind, size),
    nominal: shown(kind, measuring.dimension.value),
    verdict,
    ...(beyond !== undefined && { beyond: shown(kind, beyond) }),
  }
}

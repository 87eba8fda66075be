import type { Level } from '../checks/finding.ts'
import { written } from '../checks/rule.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import { figuresOf } from '../figures/figure.ts'
import { printable } from '../input/plain-text.ts'
import type { Units } from '../quantity/kind.ts'

/** Title, family, revision: what one is looking at. */
export const heading = ({ family, design }: ReadDesign<CommonParameters, Design>, revision: string): string =>
  printable(`${design.parameters.title}: ${family.name}, revision ${revision}`)

/** Findings for people, stops first, and a line that counts them. No line breaks within a sentence: terminals wrap. */
export function printFindings(findings: readonly JudgedFinding[], units: Units): string[] {
  const lines = findings.flatMap(({ id, level, text, figure, limit, remedy, noRemedy }) => {
    const held = limit === undefined ? '' : ` against ${written(limit, units)}: ${limit.reason}`
    return [
      `${level}  ${text}`,
      ...(figure === undefined ? [] : [`    figure  ${written(figure, units)}${held}`]),
      ...(remedy === undefined ? [] : [`    remedy  ${remedy.text}`]),
      ...(noRemedy ? ['    remedy  no single change clears it'] : []),
      `    check   ${id}`,
      '',
    ]
  })
  return [...lines, count(findings)].map(printable)
}

/** The figures in two columns. */
export function printFigures({ family, design }: ReadDesign<CommonParameters, Design>): string[] {
  const figures = figuresOf(family.figures, design)
  const widest = Math.max(0, ...figures.map(({ label }) => label.length))
  return figures.map(({ label, kind, value, limit }) => {
    const held = limit === undefined ? '' : `  (at ${limit.is} ${written({ kind, value: limit.value }, design.units)})`
    return printable(`  ${label.padEnd(widest)}  ${written({ kind, value }, design.units)}${held}`)
  })
}

function count(findings: readonly JudgedFinding[]): string {
  if (findings.length === 0) return 'No findings.'
  const of = (level: Level) => findings.filter((finding) => finding.level === level).length
  const some = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`
  return `${some(of('stop'), 'stop')}, ${some(of('caution'), 'caution')}, ${some(of('note'), 'note')}.`
}

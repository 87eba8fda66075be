import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { type Operation, operation } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { isJoinedFirst, tiltedSetUp } from './tilted-set-up.ts'

/** A wedge no deeper than this, mm, is milled off as fast as it is sawn (common practice, no source). */
const worthSawing = 2

export const isSawn = (design: HeadDesign): boolean => tiltedSetUp(design).wedge > worthSawing

export function sawHead(design: HeadDesign): Operation {
  const { parameters: p, layout: l, units } = design
  const length = (value: number) => formatLength(value, units, { fractions: true })
  return operation({
    id: 'saw-head',
    title: 'Saw the blank',
    setUp: 'saw',
    machine: 'saw',
    steps: [
      `Saw ${length(l.stockLength)} off ${p.stock.shape} bar of ${length(p.stock.size)}, ${l.materials.body.title}: ${length(p.settings.facing)} to be faced off each end.`,
    ],
    why: 'First of all: everything is measured from the ends of this piece.',
  })
}

/** The wedge between square end and angled face comes off in one piece, and is kept. */
export function sawWedge(design: HeadDesign): Operation[] {
  if (!isSawn(design)) return []
  const { parameters: p, layout: l, units } = design
  const length = (value: number) => formatLength(value, units, { decimals: units === 'mm' ? 1 : 2 })
  const angle = formatAngle(l.faceAngle, { minutes: true })
  const first = isJoinedFirst(design)
  return [
    operation({
      id: 'saw-wedge',
      title: 'Saw the wedge off',
      setUp: 'wedge',
      machine: 'saw',
      steps: [
        scribing(design, length),
        `Saw along it, ${angle} off square. It leaves ${length(p.making['left-by-saw'])} on the face.`,
        ...(first ? [] : ['Keep the wedge: it packs the angled face when the head is laid down for its screw holes.']),
      ],
      why: `The wedge is ${length(tiltedSetUp(design).wedge)} deep: sawn off in minutes, milled off in an hour. Not earlier, since the square end was the seat while ${first ? 'the bore was made and the arbor went in' : 'the bore was made'}.`,
      cautions: ['A short piece tips in the vise of the saw: pack the open end of its jaws to the same width.'],
    }),
  ]
}

/** Where the line of the saw crosses the blank, mm below the mounting face. */
export interface ScribedLine {
  /** On the side away from the bit, and on the bit side or, where it runs out before, at the end of the blank. */
  readonly short: number
  readonly long: number
  /** How far from the bit side it runs out at the end of the blank; undefined where it comes to the bit side. */
  readonly inward?: number
}

export function scribedLine({ parameters: p, layout: l }: HeadDesign): ScribedLine {
  const tan = Math.tan(l.faceAngle)
  const rise = (l.across / 2) * tan
  const left = p.making['left-by-saw'] / Math.cos(l.faceAngle)
  const [long, short] = [l.depthOnAxis + rise + left, l.depthOnAxis - rise + left]
  return long <= l.prismLength ? { short, long } : { short, long: l.prismLength, inward: (long - l.prismLength) / tan }
}

function scribing(design: HeadDesign, length: (value: number) => string): string {
  const { short, long, inward } = scribedLine(design)
  const from = `${length(short)} from the mounting face on the side away from the bit`
  return inward === undefined
    ? `Scribe the cut: ${from}, ${length(long)} on the bit side.`
    : `Scribe the cut: ${from}; it runs out at the end of the blank ${length(inward)} short of the bit side.`
}

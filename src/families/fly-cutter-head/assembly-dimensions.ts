import type { Dimension } from '../../part/dimension.ts'
import type { HeadDesign } from './design.ts'
import { cuttingOf } from './engineering/cutting.ts'
import { joinedLength, pinDiameter } from './engineering/fit.ts'

/**
 * Named sizes of the tool put together, mm: to set and to check it by. Sizes in brackets follow from the parts; the stick-out
 * of the bit and the pin are made when it is put together.
 */
export function assemblyDimensions(design: HeadDesign): Dimension[] {
  const { layout: l, parameters: p } = design
  const out: Dimension[] = []
  const add = (id: string, label: string, value: number, kind: Dimension['kind'], set = false) => {
    out.push({
      id: `assembly.${id}`,
      label,
      kind,
      value,
      tolerance: { kind: set ? 'general' : 'reference' },
      feature: 'assembly',
      measurable: set,
    })
  }
  const below = -l.bit.tip[2]
  add('swing', 'swing: circle of the tip', design.swing, 'diameter')
  add('swept', 'swept circle of everything that turns', 2 * design.sweptRadius, 'diameter')
  add('pass-width', 'width cut in one pass', cuttingOf(design).passWidth, 'length')
  add('beyond-pass', 'circle of the tip beyond the pass, each side', overThePass(design), 'length')
  add('stick-out', 'outer end of the trailing wall to the tip, along the bit', stickOut(design), 'length', true)
  add('tip-depth', 'mounting face to the tip, down the axis', below, 'length')
  add('length', 'upper end of the arbor to the tip, along the axis', arborTop(design) + below, 'length')
  if (p.arbor.kind === 'shank') {
    const label = 'start of the shank to the tip, along the axis'
    add('below-shank', label, p.arbor['shoulder-thickness'] + below, 'length')
  }
  if (p.fit.catch === 'pin') {
    add('pin-diameter', 'catch pin', pinDiameter(p), 'diameter', true)
    add('pin-depth', 'catch pin below the mounting face', joinedLength(design).middle, 'length', true)
  }
  return out
}

/** From the outer end of the trailing wall to the tip, along the bit, mm: what a rule or depth gauge can be held to. */
export const stickOut = ({ layout, gripped }: HeadDesign): number => layout.bit.tipInFace[0] - gripped.from

/** How far the circle of the tip reaches beyond the pass on either side, mm. */
export const overThePass = (design: HeadDesign): number => (design.swing - cuttingOf(design).passWidth) / 2

/** Height of the upper end of the arbor above the mounting face, mm. */
export function arborTop({ parameters: { arbor }, layout }: HeadDesign): number {
  return arbor.kind === 'straight'
    ? arbor['length-above']
    : arbor['shoulder-thickness'] + layout.shank!.profile.reduce((sum, piece) => sum + piece.length, 0)
}

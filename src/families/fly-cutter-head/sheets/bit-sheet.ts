import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import type { DrawnTable, SheetPlan, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { viewOf } from '../../../edges/view.ts'
import type { Table } from '../../../figures/table.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { cross, negate, scale, type Vec3 } from '../../../geometry/vector.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesTable, facetsTable } from '../figures/angle-tables.ts'
import { faceFrame } from '../frames.ts'
import { bitNotes } from './bit-notes.ts'
import { Sizes } from './sizes.ts'
import { onView, pieceOfPart } from './views.ts'
import { written } from './words.ts'

/** The grinding sheet: the bit as it sits in the head, tip to the right of a clockwise tool and to the left of the other. */
export function bitSheet(design: HeadDesign): SheetPlan {
  const { layout: l } = design
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const tip = pointFrom(face, l.bit.tipInFace)
  const out = scale(face.x, -l.hand)
  const looking = (z: Vec3, x: Vec3): ViewFrame => ({ origin: tip, x, y: cross(z, x), z })
  const bit: Bit = {
    design,
    sizes: new Sizes(design, 'bit'),
    at: (view, x, y, z) => onView(view, pointFrom(face, [x, y, z])),
    outwards: l.hand < 0 ? 1 : -1,
    fromLeading: looking([0, l.hand, 0], out),
    fromWork: looking(negate(face.z), out),
    fromEnd: { origin: tip, x: [0, 1, 0], y: face.z, z: face.x },
  }
  const tables = [facetsTable(design), anglesTable(design)].filter((t) => t !== undefined)
  return {
    id: 'bit',
    part: design.part('bit').label,
    material: l.materials.bit.title,
    mass: written(design, 'mass', design.mass('bit')),
    groups: [{ rows: [[leadingView(bit)]] }, { rows: [[workView(bit)]] }, { rows: [[endView(bit)]] }],
    blocks: [...tables.map((t) => drawnTable(design, t)), bitNotes(design)],
  }
}

interface Bit {
  readonly design: HeadDesign
  readonly sizes: Sizes
  /** A point of the face frame in a view. */
  readonly at: (view: ViewFrame, x: number, y: number, z: number) => Point
  /** +1 where the tip is on the right in the first two views. */
  readonly outwards: 1 | -1
  readonly fromLeading: ViewFrame
  readonly fromWork: ViewFrame
  readonly fromEnd: ViewFrame
}

const across = (from: Point, to: Point, side: 'above' | 'below') =>
  ({ kind: 'linear', direction: 'horizontal', from, to, side }) as const
const upright = (from: Point, to: Point, side: 'left' | 'right') =>
  ({ kind: 'linear', direction: 'vertical', from, to, side }) as const

function leadingView({ design, sizes, at, outwards, fromLeading: view }: Bit): ViewPlan {
  const { bit } = design.layout
  const [xTip, , zTip] = bit.tipInFace
  const to = (x: number, z: number) => at(view, x, 0, z)
  const [outer, inner] = outwards > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  return {
    id: 'bit-leading',
    caption: ['from the leading side', 'work side down, as it sits in the head'],
    lines: drawnView(viewOf([pieceOfPart(design, 'bit')], view)),
    requests: [
      ...sizes.at('bit.length', across(to(bit.innerEnd, bit.back), to(bit.outerEnd, bit.back), 'above')),
      ...sizes.at('bit.height', upright(to(bit.innerEnd, bit.workSide), to(bit.innerEnd, bit.back), inner)),
    ],
    details: [
      {
        letter: 'L',
        says: 'tip, from the leading side',
        center: to(xTip - bit.groundLength / 2, (bit.workSide + bit.back) / 2),
        ...tipCircle(design, bit.back - bit.workSide),
        toward: outwards > 0 ? -0.6 : Math.PI + 0.6,
        requests: [
          ...sizes.at('bit.ground-length', across(to(xTip - bit.groundLength, zTip), to(xTip, zTip), 'below')),
          ...sizes.at('bit.off-end', across(to(xTip, zTip), to(bit.outerEnd, bit.back), 'below')),
          ...sizes.at('bit.off-underside', upright(to(bit.outerEnd, bit.workSide), to(xTip, zTip), outer)),
          tipMark('leading', to(xTip, zTip)),
        ],
      },
    ],
  }
}

function workView({ design, sizes, at, outwards, fromWork: view }: Bit): ViewPlan {
  const { bit } = design.layout
  const [xTip, yTip] = bit.tipInFace
  const to = (x: number, y: number) => at(view, x, y, 0)
  const [outer, inner] = outwards > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  return {
    id: 'bit-work-side',
    caption: ['from the work side', 'leading side up'],
    lines: drawnView(viewOf([pieceOfPart(design, 'bit')], view)),
    requests: [...sizes.at('bit.width', upright(to(bit.innerEnd, bit.trailing), to(bit.innerEnd, bit.leading), inner))],
    details: [
      {
        letter: 'M',
        says: 'tip, from the work side',
        center: to(xTip - bit.groundLength / 2, (bit.leading + bit.trailing) / 2),
        ...tipCircle(design, Math.abs(bit.leading - bit.trailing)),
        toward: outwards > 0 ? 0.6 : Math.PI - 0.6,
        requests: [
          ...sizes.at('bit.off-leading', upright(to(xTip, yTip), to(xTip - bit.groundLength, bit.leading), outer)),
          tipMark('work', to(xTip, yTip)),
        ],
      },
    ],
  }
}

function endView({ design, at, fromEnd: view }: Bit): ViewPlan {
  const { bit } = design.layout
  const [, yTip, zTip] = bit.tipInFace
  return {
    id: 'bit-end',
    caption: ['onto the end', `leading side ${design.layout.hand < 0 ? 'left' : 'right'}, work side down`],
    lines: drawnView(viewOf([pieceOfPart(design, 'bit')], view), false),
    requests: [],
    details: [
      {
        letter: 'N',
        says: 'tip, onto the end',
        center: at(view, 0, (bit.leading + bit.trailing) / 2, (bit.workSide + bit.back) / 2),
        ...tipCircle(design, bit.back - bit.workSide),
        toward: 0.6,
        requests: [tipMark('end', at(view, 0, yTip, zTip))],
      },
    ],
  }
}

/** A circle that holds the ground end of the bit, and the facet that must be seen in it. */
const tipCircle = ({ layout: { bit } }: HeadDesign, across: number) => ({
  radius: 0.75 * Math.max(across, bit.groundLength),
  smallest: across / 8,
})

const tipMark = (view: string, to: Point): DimensionRequest => ({
  kind: 'note',
  id: `tip@${view}`,
  text: ['tip'],
  value: 0,
  to,
  toward: -Math.PI / 3,
})

/** A table of the report as the sheet writes it. */
function drawnTable(design: HeadDesign, { title, columns, rows }: Table): DrawnTable {
  return {
    kind: 'table',
    title,
    columns: columns.map(({ label }) => label),
    rows: rows.map((row) =>
      row.map((cell, i) => {
        const { kind } = columns[i]!
        if (cell === undefined) return ''
        if (typeof cell === 'string' || kind === 'text') return String(cell)
        if (kind === 'angle') return formatQuantity('angle', cell, design.units, { decimals: 1 }).replace('-', '−')
        return written(design, kind, cell)
      }),
    ),
  }
}

import { box, type Cell, cellFrom, cellOf } from '../../geometry/cell.ts'
import { frameOf } from '../../geometry/frame.ts'
import { regionOf } from '../../geometry/region.ts'
import type { Solid } from '../../geometry/solid.ts'
import type { Surface } from '../../geometry/surface.ts'
import { negate } from '../../geometry/vector.ts'
import type { Part } from '../../part/part.ts'
import { solidOf } from '../../part/part.ts'
import type { MockUpBody } from '../family.ts'
import { arborOf } from './arbor.ts'
import { bodyOf } from './body.ts'
import type { HeadDesign } from './design.ts'
import { bodyFrame, faceFrame } from './frames.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/**
 * The head to print and try by hand: bore and slot wider by the clearance of the mock-up, threads as it wants them, bit
 * and arbor apart or grown together with the head. Turned by hand, never under power.
 */
export function headMockUp(design: HeadDesign): MockUpBody[] {
  const { parameters: p, layout: l } = design
  const down = p['mock-up'].orientation === 'mounting-face-down'
  // Mounting face on the bed, shank end on the bed, bit on the face that lies on the slot's floor.
  const standing = down ? frameOf([0, 0, 0], [0, 0, -1], [1, 0, 0]) : bodyFrame
  if (p['mock-up'].bodies === 'one-piece') {
    return [{ id: 'head', label: 'Head, arbor and bit', solid: onePiece(p, l), up: bodyFrame }]
  }
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  return [
    { id: 'body', label: 'Head', solid: solidOf(eased(p, l)), up: standing },
    { id: 'arbor', label: 'Arbor', solid: solidOf(design.part('arbor')), up: standing },
    {
      id: 'bit',
      label: 'Bit',
      solid: solidOf(design.part('bit')),
      up: down ? frameOf([0, 0, 0], negate(face.z), face.x) : bodyFrame,
    },
  ]
}

/** The head with room for the printer's thread: bore on the diameter, slot half on each side. */
function eased(p: Parameters, l: Layout): Part {
  const { clearance, threads } = p['mock-up']
  const { thread } = l.screws
  const half = (l.hand * clearance) / 2
  return bodyOf(
    { ...p, bore: { ...p.bore, diameter: p.bore.diameter + clearance } },
    {
      ...l,
      slot: {
        ...l.slot,
        width: l.slot.width + clearance,
        leading: l.slot.leading + half,
        trailing: l.slot.trailing - half,
      },
      screws: {
        ...l.screws,
        thread: threads === 'plain' ? { ...thread, tapDrill: thread.majorDiameter } : thread,
      },
    },
  )
}

/**
 * Head, arbor and bit grown together: the bore is not there, and what is cut leaves the bit standing, a plain bar up to
 * the planes through its tip.
 */
function onePiece(p: Parameters, l: Layout): Solid {
  const body = eased({ ...p, 'mock-up': { ...p['mock-up'], clearance: 0 } }, l)
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const [x, y, z] = l.bit.tipInFace
  const [low, high] = [Math.min(y, l.bit.trailing), Math.max(y, l.bit.trailing)]
  const names = ['inner end', 'outer end', 'side −Y', 'side +Y', 'work side', 'back'] as const
  const bit = cellFrom(face, box(names, [l.bit.innerEnd, low, z], [x, high, l.bit.back]))
  const bar = solidOf(body).stock[0]!
  // Where the bit lies on a face of the cut nothing is left between them, and nothing must be cut there.
  const around = (cell: Cell): Cell[] =>
    bit.surfaces
      .map((s) => cellOf(...cell.surfaces, outsideOf(s)))
      .filter((piece) => regionOf([piece, bar], face.origin) !== undefined)
  const cuts = body.cuts.filter((f) => f.role !== 'fit-bore' && f.role !== 'vent')
  return {
    stock: [...solidOf(body).stock, ...arborOf(p, l).stock.flatMap((f) => f.cells), bit],
    cuts: cuts.flatMap((f) =>
      f.role === 'tool-face' || f.role === 'bit-seat' ? f.cells.flatMap(around) : [...f.cells],
    ),
  }
}

/** The other side of a plane. Throws RangeError on a round face, whose outside is not convex. */
function outsideOf(s: Surface): Surface {
  if (s.kind !== 'plane') throw new RangeError(`${s.name} is round`)
  return { ...s, normal: negate(s.normal), offset: -s.offset }
}

import { type Cell, cellFrom, cellOf } from '../../geometry/cell.ts'
import { coneThrough, cylinder, type Plane, plane, type Surface } from '../../geometry/surface.ts'
import type { Vec3 } from '../../geometry/vector.ts'
import type { Feature, Lever, ThreadMark } from '../../part/feature.ts'
import type { Part } from '../../part/part.ts'
import type { ThreadRow } from '../../tables/threads.ts'
import { bodyDimensions, handedThread } from './body-dimensions.ts'
import { boreRadius } from './bore-radius.ts'
import { bodyFrame, faceFrame } from './frames.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** The head itself, in the body frame. */
export function bodyOf(p: Parameters, l: Layout): Part {
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const dimensions = bodyDimensions(p, l)
  const own = (id: string) => dimensions.filter((d) => d.feature === id)
  const inFace = (cells: readonly Cell[]) => cells.map((c) => cellFrom(face, c))
  const vented = p.bore.kind === 'blind' && p.bore.vent === 'hole'

  const stock: Feature = {
    id: 'stock',
    label: `${p.stock.shape} bar`,
    role: 'stock',
    cells: [
      cellOf(...section(p, l), plane('mounting face', [0, 0, 0], up), plane('far end', [0, 0, -l.prismLength], down)),
    ],
    frame: bodyFrame,
    opensInto: [],
    governedBy: [more('stock.size')],
    dimensions: own('stock'),
  }
  const cuts: Feature[] = [
    {
      id: 'face',
      label: 'angled face',
      role: 'tool-face',
      cells: inFace([cellOf(plane('angled face', [0, 0, 0], up))]),
      frame: face,
      opensInto: ['outside', 'slot', 'step', 'vent'],
      governedBy: [more('face.depth-on-axis')],
      dimensions: own('face'),
    },
    {
      id: 'slot',
      label: 'slot for the bit',
      role: 'bit-seat',
      cells: inFace(slotCells(l)),
      frame: face,
      opensInto: ['outside', 'face', 'vent', ...(p.bore.kind === 'through' ? ['bore'] : [])],
      governedBy: [less('slot.depth'), less('slot.ahead-of-centre'), more('slot.ahead-of-centre')],
      dimensions: own('slot'),
    },
    {
      id: 'step',
      label: 'step',
      role: 'screw-step',
      cells: inFace([
        cellOf(
          plane('step wall', [0, l.step.wall, 0], [0, -l.step.towards, 0]),
          plane('step floor', [0, 0, l.step.depth], up),
        ),
      ]),
      frame: face,
      opensInto: ['outside', 'face'],
      governedBy: [more('step.wall-thickness'), less('step.depth')],
      dimensions: own('step'),
    },
    ...l.screws.xs.map(
      (x, i): Feature => ({
        id: screwHoleId(i),
        label: `screw hole ${i + 1}`,
        role: 'clamp-screw',
        // From the step's wall to the slot's, no further: both ends lie in the void of the other cut.
        cells: inFace([
          cellOf(
            cylinder(
              'screw hole',
              [x, l.screws.seat, l.screws.height],
              [0, l.step.towards, 0],
              l.screws.thread.tapDrill / 2,
            ),
            plane('slot side', [0, l.screws.seat, 0], [0, -l.step.towards, 0]),
            plane('step side', [0, l.step.wall, 0], [0, l.step.towards, 0]),
          ),
        ]),
        frame: face,
        opensInto: ['slot', 'step'],
        governedBy: [
          more('screws.height'),
          less('screws.height'),
          more('screws.first-from-corner'),
          less('screws.first-from-corner'),
          more('screws.spacing'),
          less('screws.spacing'),
        ],
        dimensions: own(screwHoleId(i)),
        thread: {
          name: l.screws.thread.name,
          majorDiameter: l.screws.thread.majorDiameter,
          pitch: l.screws.thread.pitch,
          tapDrill: l.screws.thread.tapDrill,
        },
      }),
    ),
    {
      id: 'bore',
      label: 'bore',
      role: 'fit-bore',
      cells: boreCells(p, l),
      frame: bodyFrame,
      opensInto: [
        'outside',
        'chamfer',
        ...(vented ? ['vent'] : []),
        ...(p.bore.kind === 'through' ? ['slot', 'face', 'step', 'far end'] : []),
      ],
      governedBy: [less('bore.depth'), less('bore.diameter')],
      dimensions: own('bore'),
      ...(l.spigotThread && p.fit.kind === 'threaded' && { thread: threadMark(l.spigotThread, p.fit.hand) }),
    },
  ]
  if (p.bore.kind === 'blind' && vented) {
    cuts.push({
      id: 'vent',
      label: 'vent hole',
      role: 'vent',
      cells: [
        cellOf(
          cylinder('vent hole', [0, 0, 0], down, p.bore['vent-size'] / 2),
          plane('bore side', [0, 0, -p.bore.depth], up),
        ),
      ],
      frame: bodyFrame,
      opensInto: ['bore', 'slot', 'face', 'step', 'far end'],
      governedBy: [less('bore.vent-size')],
      dimensions: own('vent'),
    })
  }
  return { id: 'body', label: 'Head', material: p.stock.material, stock: [stock], cuts }
}

export const screwHoleId = (index: number): string => `screw-hole-${index + 1}`

const more = (path: string): Lever => ({ path, turn: 'up' })
const less = (path: string): Lever => ({ path, turn: 'down' })

const up: Vec3 = [0, 0, 1]
const down: Vec3 = [0, 0, -1]

/** Sides of the bar. The flats that the jaws hold face ±Y; flat-to-flat leaves corners there. */
function section(p: Parameters, l: Layout): Surface[] {
  const r = l.inscribed / 2
  if (p.stock.shape === 'round') return [cylinder('outside', [0, 0, 0], up, r)]
  const [sides, first] =
    p.stock.shape === 'square' ? [4, 0] : [6, p.stock['slot-runs'] === 'point-to-point' ? Math.PI / 6 : 0]
  return Array.from({ length: sides }, (_, i): Plane => {
    // Exact zeros for the sides square to an axis: a flat facing Y has no x at all.
    const angle = first + (i * 2 * Math.PI) / sides
    const out: Vec3 = [tidy(Math.cos(angle)), tidy(Math.sin(angle)), 0]
    return plane(`flat ${i + 1}`, [out[0] * r, out[1] * r, 0], out)
  })
}

const tidy = (x: number): number => (Math.abs(x) < 1e-15 ? 0 : x)

function slotCells(l: Layout): Cell[] {
  const { slot, hand } = l
  const leading = plane('leading wall', [0, slot.leading, 0], [0, hand, 0])
  const trailing = plane('trailing wall', [0, slot.trailing, 0], [0, -hand, 0])
  const floor = plane('slot floor', [0, 0, slot.depth], up)
  if (!slot.end) return [cellOf(leading, trailing, floor)]
  const { x, radius } = slot.end
  const from = (at: number, name: string) => plane(name, [at, 0, 0], [-1, 0, 0])
  const cells = [cellOf(leading, trailing, floor, from(x + radius, 'slot end'))]
  const centres = [slot.leading - hand * radius, slot.trailing + hand * radius]
  if (Math.abs(slot.width - 2 * radius) < 1e-9) centres.pop()
  for (const y of centres) {
    cells.push(cellOf(cylinder('slot end', [x + radius, y, 0], up, radius), floor))
  }
  if (centres.length === 2) {
    cells.push(
      cellOf(
        plane('slot end', [0, centres[0]!, 0], [0, hand, 0]),
        plane('slot end', [0, centres[1]!, 0], [0, -hand, 0]),
        floor,
        from(x, 'slot end'),
      ),
    )
  }
  return cells
}

/**
 * A drilled bottom is the cylinder inside the cone of the point: one convex cell. The chamfer is a second. A bore that is
 * tapped is the hole of its tap drill, and its chamfer begins at the thread's major diameter.
 */
function boreCells({ bore }: Parameters, l: Layout): Cell[] {
  const r = boreRadius(bore, l)
  const wall = cylinder('bore wall', [0, 0, 0], down, r)
  const mouth = plane('mounting face', [0, 0, 0], up)
  const cells: Cell[] = []
  if (bore.kind === 'through') cells.push(cellOf(wall))
  else if (bore.bottom === 'flat') cells.push(cellOf(wall, plane('bore bottom', [0, 0, -bore.depth], down)))
  else {
    const point = r / Math.tan(bore['point-angle'] / 2)
    const cone = coneThrough('drill point', [0, 0, -bore.depth - point], 0, [0, 0, -bore.depth], r)
    cells.push(cellOf(wall, cone, mouth))
  }
  const c = bore.chamfer
  if (c > 0) {
    const foot = c + bore.diameter / 2 - r
    const cone = coneThrough('bore chamfer', [0, 0, -foot], r, [0, 0, 0], r + foot)
    cells.push(cellOf(cone, mouth, plane('bore chamfer foot', [0, 0, -foot], down)))
  }
  return cells
}

const threadMark = ({ name, majorDiameter, pitch, tapDrill }: ThreadRow, hand: 'right' | 'left'): ThreadMark => ({
  name: handedThread(name, hand),
  majorDiameter,
  pitch,
  tapDrill,
})

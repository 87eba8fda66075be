import { cellFrom, rod } from '../../geometry/cell.ts'
import type { Part } from '../../part/part.ts'
import { inPlace, type Scene } from '../../part/scene.ts'
import { bitOf } from './bit.ts'
import { faceFrame } from './frames.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** Head, arbor, bit and set screws as they stand when the tool is ready. */
export const sceneOf = (body: Part, arbor: Part, p: Parameters, l: Layout): Scene => ({
  parts: [body, arbor, bitOf(p, l), ...screwsOf(p, l)].map(inPlace),
})

/** Set screws as plain cylinders of the thread's major diameter, point on the bit. */
function screwsOf(p: Parameters, l: Layout): Part[] {
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const onBit = p.step.side === 'leading' ? l.bit.leading : l.bit.trailing
  const names = { wall: 'thread', start: 'point', end: 'socket end' }
  return l.screws.xs.map((x, i) => ({
    id: `screw-${i + 1}`,
    label: `Set screw ${i + 1}`,
    material: l.screws.screw.material,
    stock: [
      {
        id: 'screw',
        label: `set screw ${l.screws.thread.name}`,
        role: 'screw',
        cells: [
          cellFrom(
            face,
            rod(
              names,
              [x, onBit, l.screws.height],
              [0, l.step.towards, 0],
              l.screws.length,
              l.screws.thread.majorDiameter / 2,
            ),
          ),
        ],
        frame: face,
        opensInto: [],
        governedBy: [],
        dimensions: [
          {
            id: 'screw.length',
            label: `set screw, ${p.screws.point} point`,
            kind: 'length',
            value: l.screws.length,
            tolerance: { kind: 'reference' },
            feature: 'screw',
            measurable: true,
          },
        ],
      },
    ],
    cuts: [],
  }))
}

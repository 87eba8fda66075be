import type { Cell } from '../../src/geometry/cell.ts'
import { box, cellFrom, cellOf, rod } from '../../src/geometry/cell.ts'
import { frameOf, worldFrame } from '../../src/geometry/frame.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import type { Feature, Role } from '../../src/part/feature.ts'
import type { Part } from '../../src/part/part.ts'

const feature = (id: string, role: Role, cells: Cell[], opensInto: string[] = []): Feature => ({
  id,
  label: id,
  role,
  cells,
  frame: worldFrame,
  opensInto,
  governedBy: [],
  dimensions: [],
})

/** A turned arbor: spigot, shoulder, taper, with a cross hole and a blind hole up its axis. */
export const turnedArbor: Part = {
  id: 'turned-arbor',
  label: 'turned arbor',
  material: 'steel-1045',
  stock: [
    feature('spigot', 'spigot', [
      cellOf(
        cylinder('spigot', [0, 0, 0], [0, 0, 1], 9),
        plane('end', [0, 0, -21], [0, 0, -1]),
        plane('seat', [0, 0, 0], [0, 0, 1]),
        coneThrough('lead-in', [0, 0, -21], 8, [0, 0, -20], 9),
      ),
    ]),
    feature('shoulder', 'shoulder', [
      rod({ wall: 'shoulder', start: 'seat', end: 'top' }, [0, 0, 0], [0, 0, 1], 6.5, 17),
    ]),
    feature('taper', 'shank', [
      cellOf(
        coneThrough('taper', [0, 0, 6.5], 12.1, [0, 0, 66.5], 9.3),
        plane('step', [0, 0, 6.5], [0, 0, -1]),
        plane('shank end', [0, 0, 66.5], [0, 0, 1]),
      ),
    ]),
  ],
  cuts: [
    feature('cross-hole', 'vent', [cellOf(cylinder('cross hole', [0, 0, 40], [1, 0, 0], 2.5))], ['taper']),
    feature(
      'blind-hole',
      'vent',
      [
        cellOf(
          cylinder('blind hole', [0, 0, 0], [0, 0, 1], 3.1),
          coneThrough('point', [0, 0, 31.8], 0, [0, 0, 30], 3.1),
          plane('mouth', [0, 0, -40], [0, 0, -1]),
        ),
      ],
      ['end'],
    ),
  ],
}

/** A boring bar: round bar with a square hole for a bit across it at 45°, and a screw hole from the end. */
export const boringBar: Part = {
  id: 'boring-bar',
  label: 'boring bar',
  material: 'steel-4140-prehard',
  stock: [feature('bar', 'stock', [rod({ wall: 'bar', start: 'front', end: 'back' }, [0, 0, 0], [1, 0, 0], 90, 12.5)])],
  cuts: [
    feature(
      'cross-bore',
      'bit-seat',
      [
        cellFrom(
          frameOf([16, 0, 0], [Math.SQRT1_2, 0, Math.SQRT1_2], [Math.SQRT1_2, 0, -Math.SQRT1_2]),
          box(['a', 'b', 'c', 'd', 'below', 'above'], [-4, -4, -60], [4, 4, 60]),
        ),
      ],
      ['outside'],
    ),
    feature(
      'screw-hole',
      'clamp-screw',
      [cellOf(cylinder('screw hole', [0, 5.5, 4], [1, 0, 0], 2.1), plane('bottom', [14, 0, 0], [1, 0, 0]))],
      ['front'],
    ),
    feature(
      'coolant',
      'vent',
      [cellOf(cylinder('coolant', [90, -7, -2], [1, 0, 0], 1.6), plane('bottom', [55, 0, 0], [-1, 0, 0]))],
      ['back'],
    ),
  ],
}

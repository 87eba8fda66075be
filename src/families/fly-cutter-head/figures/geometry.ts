import { leastWall } from '../../../checks/rules/walls.ts'
import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'

const layoutSource = 'geometry of the part model'
const modelSource = 'volume of the part model, extrapolated to round faces; density from the materials table'

const length = (
  id: string,
  label: string,
  of: (d: HeadDesign) => number | undefined,
  limitIs?: 'least' | 'most',
  limit?: (d: HeadDesign) => number | undefined,
): Figure<HeadDesign> => ({
  id,
  label,
  kind: 'length',
  source: layoutSource,
  of,
  ...(limit && limitIs && { limit, limitIs }),
})

const mass = (id: string, label: string, of: (d: HeadDesign) => number): Figure<HeadDesign> => ({
  id,
  label,
  kind: 'mass',
  source: modelSource,
  of,
})

const rise = (d: HeadDesign) => (d.layout.across / 2) * Math.tan(d.layout.faceAngle)
const wall = (d: HeadDesign, a: string, b: string) => d.walls.between(a, b)
const screws = (d: HeadDesign) => d.screwParts.map((p) => d.mass(p.id)).reduce((a, b) => a + b, 0)

/** Figures of a fly-cutter head that follow from its geometry. */
export const geometryFigures: readonly Figure<HeadDesign>[] = [
  length(
    'swing',
    'Swing: diameter of the tip’s circle',
    (d) => d.swing,
    'most',
    (d) => d.parameters.machine['largest-swing'],
  ),
  length(
    'swept-diameter',
    'Swept diameter: machine and guard must clear it',
    (d) => 2 * d.sweptRadius,
    'most',
    (d) => d.parameters.machine['largest-swing'],
  ),
  length('overhang', 'Overhang of the bit from the outer corner', (d) => d.layout.bit.overhang),
  length('grip', 'Bit backed by the trailing wall', (d) => d.gripped.from - d.gripped.to),
  length('tip.below-mounting-face', 'Tip below the mounting face', (d) => -d.layout.bit.tip[2]),
  length('tip.ahead', 'Tip ahead of the axis in the direction of motion', (d) => d.layout.hand * d.layout.bit.tip[1]),
  length('tip.below-face', 'Tip below the angled face', (d) => -d.layout.bit.tipInFace[2]),
  length('height.long-side', 'Height of the head on the bit side', (d) => d.layout.depthOnAxis + rise(d)),
  length('height.short-side', 'Height of the head opposite', (d) => d.layout.depthOnAxis - rise(d)),
  length(
    'stock.length',
    'Length to saw',
    (d) => d.layout.stockLength,
    'least',
    (d) => d.layout.depthOnAxis + rise(d) + d.parameters.settings.facing,
  ),
  length('body-clearance', 'Head and screws above the cut surface', (d) => d.lowestPoint - d.layout.bit.tip[2]),
  length('slot.width', 'Slot width', (d) => d.layout.slot.width),
  length('step.wall-from-axis', 'Step wall from the axis', (d) => Math.abs(d.layout.step.wall)),
  length(
    'screws.from-wall-end',
    'First screw from the end of its wall',
    (d) => d.screwWallEnd - d.layout.screws.xs[0]!,
  ),
  length('screws.tap-drill', 'Tap drill', (d) => d.layout.screws.thread.tapDrill),
  length('screws.length', 'Set screw length', (d) => d.layout.screws.length),
  {
    id: 'hub-ratio',
    label: 'Hub outside over bore',
    kind: 'ratio',
    source: layoutSource,
    of: (d) => d.layout.inscribed / d.parameters.bore.diameter,
    limit: (d) => d.parameters.settings.hub.wanted,
    limitIs: 'least',
  },
  length(
    'wall.slot-bore',
    'Metal between slot and bore',
    (d) => wall(d, 'slot', 'bore')?.distance,
    'least',
    (d) => leastWall(d, 'slot', 'bore').least,
  ),
  length('wall.slot-step', 'Metal between slot and step', (d) => wall(d, 'slot', 'step')?.distance),
  mass('mass.body', 'Mass of the head', (d) => d.mass('body')),
  mass('mass.arbor', 'Mass of the arbor', (d) => d.mass('arbor')),
  mass('mass.bit', 'Mass of the bit', (d) => d.mass('bit')),
  mass('mass.screws', 'Mass of the set screws', screws),
  mass('mass.all', 'Mass of the tool', (d) => d.mass('body') + d.mass('arbor') + d.mass('bit') + screws(d)),
]

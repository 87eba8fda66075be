import { type Frame, frameOf } from '../../geometry/frame.ts'
import { along, negate } from '../../geometry/vector.ts'
import type { Feature, Role } from '../../part/feature.ts'
import { cutProfiles, facingProfile } from '../../profiles/cut-profiles.ts'
import { outlinesOf } from '../../profiles/outline.ts'
import type { SetUp } from '../../profiles/profile.ts'
import type { Blank } from '../../profiles/run-out.ts'
import type { HeadDesign } from './design.ts'
import { bodyFrame } from './frames.ts'

/**
 * The head's three clampings. In each x runs to the bit side and z out of the metal to the cutter, so that y follows:
 * +Y of the body on the mounting side, −Y on the tilted face (a tool that turns clockwise seen from the spindle has its
 * leading wall at +y there), along the spindle axis on the step side.
 */
export function headProfiles(design: HeadDesign): SetUp[] {
  const { hand, step } = design.layout
  const { stock, cuts } = design.part('body')
  const cells = stock.flatMap((f) => f.cells)
  const withRole = (role: Role) => cuts.filter((f) => f.role === role)
  const [face] = withRole('tool-face') as [Feature]
  const blank: Blank = { cells, ...runOutOf(design) }
  const mounting = bodyFrame
  const tilted = fromOutside(face.frame)
  const laid = onStep(design)
  return [
    {
      name: 'mounting side',
      zero: `bore axis at the mounting face; X to the bit side, the bit cuts towards ${sign(hand)}Y`,
      plane: mounting,
      profiles: [
        ...stock.map((f) => ({ name: f.id, outlines: outlinesOf(f.cells, mounting) })),
        ...withRole('fit-bore').flatMap((f) => cutProfiles(f, mounting)),
        ...withRole('vent').flatMap((f) => cutProfiles(f, mounting)),
      ],
    },
    {
      name: 'tilted face',
      zero: `bore axis at the angled face; X down the slope to the bit side, the bit cuts towards ${sign(-hand)}Y`,
      plane: tilted,
      profiles: [
        ...facingProfile(face, tilted, blank),
        ...[...withRole('bit-seat'), ...withRole('screw-step')].flatMap((f) => cutProfiles(f, tilted, blank)),
      ],
    },
    {
      name: 'step side',
      zero: `bore axis at the mounting face, Z at the step wall; X to the bit side, the head lies at ${sign(step.towards)}Y`,
      plane: laid,
      profiles: asOne(
        'screw-hole',
        withRole('clamp-screw').flatMap((f) => cutProfiles(f, laid)),
      ),
    },
  ]
}

const sign = (way: number): string => (way < 0 ? '-' : '+')

/** A cutter as wide as the slot is wholly out of the metal where the outline ends (common practice, no source). */
export const runOutOf = ({ layout, units }: HeadDesign): Omit<Blank, 'cells'> => ({
  runOut: layout.slot.width,
  step: units === 'in' ? 25.4 / 16 : 1,
})

/** A frame whose z runs into the metal, as the cutter sees it from above: y turns with z. */
const fromOutside = ({ origin, x, z }: Frame): Frame => frameOf(origin, negate(z), x)

/** The plane of the step's wall, where the screw holes begin; zero beside datums A and B. */
const onStep = ({ layout: { step } }: HeadDesign): Frame =>
  frameOf(along(bodyFrame.origin, bodyFrame.y, step.wall), [0, step.towards, 0], bodyFrame.x)

/** Holes that are drilled alike, one after the other, on one layer: what a drilling cycle picks up at once. */
function asOne(name: string, holes: SetUp['profiles']): SetUp['profiles'] {
  const [first] = holes
  if (!first) return []
  return [{ ...first, name, notes: ['through wall'], outlines: holes.flatMap((h) => h.outlines) }]
}

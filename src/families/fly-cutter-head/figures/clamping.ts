import type { Amount } from '../../../checks/finding.ts'
import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { type Clamping, clampingOf, type HeldBit } from '../engineering/clamping.ts'
import { bitMassOf } from '../engineering/mass.ts'
import type { Parameters } from '../parameters/parameters.ts'

type Settings = Parameters['settings']

const screwSource = 'F = T/(K·d), standard torque and preload relation; K and scatter are rules of thumb'
const beam = 'cantilever held where its wall ends, at the slot floor: 6·F·L/(b·h²), F·L³/(3·E·I)'
const friction =
  'wall in full and screw points in part (rules of thumb), squeezed by all screws at their least force, against all that pulls that way'

const clamping = (
  id: string,
  label: string,
  kind: Amount['kind'],
  source: string,
  of: (clamping: Clamping) => number | undefined,
): Figure<HeadDesign> => ({ id, label, kind, source, of: (d) => of(clampingOf(d)) })

const ofBit = (
  id: string,
  label: string,
  kind: Amount['kind'],
  source: string,
  of: (bit: HeldBit) => number | undefined,
): Figure<HeadDesign> => clamping(id, label, kind, source, (c) => c.held && of(c.held))

const atMost = (of: Figure<HeadDesign>, limit: (settings: Settings) => number): Figure<HeadDesign> => ({
  ...of,
  limit: (d) => limit(d.parameters.settings),
  limitIs: 'most',
})

const atLeast = (of: Figure<HeadDesign>, limit: (settings: Settings) => number): Figure<HeadDesign> => ({
  ...of,
  limit: (d) => limit(d.parameters.settings),
  limitIs: 'least',
})

const holdFactor = (s: Settings) => s.screws['hold-factor']
const strengthFactor = (s: Settings) => s.screws['strength-factor']

/** How the bit is held, and what that asks of bit, screws and wall. */
export const clampingFigures: readonly Figure<HeadDesign>[] = [
  {
    ...clamping(
      'clamp.torque',
      'Tighten each set screw with',
      'torque',
      'seating torque in the table of set screws, or your own',
      (c) => c.tightening.torque,
    ),
    limit: (d) => clampingOf(d).tightening.largest,
    limitIs: 'most',
  },
  clamping('clamp.screw-force', 'Force of a set screw', 'force', screwSource, (c) => c.screwForce.nominal),
  clamping(
    'clamp.screw-least',
    'The same at its least: what has to hold counts on it',
    'force',
    screwSource,
    (c) => c.screwForce.least,
  ),
  clamping(
    'clamp.screw-most',
    'The same at its most: what may break is judged by it',
    'force',
    screwSource,
    (c) => c.screwForce.most,
  ),
  ofBit(
    'clamp.overhang',
    'Bit unsupported, tip to its wall at the slot floor',
    'length',
    'geometry of bar, slot and bit',
    (b) => b.overhang,
  ),
  ofBit(
    'clamp.grip',
    'Bit held by its wall over its whole height',
    'length',
    'geometry of bar, slot and bit',
    (b) => b.support.grip,
  ),
  atLeast(
    ofBit('clamp.grip-ratio', 'Bit held over bit that stands out', 'ratio', 'rule of thumb', (b) => b.grip.ratio),
    (s) => s.screws['grip-caution'],
  ),
  ofBit(
    'clamp.screws-on-bit',
    'Set screws that stand on the bit',
    'count',
    'geometry of bar, slot and bit',
    (b) => b.row.countOnBit,
  ),
  atMost(
    ofBit(
      'clamp.stress',
      'Bending stress in the bit where it is held',
      'pressure',
      beam,
      (b) => b.bending?.atWall.stress,
    ),
    (s) => s.running['bit-stress'],
  ),
  atMost(
    ofBit(
      'clamp.deflection',
      'Deflection of the tip in the cut',
      'length',
      `${beam}; its ground part as thin as at its end`,
      (b) => b.bending?.deflection,
    ),
    (s) => s.running['tip-deflection'],
  ),
  ofBit(
    'clamp.largest-overhang',
    'Unsupported length of a full bit at which stress and deflection are just kept',
    'length',
    beam,
    (b) => b.bending?.atWall.largestOverhang,
  ),
  atLeast(
    ofBit(
      'clamp.prying',
      'Screws over cutting force, prying the bit off its wall',
      'ratio',
      'moments about the edge of the wall that the bit turns about',
      (b) => b.prying?.factor,
    ),
    holdFactor,
  ),
  atLeast(
    ofBit(
      'clamp.prying-one-loose',
      'The same with the best screw loose',
      'ratio',
      'moments about the edge of the wall that the bit turns about',
      (b) => b.prying?.factorBestMissing,
    ),
    holdFactor,
  ),
  ofBit('clamp.friction', 'Friction that holds the bit', 'force', friction, (b) => b.hold.friction),
  atLeast(
    ofBit(
      'clamp.hold-outward',
      'Hold outwards along the bit, times what pulls',
      'ratio',
      friction,
      (b) => b.hold.outward.factor,
    ),
    holdFactor,
  ),
  atLeast(
    ofBit(
      'clamp.hold-inward',
      'Hold inwards along the bit, times what pushes',
      'ratio',
      friction,
      (b) => b.hold.inward.factor,
    ),
    holdFactor,
  ),
  atLeast(
    ofBit(
      'clamp.hold-out-of-slot',
      'Hold out of the slot, times what pulls',
      'ratio',
      friction,
      (b) => b.hold.outOfSlot.factor,
    ),
    holdFactor,
  ),
  clamping(
    'clamp.wall-stress',
    'Bending stress in the wall that the screws go through',
    'pressure',
    'cantilever under all screws at their most, spread at 45° (rule of thumb)',
    (c) => c.wall?.stress,
  ),
  atLeast(
    clamping(
      'clamp.wall-factor',
      'Strength of that wall over its stress',
      'ratio',
      'yield strength, of a brittle body tensile strength: materials table',
      (c) => c.wall?.factor,
    ),
    strengthFactor,
  ),
  clamping(
    'clamp.thread',
    'Whole thread engaged',
    'length',
    'wall or screw, the shorter, less what countersink and bevels take',
    (c) => c.thread?.engagement,
  ),
  atLeast(
    clamping(
      'clamp.thread-factor',
      'Stripping of that thread over the largest screw force',
      'ratio',
      'shear areas of the basic 60° profile (ISO 68-1), shear strength by distortion energy',
      (c) => c.thread?.factor,
    ),
    strengthFactor,
  ),
  {
    id: 'clamp.bit-mass-radius',
    label: 'Centre of mass of the bit from the spindle axis',
    kind: 'length',
    source: 'exact from its flat faces',
    of: (d) => bitMassOf(d).centroid[0],
  },
]

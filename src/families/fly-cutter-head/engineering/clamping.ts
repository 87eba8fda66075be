import type { Problem } from '../../../input/problem.ts'
import { type BitBending, bitBending } from '../../../mechanics/clamping/bit-bending.ts'
import { type BitHold, bitHold } from '../../../mechanics/clamping/bit-hold.ts'
import { type BitSupport, bitSupport } from '../../../mechanics/clamping/bit-support.ts'
import { type GripRatio, gripRatio } from '../../../mechanics/clamping/grip-ratio.ts'
import { type Prying, prying } from '../../../mechanics/clamping/prying.ts'
import { type ScrewForce, screwForce } from '../../../mechanics/clamping/screw-force.ts'
import { type ScrewRow, screwRow } from '../../../mechanics/clamping/screw-row.ts'
import { type ScrewWall, screwWall } from '../../../mechanics/clamping/screw-wall.ts'
import {
  type ThreadEngagement,
  threadEngagement,
  threadEngagementRules,
} from '../../../mechanics/clamping/thread-engagement.ts'
import { type Tightening, tightening } from '../../../mechanics/clamping/tightening.ts'
import type { CuttingForce } from '../../../mechanics/cutting/cutting-force.ts'
import type { HeadDesign } from '../design.ts'
import { halfLengthAt } from '../section.ts'
import { groundRunOf, groundSectionOf } from './angles.ts'
import { certain } from './certain.ts'
import { cuttingOf } from './cutting.ts'
import { bitMassOf } from './mass.ts'
import { underPaths } from './problem-paths.ts'

/** How the bit is held, and what that asks of bit, screws and wall. */
export interface Clamping {
  readonly tightening: Tightening
  /** Of one screw. */
  readonly screwForce: ScrewForce
  /** Undefined where no wall backs the bit, which a stop tells of. */
  readonly held: HeldBit | undefined
  /** Undefined where the screws miss their wall or no thread is engaged. */
  readonly wall: ScrewWall | undefined
  readonly thread: ThreadEngagement | undefined
  /** What the wall's stress is held against, MPa: yield strength, of a brittle body its tensile strength. */
  readonly wallStrength: number | undefined
}

export interface HeldBit {
  readonly support: BitSupport
  readonly row: ScrewRow
  readonly grip: GripRatio
  /** Unsupported length that bends, mm: from the tip to the wall, or to the first screw where only screws hold it. */
  readonly overhang: number
  readonly hold: BitHold
  /** Undefined where no cutting force is known. */
  readonly bending: HeadBending | undefined
  readonly prying: Prying | undefined
}

export interface HeadBending {
  /** Of the full section where the bit is held; where it is ground is a matter of its angles. */
  readonly atWall: BitBending
  /** At the tip, mm, the ground part taken as thin throughout as where grinding ends. */
  readonly deflection: number
}

/** Clamping of a design that holds together. */
export const clampingOf = (design: HeadDesign): Clamping => design.once('clamping', () => workOut(design))

/** A screw without any torque to tighten it to, limits that contradict each other. */
export function clampingProblems({ parameters, layout }: HeadDesign): Problem[] {
  const { screws } = parameters.settings
  const problems: Problem[] = []
  const found = tightening(layout.screws.screw, parameters.screws['tightening-torque'])
  if (!found.ok) problems.push(...underPaths(found.problems, [], 'screws.tightening-torque'))
  if (screws['grip-note'] < screws['grip-caution']) {
    problems.push({
      code: 'contradiction',
      where: { file: '', path: 'settings.screws.grip-note' },
      found: 'a grip to note below the grip to caution of',
      allowed: 'no less than grip-caution',
    })
  }
  return problems
}

function workOut(design: HeadDesign): Clamping {
  const { parameters, layout } = design
  const { screws, materials } = layout
  const settings = parameters.settings.screws
  const torque = certain(tightening(screws.screw, parameters.screws['tightening-torque']))
  const force = certain(
    screwForce({
      torque: torque.torque,
      majorDiameter: screws.thread.majorDiameter,
      torqueFactor: settings['torque-factor'],
      shortfall: settings.scatter,
      excess: settings.excess,
    }),
  )
  const { yieldStrength, ultimateStrength } = materials.body
  const wallStrength = yieldStrength ?? ultimateStrength
  const thickness = parameters.step['wall-thickness']
  const end = design.screwWallEnd
  const inWall = screws.xs.filter((x) => Math.abs(x) < end)
  const wall =
    inWall.length === 0
      ? undefined
      : certain(
          screwWall({
            screws: inWall.map((x) => ({ force: force.most, x })),
            wall: { outer: end, inner: -end },
            thickness,
            slotDepth: layout.slot.depth,
            stepDepth: layout.step.depth,
            screwHeight: screws.height,
            screwDiameter: screws.thread.majorDiameter,
            youngsModulus: materials.body.youngsModulus,
            yieldStrength: wallStrength,
          }),
        )
  const thread = certain(
    threadEngagement({
      thread: screws.thread,
      tapDrill: screws.thread.tapDrill,
      wallThickness: thickness,
      screwLength: screws.length,
      incomplete: settings['incomplete-thread'] * screws.thread.pitch,
      screwForce: force.most,
      bodyStrength: ultimateStrength,
      screwStrength: materials.screw.ultimateStrength,
      shearRatio: threadEngagementRules.shearRatio,
      wantedDiameters: materials.body.threadEngagement ?? 1,
    }),
  )
  return {
    tightening: torque,
    screwForce: force,
    held: heldBit(design, force.least),
    wall,
    thread: thread.engagement > 0 ? thread : undefined,
    wallStrength,
  }
}

/** y of the wall that the screws push the bit against. */
const backing = ({ layout: { slot, screws } }: HeadDesign): number =>
  screws.seat === slot.leading ? slot.trailing : slot.leading

function heldBit(design: HeadDesign, screwForce: number): HeldBit | undefined {
  const { parameters, layout } = design
  const { bit, screws, slot, step } = layout
  const settings = parameters.settings.screws
  const wallY = backing(design)
  if (halfLengthAt(parameters.stock, wallY) <= 0) return undefined
  const found = bitSupport({
    section: parameters.stock,
    slotRuns: parameters.stock.shape === 'hexagon' ? parameters.stock['slot-runs'] : 'flat-to-flat',
    wallY,
    faceAngle: layout.faceAngle,
    slotDepth: slot.depth,
    tipX: bit.tipInFace[0],
    bitInnerEnd: bit.innerEnd,
    ...(slot.end && { slotEnd: slot.end.x + slot.end.radius }),
  })
  if (!found.ok || found.value.grip <= 0) return undefined
  const support = found.value
  const wall = { outer: support.outerAtFloor, inner: support.inner }
  const force = cuttingOf(design).load?.force
  const mass = bitMassOf(design)
  // Pushed off its wall by the cut, the bit stands on the points of the screws.
  const overhang = onLeadingSide(design)
    ? support.overhang
    : Math.max(support.overhang, bit.tipInFace[0] - Math.max(...screws.xs))
  const row = certain(
    screwRow({
      xs: screws.xs,
      majorDiameter: screws.thread.majorDiameter,
      pointDiameter: screws.screw.flatPointDiameter,
      keySize: screws.screw.keySize,
      tapDrill: screws.thread.tapDrill,
      wall,
      screwHeight: screws.height,
      stepDepth: step.depth,
    }),
  )
  const bearing = screws.xs.filter((_, i) => row.onBit[i])
  return {
    support,
    row,
    grip: certain(
      gripRatio({
        grip: support.grip,
        overhang: support.overhang,
        cautionBelow: settings['grip-caution'],
        noteBelow: settings['grip-note'],
      }),
    ),
    overhang,
    hold: certain(
      bitHold({
        screwForces: bearing.map(() => screwForce),
        // Of both faces on average: the wall in full, the screws in part.
        friction: (settings.friction * (1 + settings['screw-side'])) / 2,
        bitMass: mass.mass,
        centroidRadius: mass.centroid[0],
        speed: cuttingOf(design).runAt,
        faceAngle: layout.faceAngle,
        radialForce: Math.max(0, force?.radial ?? 0),
        axialForce: force?.axial ?? 0,
        wanted: settings['hold-factor'],
      }),
    ),
    bending: force && bendingOf(design, force, overhang),
    prying:
      force &&
      certain(
        prying({
          screws: bearing.map((x) => ({ force: screwForce, x })),
          side: parameters.step.side,
          wall,
          tipX: bit.tipInFace[0],
          cuttingForce: force.main,
          wanted: settings['hold-factor'],
        }),
      ),
  }
}

export const onLeadingSide = ({ parameters }: HeadDesign): boolean => parameters.step.side === 'leading'

function bendingOf(design: HeadDesign, force: CuttingForce, overhang: number): HeadBending {
  const { running } = design.parameters.settings
  const { bit, materials } = design.layout
  const { width, height } = bit.blank
  const { youngsModulus } = materials.bit
  const atWall = certain(
    bitBending({
      cuttingForce: force.main,
      axialForce: force.axial,
      overhang,
      width,
      height,
      youngsModulus,
      stressLimit: running['bit-stress'],
      deflectionLimit: running['tip-deflection'],
    }),
  )
  const { modulus, blankModulus } = groundSectionOf(design)
  const ground = Math.min(groundRunOf(design), overhang)
  const stiffness = (youngsModulus * height * width ** 3) / 12
  // The modulus goes with the square of what is left of the width, the stiffness with its cube. Where nothing is left
  // there is nothing to bend, and a finding about the facets.
  const softening = modulus > 0 ? (modulus / blankModulus) ** -1.5 - 1 : 0
  const softer = ((force.main * ground ** 3) / (3 * stiffness)) * Math.max(0, softening)
  return { atWall, deflection: Math.hypot(atWall.main.deflection + softer, atWall.axial.deflection) }
}

import type { z } from 'zod'
import type { Rule } from '../checks/rule.ts'
import type { SheetPlan } from '../drawing/plan/sheet-plan.ts'
import type { SheetName } from '../drawing/sheet/sheet-size.ts'
import type { DrawingStyle } from '../drawing/style.ts'
import type { Figure } from '../figures/figure.ts'
import type { Measuring } from '../figures/measuring.ts'
import type { Pictures } from '../figures/pictures.ts'
import type { TableOf } from '../figures/table.ts'
import type { Frame } from '../geometry/frame.ts'
import type { Solid } from '../geometry/solid.ts'
import type { Problem, Result } from '../input/problem.ts'
import type { MadeLine } from '../measured/as-made.ts'
import type { Repair } from '../measured/repair.ts'
import type { Dimension } from '../part/dimension.ts'
import type { Part } from '../part/part.ts'
import type { Scene } from '../part/scene.ts'
import type { Walls } from '../part/wall.ts'
import type { SetUp } from '../profiles/profile.ts'
import type { Units } from '../quantity/kind.ts'
import type { Operation, WorkSetUp } from '../route/operation.ts'
import type { Volume } from '../solid/volume.ts'
import type { Tables } from '../tables/read-tables.ts'

/** What every design offers, whatever its family: solid, report and package ask for no more. */
export interface Design {
  readonly parameters: CommonParameters
  readonly tables: Tables
  readonly units: Units
  readonly scene: Scene
  /** Walls of the part that is milled. */
  readonly walls: Walls
  part(id: string): Part
  volume(partId: string): Volume
  mass(partId: string): number
}

export interface CommonParameters {
  readonly family: string
  readonly title: string
  readonly units: Units
  readonly rotation: 'clockwise' | 'anticlockwise'
  readonly 'drawing-number'?: string | undefined
  readonly drawing: {
    readonly sheet: SheetName
    readonly projection: 'first-angle' | 'third-angle'
    readonly 'shown-in': 'file-units' | 'mm' | 'in' | 'both'
  }
  readonly 'mock-up': { readonly scale: number }
  readonly settings: { readonly 'chord-tolerance': number }
}

/** A kind of tool: its parameters, how a design follows from them, what is computed and what is checked. */
export interface Family<Parameters extends CommonParameters, D extends Design> {
  readonly name: string
  /** One line for lists of families. */
  readonly says: string
  schema(units: Units): z.ZodType<Parameters>
  /** Problems have paths without lines: `where.file` is empty. */
  build(parameters: Parameters, tables: Tables): Result<D>
  /** The parameters with everything filled in that was left out and followed from the rest. */
  filledIn(design: D): Parameters
  readonly rules: readonly Rule<D>[]
  readonly figures: readonly Figure<D>[]
  /** Ids of the figures that a sweep shows unless others are asked for. */
  readonly sweepFigures: readonly string[]
  readonly tables: readonly TableOf<D>[]
  /** Drawings, in the order in which a shop wants them. */
  sheets(design: D, style: DrawingStyle): readonly SheetPlan[]
  /** Named sizes that belong to no part: of the tool put together, and of set-ups, by what they are of. */
  furtherDimensions(design: D): readonly { readonly of: string; readonly dimensions: readonly Dimension[] }[]
  /** What CAM cuts, set-up by set-up: outlines of the milled part's features. */
  profiles(design: D): readonly SetUp[]
  /** Every step of the work, in order, and the clampings that they are done in. */
  route(design: D): readonly Operation[]
  setUps(design: D): readonly WorkSetUp[]
  /** How every named size is measured. */
  measuring(design: D): readonly Measuring[]
  /** The tool with sizes as they came out (mm or rad, by `part dimension`); problems have that as their path. */
  asMade(design: D, sizes: ReadonlyMap<string, number>): Result<D>
  /** Whether a parameter can still be chosen when these sizes are made. */
  stillOpen(sizes: ReadonlyMap<string, number>): (path: string) => boolean
  /** What can still be done with a tool as it was made, the cheapest first: as it is comes before all others. */
  repairs(made: D, designed: D, lines: readonly MadeLine[]): readonly Repair[]
  /** What is printed to try fit, reach and hand; never to be run under power. */
  mockUp(design: D): readonly MockUpBody[]
  /** Geometry that the report draws. */
  pictures(design: D): Pictures
  /** Least metal wanted between two cuts of the milled part, mm, for the list of walls. */
  leastWall(design: D, a: string, b: string): number
}

/** A body of the mock-up and how it lies to be printed: the z of `up` points away from the bed. */
export interface MockUpBody {
  readonly id: string
  readonly label: string
  readonly solid: Solid
  readonly up: Frame
}

export type AnyFamily = Family<CommonParameters, Design>

/** Gives problems of a design the file and line of the parameter they are about. */
export const located = (
  problems: readonly Problem[],
  file: string,
  locate: (path: string) => { line: number; column: number },
): Problem[] =>
  problems.map((p) => ({ ...p, where: { ...p.where, file, ...(p.where.path !== undefined && locate(p.where.path)) } }))

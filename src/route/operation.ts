import type { Amount } from '../checks/finding.ts'
import type { Frame } from '../geometry/frame.ts'

/** Where an operation is done. `spindle`: the tool itself runs in the mill's spindle. */
export type Machine = 'saw' | 'lathe' | 'mill' | 'press' | 'bench' | 'spindle'

/** What cuts. */
export interface RouteTool {
  /** As the trade asks for it: `end mill ⌀8 mm`. */
  readonly name: string
  /** mm */
  readonly diameter?: number
  /** How far it must stand out of its holder, mm. */
  readonly reachNeeded?: number
  /** How far the one in the shop's list does; undefined: not in the list. */
  readonly reach?: number
}

/** How fast it turns and travels. */
export interface RouteSpeed {
  /** rad/s: a speed that the machine has, or (`atMost`) where its speeds are not known the most it should turn. */
  readonly turns: number
  readonly atMost: boolean
  /** Of the edge or the work at that speed, mm/s. */
  readonly surface: number
  /** Of the table, mm/s, or by hand where it is undefined. */
  readonly feed?: number
  /** mm a turn. */
  readonly feedPerTurn?: number
}

/** A place the readout shows, mm in the frame of the set-up; an axis that does not matter is left out. */
export interface Place {
  readonly name: string
  readonly x?: number
  readonly y?: number
  /** Below the zero of the set-up, into the metal. */
  readonly z?: number
}

/** Travel of the table along a cut, mm. */
export interface Travel {
  readonly approach: number
  readonly cut: number
  readonly overrun: number
}

/** A named size of a part that is measured here. */
export interface MeasuredSize {
  readonly part: string
  readonly dimension: string
}

/** One step of the work. */
export interface Operation {
  /** Unique: `slot-walls`. */
  readonly id: string
  readonly title: string
  /** Id of its set-up: what is held, on which surfaces, zeroed on what. */
  readonly setUp: string
  readonly machine: Machine
  /** What is done, in order. */
  readonly steps: readonly string[]
  readonly tool?: RouteTool
  readonly speed?: RouteSpeed
  /** Cut in all, mm, and in how many passes. */
  readonly depth?: number
  readonly passes?: number
  readonly travel?: Travel
  readonly places: readonly Place[]
  readonly measure: readonly MeasuredSize[]
  /** Why it stands here in the order. */
  readonly why: string
  /** Operations that must be done before. */
  readonly needs: readonly string[]
  readonly cautions: readonly string[]
}

/** A figure of a set-up, and what it is held against. */
export interface SetUpFigure {
  readonly id: string
  readonly label: string
  readonly amount: Amount
  readonly limit?: { readonly amount: Amount; readonly is: 'least' | 'most' }
}

/** One clamping of the work (`profiles` has a clamping as CAM sees it; this is how a person sets it up). */
export interface WorkSetUp {
  /** Unique: `tilted`. */
  readonly id: string
  readonly title: string
  /** Tilt of the part's axis away from the spindle's, rad. */
  readonly tilt: number
  /** What is held, and on which surfaces. */
  readonly held: string
  /** What it is zeroed and squared on, and which way the axes count. */
  readonly datum: string
  /** Frame of the readout in the part's frame: z into the metal, x and y as `datum` says. Undefined: no coordinates. */
  readonly frame?: Frame
  readonly figures: readonly SetUpFigure[]
  /** How it is set, in order, and where things come near each other. */
  readonly notes: readonly string[]
}

/** An operation with what many do not have left out. */
export const operation = (
  given: Omit<Operation, 'places' | 'measure' | 'cautions' | 'needs'> &
    Partial<Pick<Operation, 'places' | 'measure' | 'cautions' | 'needs'>>,
): Operation => ({ places: [], measure: [], cautions: [], needs: [], ...given })

import type { Cell } from '../geometry/cell.ts'
import type { Frame } from '../geometry/frame.ts'
import type { Dimension } from './dimension.ts'

/** What a feature is for. Checks, drawings and set-ups ask for roles, never for a family's own names. */
export type Role =
  | 'stock'
  | 'datum-face'
  | 'tool-face'
  | 'bit-seat'
  | 'screw-step'
  | 'clamp-screw'
  | 'fit-bore'
  | 'lead-in'
  | 'vent'
  | 'spigot'
  | 'shoulder'
  | 'shank'
  | 'bit'
  | 'screw'

/** A thread is a mark on a round face, never geometry: the hole is modelled at its tap drill's size. */
export interface ThreadMark {
  readonly name: string
  /** mm */
  readonly majorDiameter: number
  readonly pitch: number
  readonly tapDrill: number
}

/** A parameter by its dotted path, and the way to turn it. */
export interface Lever {
  readonly path: string
  readonly turn: 'up' | 'down'
}

/** A stretch of metal added to a part (role `stock`, `spigot`, …) or taken away from it, and what goes with it. */
export interface Feature {
  readonly id: string
  readonly label: string
  readonly role: Role
  /** Convex pieces; the feature is their union. */
  readonly cells: readonly Cell[]
  /** Frame it is laid out and machined in, in the part's frame. */
  readonly frame: Frame
  /**
   * What it is meant to open into: features by id, outer faces of the stock by name, `outside` for all of those. A
   * contact that is not named here, on either side, is a wall that must hold.
   */
  readonly opensInto: readonly string[]
  /** Parameters that move or size it, and which way each must change for it to take less metal: for remedies. */
  readonly governedBy: readonly Lever[]
  readonly dimensions: readonly Dimension[]
  readonly thread?: ThreadMark
}

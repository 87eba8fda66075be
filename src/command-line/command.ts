import type { Problem } from '../input/problem.ts'
import type { World } from './world.ts'

/** One command: what help says about it, what it accepts, what it does. */
export interface Command {
  readonly name: string
  /** One line for the list of commands. */
  readonly says: string
  /** What comes without dashes, in order. */
  readonly operands: readonly Operand[]
  readonly options: readonly Option[]
  /** Further paragraphs of its help. */
  readonly details: readonly string[]
  /** Without the name of the program. */
  readonly example: string
  /** What its exit status says, where that is not the usual. */
  readonly exits?: string
  run(given: Arguments, world: World): Promise<Outcome> | Outcome
}

export interface Operand {
  readonly name: string
  readonly says: string
  readonly optional?: true
}

export interface Option {
  /** With its dashes: `--out`. */
  readonly name: string
  readonly says: string
  /** How its value is called; without one the option is a switch. */
  readonly value?: string
  readonly choices?: readonly string[]
  /** No value of it begins with a dash, so that none is advised. */
  readonly undashed?: true
  /** May be given more than once: all its values are in `repeated`. */
  readonly repeats?: true
}

/** Arguments that fit a command. */
export interface Arguments {
  readonly operands: readonly string[]
  /** Value by option name. */
  readonly values: ReadonlyMap<string, string>
  /** Values of options that may be given more than once, in their order. */
  readonly repeated: ReadonlyMap<string, readonly string[]>
  /** Switches that were given. */
  readonly switches: ReadonlySet<string>
}

/** How a command ended: it did its work (1: there is a stop), or could not, and why. */
export type Outcome = { readonly ok: true; readonly exit: 0 | 1 } | Unable

export interface Unable {
  readonly ok: false
  readonly problems: readonly Problem[]
  /** Texts of the files that problems are about, by the name the user gave. */
  readonly texts?: ReadonlyMap<string, string>
}

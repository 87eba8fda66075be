/** The one shape of an error in what the user gave us. It is a value up to the edge, which words and prints it. */
export interface Problem {
  readonly code: ProblemCode
  readonly where: Where
  /** What stands there now, quoted as the user wrote it. */
  readonly found: string
  /** What may stand there. */
  readonly allowed: string
  /** What to do about it, where that is known (the nearest key, the other unit). */
  readonly remedy?: string
}

export interface Where {
  /** File as the user named it; `(standard input)` where there is none. */
  readonly file: string
  /** Line and column, counted from 1. */
  readonly line?: number
  readonly column?: number
  /** Dotted path of the value: `screws.count`. */
  readonly path?: string
}

export type ProblemCode =
  | 'file-missing'
  | 'file-not-readable'
  | 'not-a-file'
  | 'file-too-large'
  | 'file-empty'
  | 'not-text'
  | 'not-yaml'
  | 'duplicate-key'
  | 'alias-not-allowed'
  | 'too-deep'
  | 'unknown-key'
  | 'missing-key'
  | 'wrong-kind'
  | 'wrong-unit'
  | 'not-a-quantity'
  | 'out-of-range'
  | 'unknown-choice'
  | 'not-in-table'
  | 'contradiction'
  | 'target-not-ours'
  | 'target-changed'
  | 'target-busy'
  | 'not-writable'
  | 'bad-command'
  | 'unsound-solid'
  | 'no-room'

/** A value, or everything that is wrong with the input (never an empty list). */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: Problem[] }

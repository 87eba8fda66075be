/** The clampings of a head and its arbor, by the names that operations use. */
export type SetUpId =
  | 'saw'
  | 'first-end'
  | 'mounting'
  | 'balance'
  | 'wedge'
  | 'tilted'
  | 'laid'
  | 'arbor'
  | 'joining'
  | 'pinning'
  | 'bench'
  | 'spindle'

/** A dimension found no clear place at this scale: the sheet is to be tried at another one, or on larger paper. */
export class NoRoom extends RangeError {
  constructor(what: string) {
    super(`no room for ${what}`)
  }
}

import { type DrawnSize, drawnSize } from './drawn-size.ts'
import { SizeFault } from './rebuilt-body.ts'

/** A size that a drawing names, and what it writes there. */
export interface WrittenSize {
  readonly name: string
  readonly text: string
}

/** The sizes of a drawing for whoever makes the part: each must be there when it is asked for, and none may be left. */
export class SizesRead {
  private readonly sizes: ReadonlyMap<string, DrawnSize>
  private readonly used = new Set<string>()

  constructor(written: readonly WrittenSize[], unit: 'mm' | 'in') {
    this.sizes = new Map(written.map((d) => [d.name, drawnSize(d.text, unit)]))
  }

  has(id: string): boolean {
    return this.sizes.has(id)
  }

  /** mm, or degrees; of a metric thread its outside diameter. Throws `SizeFault` where it is not dimensioned. */
  value(id: string): number {
    const found = this.sizes.get(id)
    if (!found) throw new SizeFault(`${id} is not dimensioned`)
    this.used.add(id)
    return found.thread === undefined ? found.value : Number.parseFloat(found.thread.replace('M', ''))
  }

  /** For what a part need not have: 0 where it is not dimensioned. */
  valueOr0(id: string): number {
    return this.has(id) ? this.value(id) : 0
  }

  /** Throws `SizeFault` for a size that was never asked for. */
  done(): void {
    for (const id of this.sizes.keys()) if (!this.used.has(id)) throw new SizeFault(`${id} means nothing`)
  }
}

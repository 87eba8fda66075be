import { dimensionText, type Size, type SizeUnits } from '../../../drawing/dimensions/dimension-text.ts'
import { type DimensionRequest, measureOf } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import type { Dimension } from '../../../part/dimension.ts'
import { featuresOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { sheetUnits } from '../words.ts'

/** What a request needs besides the dimension it shows. */
type Bare<R> = R extends DimensionRequest ? Omit<R, 'id' | 'text' | 'value'> : never

/** Named dimensions of one part, or of the parts together, to be put on views one by one. */
export class Sizes {
  private readonly units: SizeUnits
  private readonly byId: ReadonlyMap<string, Dimension>

  constructor(design: HeadDesign, of: string | readonly Dimension[]) {
    this.units = sheetUnits(design)
    const dimensions = typeof of === 'string' ? featuresOf(design.part(of)).flatMap((f) => f.dimensions) : of
    this.byId = new Map(dimensions.map((d) => [d.id, d] as const))
  }

  has(id: string): boolean {
    return this.byId.has(id)
  }

  /** How the trade writes a thread of the part, its hand with it. */
  threadOf(id: string): string | undefined {
    return this.byId.get(id)?.thread
  }

  /**
   * The request that shows a named dimension there; none where the part has no such dimension. A length or angle that is
   * nothing is written beside its place, with its name; one that runs the other way is written without its sign.
   */
  at(id: string, where: Bare<DimensionRequest>, extra: Partial<Size> = {}): DimensionRequest[] {
    const dimension = this.byId.get(id)
    if (!dimension) return []
    const { tolerance, measurable, fitCode } = dimension
    const value = where.kind === 'ordinate' ? dimension.value : Math.abs(dimension.value)
    const kind = where.kind === 'chamfer' ? 'chamfer' : dimension.kind
    const size: Size = { kind, value, tolerance, measurable, ...(fitCode !== undefined && { fitCode }), ...extra }
    const text = dimensionText(size, this.units)
    if (value < nothing && (where.kind === 'linear' || where.kind === 'angle')) {
      return this.said(id, where.to)
    }
    // Coordinates and threads are told by their points; the rest by the value itself.
    const bare = { ...where, id, text, value } as DimensionRequest
    return [{ ...bare, value: where.kind === 'ordinate' ? measureOf(bare) : value }]
  }

  /** The same in words with its name, at a leader to its place, where it cannot be drawn between two points. */
  said(id: string, to: Point, toward?: number): DimensionRequest[] {
    const dimension = this.byId.get(id)
    if (!dimension) return []
    const { kind, value, tolerance, measurable, label } = dimension
    const [text] = dimensionText({ kind, value: Math.abs(value), tolerance, measurable }, this.units)
    return [{ kind: 'note', id, text: [`${text!} ${label}`], value: 0, to, ...(toward !== undefined && { toward }) }]
  }
}

/** A size below this, mm or rad, has no two ends to be drawn between. */
const nothing = 1e-9

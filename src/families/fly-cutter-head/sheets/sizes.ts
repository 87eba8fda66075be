import { dimensionText, type Size, type SizeUnits } from '../../../drawing/dimensions/dimension-text.ts'
import { type DimensionRequest, measureOf } from '../../../drawing/dimensions/request.ts'
import type { Dimension } from '../../../part/dimension.ts'
import { featuresOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'

/** What a request needs besides the dimension it shows. */
type Bare<R> = R extends DimensionRequest ? Omit<R, 'id' | 'text' | 'value'> : never

/** Named dimensions of one part, to be put on views one by one. */
export class Sizes {
  private readonly units: SizeUnits
  private readonly byId: ReadonlyMap<string, Dimension>

  constructor(design: HeadDesign, part: string) {
    this.units = sheetUnits(design)
    this.byId = new Map(featuresOf(design.part(part)).flatMap((f) => f.dimensions.map((d) => [d.id, d] as const)))
  }

  has(id: string): boolean {
    return this.byId.has(id)
  }

  /** The request that shows a named dimension there; none where the part has no such dimension. */
  at(id: string, where: Bare<DimensionRequest>, extra: Partial<Size> = {}): DimensionRequest[] {
    const dimension = this.byId.get(id)
    if (!dimension) return []
    const { value, tolerance, measurable, fitCode } = dimension
    const kind = where.kind === 'chamfer' ? 'chamfer' : dimension.kind
    const size: Size = { kind, value, tolerance, measurable, ...(fitCode !== undefined && { fitCode }), ...extra }
    const text = dimensionText(size, this.units)
    // Coordinates and threads are told by their points; the rest by the value itself.
    const bare = { ...where, id, text, value } as DimensionRequest
    return [{ ...bare, value: where.kind === 'ordinate' ? measureOf(bare) : value }]
  }
}

/** How figures are written on the sheets. */
export function sheetUnits({ parameters }: HeadDesign): SizeUnits {
  const shown = parameters.drawing['shown-in']
  const units = shown === 'mm' || shown === 'in' ? shown : parameters.units
  return { units, both: shown === 'both', fractions: true }
}

import type { Problem, Result } from '../../input/problem.ts'
import { boxOf } from '../dimensions/room.ts'
import { segmentsOf } from '../dimensions/sketch.ts'
import type { Entity, Point } from '../entity.ts'
import { placed } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { drawingArea, sheetFrame } from '../sheet/frame.ts'
import type { Projection } from '../sheet/projection-symbol.ts'
import { scaleText, standardScales } from '../sheet/scale.ts'
import type { Sheet, View } from '../sheet/sheet.ts'
import { type SheetName, type SheetSize, sheetSizes } from '../sheet/sheet-size.ts'
import { type TitleBlock, titleBlock, titleBlockHeight, titleBlockWidth } from '../sheet/title-block.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import { setBlock } from './blocks.ts'
import { type Extent, Pages } from './pack.ts'
import { type SetView, setGroup, setView, viewAt } from './set-view.ts'
import type { SheetPlan, ViewPlan } from './sheet-plan.ts'

/** What all sheets of a design say alike. */
export interface SheetFacts {
  readonly title: string
  readonly drawingNumber: string
  readonly units: string
  readonly generalTolerance: string
  readonly revision: string
  readonly projection: Projection
  /** Why the job must not be made, in words; absent where nothing stops it. */
  readonly stop?: string
}

/** The sheets of one plan, in order. */
export interface Drawing {
  readonly plan: SheetPlan
  readonly sheets: readonly Sheet[]
}

/** Room between views and blocks, mm on paper. */
const gap = 7
/** How much of the shorter side of a sheet the largest view should take (common practice, no source). */
const share = 0.3
/** The next larger sheet of the same row, for what does not fit. */
const larger: Readonly<Partial<Record<SheetName, SheetName>>> = { A4: 'A3', letter: 'tabloid' }

/**
 * Arranges plans on sheets of paper of the size wanted: each at the largest standard scale at which its views fill the
 * sheet, on as many sheets as that takes. Where a single group has no room at any scale it comes on the next larger sheet.
 * Problem `no-room`: where it has none there either.
 */
export function composeSheets(
  plans: readonly SheetPlan[],
  paper: SheetName,
  facts: SheetFacts,
  style: DrawingStyle,
  font: Font,
): Result<Drawing[]> {
  const problems: Problem[] = []
  const arranged = plans.flatMap((plan) => {
    for (let name: SheetName | undefined = paper; name !== undefined; name = larger[name]) {
      const found = arrange(plan, sheetSizes[name], facts, style, font)
      if (found) return [found]
    }
    const where = { file: `${plan.id} drawing`, path: 'drawing.sheet' }
    problems.push({ code: 'no-room', where, found: paper, allowed: 'a larger sheet' })
    return []
  })
  if (problems.length > 0) return { ok: false, problems }
  const total = arranged.reduce((sum, { pages }) => sum + pages.length, 0)
  let number = 0
  return {
    ok: true,
    value: arranged.map(({ plan, size, scale, pages }) => ({
      plan,
      sheets: pages.map(({ views, entities }, i): Sheet => {
        number++
        const block: TitleBlock = {
          ...facts,
          part: pages.length === 1 ? plan.part : `${plan.part} (${i + 1} of ${pages.length})`,
          material: plan.material,
          mass: plan.mass,
          scale: scale === undefined ? '–' : scaleText(scale),
          sheet: number,
          sheets: total,
        }
        return {
          id: i === 0 ? plan.id : `${plan.id}-${i + 1}`,
          title: plan.part,
          size,
          entities: [...sheetFrame(size), ...titleBlock(block, size, style, font), ...entities],
          views,
        }
      }),
    })),
  }
}

interface Page {
  readonly views: View[]
  readonly entities: Entity<LayerName>[]
}

interface Arranged {
  readonly plan: SheetPlan
  readonly size: SheetSize
  /** Absent where a plan has no views. */
  readonly scale?: number
  readonly pages: readonly Page[]
}

function arrange(
  plan: SheetPlan,
  size: SheetSize,
  facts: SheetFacts,
  style: DrawingStyle,
  font: Font,
): Arranged | undefined {
  const views = plan.groups.flatMap((g) => g.rows.flat()).filter((v) => v !== undefined)
  if (views.length === 0) {
    const pages = pagesAt(plan, 1, size, facts, style, font)
    return pages && { plan, size, pages }
  }
  const most = share * Math.min(size.width, size.height)
  const largest = Math.max(...views.filter((v) => v.pictorial !== true).map(extentOf))
  for (const scale of standardScales) {
    if (scale * largest > most && scale !== standardScales.at(-1)) continue
    const pages = pagesAt(plan, scale, size, facts, style, font)
    if (pages) return { plan, size, scale, pages }
  }
  return undefined
}

/** Larger side of a view's line work at the sheet's scale, mm of the model. */
function extentOf(view: ViewPlan): number {
  const { low, high } = boxOf(segmentsOf(view.lines).flat())
  return Math.max(high[0] - low[0], high[1] - low[1]) * (view.enlarged ?? 1)
}

/** Everything of a plan on pages at one scale; undefined where a group has no room on an empty page. */
function pagesAt(
  plan: SheetPlan,
  scale: number,
  size: SheetSize,
  facts: SheetFacts,
  style: DrawingStyle,
  font: Font,
): Page[] | undefined {
  const area = drawingArea(size, 0, style)
  const blockHigh = titleBlockHeight(facts)
  const corner: Point = [size.width - size.margins.right - titleBlockWidth, size.margins.bottom]
  const title = { low: corner, high: [corner[0] + titleBlockWidth, corner[1] + blockHigh] as Point }
  const pages = new Pages(area, [title], gap)
  const out: Page[] = []
  const onPage = (k: number): Page => (out[k] ??= { views: [], entities: [] })
  const set = (view: ViewPlan): SetView => setView(view, scale, style, font)
  for (const group of plan.groups) {
    const { width, height, views } = setGroup(group, set)
    const spot = pages.put([width, height])
    if (!spot) return undefined
    for (const { view, at } of views)
      onPage(spot.page).views.push(viewAt(view, [spot.at[0] + at[0], spot.at[1] + at[1]]))
  }
  const widest = area.high[0] - area.low[0]
  for (const block of plan.blocks) {
    const { width, height, entities } = setBlock(block, widest, style, font)
    const extent: Extent = [width, height]
    const spot = pages.put(extent)
    if (!spot) return undefined
    onPage(spot.page).entities.push(...entities.map((e) => placed(e, 1, spot.at)))
  }
  return out
}

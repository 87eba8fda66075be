import type { Problem, Result } from '../../input/problem.ts'
import { NoRoom } from '../dimensions/no-room.ts'
import type { Box } from '../dimensions/room.ts'
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
import { type SetBlock, setBlock } from './blocks.ts'
import { largestOf, withDetails } from './details.ts'
import { type Extent, type Packed, packedBest } from './pack.ts'
import { type SetGroup, setGroup, setView, viewAt } from './set-view.ts'
import type { SheetPlan, ViewGroup } from './sheet-plan.ts'

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
  /** Short words below the frame of every sheet, at the left. */
  readonly below?: string
}

/** The sheets of one plan, in order. */
export interface Drawing {
  readonly plan: SheetPlan
  readonly sheets: readonly Sheet[]
}

/** Room between views and blocks, mm on paper; the smaller one where it saves a sheet. */
const gaps: readonly number[] = [8, 5]
/** How much of the shorter side of a sheet the largest view may take (common practice, no source). */
const share = 0.36
/** How much it must take where a smaller scale saves a sheet (common practice, no source). */
const least = 0.15
/** How much of the shorter side of what can be drawn on the largest detail may take: its sizes stand round it. */
const detailShare = 0.65
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
    const tried: SheetName[] = []
    for (let name: SheetName | undefined = paper; name !== undefined; name = larger[name]) {
      tried.push(name)
      const found = arrange(plan, sheetSizes[name], facts, style, font)
      if (found) return [found]
    }
    const where = { file: `${plan.id} drawing`, path: 'drawing.sheet' }
    problems.push({
      code: 'no-room',
      where,
      found: `a part that has no room on ${tried.join(' or ')} at any scale`,
      allowed: 'sizes that can be drawn beside each other: the largest and the smallest lie too far apart',
    })
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
          entities: [
            ...sheetFrame(size),
            ...titleBlock(block, size, style, font),
            ...(facts.below === undefined ? [] : [belowFrame(facts.below, size, style)]),
            ...entities,
          ],
          views,
        }
      }),
    })),
  }
}

const belowFrame = (text: string, { margins }: SheetSize, style: DrawingStyle): Entity<LayerName> => ({
  kind: 'text',
  layer: 'text',
  at: [margins.left, margins.bottom / 2],
  text,
  height: style.textHeight,
  across: 'left',
  up: 'middle',
  rotation: 0,
})

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
  const area = drawingArea(size, 0, style)
  const corner: Point = [size.width - size.margins.right - titleBlockWidth, size.margins.bottom]
  const high = titleBlockHeight(facts, style, font)
  const title: Box = { low: corner, high: [corner[0] + titleBlockWidth, corner[1] + high] }
  if (plan.groups.length === 0) {
    const pages = pagesAt(plan, 1, area, title, style, font)
    return pages && { plan, size, pages }
  }
  const shorter = Math.min(size.width, size.height)
  const most = (plan.share ?? share) * shorter
  const largest = Math.max(
    ...plan.groups
      .flatMap((g) => g.rows.flat())
      .flatMap((v) => (v === undefined || v.pictorial === true ? [] : [largestOf(v.lines) * (v.enlarged ?? 1)])),
  )
  const at = (scale: number): Arranged | undefined => {
    const pages =
      pagesAt(plan, scale, area, title, style, font) ?? pagesAt(apart(plan), scale, area, title, style, font)
    return pages && { plan, size, scale, pages }
  }
  let found: Arranged | undefined
  const fill = standardScales.filter((s) => s * largest <= most)
  for (const scale of fill) {
    // Smaller only where nothing was found, or where views that still fill a good part of the sheet save paper.
    if (found && (found.pages.length <= 2 || scale < 1 || scale * largest < least * shorter)) break
    const next = at(scale)
    if (next && (!found || next.pages.length < found.pages.length)) found = next
  }
  if (found) return found
  // Views that take more of the sheet than is pleasant are better than none.
  for (const scale of standardScales.slice(0, standardScales.length - fill.length).reverse()) {
    if (scale * largest > Math.max(size.width, size.height)) return undefined
    const next = at(scale)
    if (next) return next
  }
  return undefined
}

/** Every view by itself, told by its caption: where views that are folded out of one another have no room together. */
const apart = (plan: SheetPlan): SheetPlan => ({
  ...plan,
  groups: plan.groups.flatMap((g) => g.rows.flat().flatMap((view) => (view ? [{ rows: [[view]] }] : []))),
})

/** Widths in which notes may be set, mm, the best to read first. */
const noteWidths: readonly number[] = [110, 80, 165]

/** Everything of a plan on pages at one scale; undefined where something has no room on an empty page. */
function pagesAt(
  plan: SheetPlan,
  scale: number,
  area: Box,
  title: Box,
  style: DrawingStyle,
  font: Font,
): Page[] | undefined {
  const [width, height] = [area.high[0] - area.low[0], area.high[1] - area.low[1]]
  const groups = withDetails(plan.groups, scale, detailShare * Math.min(width, height))
  const views: SetGroup[] = []
  for (const group of groups) {
    const made = settled(group, scale, style, font)
    if (!made || made.width > width || made.height > height) return undefined
    views.push(made)
  }
  // A pictorial view at the scale of the sheet, or at the next smaller one.
  const choices = [views]
  const smaller = groups.map((g) => {
    const less = shrunk(g, scale)
    return less && settled(less, scale, style, font)
  })
  if (smaller.some((g) => g !== undefined)) choices.push(views.map((g, i) => smaller[i] ?? g))
  const blocks = noteWidths.map((w) => plan.blocks.map((b) => setBlock(b, Math.min(w, width), width, style, font)))
  const differ = plan.blocks.some((b) => b.kind === 'notes') ? blocks : blocks.slice(0, 1)
  let best: { readonly packed: Packed; readonly things: readonly (SetGroup | SetBlock)[] } | undefined
  for (const gap of gaps) {
    for (const shown of choices) {
      for (const told of differ) {
        const things = [...shown, ...told]
        const packed = packedBest(
          things.map((t): Extent => [t.width, t.height]),
          area,
          [title],
          gap,
          best?.packed.pages ?? Infinity,
        )
        if (packed) best = { packed, things }
        if (best && best.packed.pages <= best.packed.least) return pagesOf(best.packed, best.things)
      }
    }
  }
  return best && pagesOf(best.packed, best.things)
}

/** Sets a group; undefined where a dimension has no room at this scale. */
function settled(group: ViewGroup, scale: number, style: DrawingStyle, font: Font): SetGroup | undefined {
  try {
    return setGroup(group, (view) => setView(view, scale, style, font))
  } catch (error) {
    if (error instanceof NoRoom) return undefined
    throw error
  }
}

/** A pictorial view at the next smaller standard scale; undefined for any other group. */
function shrunk(group: ViewGroup, scale: number): ViewGroup | undefined {
  const next = standardScales[standardScales.indexOf(scale) + 1]
  const views = group.rows.flat()
  if (next === undefined || views.some((v) => v?.pictorial !== true)) return undefined
  return { rows: group.rows.map((row) => row.map((v) => v && { ...v, enlarged: next / scale })) }
}

function pagesOf(packed: Packed, things: readonly (SetGroup | SetBlock)[]): Page[] {
  const out = Array.from({ length: packed.pages }, (): Page => ({ views: [], entities: [] }))
  things.forEach((thing, i) => {
    const { page, at } = packed.spots[i]!
    if ('views' in thing) {
      for (const v of thing.views) out[page]!.views.push(viewAt(v.view, [at[0] + v.at[0], at[1] + v.at[1]]))
    } else out[page]!.entities.push(...thing.entities.map((e) => placed(e, 1, at)))
  })
  return out
}

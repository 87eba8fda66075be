import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import { type PlanPoint, type PlanRectangle, wayToRectangle } from './plan-distance.ts'

/**
 * The picture of this file: z counts up, x and y are the table's. A tool turns about an upright axis, which goes from `start` to `stop` with its
 * tip at the height `tip`; a plunge starts where it stops. It came from above and leaves upwards, so each piece counts from its lower end upwards without end.
 * What stands in the way are boxes on the table: jaws, stops, clamps, parallels; nothing hangs from above.
 */
export interface TurningTool {
  /** Cutter, shank, holder, nut, quill: radius, mm, above 0, and where its lower end is above the tip, mm, 0 or more. */
  readonly pieces: readonly { readonly name: string; readonly radius: number; readonly above: number }[]
}

export interface ToolWay {
  readonly start: PlanPoint
  readonly stop: PlanPoint
  readonly tip: number
}

/** A box with its sides along x and y; only its top matters. */
export interface Obstacle extends PlanRectangle {
  readonly name: string
  readonly top: number
}

/** How near one piece comes to one box, mm. */
export interface Nearness {
  readonly piece: string
  readonly box: string
  /** Beside the box: way to rectangle less radius. Negative: over it. */
  readonly beside: number
  /** Lower end of the piece above the box. Negative: below its top. */
  readonly over: number
  /**
   * The distance between them; where they meet, negative, by how much the tool must go up or aside, whichever is less.
   */
  readonly clear: number
}

/**
 * Every piece against every box, nearest first. Exact for upright cylinders and boxes. Problems: pieces, tip or boxes outside their ranges. Throws
 * RangeError without pieces or boxes.
 */
export function toolClearance(
  tool: TurningTool,
  way: ToolWay,
  boxes: readonly Obstacle[],
): Result<readonly Nearness[]> {
  if (tool.pieces.length === 0 || boxes.length === 0)
    throw new RangeError('a tool without pieces, or nothing in its way')
  const faults = wayFaults(way, boxes)
  for (const { name, radius, above } of tool.pieces) {
    faults.keeps(`${name}.radius`, radius, 'length', { above: 0 })
    faults.keeps(`${name}.above`, above, 'length', { min: 0 })
  }
  return faults.result(() =>
    boxes
      .flatMap((box) => {
        const apart = wayToRectangle(way.start, way.stop, box)
        return tool.pieces.map((piece): Nearness => {
          const beside = apart - piece.radius
          const over = way.tip + piece.above - box.top
          const clear = beside > 0 && over > 0 ? Math.hypot(beside, over) : Math.max(beside, over)
          return { piece: piece.name, box: box.name, beside, over, clear }
        })
      })
      .toSorted((a, b) => a.clear - b.clear),
  )
}

function wayFaults({ start, stop, tip }: ToolWay, boxes: readonly Obstacle[]): InputFaults {
  const faults = new InputFaults()
  for (const [name, value] of Object.entries({
    tip,
    startX: start[0],
    startY: start[1],
    stopX: stop[0],
    stopY: stop[1],
  })) {
    faults.keeps(`way.${name}`, value, 'length', {})
  }
  for (const { name, x, y, top } of boxes) {
    faults.keeps(`${name}.x`, x[1], 'length', { min: x[0] })
    faults.keeps(`${name}.y`, y[1], 'length', { min: y[0] })
    faults.keeps(`${name}.top`, top, 'length', {})
  }
  return faults
}

import { type Nearness, type Obstacle, toolClearance } from '../../../mechanics/set-up/tool-clearance.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { tiltedOperations } from './tilted-operations.ts'
import { isJoinedFirst, tiltedSetUp } from './tilted-set-up.ts'

/** How near a cutter comes to the jaws at the tilt, mm. */
export interface JawClearance {
  /** Operation in which it does: `step`. */
  readonly operation: string
  readonly tool: string
  /** Negative: over the jaw as seen from above, by so much. */
  readonly beside: number
  readonly over: number
  /** Between cutter and jaw; negative: it cuts into it. */
  readonly clear: number
}

/** How wide the jaws are is not known: they count as long as the cutter travels, and as thick as that. */
const jawsOf = (design: HeadDesign, long: number): Obstacle[] => {
  const { opening, stickUp } = tiltedSetUp(design)
  const half = opening / 2
  return [
    { name: 'jaw towards −Y', x: [-long, long], y: [-half - long, -half], top: -stickUp },
    { name: 'jaw towards +Y', x: [-long, long], y: [half, half + long], top: -stickUp },
  ]
}

/** The nearest that slot and step cutter come to the jaws, from the places that the readout shows. Holders are not in the list of tools. */
export function jawClearance(design: HeadDesign): JawClearance | undefined {
  const near = tiltedOperations(design, []).flatMap(({ id, tool, places }): JawClearance[] => {
    if (tool?.diameter === undefined || id === 'face') return []
    const radius = tool.diameter / 2
    return places
      .filter(({ name }) => name.endsWith('start'))
      .map((start) => {
        const end = places.find(({ name }) => name === start.name.replace(/start$/, 'end'))!
        const way = { start: [start.x!, start.y!], stop: [end.x!, end.y!], tip: -start.z! } as const
        const long = Math.abs(start.x!) + Math.abs(end.x!) + 2 * radius
        const pieces = [{ name: tool.name, radius, above: 0 }]
        const [nearest] = certain(toolClearance({ pieces }, way, jawsOf(design, long))) as [Nearness]
        const { beside, over, clear } = nearest
        return { operation: id, tool: tool.name, beside, over, clear }
      })
  })
  return near.toSorted((a, b) => a.clear - b.clear)[0]
}

/** In words; undefined where the head stands on its shank, clear of the jaws altogether. */
export function jawClearanceWords(design: HeadDesign, size: (value: number) => string): string | undefined {
  const nearest = isJoinedFirst(design) ? undefined : jawClearance(design)
  if (nearest === undefined) return undefined
  const { tool, operation, beside, over, clear } = nearest
  const what = `${tool} of the ${operation === 'step' ? 'step' : 'slot'}`
  if (clear <= 0) return `The ${what} cuts into a jaw.`
  return beside < 0
    ? `Nearest to the jaws: the ${what} passes ${size(over)} over one.`
    : `Nearest to the jaws: the ${what} stays ${size(clear)} away from one.`
}

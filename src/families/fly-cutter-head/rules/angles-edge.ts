import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf, edgeReachOf, noseOfBit } from '../engineering/angles.ts'

/** Whether the two edges and the nose between them can do the cut. */
export const edges: Rule<HeadDesign> = {
  id: 'edge',
  findings(design) {
    const { parameters, units } = design
    const found: Finding[] = []
    const show = (v: number) => written(mm(v), units)
    const { minorCuttingEdgeAngle: minor, cuttingEdgeAngle } = anglesOf(design)
    const least = parameters.settings.grind['minor-edge-angle']
    if (minor < least - 1e-9) {
      const shown = degrees(minor)
      found.push({
        id: 'edge:minor',
        level: minor < -1e-9 ? 'stop' : 'caution',
        text:
          minor < -1e-9
            ? `The work-side edge runs ${degrees(-minor)} down inwards (κr′ ${shown}): its inner end cuts deeper than the tip.`
            : `The work-side edge lies ${shown} (κr′) from the cut surface: the underside rubs along its whole length instead of cutting at the tip.`,
        figure: { value: minor, kind: 'angle' },
        limit: {
          value: least,
          kind: 'angle',
          reason: 'least angle between work-side edge and cut surface (rule of thumb)',
        },
        levers: [
          { path: 'bit.facets.work-side-edge-angle', turn: 'up' },
          { path: 'bit.grind', choose: 'for-work-material' },
          { path: 'face.angle', turn: 'up' },
        ],
      })
    }

    const depth = parameters.work['depth-of-cut']
    const reach = edgeReachOf(design)
    if (reach < depth - 1e-6) {
      found.push({
        id: 'edge:short',
        level: 'stop',
        text: `The end edge reaches only ${show(reach)} above the cut surface: a cut ${show(depth)} deep meets bare bit and head above it.`,
        figure: mm(depth),
        limit: { ...mm(reach), reason: 'height of the end edge' },
        levers: [
          { path: 'work.depth-of-cut', turn: 'down' },
          { path: 'bit.height', turn: 'up' },
        ],
      })
    }

    const { edgeTaken } = noseOfBit(design)
    // Along the end edge up to where it ends, along the work-side edge as far as it is ground.
    const room = Math.min(reach / Math.sin(cuttingEdgeAngle), design.layout.bit.groundLength)
    if (edgeTaken > room + 1e-6) {
      found.push({
        id: 'edge:nose',
        level: 'stop',
        text: `A nose of ${show(parameters.bit['nose-radius'])} takes ${show(edgeTaken)} of each edge, and the shorter one is ${show(room)} long: it cannot be ground.`,
        figure: mm(edgeTaken),
        limit: { ...mm(room), reason: 'length of the shorter edge' },
        levers: [
          { path: 'bit.nose-radius', turn: 'down' },
          { path: 'bit.facets.length', turn: 'up' },
        ],
      })
    }
    return found
  },
}

const degrees = (value: number) => formatQuantity('angle', value, 'mm', { decimals: 1 })

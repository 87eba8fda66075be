import type { Result } from '../../input/problem.ts'
import type { Range } from '../../tables/range.ts'
import type { WorkMaterialRow } from '../../tables/work-materials.ts'
import { angleProblem } from './angle-problem.ts'
import type { WantedAngles } from './facets-to-grind.ts'

/** Angles in use that suit a work material, rad, from and to. */
export interface SuitableAngles {
  readonly radialRake: Range
  readonly axialRake: Range
  readonly radialRelief: Range
  readonly axialRelief: Range
}

/**
 * The lathe table's angles on the edges that do the same work on a fly cutter. On the lathe the side edge does the main
 * cutting, on a fly cutter the end edge: so side rake → radial rake, back rake → axial rake, side relief → relief of
 * the end flank, front relief → relief of the work-side flank. Read straight across, aluminium would get its steep back
 * rake on the wrong face. Problem `not-in-table` where the row has no angles.
 */
export function suitableAngles(work: WorkMaterialRow): Result<SuitableAngles> {
  const table = work.hssAngles
  if (table === undefined) {
    return {
      ok: false,
      problems: [
        angleProblem(
          'hssAngles',
          'not-in-table',
          `${work.name}: no tool angles`,
          'a row of work-materials.json with hssAngles',
          `add hssAngles to the row ${work.name}`,
        ),
      ],
    }
  }
  return {
    ok: true,
    value: {
      radialRake: table.sideRake,
      axialRake: table.backRake,
      radialRelief: table.sideRelief,
      axialRelief: table.frontRelief,
    },
  }
}

/** One figure each: the middle of the range (rule of thumb). */
export function middleOf(suitable: SuitableAngles): Omit<WantedAngles, 'endEdge' | 'workSideEdge'> {
  const middle = ({ low, high }: Range) => (low + high) / 2
  return {
    radialRake: middle(suitable.radialRake),
    axialRake: middle(suitable.axialRake),
    radialRelief: middle(suitable.radialRelief),
    axialRelief: middle(suitable.axialRelief),
  }
}

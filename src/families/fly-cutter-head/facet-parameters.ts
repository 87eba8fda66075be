import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** The facets that are ground, given or worked out, as a parameter set would give them. */
export const facetParameters = ({
  bit: { facets, groundLength },
}: Layout): NonNullable<Parameters['bit']['facets']> => ({
  'rake-along': facets.rakeAlong,
  'rake-across': facets.rakeAcross,
  'end-edge-angle': facets.endEdgeAngle,
  'end-relief': facets.endRelief,
  'work-side-edge-angle': facets.workSideEdgeAngle,
  'work-side-relief': facets.workSideRelief,
  length: groundLength,
})

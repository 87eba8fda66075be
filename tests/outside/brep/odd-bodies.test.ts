import { describeBodies } from './body-contract.ts'
import { parameterSets } from './parameter-sets.ts'

// Half of the sets in each of two files, so that they run side by side.
describeBodies(
  parameterSets.filter((_, i) => i % 2 === 1),
  18,
)

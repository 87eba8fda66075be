const inner = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3
const outer = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3
const innerWeight = (322 + 13 * Math.sqrt(70)) / 900
const outerWeight = (322 - 13 * Math.sqrt(70)) / 900

/** Five-point Gauss–Legendre nodes on −1 to 1 and their weights (standard tables of numerical integration). */
export const gauss: readonly (readonly [node: number, weight: number])[] = [
  [-outer, outerWeight],
  [-inner, innerWeight],
  [0, 128 / 225],
  [inner, innerWeight],
  [outer, outerWeight],
]

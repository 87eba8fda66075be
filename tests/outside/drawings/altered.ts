/** The text with the first figure of its size changed by a little: the last digit before the point. */
export function altered(text: string): string {
  const changed = text.replace(/(\d)(?=(\.|%|°|\/|$|\)| |-|\\))/, (digit) => `${(Number(digit) + 1) % 10}`)
  if (changed === text) throw new Error(`nothing to change in ${text}`)
  return changed
}

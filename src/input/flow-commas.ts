/** An item between brackets: where it begins, where its value does, and where it ends. */
export interface FlowItem {
  readonly from: number
  readonly valueFrom: number
  readonly to: number
}

/** Neighbouring items with nothing but a comma between their digits: `1,400` may be one number or two. */
export interface TightRun {
  /** Numbers of its first and last item. */
  readonly first: number
  readonly last: number
  /** Offset of its first comma. */
  readonly comma: number
  /** As it is written. */
  readonly written: string
}

/** Where a comma between two items could as well be a decimal one, or one between thousands. */
export function tightRuns(text: string, items: readonly FlowItem[]): TightRun[] {
  const runs: TightRun[] = []
  for (let at = 1; at < items.length; at++) {
    if (!isTight(text, items[at - 1]!.to, items[at]!.from)) continue
    const before = runs.at(-1)
    const goesOn = before?.last === at - 1
    const first = goesOn ? before.first : at - 1
    if (goesOn) runs.pop()
    const { valueFrom, to } = items[first]!
    runs.push({ first, last: at, comma: to, written: text.slice(valueFrom, items[at]!.to) })
  }
  return runs
}

/** Nothing but a comma between any two: a program writes so, people put spaces. */
export const isUnspaced = (items: readonly FlowItem[]): boolean =>
  items.slice(1).every(({ from }, at) => from === items[at]!.to + 1)

function isTight(text: string, end: number, start: number): boolean {
  return text.slice(end, start) === ',' && /\d/.test(text[end - 1] ?? '') && /\d/.test(text[start] ?? '')
}

/** In JSON a comma between two digits can only stand between two values. */
export function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

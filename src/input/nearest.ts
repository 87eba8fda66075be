/**
 * The name of the list that was most likely meant, or undefined where none is close enough. Capitals, hyphens,
 * underscores and spaces count for nothing; a third of the letters may be wrong, one at least, and two letters that
 * changed places count once. Of equally near names the first in the list is taken.
 */
export function nearest(written: string, names: readonly string[]): string | undefined {
  const plain = withoutDressing(written)
  if (plain === '' || plain.length > 60) return undefined
  let best: string | undefined
  let bestDistance = Number.POSITIVE_INFINITY
  for (const name of names) {
    const candidate = withoutDressing(name)
    const mayDiffer = Math.max(1, Math.floor(Math.max(plain.length, candidate.length) / 3))
    const distance = editDistance(plain, candidate)
    // With one or two letters, a single change gives anything: there it has to be the same.
    const close = Math.min(plain.length, candidate.length) <= 2 ? distance === 0 : distance <= mayDiffer
    if (close && distance < bestDistance) {
      best = name
      bestDistance = distance
    }
  }
  return best
}

function withoutDressing(name: string): string {
  return name.toLowerCase().replace(/[-_\s]/g, '')
}

/** Insertions, deletions, replacements and swaps of neighbours that turn one text into the other. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, at) => at)
  for (let row = 1; row <= a.length; row++) {
    const current = [row]
    for (let column = 1; column <= b.length; column++) {
      const replace = (last[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1)
      let cost = Math.min(replace, (last[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1)
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]
      if (swapped) cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1)
      current.push(cost)
    }
    beforeLast = last
    last = current
  }
  return last[b.length] ?? 0
}

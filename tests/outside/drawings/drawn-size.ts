/** A figure as a sheet writes it, read here by its own rules: none of the product's reading or writing is used. */
export interface DrawnSize {
  /** mm, or degrees. */
  readonly value: number
  readonly count: number
  /** In brackets: not to be machined to. */
  readonly reference: boolean
  /** The words of a thread callout: `M6`. */
  readonly thread?: string
}

/** The first figure of a text: a nominal size. Words behind it and limits are passed over. Throws where there is none. */
export function drawnSize(text: string, unit: 'mm' | 'in'): DrawnSize {
  // DXF has its own ways to write these signs; a dash and a minus are one there.
  const plain = text.replaceAll('%%c', '⌀').replaceAll('%%d', '°').replaceAll('%%p', '±').replaceAll('\\U+00D7', '×')
  const lines = plain.split('\\P')
  // `1 × 45°` is a chamfer, no count.
  const counted = /^(\d+) × (?![\d.]+°)(.*)$/.exec(lines[0]!)
  const count = counted ? Number(counted[1]) : 1
  const rest = counted ? counted[2]! : lines[0]!
  const reference = rest.startsWith('(')
  const bare = rest.replace(/^\(/, '').replace(/^[⌀R]/, '')
  const thread = /^(M\d[\d.x×]*|\d+\/\d+-\d+|#?\d+-\d+)(?![\d/])/.exec(bare)
  if (thread) return { value: Number.NaN, count, reference, thread: thread[1]! }
  const angle = /^(\d+(?:\.\d+)?)°(?:(\d+(?:\.\d+)?)')?/.exec(bare)
  if (angle) return { value: Number(angle[1]) + Number(angle[2] ?? 0) / 60, count, reference }
  const scale = unit === 'in' ? 25.4 : 1
  const fraction = /^-?(?:(\d+)-)?(\d+)\/(\d+)/.exec(bare)
  const decimal = /^-?\d+(?:\.\d+)?/.exec(bare)
  const sign = bare.startsWith('-') ? -1 : 1
  if (fraction) {
    const [, whole, top, bottom] = fraction
    return { value: sign * (Number(whole ?? 0) + Number(top) / Number(bottom)) * scale, count, reference }
  }
  if (!decimal) throw new Error(`no figure in ${text}`)
  // Limits alone: the size lies in the middle of them.
  const limits = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)(?!\/)/.exec(bare)
  const value = limits ? (Number(limits[1]) + Number(limits[2])) / 2 : sign * Math.abs(Number(decimal[0]))
  return { value: value * scale, count, reference }
}

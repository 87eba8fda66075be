import type { MadeLine } from '../../../measured/as-made.ts'
import { capital } from '../../../quantity/capital.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { percentThread } from '../../../tables/thread-geometry.ts'
import type { HeadDesign } from '../design.ts'

/** What sizes beyond their limits mean on which no figure rests: shanks, which the spindle judges, and tap drills. */
export interface BeyondFigures {
  readonly stops: readonly string[]
  readonly cautions: readonly string[]
}

/** Least thread left by a tap drill, percent, and what a full one keeps: rules of thumb, common practice, no source. */
const leastThread = 50
const goodThread = 60

/** Common practice, no source. */
export function beyondFigures(made: HeadDesign, lines: readonly MadeLine[]): BeyondFigures {
  const found = lines.flatMap((line) => (/^too/.test(line.verdict) ? (wordsFor(made, line) ?? []) : []))
  return {
    stops: found.flatMap(({ stop }) => (stop === undefined ? [] : [stop])),
    cautions: found.flatMap(({ caution }) => (caution === undefined ? [] : [caution])),
  }
}

interface Words {
  readonly stop?: string
  readonly caution?: string
}

function wordsFor(made: HeadDesign, line: MadeLine): Words | undefined {
  const { id } = line.asked
  if (id.endsWith('.tap-drill') && id.startsWith('screw-hole-')) return ofTapDrill(made, line)
  if (!id.startsWith('shank.')) return undefined
  const off = `${capital(line.asked.label)} is ${formatLength(line.beyond!, made.units)} ${line.verdict}`
  if (/length/.test(id)) {
    return line.verdict === 'too small'
      ? { caution: `${off}: it is held on that much less, and carries less.` }
      : { caution: `${off}: see that it does not stand on anything before it is held where it should be.` }
  }
  if (made.layout.shank?.kind !== 'straight') {
    return { caution: `${off}: the taper draws home higher or lower than its gauge line says. Blue it in its socket.` }
  }
  return line.verdict === 'too large'
    ? { stop: `${off}: it does not go into what is made for its size. Grind it, or make a fresh arbor.` }
    : {
        caution: `${off}: what is made for its size closes on it at one end only and lets it slip. Hold it in a collet that closes on it along its whole length, or make a fresh arbor.`,
      }
}

function ofTapDrill({ layout: { screws }, units }: HeadDesign, { size, verdict }: MadeLine): Words {
  const percent = percentThread(screws.thread, size)
  const leaves = `A tap drill of ${formatLength(size, units)} leaves ${Math.max(0, percent).toFixed(0)} % of the thread`
  if (verdict === 'too small') return { caution: `${leaves}: open the hole before the tap breaks in it.` }
  if (percent < leastThread) return { stop: `${leaves}: it strips before the screw holds. Tap the next size up.` }
  return percent < goodThread ? { caution: `${leaves}: tighten the screw no more than it needs.` } : {}
}

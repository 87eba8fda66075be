import type { Problem, Result } from '../../input/problem.ts'
import type { Iso286Row } from '../../tables/iso-286.ts'
import type { Fit } from './fit.ts'
import { InputFaults } from './input-faults.ts'
import { interferenceOf, limitsFrom } from './limits.ts'
import { sizeStep } from './size-step-of.ts'
import { readZone, type Zone, zoneDeviations, zoneName } from './zone.ts'

/**
 * Fit of an ISO 286 code, hole before shaft, `H7/s6`, at a nominal size in mm. Problems (path `code`, or `nominal` for a
 * size outside the table): everything that is no pair of zones, with the code that was most likely meant; both zones
 * are looked at, so that all that is wrong is reported together.
 */
export function isoFit(code: string, nominal: number, rows: readonly Iso286Row[]): Result<Fit> {
  const parts = code.split('/').map((part) => part.trim())
  const [holeText, shaftText] = parts
  const pair = parts.length === 2 && holeText !== undefined && shaftText !== undefined
  if (!pair || likelyMeant(code) !== undefined) return unreadable(code)
  const hole = readZone(holeText, 'hole')
  const shaft = readZone(shaftText, 'shaft')
  const row = sizeStep(rows, nominal, 'nominal')
  const inCode = [hole, shaft].flatMap((part) => (part.ok ? [] : part.problems))
  // Two zones with a slip each are told one by one; where a half is no zone at all, its faults would only repeat each other.
  const noZone = inCode.some((p) => p.code === 'wrong-kind') || new Set(inCode.map((p) => p.found)).size < inCode.length
  const wrong = noZone && inCode.length > 1 ? asOne(code, inCode[0]!.code) : inCode
  if (!hole.ok || !shaft.ok || !row.ok) return { ok: false, problems: [...wrong, ...(row.ok ? [] : row.problems)] }
  const inBore = zoneDeviations(hole.value, nominal, rows)
  const onSpigot = zoneDeviations(shaft.value, nominal, rows)
  if (!inBore.ok || !onSpigot.ok) {
    return { ok: false, problems: [inBore, onSpigot].flatMap((part) => (part.ok ? [] : part.problems)) }
  }
  const bore = limitsFrom(nominal, inBore.value)
  const spigot = limitsFrom(nominal, onSpigot.value)
  return {
    ok: true,
    value: {
      kind: 'iso-286',
      name: `${holeText}/${shaftText}`,
      nominal,
      diameter: nominal,
      bore,
      spigot,
      interference: interferenceOf(bore, spigot),
      source: row.value.source,
    },
  }
}

/** One problem of a code that is wrong in more than one way, with the nearest pair of zones. */
function asOne(code: string, as: Problem['code']): Problem[] {
  const faults = new InputFaults()
  const near = (text: string, of: Zone['of']) => {
    const zone = readZone(text, of)
    return zone.ok ? zoneName(zone.value) : zone.problems[0]?.remedy?.replace('write ', '')
  }
  const [hole = '', shaft = ''] = code.split('/')
  // A size in front is no part of the zone.
  const pair = [near(hole.replace(/^[\s⌀Ø\d.,m]+/, ''), 'hole'), near(shaft, 'shaft')]
  const remedy = `write ${pair.includes(undefined) ? 'hole and shaft, such as H7/s6' : pair.join('/')}`
  faults.add('code', as, code, 'hole zone, slash, shaft zone: H7/s6', remedy)
  return faults.problems
}

function unreadable(code: string): Result<Fit> {
  const faults = new InputFaults()
  const meant = likelyMeant(code)
  const remedy = meant === undefined ? 'write hole and shaft, such as H7/s6' : `write ${meant}`
  faults.add('code', 'wrong-kind', code, 'hole zone, slash, shaft zone: H7/s6', remedy)
  return { ok: false, problems: faults.problems }
}

/** The code without a size in front of it, with its slash, and hole before shaft; undefined where it reads as it is. */
function likelyMeant(code: string): string | undefined {
  const loose =
    /^\s*[⌀Ø]?\s*(?:\d+(?:[.,]\d+)?\s*(?:mm\s*)?)?([A-Za-z]{1,2}\d{1,2})\s*[/\s,:-]?\s*([A-Za-z]{1,2}\d{1,2})\s*$/
  const [, first, second] = loose.exec(code) ?? []
  if (first === undefined || second === undefined) return undefined
  const swapped = isSmall(first) && isCapital(second)
  const [hole, shaft] = swapped ? [second, first] : [first, second]
  const plain = `${hole}/${shaft}`
  if (!readZone(hole, 'hole').ok || !readZone(shaft, 'shaft').ok) return undefined
  return plain === code.replace(/\s/g, '') ? undefined : plain
}

function isSmall(zone: string): boolean {
  return /^[a-z]/.test(zone)
}

function isCapital(zone: string): boolean {
  return /^[A-Z]/.test(zone)
}

import DxfParser from 'dxf-parser'
import type { DxfDocument, DxfEntity } from '../../src/drawing/dxf/dxf-document.ts'
import { dimensionsIn, measured } from '../outside/dxf-dimensions.ts'

/** What each kind of line work is called in the file (entity types of the DXF reference, from memory). */
const types: Readonly<Record<DxfEntity['kind'], string>> = {
  line: 'LINE',
  circle: 'CIRCLE',
  arc: 'ARC',
  ellipse: 'ELLIPSE',
  polyline: 'LWPOLYLINE',
  text: 'TEXT',
  arrow: 'SOLID',
  hatch: 'HATCH',
}

interface Parsed {
  readonly entities: readonly { readonly type: string }[]
  readonly blocks: Readonly<Record<string, { readonly entities?: readonly { readonly type: string }[] }>>
}

/** What another parser reads in the file is what the writer was given, thing by thing, with finite numbers everywhere. */
export function dxfFaults(text: string, given: DxfDocument): string[] {
  const faults: string[] = []
  const strayed = /NaN|Infinity|undefined/.exec(text)
  if (strayed) faults.push(`${strayed[0]} in it`)
  const parsed = new (DxfParser as unknown as new () => { parseSync(t: string): Parsed })().parseSync(text)
  const compare = (where: string, found: readonly { readonly type: string }[], meant: readonly string[]) => {
    // The parser reads over hatches; those are counted below.
    const [a, b] = [counted(found.map((e) => e.type)), counted(meant.filter((t) => t !== 'HATCH'))]
    if (a !== b) faults.push(`${where}: ${a} read, ${b} given`)
    if (!allFinite(found)) faults.push(`${where}: a number that is none`)
  }
  const entities = given.entities.map((e) => types[e.kind])
  compare('entities', parsed.entities, [...entities, ...given.dimensions.map(() => 'DIMENSION')])
  given.dimensions.forEach(({ graphics }, i) => {
    const block = `*D${i + 1}`
    compare(
      block,
      parsed.blocks[block]?.entities ?? [],
      graphics.map((e) => types[e.kind]),
    )
  })
  const hatches = text.split('\n0\nHATCH\n').length - 1
  const hatched = [given.entities, ...given.dimensions.map((d) => d.graphics)].flat().filter((e) => e.kind === 'hatch')
  if (hatches !== hatched.length) faults.push(`${hatches} hatches written, ${hatched.length} given`)
  return [...faults, ...dimensionFaults(text, given)]
}

/** Every size stands there under its name, with its value, and its own points measure that. */
function dimensionFaults(text: string, { dimensions, units }: DxfDocument): string[] {
  const found = dimensionsIn(text)
  if (found.length !== dimensions.length) return [`${found.length} dimensions written, ${dimensions.length} given`]
  const near = units === 'mm' ? 1e-4 : 1e-5
  return found.flatMap((read, i) => {
    const { name, measurement, text } = dimensions[i]!
    const faults: string[] = []
    if (read.name !== name) faults.push(`called ${read.name}`)
    if (read.text === '' || text.some((line) => line === '')) faults.push('no text')
    if (!(Math.abs(read.value - measurement) < 1e-5)) faults.push(`${read.value} in place of ${measurement}`)
    const points = measured(read)
    if (!(Math.abs(Math.abs(points) - Math.abs(measurement)) < near)) {
      faults.push(`points ${points} apart, said to be ${measurement}`)
    }
    return faults.map((fault) => `dimension ${name}: ${fault}`)
  })
}

function counted(found: readonly string[]): string {
  const counts = new Map<string, number>()
  for (const type of found) counts.set(type, (counts.get(type) ?? 0) + 1)
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([type, count]) => `${count} ${type}`)
    .join(', ')
}

/** No number anywhere inside is NaN or without end. */
function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value)
  if (typeof value !== 'object' || value === null) return true
  return Object.values(value).every(allFinite)
}

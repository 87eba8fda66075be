import DxfParser from 'dxf-parser'

type Point = readonly [number, number]
interface Vertex {
  readonly x: number
  readonly y: number
}
interface ReadEntity {
  readonly type: string
  readonly layer: string
  readonly vertices?: readonly Vertex[]
  readonly center?: Vertex
  readonly radius?: number
  readonly startAngle?: number
  readonly endAngle?: number
}

/** A layer of `profiles.dxf` as another reader has it, mm, from the zero of the set-up to its left. */
export interface ReadProfile {
  readonly layer: string
  readonly kinds: readonly string[]
  /** Corners of each closed outline, arcs in short chords; the exact ends of the edges are among them. */
  readonly polygons: readonly (readonly Point[])[]
  /** mm, from the layer's name; absent for a cut through. */
  readonly depth?: number
}

export interface ReadProfiles {
  readonly header: Record<string, unknown>
  readonly layers: readonly string[]
  readonly origins: ReadonlyMap<string, Point>
  /** By the word before the first underscore. */
  readonly profiles: ReadonlyMap<string, ReadProfile>
}

/** Which zero a feature is measured from. */
const setUps: Readonly<Record<string, string>> = {
  STOCK: 'ORIGIN_MOUNTING-SIDE',
  BORE: 'ORIGIN_MOUNTING-SIDE',
  'BORE-CHAMFER': 'ORIGIN_MOUNTING-SIDE',
  VENT: 'ORIGIN_MOUNTING-SIDE',
  FACE: 'ORIGIN_TILTED-FACE',
  SLOT: 'ORIGIN_TILTED-FACE',
  STEP: 'ORIGIN_TILTED-FACE',
  'SCREW-HOLE': 'ORIGIN_STEP-SIDE',
}

/** Reads the file by an independent reader (npm: dxf-parser) and joins its edges end to end; throws where they are open. */
export function readProfiles(text: string): ReadProfiles {
  const { header, tables, entities } = new (
    DxfParser as unknown as new () => { parseSync(t: string): unknown }
  )().parseSync(text) as {
    header: Record<string, unknown>
    tables: { layer: { layers: Record<string, unknown> } }
    entities: readonly ReadEntity[]
  }
  const unit = header.$INSUNITS === 1 ? 25.4 : 1
  const on = (layer: string) => entities.filter((e) => e.layer === layer)
  const layers = Object.keys(tables.layer.layers).filter((l) => l !== '0')
  const origins = new Map(layers.filter((l) => l.startsWith('ORIGIN')).map((l) => [l, zeroOf(on(l), unit)] as const))
  const cutting = layers.filter((l) => !l.startsWith('ORIGIN') && l !== 'STOP')
  const profiles = cutting.map((layer) => {
    const word = layer.split('_')[0]!
    const zero = origins.get(setUps[word]!)!
    const edges = on(layer).map((e) => chords(e, unit).map(([x, y]): Point => [x - zero[0], y - zero[1]]))
    const found = /_DEPTH_([\d.]+)(MM|IN)(?:_|$)/.exec(layer)
    const depth = found ? Number(found[1]) * (found[2] === 'IN' ? 25.4 : 1) : undefined
    const kinds = [...new Set(on(layer).map((e) => e.type))]
    return [word, { layer, kinds, polygons: joined(edges), ...(depth !== undefined && { depth }) }] as const
  })
  return { header, layers, origins, profiles: new Map(profiles) }
}

/** Where the two shafts of the axes cross. */
function zeroOf(marks: readonly ReadEntity[], unit: number): Point {
  const size = ({ vertices: [a, b] = [] }: ReadEntity) => Math.hypot(a!.x - b!.x, a!.y - b!.y)
  const [along, up] = marks.toSorted((a, b) => size(b) - size(a))
  return [up!.vertices![0]!.x * unit, along!.vertices![0]!.y * unit]
}

function chords(e: ReadEntity, unit: number): Point[] {
  if (e.type === 'LINE') return e.vertices!.map(({ x, y }): Point => [x * unit, y * unit])
  const full = 2 * Math.PI
  const [start, end] = e.type === 'CIRCLE' ? [0, full] : [e.startAngle!, e.endAngle!]
  const sweep = end > start ? end - start : end - start + full
  const steps = Math.ceil((sweep / full) * 256)
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const t = start + (sweep * i) / steps
    return [(e.center!.x + e.radius! * Math.cos(t)) * unit, (e.center!.y + e.radius! * Math.sin(t)) * unit]
  })
}

function joined(edges: readonly Point[][]): Point[][] {
  const near = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-4
  const rest = [...edges]
  const out: Point[][] = []
  while (rest.length > 0) {
    const path = [...rest.shift()!]
    while (!near(path[0]!, path.at(-1)!)) {
      const i = rest.findIndex((e) => near(e[0]!, path.at(-1)!) || near(e.at(-1)!, path.at(-1)!))
      if (i < 0) throw new Error(`open outline at ${path.at(-1)}`)
      const [next] = rest.splice(i, 1)
      path.push(...(near(next![0]!, path.at(-1)!) ? next! : next!.toReversed()).slice(1))
    }
    out.push(path.slice(0, -1))
  }
  return out
}

import type { Vec3 } from '../geometry/vector.ts'
import type { Result } from '../input/problem.ts'
import type { Mesh } from './closed-mesh.ts'
import { binaryStl, jscadSolid } from './jscad.ts'

/**
 * The facets of closed meshes (each a body of its own) as in a binary STL, 50 bytes each, little endian, mm. What the
 * serializer wrote is read back and counted before it is handed on: an open edge or a facet that has lost a corner to
 * rounding is refused (`unsound-solid`).
 */
export function facetsOf(meshes: readonly Mesh[], name: string): Result<Uint8Array> {
  const bytes = binaryStl(meshes.map(jscadSolid))
  const { open, degenerate } = stlFaults(bytes)
  if (open === 0 && degenerate === 0) return { ok: true, value: bytes.subarray(headerLength + 4) }
  return {
    ok: false,
    problems: [
      {
        code: 'unsound-solid',
        where: { file: name },
        found: `${open} open edges and ${degenerate} facets without area after rounding`,
        allowed: 'a closed skin',
        remedy: 'change the chord tolerance slightly; please report the parameter set as a defect',
      },
    ],
  }
}

const headerLength = 80

/**
 * Binary STL of the facets of some bodies. `header`: up to 80 ASCII characters at the start of the file, not beginning
 * with "solid" (a reader would take the file for text).
 */
export function stlFile(bodies: readonly Uint8Array[], header = ''): Uint8Array {
  const size = bodies.reduce((sum, b) => sum + b.length, 0)
  const bytes = new Uint8Array(headerLength + 4 + size)
  writeHeader(bytes, header)
  new DataView(bytes.buffer).setUint32(headerLength, size / 50, true)
  let at = headerLength + 4
  for (const body of bodies) {
    bytes.set(body, at)
    at += body.length
  }
  return bytes
}

/** Binary STL of closed meshes: `facetsOf` and `stlFile` in one. */
export function stlOf(meshes: readonly Mesh[], name: string, header = ''): Result<Uint8Array> {
  const facets = facetsOf(meshes, name)
  return facets.ok ? { ok: true, value: stlFile([facets.value], header) } : facets
}

function writeHeader(bytes: Uint8Array, header: string): void {
  if (/^solid/i.test(header) || /[^\x20-\x7e]/.test(header)) throw new RangeError(`stl header: ${header}`)
  bytes.fill(0x20, 0, headerLength)
  for (let i = 0; i < Math.min(header.length, headerLength); i++) bytes[i] = header.charCodeAt(i)
}

/** Corners of every facet of a binary STL, in the order of the file. */
export function readStl(bytes: Uint8Array): (readonly [Vec3, Vec3, Vec3])[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const count = view.getUint32(80, true)
  const corner = (o: number): Vec3 => [
    view.getFloat32(o, true),
    view.getFloat32(o + 4, true),
    view.getFloat32(o + 8, true),
  ]
  return Array.from({ length: count }, (_, i) => {
    const o = 84 + 50 * i + 12
    return [corner(o), corner(o + 12), corner(o + 24)] as const
  })
}

/** Open edges and facets with two equal corners, corners being equal when their floats are. */
export function stlFaults(bytes: Uint8Array): { open: number; degenerate: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const count = view.getUint32(80, true)
  const idOf = numbering(3 * count)
  const balance = new Map<number, number>()
  let degenerate = 0
  for (let facet = 0; facet < count; facet++) {
    const t = [0, 1, 2].map((k) => idOf(view, 84 + 50 * facet + 12 + 12 * k))
    if (new Set(t).size < 3) degenerate++
    for (let i = 0; i < 3; i++) {
      const a = t[i]!
      const b = t[(i + 1) % 3]!
      if (a === b) continue
      const key = Math.min(a, b) * 2 ** 26 + Math.max(a, b)
      const walks = (balance.get(key) ?? 0) + (a < b ? 1 : -1)
      if (walks === 0) balance.delete(key)
      else balance.set(key, walks)
    }
  }
  let open = 0
  for (const b of balance.values()) open += Math.abs(b)
  return { open, degenerate }
}

/** Numbers corners from 0 on, by their bits (−0 is 0). Open addressing: a map of texts took four times as long. */
function numbering(most: number): (view: DataView, at: number) => number {
  const size = 2 ** Math.ceil(Math.log2(2 * Math.max(1, most)))
  const table = new Int32Array(size).fill(-1)
  const corners = new Int32Array(3 * most)
  let known = 0
  const bits = (view: DataView, at: number) => {
    const found = view.getInt32(at, true)
    return found === -(2 ** 31) ? 0 : found
  }
  return (view, at) => {
    const [x, y, z] = [bits(view, at), bits(view, at + 4), bits(view, at + 8)]
    let slot = (Math.imul(x, 73856093) ^ Math.imul(y, 19349663) ^ Math.imul(z, 83492791)) >>> 0
    slot = Math.imul(slot ^ (slot >>> 15), 0x2c1b3c6d) >>> 0
    for (slot %= size; ; slot = (slot + 1) % size) {
      const id = table[slot]!
      if (id === -1) break
      if (corners[3 * id] === x && corners[3 * id + 1] === y && corners[3 * id + 2] === z) return id
    }
    table[slot] = known
    corners.set([x, y, z], 3 * known)
    return known++
  }
}

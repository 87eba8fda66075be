import type { Vec3 } from '../geometry/vector.ts'
import type { Result } from '../input/problem.ts'
import type { Mesh } from './closed-mesh.ts'
import { binaryStl, jscadSolid } from './jscad.ts'

/**
 * Binary STL of closed meshes (each a body of its own), little endian, mm. What the serializer wrote is read back and
 * counted before it is handed on: an open edge or a facet that has lost a corner to rounding is refused
 * (`unsound-solid`). `header`: up to 80 ASCII characters at the start of the file, not beginning with "solid" (a reader
 * would take the file for text).
 */
export function stlOf(meshes: readonly Mesh[], name: string, header = ''): Result<Uint8Array> {
  const bytes = binaryStl(meshes.map(jscadSolid))
  writeHeader(bytes, header)
  const { open, degenerate } = stlFaults(bytes)
  if (open === 0 && degenerate === 0) return { ok: true, value: bytes }
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

function writeHeader(bytes: Uint8Array, header: string): void {
  if (/^solid/i.test(header) || /[^\x20-\x7e]/.test(header)) throw new RangeError(`stl header: ${header}`)
  bytes.fill(0x20, 0, 80)
  for (let i = 0; i < Math.min(header.length, 80); i++) bytes[i] = header.charCodeAt(i)
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
  const ids = new Map<string, number>()
  const idOf = (p: Vec3) => {
    const key = `${p[0]},${p[1]},${p[2]}`
    const known = ids.get(key)
    if (known !== undefined) return known
    ids.set(key, ids.size)
    return ids.size - 1
  }
  const balance = new Map<number, number>()
  let degenerate = 0
  for (const facet of readStl(bytes)) {
    const t = facet.map(idOf)
    if (new Set(t).size < 3) degenerate++
    for (let i = 0; i < 3; i++) {
      const a = t[i]!
      const b = t[(i + 1) % 3]!
      if (a === b) continue
      const key = Math.min(a, b) * 2 ** 26 + Math.max(a, b)
      balance.set(key, (balance.get(key) ?? 0) + (a < b ? 1 : -1))
    }
  }
  let open = 0
  for (const b of balance.values()) open += Math.abs(b)
  return { open, degenerate }
}

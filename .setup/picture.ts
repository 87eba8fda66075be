// Pictures of a template's tool, shaded from the meshes of its parts: npm run picture [-- TEMPLATE OUT.png].
// With no arguments it makes the picture in the README; with --sides it makes one of each of four sides.
import { readFileSync, writeFileSync } from 'node:fs'
import { deflateSync } from 'node:zlib'
import { families } from '../src/families/families.ts'
import { readAnyDesign } from '../src/families/read-design.ts'
import { cross, dot, scale, subtract, unit, type Vec3 } from '../src/geometry/vector.ts'
import { loadTables } from '../src/package/load-tables.ts'
import { solidOf } from '../src/part/part.ts'
import type { Mesh } from '../src/solid/closed-mesh.ts'
import { meshOf } from '../src/solid/mesh.ts'

type Colour = readonly [number, number, number]
const colours: Record<string, Colour> = { body: [168, 182, 196], arbor: [206, 196, 170], bit: [96, 110, 140] }
const screwColour: Colour = [70, 74, 80]

interface Shape {
  readonly mesh: Mesh
  readonly colour: Colour
}

/** Shapes seen along `-from`, up towards `up`: rows of RGB, `width` × `height` pixels, four samples a pixel side. */
function render(shapes: readonly Shape[], from: Vec3, up: Vec3, width: number, height: number): Uint8Array {
  const n = 3
  const [w, h] = [width * n, height * n]
  const z = unit(from)
  const x = unit(cross(up, z))
  const y = cross(z, x)
  const flat = (p: Vec3): Vec3 => [dot(p, x), dot(p, y), dot(p, z)]
  const points = shapes.map(({ mesh }) =>
    Array.from({ length: mesh.points.length / 3 }, (_, i) =>
      flat([mesh.points[3 * i]!, mesh.points[3 * i + 1]!, mesh.points[3 * i + 2]!]),
    ),
  )
  const all = points.flat()
  const range = (k: number) => [Math.min(...all.map((p) => p[k]!)), Math.max(...all.map((p) => p[k]!))] as const
  const [[x0, x1], [y0, y1]] = [range(0), range(1)]
  const zoom = 0.92 * Math.min(w / (x1 - x0), h / (y1 - y0))
  const place = (p: Vec3): Vec3 => [
    w / 2 + zoom * (p[0] - (x0 + x1) / 2),
    h / 2 - zoom * (p[1] - (y0 + y1) / 2),
    zoom * p[2],
  ]
  const colour = new Float32Array(w * h * 3).fill(255)
  const depth = new Float32Array(w * h).fill(-Infinity)
  const light = unit([0.35, 0.6, 0.75])
  shapes.forEach(({ mesh, colour: base }, s) => {
    const at = points[s]!.map(place)
    const normals = new Map<number, Vec3[]>()
    const size = at.length
    for (let t = 0; t < mesh.triangles.length; t += 3) {
      const ids = [mesh.triangles[t]!, mesh.triangles[t + 1]!, mesh.triangles[t + 2]!] as const
      const [a, b, c] = ids.map((i) => points[s]![i]!) as [Vec3, Vec3, Vec3]
      const normal = cross(subtract(b, a), subtract(c, a))
      if (dot(normal, normal) < 1e-12) continue
      const facing = unit(normal)
      ids.forEach((i, k) => {
        const j = ids[(k + 1) % 3]!
        const key = Math.min(i, j) * size + Math.max(i, j)
        normals.set(key, [...(normals.get(key) ?? []), facing])
      })
      if (facing[2] <= 0) continue
      const shade = 0.35 + 0.65 * Math.max(0, dot(facing, light))
      fill(at[ids[0]]!, at[ids[1]]!, at[ids[2]]!, scale(base, shade))
    }
    for (const [key, [f, g]] of normals) {
      if (!f || !g || dot(f, g) > 0.85 || (f[2] <= 0 && g[2] <= 0)) continue
      line(at[Math.floor(key / size)]!, at[key % size]!)
    }
  })
  const out = new Uint8Array(width * height * 3)
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++) {
      for (let k = 0; k < 3; k++) {
        let sum = 0
        for (let j = 0; j < n; j++) for (let i = 0; i < n; i++) sum += colour[((py * n + j) * w + px * n + i) * 3 + k]!
        out[(py * width + px) * 3 + k] = Math.round(sum / (n * n))
      }
    }
  }
  return out

  function fill(a: Vec3, b: Vec3, c: Vec3, rgb: Vec3): void {
    const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
    if (Math.abs(area) < 1e-9) return
    const [left, right] = [
      Math.max(0, Math.floor(Math.min(a[0], b[0], c[0]))),
      Math.min(w - 1, Math.ceil(Math.max(a[0], b[0], c[0]))),
    ]
    const [top, low] = [
      Math.max(0, Math.floor(Math.min(a[1], b[1], c[1]))),
      Math.min(h - 1, Math.ceil(Math.max(a[1], b[1], c[1]))),
    ]
    for (let py = top; py <= low; py++) {
      for (let px = left; px <= right; px++) {
        const u = ((b[0] - px) * (c[1] - py) - (c[0] - px) * (b[1] - py)) / area
        const v = ((c[0] - px) * (a[1] - py) - (a[0] - px) * (c[1] - py)) / area
        if (u < 0 || v < 0 || u + v > 1) continue
        const d = u * a[2] + v * b[2] + (1 - u - v) * c[2]
        const i = py * w + px
        if (d <= depth[i]!) continue
        depth[i] = d
        colour.set(rgb, 3 * i)
      }
    }
  }

  function line(a: Vec3, b: Vec3): void {
    const steps = Math.ceil(Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]))) + 1
    for (let i = 0; i <= steps; i++) {
      const t = i / steps
      const d = a[2] + t * (b[2] - a[2])
      for (const [ox, oy] of [
        [0, 0],
        [1, 0],
        [0, 1],
      ] as const) {
        const px = Math.round(a[0] + t * (b[0] - a[0])) + ox
        const py = Math.round(a[1] + t * (b[1] - a[1])) + oy
        if (px < 0 || py < 0 || px >= w || py >= h) continue
        if (d > depth[py * w + px]! - 4) colour.set([30, 34, 40], 3 * (py * w + px))
      }
    }
  }
}

/** A PNG of RGB rows (PNG specification, third edition, §5 and §11). */
function png(rgb: Uint8Array, width: number, height: number): Buffer {
  const rows = Buffer.alloc(height * (width * 3 + 1))
  for (let y = 0; y < height; y++) rows.set(rgb.subarray(y * width * 3, (y + 1) * width * 3), y * (width * 3 + 1) + 1)
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const chunk = (name: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(name, 'ascii'), data])
    const out = Buffer.alloc(body.length + 8)
    out.writeUInt32BE(data.length, 0)
    out.set(body, 4)
    out.writeUInt32BE(crc(body), body.length + 4)
    return out
  }
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function crc(bytes: Buffer): number {
  let c = 0xffffffff
  for (const byte of bytes) {
    c ^= byte
    for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1
  }
  return (c ^ 0xffffffff) >>> 0
}

function shapesOf(file: string): Shape[] {
  const tables = loadTables()
  if (!tables.ok) throw new Error(JSON.stringify(tables.problems))
  const read = readAnyDesign(families, readFileSync(file, 'utf8'), file, tables.value)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value.design.scene.parts.map(({ part }) => {
    const mesh = meshOf(solidOf(part), 0.02, part.id)
    if (!mesh.ok) throw new Error(JSON.stringify(mesh.problems))
    return { mesh: mesh.value, colour: colours[part.id] ?? screwColour }
  })
}

const args = process.argv.slice(2).filter((a) => a !== '--sides')
const [file, out] = [
  args[0] ?? 'templates/fly-cutter-head/parameters.yaml',
  args[1] ?? 'templates/fly-cutter-head/picture.png',
]
const shapes = shapesOf(file)
if (process.argv.includes('--sides')) {
  const sides: [string, Vec3, Vec3][] = [
    ['bit-side', [1, 0, 0], [0, 0, 1]],
    ['leading-side', [0.35, -1, -0.25], [0, 0, 1]],
    ['below', [0, 0, -1], [1, 0, 0]],
    ['above', [-0.4, 0.5, 0.8], [0, 0, 1]],
  ]
  for (const [name, from, up] of sides)
    writeFileSync(out.replace(/\.png$/, `-${name}.png`), png(render(shapes, from, up, 560, 560), 560, 560))
} else {
  writeFileSync(out, png(render(shapes, [0.75, -1, -0.55], [0, 0, 1], 640, 560), 640, 560))
}

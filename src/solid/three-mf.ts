import { strToU8, zipSync } from 'fflate'
import { formatNumber } from '../quantity/format-number.ts'
import type { Mesh } from './closed-mesh.ts'

/** A closed body of a 3MF file. */
export interface ThreeMfObject {
  readonly name: string
  readonly mesh: Mesh
  /** What it is made of, in words. */
  readonly material: string
  readonly colour: `#${string}`
}

export interface ThreeMfFacts {
  readonly title: string
  readonly description: string
}

/** Most decimals of a coordinate: well below any chord tolerance, so that engines cannot differ. */
const decimals = 6

/**
 * Bodies with names and colours as a 3MF package (3MF Core Specification), mm. The same bodies give the same bytes: fixed
 * dates, one deflate. Throws RangeError where there is nothing to write, on a coordinate that is not finite, and on
 * control characters in a name.
 */
export function threeMf(objects: readonly ThreeMfObject[], facts: ThreeMfFacts): Uint8Array {
  if (objects.length === 0) throw new RangeError('a 3MF file without a body')
  const files = {
    '[Content_Types].xml': lines([
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">',
      '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>',
      '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>',
      '</Types>',
    ]),
    '_rels/.rels': lines([
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">',
      '<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>',
      '</Relationships>',
    ]),
    '3D/3dmodel.model': model(objects, facts),
  }
  // Local fields, so that the time zone of the machine does not show.
  const mtime = new Date(1980, 0, 1)
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, [strToU8(text), { mtime }]])), {
    level: 4,
    mtime,
  })
}

function model(objects: readonly ThreeMfObject[], { title, description }: ThreeMfFacts): string {
  const materials = [...new Map(objects.map((o) => [`${o.material} ${o.colour}`, o])).keys()]
  return lines([
    '<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">',
    `<metadata name="Title">${escaped(title)}</metadata>`,
    `<metadata name="Description">${escaped(description)}</metadata>`,
    '<resources>',
    '<basematerials id="1">',
    ...materials.map((key) => {
      const { material, colour } = objects.find((o) => `${o.material} ${o.colour}` === key)!
      if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new RangeError(`not a colour: ${colour}`)
      return `<base name="${escaped(material)}" displaycolor="${colour.toUpperCase()}"/>`
    }),
    '</basematerials>',
    ...objects.flatMap((o, i) => [
      `<object id="${i + 2}" type="model" name="${escaped(o.name)}" pid="1" pindex="${materials.indexOf(`${o.material} ${o.colour}`)}">`,
      '<mesh>',
      '<vertices>',
      ...vertices(o.mesh),
      '</vertices>',
      '<triangles>',
      ...triangles(o.mesh),
      '</triangles>',
      '</mesh>',
      '</object>',
    ]),
    '</resources>',
    '<build>',
    ...objects.map((_, i) => `<item objectid="${i + 2}"/>`),
    '</build>',
    '</model>',
  ])
}

function vertices({ points }: Mesh): string[] {
  const out: string[] = []
  for (let i = 0; i < points.length; i += 3) {
    out.push(`<vertex x="${digits(points[i]!)}" y="${digits(points[i + 1]!)}" z="${digits(points[i + 2]!)}"/>`)
  }
  return out
}

function triangles({ triangles: t }: Mesh): string[] {
  const out: string[] = []
  for (let i = 0; i < t.length; i += 3) out.push(`<triangle v1="${t[i]}" v2="${t[i + 1]}" v3="${t[i + 2]}"/>`)
  return out
}

const digits = (value: number): string => formatNumber(value, decimals, { trim: true })

/** As one list and not as arguments: a fine mesh has more rows than a call takes. */
const lines = (rows: readonly string[]): string => `<?xml version="1.0" encoding="UTF-8"?>\n${rows.join('\n')}\n`

function escaped(text: string): string {
  if (/\p{Cc}/u.test(text)) throw new RangeError(`control character in ${JSON.stringify(text)}`)
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}

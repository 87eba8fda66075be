import { createHash } from 'node:crypto'
import { z } from 'zod'

/** The file in every package that lists the others; by it a package is known as one of ours. */
export const manifestName = 'contents.json'

const manifestSchema = z.strictObject({
  format: z.literal('cutterwright package 1'),
  revision: z.string(),
  files: z.array(z.strictObject({ name: z.string(), size: z.int(), sha256: z.string() })),
})

export type Manifest = z.output<typeof manifestSchema>
export type ManifestFile = Manifest['files'][number]

/** Files in the order of their names, sizes in bytes. Throws RangeError on a name that is more than a plain name. */
export function manifestOf(files: ReadonlyMap<string, Uint8Array | string>, revision: string): Manifest {
  for (const name of files.keys()) {
    if (!/^[a-z0-9][a-z0-9._-]*$/i.test(name) || name === manifestName) throw new RangeError(`file name ${name}`)
  }
  const listed = [...files].map(([name, content]) => fileOf(name, content))
  const format = 'cutterwright package 1'
  return { format, revision, files: listed.sort((a, b) => (a.name < b.name ? -1 : 1)) }
}

export function fileOf(name: string, content: Uint8Array | string): ManifestFile {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
  return { name, size: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') }
}

/** The same list gives the same text, and no other text gives the list: an edited manifest is seen. */
export const manifestText = (manifest: Manifest): string => `${JSON.stringify(manifest, null, 2)}\n`

/** Undefined where the text is no manifest. */
export function readManifest(text: string): Manifest | undefined {
  try {
    return manifestSchema.safeParse(JSON.parse(text)).data
  } catch {
    return undefined
  }
}

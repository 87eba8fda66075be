import { closeSync, openSync, readdirSync, readSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { nearest } from '../input/nearest.ts'
import type { ProblemCode } from '../input/problem.ts'
import { decodeText, type TextRead } from './decode-text.ts'
import { systemCode } from './disk-problem.ts'

/** Most bytes that are read. What is read must be far shorter still (`readDocument`); this bounds the memory. */
const mostBytes = 4_000_000

/** Reads a text file that the user named; `file` is the name as written, and `allowed` what it should be, for problems. */
export function readTextFile(path: string, file: string, allowed = 'a parameter file'): TextRead {
  const refuse = refusals(file, allowed)
  try {
    const found = statSync(path)
    if (found.isDirectory()) return refuse('not-a-file', 'a folder')
    if (!found.isFile() && !isHandedIn(path)) return refuse('not-a-file', 'something that is no file')
    const bytes = bytesOf(path)
    return bytes === undefined ? refuse('file-too-large', tooLarge) : decodeText(bytes, file)
  } catch (error) {
    return unreadable(error, refuse, () => meant(path, file))
  }
}

/** Reads all of a stream, such as standard input. */
export async function readTextStream(stream: AsyncIterable<Uint8Array | string>, file: string): Promise<TextRead> {
  const refuse = refusals(file, 'a parameter file')
  const chunks: Uint8Array[] = []
  let length = 0
  try {
    for await (const chunk of stream) {
      const bytes = typeof chunk === 'string' ? new TextEncoder().encode(chunk) : chunk
      length += bytes.length
      if (length > mostBytes) return refuse('file-too-large', tooLarge)
      chunks.push(bytes)
    }
  } catch (error) {
    return unreadable(error, refuse)
  }
  return decodeText(Buffer.concat(chunks), file)
}

/** What a shell or the system hands in under a name: another pipe could be waited at for ever. */
const isHandedIn = (path: string): boolean => /^\/(?:dev|proc)\//.test(path)

/** By reading, not by size: a pipe has none. Undefined: more than is read. */
function bytesOf(path: string): Uint8Array | undefined {
  const handle = openSync(path, 'r')
  try {
    const chunks: Uint8Array[] = []
    for (let length = 0; length <= mostBytes; ) {
      const chunk = Buffer.alloc(65_536)
      const count = readSync(handle, chunk)
      if (count === 0) return Buffer.concat(chunks)
      chunks.push(chunk.subarray(0, count))
      length += count
    }
    return undefined
  } finally {
    closeSync(handle)
  }
}

type Refusal = (code: ProblemCode, found: string, remedy?: string) => TextRead

const refusals =
  (file: string, allowed: string): Refusal =>
  (code, found, remedy) => ({
    ok: false,
    problems: [{ code, where: { file }, found, allowed, ...(remedy !== undefined && { remedy }) }],
  })

const tooLarge = `more than ${mostBytes} bytes`

function unreadable(error: unknown, refuse: Refusal, nearby?: () => string | undefined): TextRead {
  const code = systemCode(error)
  if (code === undefined) throw error
  if (code === 'ENOENT' || code === 'ENOTDIR') return refuse('file-missing', 'nothing', nearby?.())
  if (code === 'EISDIR') return refuse('not-a-file', 'a folder')
  const denied = code === 'EACCES' || code === 'EPERM'
  return refuse('file-not-readable', denied ? 'no permission to read it' : `the system's answer ${code}`)
}

/** A file beside the missing one whose name is near. */
function meant(path: string, file: string): string | undefined {
  try {
    const near = nearest(basename(path), readdirSync(dirname(path)).toSorted())
    return near === undefined ? undefined : `did you mean ${join(dirname(file), near)}?`
  } catch {
    return undefined
  }
}

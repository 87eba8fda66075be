import { closeSync, openSync, readdirSync, readSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { nearest } from '../input/nearest.ts'
import type { Problem, ProblemCode } from '../input/problem.ts'
import { decodeText, type TextRead } from './decode-text.ts'
import { systemCode } from './disk-problem.ts'

/** Most bytes that are read. What is read must be far shorter still (`readDocument`); this bounds the memory. */
const mostBytes = 4_000_000

/** Reads a text file that the user named; `file` is the name as written, for problems. */
export function readTextFile(path: string, file: string): TextRead {
  try {
    if (statSync(path).isDirectory()) return refused('not-a-file', file, 'a folder')
    const bytes = bytesOf(path)
    return bytes === undefined ? tooLarge(file) : decodeText(bytes, file)
  } catch (error) {
    return unreadable(error, file, () => meant(path, file))
  }
}

/** Reads all of a stream, such as standard input. */
export async function readTextStream(stream: AsyncIterable<Uint8Array | string>, file: string): Promise<TextRead> {
  const chunks: Uint8Array[] = []
  let length = 0
  try {
    for await (const chunk of stream) {
      const bytes = typeof chunk === 'string' ? new TextEncoder().encode(chunk) : chunk
      length += bytes.length
      if (length > mostBytes) return tooLarge(file)
      chunks.push(bytes)
    }
  } catch (error) {
    return unreadable(error, file)
  }
  return decodeText(Buffer.concat(chunks), file)
}

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

function unreadable(error: unknown, file: string, nearby?: () => string | undefined): TextRead {
  const code = systemCode(error)
  if (code === undefined) throw error
  if (code === 'ENOENT' || code === 'ENOTDIR') return refused('file-missing', file, 'nothing', nearby?.())
  if (code === 'EISDIR') return refused('not-a-file', file, 'a folder')
  const denied = code === 'EACCES' || code === 'EPERM'
  return refused('file-not-readable', file, denied ? 'no permission to read it' : `the system's answer ${code}`)
}

const tooLarge = (file: string): TextRead => refused('file-too-large', file, `more than ${mostBytes} bytes`)

function refused(code: ProblemCode, file: string, found: string, remedy?: string): TextRead {
  const problem: Problem = { code, where: { file }, found, allowed: 'a parameter file', ...(remedy && { remedy }) }
  return { ok: false, problems: [problem] }
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

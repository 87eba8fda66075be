import { printable } from '../input/plain-text.ts'
import type { Result } from '../input/problem.ts'
import type { PackagePlace } from '../package/package-place.ts'
import { recoverAtStart } from '../package/recover.ts'
import { otherKind, type PackageKind } from '../package/target.ts'
import type { World } from './world.ts'

/**
 * Before a command works for long: tidies what a dead run left at the place, and says so; refuses a place where another
 * command's work stands. The value tells the user something on stderr.
 */
export function openPlace(place: PackagePlace, kind: PackageKind, { machine, stderr }: World): Result<Note> {
  const note: Note = (text) => void stderr.write(`${printable(text)}\n`)
  const recovered = recoverAtStart(place, machine)
  if (!recovered.ok) return recovered
  if (recovered.value !== undefined) note(recovered.value)
  const other = otherKind(place, kind, machine.disk)
  return other === undefined ? { ok: true, value: note } : { ok: false, problems: [other] }
}

export type Note = (text: string) => void

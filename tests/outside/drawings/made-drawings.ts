import type { Text } from '../../../src/drawing/entity.ts'
import { sheetOnPaper } from '../../../src/drawing/sheet/sheet.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import type { CommonParameters, Design } from '../../../src/families/family.ts'
import { flyCutterHead } from '../../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../../src/families/read-design.ts'
import { besideWork } from '../../../src/package/beside-work.ts'
import { type DrawingFiles, drawingFiles, drawingsOf } from '../../../src/package/drawing-files.ts'
import { loadFont } from '../../../src/package/load-font.ts'
import { tables, templateText } from '../../families/random-heads.ts'

export interface Made {
  readonly read: ReadDesign<CommonParameters, Design>
  readonly drawn: DrawingFiles<Uint8Array>
  /** Every text on the sheets. */
  readonly texts: readonly Text<string>[]
}

/** The drawings of a template, with whatever is to be different in its text; no findings. */
export function drawingsOn(
  name: 'parameters' | 'parameters-inch',
  ...changes: readonly (readonly [from: string | RegExp, to: string])[]
): Made {
  let text = templateText(name)
  for (const [from, to] of changes) {
    const changed = text.replace(from, to)
    if (changed === text) throw new Error(`nothing to change: ${from}`)
    text = changed
  }
  const found = readDesign(flyCutterHead, text, name, tables)
  if (!found.ok) throw new Error(JSON.stringify(found.problems, undefined, 1))
  const read = found.value as unknown as ReadDesign<CommonParameters, Design>
  const drawn = drawingFiles(read, [], 'a1b2c3d4', loadFont(), besideWork.pdf)
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.problems, undefined, 1))
  const drawings = drawingsOf(read, [], 'a1b2c3d4', styleOf(), loadFont())
  if (!drawings.ok) throw new Error('sheets without drawings')
  const texts = drawings.value.flatMap((d) =>
    d.sheets.flatMap((s) => sheetOnPaper(s).flatMap((e) => (e.kind === 'text' ? [e] : []))),
  )
  return { read, drawn: drawn.value, texts }
}

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Font, fontFrom } from '../drawing/font/font.ts'

let known: Font | undefined

/** The font that is embedded in drawings, from the installed font package; read once. */
export function loadFont(): Font {
  known ??= fontFrom(
    readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
  )
  return known
}

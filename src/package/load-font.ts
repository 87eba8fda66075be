import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Font, fontFrom } from '../drawing/font/font.ts'

let known: Font | undefined

/** The font that is embedded in drawings; read once. From the installed font package, or built from beside the bundle. */
export function loadFont(): Font {
  known ??= fontFrom(readFileSync(import.meta.url.endsWith('.ts') ? installed() : built()))
  return known
}

const installed = () => createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')
const built = () => new URL('../DejaVuSansCondensed.ttf', import.meta.url)

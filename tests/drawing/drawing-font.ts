import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Font, fontFrom } from '../../src/drawing/font/font.ts'

/** The font that is embedded in drawings. */
export const drawingFont = (): Font =>
  fontFrom(readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')))

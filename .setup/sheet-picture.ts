// The first sheet of the demo's head as SVG, for the README: part of npm run picture.
import { readFileSync, writeFileSync } from 'node:fs'
import { styleOf } from '../src/drawing/style.ts'
import { sheetSvg } from '../src/drawing/svg/svg.ts'
import { families } from '../src/families/families.ts'
import { readAnyDesign } from '../src/families/read-design.ts'
import { drawingsOf } from '../src/package/drawing-files.ts'
import { loadFont } from '../src/package/load-font.ts'
import { loadTables } from '../src/package/load-tables.ts'
import { revisionOf } from '../src/package/revision.ts'

const folder = 'templates/fly-cutter-head'
const tables = loadTables()
if (!tables.ok) throw new Error(JSON.stringify(tables.problems))
const read = readAnyDesign(families, readFileSync(`${folder}/parameters.yaml`, 'utf8'), folder, tables.value)
if (!read.ok) throw new Error(JSON.stringify(read.problems))
const style = styleOf()
const drawings = drawingsOf(read.value, [], revisionOf(read.value), style, loadFont())
if (!drawings.ok) throw new Error(JSON.stringify(drawings.problems))
const sheet = drawings.value[0]!.sheets[0]!
// On a page that may be dark the sheet is white paper all the same.
const paper = `<rect width="${sheet.size.width}" height="${sheet.size.height}" fill="#ffffff"/>`
writeFileSync(`${folder}/body-sheet.svg`, sheetSvg(sheet, style, loadFont()).replace('</title>', `</title>\n${paper}`))

// The one place that imports pdfkit. Two of its habits would make files differ, a creation date from the clock and the
// system's deflate; both are dealt with here. Kerning, which our measure of text does not know, is not in the font.
import { zlibSync } from 'fflate'
import PDFDocument from 'pdfkit'

/** Points per millimetre. */
const perMm = 72 / 25.4

/** The date every file carries: the same input gives the same bytes, so the clock has no place in it. */
const fixedDate = new Date(Date.UTC(2000, 0, 1))

interface Reference {
  compress: boolean
  data: Record<string, unknown>
  buffer: Uint8Array[]
  finalize(): void
}

export interface PdfFacts {
  readonly title: string
  readonly subject: string
}

/** A page in mm, y up from its lower left corner. */
export interface PdfPage {
  line(width: number, colour: string, dashes: readonly number[]): void
  move(x: number, y: number): void
  draw(x: number, y: number): void
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void
  close(): void
  stroke(): void
  fill(colour: string): void
  /** Baseline from (x, y) at `rotation` rad; `size` of the font, mm. */
  text(text: string, x: number, y: number, size: number, rotation: number, colour: string): void
}

/** What of pdfkit is used, as it runs: its types are behind it. */
interface Kit {
  ref(data: Record<string, unknown>): Reference
  addPage(options: { size: [number, number]; margin: number }): void
  fontSize(size: number): Kit
  markContent(tag: 'Span', options: { actual: string }): Kit
  endMarkedContent(): Kit
  save(): Kit
  restore(): Kit
  transform(a: number, b: number, c: number, d: number, e: number, f: number): Kit
  text(text: string, x: number, y: number, options: { lineBreak: false; baseline: 'alphabetic' }): Kit
  lineWidth(width: number): Kit
  lineCap(cap: 'butt' | 'round'): Kit
  lineJoin(join: 'round'): Kit
  dash(lengths: number[], options: { phase: number }): Kit
  undash(): Kit
  strokeColor(colour: string): Kit
  fillColor(colour: string): Kit
  moveTo(x: number, y: number): Kit
  lineTo(x: number, y: number): Kit
  bezierCurveTo(...xy: [number, number, number, number, number, number]): Kit
  closePath(): Kit
  stroke(): Kit
  fill(): Kit
  end(): void
  read(): Uint8Array | null
}

/** Writes a document page by page. `font`: the file to embed; only the signs in use go into the document. */
export function pdfFile(
  facts: PdfFacts,
  font: Uint8Array,
  pages: readonly { readonly width: number; readonly height: number; readonly draw: (page: PdfPage) => void }[],
): Uint8Array {
  const kit = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    font: font as unknown as string,
    info: {
      Title: facts.title,
      Subject: facts.subject,
      CreationDate: fixedDate,
      Producer: 'cutterwright',
      Creator: 'cutterwright',
    },
  }) as unknown as Kit
  deflateEvenly(kit)
  for (const { width, height, draw } of pages) {
    kit.addPage({ size: [width * perMm, height * perMm], margin: 0 })
    kit.lineJoin('round')
    draw(pageOf(kit, height))
  }
  kit.end()
  const bytes = kit.read()
  if (bytes === null) throw new Error('pdfkit handed out nothing')
  return new Uint8Array(bytes)
}

/** Has every stream packed by one deflate in JavaScript, the same on every machine. */
function deflateEvenly(kit: Kit): void {
  const ref = kit.ref.bind(kit)
  kit.ref = (data) => {
    const reference = ref(data)
    const finalize = reference.finalize.bind(reference)
    reference.finalize = () => {
      if (reference.buffer.length > 0 && reference.data.Filter === undefined) {
        const whole = new Uint8Array(reference.buffer.reduce((sum, b) => sum + b.length, 0))
        let at = 0
        for (const part of reference.buffer) {
          whole.set(part, at)
          at += part.length
        }
        reference.buffer = [zlibSync(whole, { level: 4 })]
        reference.data.Filter = 'FlateDecode'
      }
      finalize()
    }
    return reference
  }
}

function pageOf(kit: Kit, height: number): PdfPage {
  // A ten-thousandth of a point, rounded here: engines differ in the last digit of a sine.
  const near = (value: number) => {
    if (!Number.isFinite(value)) throw new RangeError(`not a place on paper: ${value}`)
    return Math.round(value * perMm * 1e4) / 1e4 + 0
  }
  const x = near
  const y = (value: number) => near(height - value)
  return {
    line(width, colour, dashes) {
      kit.lineWidth(near(width)).strokeColor(colour).lineCap('round')
      // Round ends would add a width to each dash and take it from the gap.
      if (dashes.length === 0) kit.undash()
      else kit.lineCap('butt').dash(dashes.map(near), { phase: 0 })
    },
    move: (px, py) => void kit.moveTo(x(px), y(py)),
    draw: (px, py) => void kit.lineTo(x(px), y(py)),
    curve: (x1, y1, x2, y2, px, py) => void kit.bezierCurveTo(x(x1), y(y1), x(x2), y(y2), x(px), y(py)),
    close: () => void kit.closePath(),
    stroke: () => void kit.stroke(),
    fill: (colour) => void kit.fillColor(colour).fill(),
    text(text, px, py, size, rotation, colour) {
      const [c, s] = [Math.cos(rotation), Math.sin(rotation)].map((n) => Math.round(n * 1e6) / 1e6 + 0) as [
        number,
        number,
      ]
      // Readers take slanted text apart sign by sign unless they are told the whole.
      const slanted = Math.min(Math.abs(c), Math.abs(s)) > 1e-3
      if (slanted) kit.markContent('Span', { actual: text })
      kit.save().transform(c, -s, s, c, x(px), y(py))
      kit.fontSize(near(size)).fillColor(colour)
      kit.text(text, 0, 0, { lineBreak: false, baseline: 'alphabetic' })
      kit.restore()
      if (slanted) kit.endMarkedContent()
    },
  }
}

import type { Result } from '../../input/problem.ts'

export type SheetName = 'A4' | 'A3' | 'letter' | 'tabloid'

/** A sheet of paper and the frame on it, mm. */
export interface SheetSize {
  readonly name: SheetName
  readonly width: number
  readonly height: number
  /** From the paper's edges to the frame. */
  readonly margins: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
}

const inch = 25.4
/** ISO 5457: 20 mm on the left for filing, 10 mm elsewhere (from memory). */
const isoMargins = { left: 20, right: 10, top: 10, bottom: 10 }
/** ASME Y14.1 sizes A and B: 0.38 in along the width and 0.25 in along the height, near enough for both (from memory). */
const inchMargins = { left: 0.5 * inch, right: 0.5 * inch, top: 0.38 * inch, bottom: 0.38 * inch }

/** A4 upright and A3 across (ISO 216), letter and tabloid (ASME Y14.1 sizes A and B), both across. */
export const sheetSizes: Readonly<Record<SheetName, SheetSize>> = {
  A4: { name: 'A4', width: 210, height: 297, margins: isoMargins },
  A3: { name: 'A3', width: 420, height: 297, margins: isoMargins },
  letter: { name: 'letter', width: 11 * inch, height: 8.5 * inch, margins: inchMargins },
  tabloid: { name: 'tabloid', width: 17 * inch, height: 11 * inch, margins: inchMargins },
}

/** The sheet of that name. */
export function sheetSize(name: string): Result<SheetSize> {
  const found = Object.values(sheetSizes).find((s) => s.name === name)
  if (found) return { ok: true, value: found }
  return {
    ok: false,
    problems: [
      { code: 'unknown-choice', where: { file: 'sheet' }, found: name, allowed: Object.keys(sheetSizes).join(', ') },
    ],
  }
}

import { dxfFile } from '../drawing/dxf/dxf-file.ts'
import { profilesDxf } from '../drawing/profiles.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'
import { sheetUnit } from './drawing-files.ts'

/** `profiles.dxf`, in the unit of the drawings. */
export function profileFile(
  { family, design }: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
): Result<string> {
  const { title } = design.parameters
  const units = sheetUnit(design)
  const stops = findings.filter((f) => f.level === 'stop').map((f) => f.text)
  const comments = [
    `cutterwright ${title}: profiles for CAM in ${units === 'mm' ? 'millimetres' : 'inches'}, true size, revision ${revision}`,
    'a layer a feature; depths are below the zero of its set-up, square to its plane; outlines of open cuts run out past the metal',
  ]
  const document = profilesDxf(family.profiles(design), units, { comments, stops })
  return document.ok ? { ok: true, value: dxfFile(document.value) } : document
}

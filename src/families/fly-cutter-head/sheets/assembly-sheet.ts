import type { SheetPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { HeadDesign } from '../design.ts'
import { written } from '../words.ts'
import { assemblyBelow } from './assembly-below.ts'
import { assemblyNotes, partsTable } from './assembly-notes.ts'
import { assemblySection } from './assembly-section.ts'
import { assemblySide } from './assembly-side.ts'
import { assemblyIn } from './assembly-views.ts'
import { wholeTool } from './sheet-share.ts'

/** The tool put together: what it is made of, how it goes together, what it sweeps and how fast it may turn. */
export function assemblySheet(design: HeadDesign, style: DrawingStyle): SheetPlan {
  const assembly = assemblyIn(design, style)
  const first = design.parameters.drawing.projection === 'first-angle'
  const [side, below] = [assemblySide(assembly), assemblyBelow(assembly)]
  const mass = design.scene.parts.reduce((sum, { part }) => sum + design.mass(part.id), 0)
  return {
    id: 'assembly',
    part: 'Assembly',
    material: 'see the parts list',
    mass: written(design, 'mass', mass),
    share: wholeTool,
    groups: [{ rows: first ? [[below], [side]] : [[side], [below]] }, { rows: [[assemblySection(assembly)]] }],
    blocks: [partsTable(assembly.items), ...assemblyNotes(design)],
  }
}

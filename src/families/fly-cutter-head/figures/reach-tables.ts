import type { TableOf } from '../../../figures/table.ts'
import type { HeadDesign } from '../design.ts'
import { reachTableOf } from '../engineering/reach-table.ts'

const gramMillimetresPerOunceInch = 28.349523125 * 25.4

/** Overhang against everything that hangs on it. */
export const reachTable: TableOf<HeadDesign> = (design) => {
  const inches = design.units === 'in'
  return {
    id: 'reach',
    title: 'Reach: the same bit pushed in and pulled out',
    columns: [
      { label: 'overhang', kind: 'length' },
      { label: 'swing', kind: 'length' },
      { label: 'swept diameter', kind: 'length' },
      { label: 'tip below mounting face', kind: 'length' },
      { label: 'radial rake', kind: 'angle' },
      { label: 'advised speed', kind: 'rotation-speed' },
      { label: 'grip ÷ overhang', kind: 'ratio' },
      { label: 'bit stress', kind: 'pressure' },
      { label: 'tip deflection', kind: 'length' },
      { label: 'unbalance', kind: 'count', unit: inches ? 'oz·in' : 'g·mm' },
      { label: 'unbalance force at that speed', kind: 'force' },
      { label: 'remark', kind: 'text' },
    ],
    rows: reachTableOf(design).map((row) => [
      row.overhang,
      row.swing,
      row.swept,
      row.tipDepth,
      row.radialRake,
      row.advised ?? 'too fast',
      row.gripRatio,
      row.stress,
      row.deflection,
      inches ? row.unbalance / gramMillimetresPerOunceInch : row.unbalance,
      row.unbalanceForce,
      [...(row.asSet ? ['as set'] : []), ...(row.remark === '' ? [] : [row.remark])].join(': '),
    ]),
  }
}

/** Advised speed, for the life of the edge, by overhang and work material. */
export const reachSpeedTable: TableOf<HeadDesign> = (design) => ({
  id: 'reach-speeds',
  title: 'Advised speed by overhang and work material (life of the edge, no safety limit)',
  columns: [
    { label: 'overhang', kind: 'length' },
    { label: 'swing', kind: 'length' },
    ...design.tables.workMaterials.map(({ name }) => ({ label: name, kind: 'rotation-speed' as const })),
  ],
  rows: reachTableOf(design).map((row) => [row.overhang, row.swing, ...row.advisedFor]),
})

import { spawnSync } from 'node:child_process'

const counts = [
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
] as const

/** What admesh (Debian) finds wrong with an STL file, in its own words; empty where the mesh is closed and whole. */
export function admeshFaults(file: string): string[] {
  const report = spawnSync('admesh', [file], { encoding: 'utf8' }).stdout
  const faults = counts.flatMap((count) => {
    const found = new RegExp(`${count}\\s*:\\s*(\\d+)`).exec(report)
    return found?.[1] === '0' ? [] : [`${count}: ${found?.[1] ?? 'not said'}`]
  })
  const open = /Total disconnected facets\s*:\s*(\d+)\s+(\d+)/.exec(report)
  return open?.[1] === '0' && open[2] === '0' ? faults : [...faults, `disconnected: ${open?.[0] ?? 'not said'}`]
}

import type { Units } from '../../quantity/kind.ts'
import type { Finding } from '../finding.ts'
import { mm, type Rule, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly layout: { readonly inscribed: number }
  readonly parameters: {
    readonly bore: { readonly diameter: number; readonly chamfer: number } & (
      | { readonly kind: 'blind'; readonly depth: number }
      | { readonly kind: 'through' }
    )
    readonly arbor: { readonly 'spigot-length': number } & (
      | { readonly kind: 'shank'; readonly 'shoulder-diameter': number }
      | { readonly kind: 'straight' }
    )
  }
}

/** Whether the arbor seats on its shoulder, square to the mounting face, before its end bottoms. */
export const spigotSeat: Rule<Subject> = {
  id: 'spigot-seat',
  findings({ units, layout, parameters: { bore, arbor } }) {
    const found: Finding[] = []
    const spigot = arbor['spigot-length']
    if (arbor.kind === 'shank' && bore.kind === 'blind' && spigot >= bore.depth) {
      found.push({
        id: 'spigot-seat:bottoms',
        level: 'stop',
        text: `The spigot of ${written(mm(spigot), units)} bottoms in the bore of ${written(mm(bore.depth), units)} before the shoulder seats: nothing then holds the head square.`,
        figure: mm(spigot),
        limit: { ...mm(bore.depth), reason: 'full-diameter depth of the bore' },
        levers: [
          { path: 'arbor.spigot-length', turn: 'down' },
          { path: 'bore.depth', turn: 'up' },
        ],
      })
    }
    if (arbor.kind !== 'shank') return found
    const shoulder = arbor['shoulder-diameter']
    const mouth = bore.diameter + 2 * bore.chamfer
    if (shoulder <= mouth) {
      found.push({
        id: 'spigot-seat:no-seat',
        level: 'stop',
        text: `The shoulder of ${written(mm(shoulder), units)} falls into the chamfered mouth of ${written(mm(mouth), units)}.`,
        figure: mm(shoulder),
        limit: { ...mm(mouth), reason: 'bore and chamfer' },
        levers: [
          { path: 'arbor.shoulder-diameter', turn: 'up' },
          { path: 'bore.chamfer', turn: 'down' },
        ],
      })
    }
    if (shoulder > layout.inscribed) {
      found.push({
        id: 'spigot-seat:overhangs',
        level: 'note',
        text: `The shoulder of ${written(mm(shoulder), units)} is wider than the flats of the head.`,
        figure: mm(shoulder),
        limit: { ...mm(layout.inscribed), reason: 'largest circle inside the bar' },
        levers: [{ path: 'arbor.shoulder-diameter', turn: 'down' }],
      })
    }
    return found
  },
}

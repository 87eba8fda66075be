import type { Rule } from '../rule.ts'

/** Whether the spindle can turn the way the tool was laid out for. */
export const hand: Rule<{
  readonly parameters: {
    readonly rotation: 'clockwise' | 'anticlockwise'
    readonly machine: { readonly reverse: boolean }
  }
}> = {
  id: 'hand',
  findings({ parameters: { rotation, machine } }) {
    if (rotation === 'clockwise' || machine.reverse) return []
    return [
      {
        id: 'hand',
        level: 'stop',
        text: 'The head is laid out to turn anticlockwise (seen from the spindle looking down), and the spindle has no reverse: the bit would drag its back over the work.',
        levers: [{ path: 'rotation', choose: 'clockwise' }],
      },
    ]
  },
}

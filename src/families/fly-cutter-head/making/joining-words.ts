import type { MatchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { handedThread } from '../body-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { heatLimit, isShrunk, jointOfHead, pinDiameter } from '../engineering/fit.ts'
import { washerCatch } from '../engineering/ways-to-hold.ts'
import { written } from '../words.ts'
import { isJoinedFirst } from './tilted-set-up.ts'

/** How head and arbor are put together, in words, with the temperatures or the force. */
export function joiningWords(design: HeadDesign): string[] {
  const { parameters: p, layout: l } = design
  const seat = p.arbor.kind === 'shank' ? 'until the shoulder seats' : 'to its depth'
  if (p.fit.kind === 'threaded' && l.spigotThread) {
    return [`Screw the head on the spigot, ${handedThread(l.spigotThread.name, p.fit.hand)}, ${seat}.`]
  }
  const length = (value: number) => written(design, 'length', value)
  const { least, most } = l.fit!.kind === 'matched' ? (l.fit as MatchedFit).printedOver : l.fit!.interference
  const how = p.fit.kind === 'matched' ? 'Turn the spigot to the bore as measured' : 'Measure bore and spigot'
  const first = `${how}, both at ${written(design, 'temperature', 20)}: interference ${length(least)} to ${length(most)} on the diameter.`
  const joint = jointOfHead(design)
  if (!joint) return [first, 'Nothing of the joint is left whole: see the report.']
  return [first, isShrunk(design) ? shrinking(design, seat) : pressing(design, seat)]
}

function shrinking(design: HeadDesign, seat: string): string {
  const { heat, both, need } = jointOfHead(design)!.most.assembly
  const degrees = (value: number) => written(design, 'temperature', value)
  if (need === 'none') return `It goes together cold, ${seat}: heat never makes interference.`
  const limit = degrees(heatLimit(design))
  const on = `slip it on in one movement ${seat}, and let it cool in still air. Heat-proof gloves and tongs; a chlorinated cleaner before the torch makes phosgene.`
  if (heat.possible) {
    return `Bit and set screws out: heat the head evenly to ${degrees(heat.temperature)}, measured, never above ${limit}; ${on}`
  }
  if (both?.possible) {
    return `Cool the arbor to ${degrees(both.spigotTemperature)} in liquid nitrogen (it suffocates: air the room), bit and set screws out, heat the head evenly to ${degrees(both.temperature)}, measured, never above ${limit}; ${on}`
  }
  return `It cannot be shrunk on: the head would need ${degrees(heat.temperature)}, and must not go above ${limit}. See the report.`
}

function pressing(design: HeadDesign, seat: string): string {
  const force = jointOfHead(design)!.most.pressForce
  // Up to three digits, which is more than the gauge of a press shows.
  const step = 10 ** (Math.floor(Math.log10(force)) - 2)
  const most = written(design, 'force', force > 0 ? Math.ceil(force / step) * step : 0)
  const square = `Press it together cold and square, ${seat}: up to ${most}.`
  const wedge =
    ' An angled face is no seat for the press: press before it is cut, or in a cup bored to it; a loose wedge can shoot out.'
  return design.parameters.face.angle > 0 && !isJoinedFirst(design) ? square + wedge : square
}

/** What keeps the head on should the joint slip. */
export function catchWords(design: HeadDesign): string[] {
  const { fit, stock } = design.parameters
  switch (fit.catch) {
    case 'pin': {
      const across = stock.shape === 'round' ? 'square to the slot' : 'square to a pair of flats'
      const size = written(design, 'length', pinDiameter(design.parameters))
      return [
        `Then drill and ream head and spigot together for the pin, ${size}, ${across}; drive it in and stake both ends.`,
      ]
    }
    case 'screw-and-washer': {
      const made = washerCatch(design)
      return [
        made
          ? `Catch: ${made}, into the tapped end of the spigot; lock it.`
          : 'Catch: screw and washer find no place here. See the report.',
      ]
    }
    case 'shoulder-below':
      return ['Catch: a shoulder of the arbor below the head, not drawn.']
    case 'none':
      return [`No catch: should the ${fit.kind === 'threaded' ? 'thread turn off' : 'joint slip'}, the head drops off.`]
  }
}

import type { Problem, Result } from '../../../input/problem.ts'
import type { Limits } from '../../../mechanics/fit/limits.ts'
import { matchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { facetAngles } from '../bit.ts'
import { HeadDesign } from '../design.ts'
import { printStep } from '../engineering/fit-limits.ts'
import { facetParameters } from '../facet-parameters.ts'
import type { Parameters } from '../parameters/parameters.ts'

/** Sizes as they came out, mm or rad, by part and dimension: `body slot.depth`. */
export type MadeSizes = ReadonlyMap<string, number>

/**
 * The head as it was made: measured sizes in the place of nominal ones, everything else as designed. Where only the bore was
 * measured, a matched spigot is turned to it, and where only the bit was, the slot is milled to it; where bore or spigot is fixed, the other keeps its limits.
 */
export function headAsMade(
  design: HeadDesign,
  made: MadeSizes,
  problemsOf?: (design: HeadDesign) => Problem[],
): Result<HeadDesign> {
  const parameters = madeParameters(design, made)
  return parameters.ok ? HeadDesign.from(parameters.value, design.tables, problemsOf) : parameters
}

/** What has no meaning at nought or below, and what only has none below: a tolerance can be wider than a small size. */
const aboveNought = /(diameter|radius|depth|length|thickness|width|wall|size)$/
const noughtAtLeast = /(nose-radius|off-[a-z]+|chamfer|lead-in)$/

function madeParameters(design: HeadDesign, made: MadeSizes): Result<Parameters> {
  for (const [name, value] of made) {
    if (value > 0 || (value === 0 && noughtAtLeast.test(name))) continue
    if (noughtAtLeast.test(name)) return refused(name, 'a size below nought', '0 or more')
    if (aboveNought.test(name)) return refused(name, 'a size of nothing', 'more than 0')
  }
  const { parameters: p, layout: l } = design
  const body = (id: string) => made.get(`body ${id}`)
  const arbor = (id: string) => made.get(`arbor ${id}`)
  const bit = (id: string) => made.get(`bit bit.${id}`)

  const size = body('stock.size') ?? p.stock.size
  const across = (l.across * size) / p.stock.size
  const face = faceOf(design, made, across)
  const width = bit('width') ?? p.bit.width
  const slotWidth = body('slot.width') ?? width + p.slot.clearance
  const fromFlat = body('slot.from-flat')
  const ahead = fromFlat === undefined ? (body('slot.ahead') ?? p.slot['ahead-of-centre']) : size / 2 - fromFlat
  const corner = across / 2 / Math.cos(face.angle)
  const firstX = body('screw-hole-1.x') ?? l.screws.xs[0]!
  // Each was measured from the first: the farther, the more spacings.
  const spacings = l.screws.xs.slice(1).map((_, i) => {
    const fromFirst = body(`screw-hole-${i + 2}.x`)
    return fromFirst === undefined ? undefined : fromFirst / (i + 1)
  })
  const spacing = meanOf(spacings.filter((s) => s !== undefined)) ?? p.screws.spacing
  // A bit that is wider than its slot goes nowhere: nothing can be computed from that.
  if (slotWidth < width) {
    return refused(
      'body slot.width',
      'a slot narrower than its bit',
      'a slot that the bit goes into: open it, or grind the bit',
    )
  }
  const bore = body('bore.diameter')
  const fit = madeFit(design, bore, arbor('spigot.diameter'))
  if (!fit.ok) return fit
  const boreKept = {
    ...p.bore,
    diameter: bore ?? p.bore.diameter,
    chamfer: body('bore.chamfer') ?? p.bore.chamfer,
    ...(p.bore.kind === 'blind' && {
      depth: body('bore.depth') ?? p.bore.depth,
      'point-angle': body('bore.point-angle') ?? p.bore['point-angle'],
      'vent-size': body('vent.diameter') ?? arbor('vent-flat.depth') ?? p.bore['vent-size'],
    }),
  } as Parameters['bore']
  const endRadius = body('slot.end-radius')
  return {
    ok: true,
    value: {
      ...p,
      stock: { ...p.stock, size },
      face: { angle: face.angle, 'depth-on-axis': face.depth },
      bit: {
        ...p.bit,
        width,
        height: bit('height') ?? p.bit.height,
        length: bit('length') ?? p.bit.length,
        'ground-off': {
          leading: bit('off-leading') ?? p.bit['ground-off'].leading,
          end: bit('off-end') ?? p.bit['ground-off'].end,
          underside: bit('off-underside') ?? p.bit['ground-off'].underside,
        },
        'nose-radius': bit('nose-radius') ?? p.bit['nose-radius'],
        ...madeFacets(design, bit),
      },
      slot: {
        ...p.slot,
        'ahead-of-centre': ahead,
        depth: body('slot.depth') ?? p.slot.depth,
        clearance: slotWidth - width,
        ...(p.slot.runs === 'stopped' && {
          'beyond-axis': body('slot.beyond-axis') ?? p.slot['beyond-axis'],
          'cutter-diameter': endRadius === undefined ? p.slot['cutter-diameter'] : 2 * endRadius,
        }),
      } as Parameters['slot'],
      step: {
        ...p.step,
        'wall-thickness': body('step.wall') ?? p.step['wall-thickness'],
        depth: body('step.depth') ?? p.step.depth,
      },
      screws: {
        ...p.screws,
        'first-from-corner': corner - firstX,
        height: body('screw-hole-1.height') ?? p.screws.height,
        ...(spacing !== undefined && { spacing }),
      },
      bore: boreKept,
      arbor: {
        ...p.arbor,
        'spigot-length': arbor('spigot.length') ?? p.arbor['spigot-length'],
        'lead-in': arbor('spigot.lead-in') ?? p.arbor['lead-in'],
        ...(p.arbor['bore-through'] !== undefined && {
          'bore-through': arbor('arbor-bore.diameter') ?? p.arbor['bore-through'],
        }),
        ...(p.arbor.kind === 'shank'
          ? {
              'shoulder-diameter': arbor('shoulder.diameter') ?? p.arbor['shoulder-diameter'],
              'shoulder-thickness': arbor('shoulder.thickness') ?? p.arbor['shoulder-thickness'],
            }
          : { 'length-above': arbor('spigot.length-above') ?? p.arbor['length-above'] }),
      } as Parameters['arbor'],
      fit: fit.value,
    },
  }
}

/** Facets as they were measured: once one is, none is worked out any more. */
function madeFacets(
  { parameters: { bit: p }, layout }: HeadDesign,
  bit: (id: string) => number | undefined,
): Partial<Parameters['bit']> {
  const length = bit('ground-length')
  const angles = facetAngles.flatMap(({ id }) => {
    const angle = bit(id)
    return angle === undefined ? [] : [[id, angle] as const]
  })
  if (angles.length > 0) {
    const facets = { ...facetParameters(layout), ...Object.fromEntries(angles) }
    return { grind: 'as-given', facets: { ...facets, ...(length !== undefined && { length }) } }
  }
  return p.facets || length !== undefined ? { facets: { ...p.facets, length: length ?? p.facets?.length } } : {}
}

/** Angle and depth on the axis from whatever of angle and side heights was measured. */
function faceOf({ layout: l }: HeadDesign, made: MadeSizes, across: number): { angle: number; depth: number } {
  const given = made.get('body face.angle')
  const [long, short] = [made.get('body face.long-side'), made.get('body face.short-side')]
  if (long !== undefined && short !== undefined) {
    return { angle: given ?? Math.max(0, Math.atan((long - short) / across)), depth: (long + short) / 2 }
  }
  const angle = given ?? l.faceAngle
  const rise = (across / 2) * Math.tan(angle)
  if (long !== undefined) return { angle, depth: long - rise }
  if (short !== undefined) return { angle, depth: short + rise }
  // With the height of the long side kept, an angle that came out otherwise moves the face on the axis.
  const kept = l.depthOnAxis + (l.across / 2) * Math.tan(l.faceAngle)
  return { angle, depth: made.get('body face.depth-on-axis') ?? (given === undefined ? l.depthOnAxis : kept - rise) }
}

/** The fit with what was measured of it. */
function madeFit(
  { parameters: { fit, bore: nominal }, layout, units }: HeadDesign,
  bore: number | undefined,
  spigot: number | undefined,
): Result<Parameters['fit']> {
  if (fit.kind === 'threaded' || (bore === undefined && spigot === undefined)) return { ok: true, value: fit }
  const exactly = (size: number): Limits => ({ smallest: size, largest: size })
  const given = (b: Limits, s: Limits): Result<Parameters['fit']> => ({
    ok: true,
    value: {
      kind: 'limits',
      catch: fit.catch,
      ...(fit['pin-diameter'] !== undefined && { 'pin-diameter': fit['pin-diameter'] }),
      assembly: fit.assembly,
      'bore-roughness': fit['bore-roughness'],
      'spigot-roughness': fit['spigot-roughness'],
      'bore-smallest': b.smallest,
      'bore-largest': b.largest,
      'spigot-smallest': s.smallest,
      'spigot-largest': s.largest,
    },
  })
  if (fit.kind === 'matched' && bore !== undefined && spigot === undefined) {
    // The spigot is still to be turned: to this bore, whose tolerance is behind it.
    const turned = matchedFit({
      nominal: nominal.diameter,
      ratio: fit['interference-ratio'],
      spread: fit['interference-spread'],
      measuredBore: { size: bore },
      printStep: printStep[units],
    })
    if (turned.ok) return given(exactly(bore), turned.value.spigot)
    const { found, allowed } = turned.problems[0]!
    return refused('body bore.diameter', found, allowed)
  }
  return given(
    bore === undefined ? layout.fit!.bore : exactly(bore),
    spigot === undefined ? layout.fit!.spigot : exactly(spigot),
  )
}

const meanOf = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, v) => sum + v, 0) / values.length

const refused = (path: string, found: string, allowed: string): { ok: false; problems: Problem[] } => ({
  ok: false,
  problems: [{ code: 'contradiction', where: { file: '', path }, found, allowed }],
})

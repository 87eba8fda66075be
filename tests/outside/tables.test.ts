import { describe, expect, it } from 'vitest'
import { loadTables } from '../../src/package/load-tables.ts'
import { type AnsiB41Row, clearanceLimits } from '../../src/tables/ansi-b4-1.ts'
import { acrossCorners, massPerMetre } from '../../src/tables/bar-section.ts'
import { findRow } from '../../src/tables/find-row.ts'
import type { Range } from '../../src/tables/range.ts'
import { rowForSize } from '../../src/tables/size-step.ts'
import { minorDiameter, percentThread, pitchDiameter, stressArea } from '../../src/tables/thread-geometry.ts'
import { cell, figure, readReference } from './reference/read-reference.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 2))
const tables = loaded.value

const inch = 25.4
/** lbf·in in N·mm, from the pound 0.45359237 kg and standard gravity 9.80665 m/s² (NIST SP 811). */
const poundForceInch = 0.45359237 * 9.80665 * 25.4

function row<Row extends { readonly name: string }>(rows: readonly Row[], name: string): Row {
  const found = findRow(rows, name)
  if (!found.ok) throw new Error(`no row ${name}`)
  return found.row
}

describe('threads against ISO 724, ISO 898-1 and ASME B1.1 figures', () => {
  it.each(readReference('threads-metric'))('$thread', (reference) => {
    const thread = row(tables.threads, cell(reference, 'thread'))
    expect(thread.majorDiameter).toBe(figure(reference, 'd'))
    expect(thread.pitch).toBe(figure(reference, 'P'))
    expect(thread.tapDrill).toBe(figure(reference, 'tap_drill_mm'))
    // Printed to 3 decimals; diameters by ISO 724, stress area by ISO 898-1.
    expect(Math.abs(pitchDiameter(thread) - figure(reference, 'd2'))).toBeLessThan(0.0006)
    expect(Math.abs(minorDiameter(thread) - figure(reference, 'd1_D1'))).toBeLessThan(0.0006)
    expect(Math.abs(stressArea(thread) - figure(reference, 'As_mm2'))).toBeLessThan(0.006)
    expect(Math.abs(percentThread(thread, thread.tapDrill) - figure(reference, 'pct_thread'))).toBeLessThan(0.06)
  })

  it.each(readReference('threads-inch'))('$thread', (reference) => {
    const thread = row(tables.threads, cell(reference, 'thread'))
    expect(thread.majorDiameter).toBeCloseTo(figure(reference, 'D_in') * inch, 9)
    expect(thread.pitch).toBeCloseTo(inch / figure(reference, 'tpi'), 9)
    expect(thread.tapDrill).toBeCloseTo(figure(reference, 'drill_in') * inch, 9)
    // Printed to 4 decimals of an inch; ASME B1.1.
    expect(Math.abs(pitchDiameter(thread) / inch - figure(reference, 'pitch_dia_in'))).toBeLessThan(0.00006)
    expect(Math.abs(minorDiameter(thread) / inch - figure(reference, 'minor_dia_in'))).toBeLessThan(0.00006)
    expect(Math.abs(stressArea(thread) / inch ** 2 - figure(reference, 'stress_area_in2'))).toBeLessThan(0.00006)
    expect(Math.abs(percentThread(thread, thread.tapDrill) - figure(reference, 'pct_thread'))).toBeLessThan(0.06)
  })

  it('stress area of 3/4-10 as printed in a machine-design textbook (companion example 6.1): 0.334 in²', () => {
    expect(Math.abs(stressArea(row(tables.threads, '3/4-10')) / inch ** 2 - 0.334)).toBeLessThan(0.0006)
  })
})

describe('hexagon bar against a steel dealer’s weight table', () => {
  const bySize = (size: number) =>
    tables.barStock.find((bar) => bar.shape === 'hexagon' && Math.abs(bar.size - size * inch) < 1e-9)

  it.each(readReference('hex-bar'))('$af_in in across flats', (reference) => {
    const bar = bySize(figure(reference, 'af_in'))
    if (bar === undefined) throw new Error('no such bar')
    // Across corners is 2/√3 of across flats, printed to 4 decimals.
    expect(Math.abs(acrossCorners(bar) / inch - figure(reference, 'across_corners_in'))).toBeLessThan(0.00006)
    // 0.2836 lb/in³ is the dealers' figure for cold-finished steel.
    const density = (0.2836 * 0.45359237) / (0.0254 * 0.0254 * 0.0254)
    const poundsPerFoot = (massPerMetre(bar, density) * 0.3048) / 0.45359237
    expect(poundsPerFoot / figure(reference, 'lb_per_ft_seen') - 1).toBeCloseTo(0, 3)
  })

  it('has every metric size across flats that is usual (from memory)', () => {
    const metric = tables.barStock.filter((bar) => bar.shape === 'hexagon' && Number.isInteger(bar.size))
    expect(metric.map((bar) => bar.size)).toEqual([10, 12, 13, 14, 17, 19, 22, 24, 27, 30, 32, 36, 41, 46, 50])
  })
})

describe('tapers against public taper tables', () => {
  it.each(readReference('tapers').filter((reference) => reference.taper?.startsWith('MT')))('$taper', (reference) => {
    const shank = row(tables.shanks, cell(reference, 'taper').replace('MT', 'morse-'))
    expect(shank.gaugeDiameter).toBeCloseTo(figure(reference, 'gauge_dia_in') * inch, 9)
    expect(Math.abs(shank.gaugeDiameter - figure(reference, 'gauge_dia_mm'))).toBeLessThan(0.0006)
    expect(shank.smallDiameter).toBeCloseTo(figure(reference, 'small_dia_in') * inch, 9)
    expect(shank.length).toBeCloseTo(figure(reference, 'length_in') * inch, 9)
    const perFoot = (shank.taper ?? Number.NaN) * 12
    expect(Math.abs(perFoot - figure(reference, 'taper_in_per_ft_seen'))).toBeLessThan(0.00006)
    // The solid is turned from the printed diameters and length, which agree with the taper to 4 decimals.
    const turned = ((shank.gaugeDiameter - shank.smallDiameter) / shank.length) * 12
    expect(Math.abs(turned - figure(reference, 'taper_in_per_ft_seen'))).toBeLessThan(0.0001)
  })

  it.each(readReference('tapers').filter((reference) => reference.taper?.includes('7/24')))('$taper', (reference) => {
    const shank = row(tables.shanks, `7-24-${/\d+/.exec(cell(reference, 'taper'))?.[0]}`)
    expect(shank.gaugeDiameter).toBeCloseTo(figure(reference, 'gauge_dia_mm'), 9)
    const cone = shank.profile[0]
    if (cone === undefined) throw new Error('no cone')
    expect(((cone.from - cone.to) / cone.length) * 12).toBeCloseTo(figure(reference, 'taper_in_per_ft_seen'), 9)
    // Half angle 8° 17' 50" (ASME B5.50), printed to 10".
    const halfAngle = (Math.atan((cone.from - cone.to) / 2 / cone.length) * 180) / Math.PI
    expect(Math.abs(halfAngle - (8 + 17 / 60 + 50 / 3600))).toBeLessThan(5 / 3600)
  })

  it('R8: parallel part of 0.949 to 0.9495 in (from memory)', () => {
    const parallel = row(tables.shanks, 'r8').profile.at(-1)!
    expect(parallel.from).toBe(parallel.to)
    expect(parallel.from / inch).toBeGreaterThanOrEqual(0.949 - 1e-9)
    expect(parallel.from / inch).toBeLessThanOrEqual(0.9495 + 1e-9)
  })

  it('straight shanks in the sizes of the trade (from memory): 3/8 to 1 in, 10 to 25 mm to h6', () => {
    const straight = tables.shanks.filter(({ kind }) => kind === 'straight')
    const sizes = straight.map(({ name, gaugeDiameter, tolerance }) => [name, gaugeDiameter, tolerance])
    expect(sizes).toEqual([
      ...[3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1].map((size, i) => [
        `straight-${['3/8', '1/2', '5/8', '3/4', '7/8', '1'][i]}`,
        expect.closeTo(size * inch, 9),
        undefined,
      ]),
      ...[10, 12, 16, 20, 25].map((size) => [`straight-${size}`, size, 'h6']),
    ])
  })

  it('R8: 16° 51′ included, 7/16-20 drawbar (public machine-taper table)', () => {
    const shank = row(tables.shanks, 'r8')
    const cone = shank.profile[0]
    if (cone === undefined) throw new Error('no cone')
    const included = (2 * Math.atan((cone.from - cone.to) / 2 / cone.length) * 180) / Math.PI
    expect(included).toBeCloseTo(16 + 51 / 60, 9)
    expect(shank.drawbarThreads).toEqual(['7/16-20'])
    // About 4 in overall, from memory.
    expect(Math.abs(shank.length / inch - 4)).toBeLessThan(0.1)
  })
})

describe('set screws against ISO 4026, ASME B18.3 and torque charts', () => {
  it.each(readReference('setscrews-metric'))('$size', (reference) => {
    const screw = row(tables.setScrews, cell(reference, 'size'))
    expect(screw.pitch).toBe(figure(reference, 'pitch_mm'))
    expect(screw.keySize).toBe(figure(reference, 'hex_key_s_mm'))
    expect(screw.keyEngagement).toBe(figure(reference, 'socket_t_min_mm'))
    expect(screw.flatPointDiameter).toBe(figure(reference, 'flat_point_dp_mm'))
    const seat = cell(reference, 'seat_Nm_alloy')
    expect(screw.seatingTorque).toBe(seat === '' ? undefined : Number(seat) * 1000)
    expect(screw.cupHoldingForce).toBeUndefined()
  })

  const inchSizes = readReference('setscrews-inch').filter(({ size }) => !/^No\.[0-3]$/.test(size ?? ''))
  it.each(inchSizes)('$size', (reference) => {
    const screws = tables.setScrews.filter((screw) => screw.name.startsWith(`${cell(reference, 'size')}-`))
    expect(screws.length).toBeGreaterThan(0)
    const published = ['seat_lbf_in', 'seat_page_A', 'seat_page_B'].flatMap((column) =>
      cell(reference, column) === '' ? [] : [figure(reference, column)],
    )
    for (const screw of screws) {
      // Keys are printed rounded: 5/64 as 0.078.
      expect(Math.abs(screw.keySize / inch - figure(reference, 'hex_key_in'))).toBeLessThan(0.0006)
      // The lowest published figure where charts differ.
      expect((screw.seatingTorque ?? Number.NaN) / poundForceInch).toBeCloseTo(Math.min(...published), 6)
      expect(((screw.cupHoldingForce ?? Number.NaN) / poundForceInch) * inch).toBeCloseTo(
        figure(reference, 'hold_lbf'),
        6,
      )
    }
  })
})

it.each(readReference('hss-blanks'))('square blank $side $unit (from memory)', (reference) => {
  const blank = row(tables.bitBlanks, `square-${cell(reference, 'side')}`)
  const toMm = cell(reference, 'unit') === 'in' ? inch : 1
  expect(blank.width).toBeCloseTo(inchFraction(cell(reference, 'side')) * toMm, 9)
  expect(blank.height).toBe(blank.width)
  const lengths =
    toMm === 1 ? cell(reference, 'length').split('/').map(Number) : [inchFraction(cell(reference, 'length'))]
  expect(blank.lengths.map((length) => Number((length / toMm).toFixed(9)))).toEqual(lengths)
})

describe('ISO 286 against a public data set of DIN EN ISO 286', () => {
  it.each(readReference('iso286-it'))('grades over $over_mm to $to_mm', (reference) => {
    const step = row(tables.iso286, `${reference.over_mm}-${reference.to_mm}`)
    for (const grade of ['IT5', 'IT6', 'IT7', 'IT8', 'IT9', 'IT10', 'IT11'] as const) {
      expect(step.grades[grade]).toBeCloseTo(figure(reference, grade) / 1000, 9)
    }
  })

  it.each(readReference('iso286-deviations'))('shafts over $over_mm to $to_mm', (reference) => {
    const step = row(tables.iso286, `${reference.over_mm}-${reference.to_mm}`)
    for (const letter of ['f', 'g', 'h', 'm', 'n', 'p', 'r', 's', 'u', 'x'] as const) {
      expect(step.shaft[letter]).toBeCloseTo(figure(reference, letter) / 1000, 9)
    }
    expect(step.shaft.k).toBeCloseTo(figure(reference, 'k_IT4to7') / 1000, 9)
    expect(step.shaft.t).toBe(reference.t === '' ? undefined : figure(reference, 't') / 1000)
  })

  // Shaft limits printed in worked examples, µm: lower and upper.
  it.each([
    [50, 's', 'IT6', 43, 59, 'Design of Machine Elements, example 3.3 p.70'],
    [40, 'u', 'IT6', 60, 76, 'Mechanical Engineering Design 8th ed., solutions, problem 3-66'],
    [25, 'r', 'IT6', 28, 41, 'Machine Design, example 4-2 p.112'],
    [45, 'm', 'IT6', 9, 25, 'test cases of the public data set'],
  ] as const)('%i%s %s: %i to %i µm (%s)', (size, letter, grade, lower, upper, _source) => {
    const step = rowForSize(tables.iso286, size)
    if (step === undefined) throw new Error('no step')
    expect(step.shaft[letter] * 1000).toBeCloseTo(lower, 6)
    expect((step.shaft[letter] + step.grades[grade]) * 1000).toBeCloseTo(upper, 6)
  })
})

describe('ANSI B4.1 against Machinery’s Handbook', () => {
  it.each(readReference('ansi-b4-1'))('$class over $over_in to $to_in in', (reference) => {
    const fit = row(tables.ansiB41, `${reference.class} ${figure(reference, 'over_in')}-${figure(reference, 'to_in')}`)
    const thou = (length: number) => (length / inch) * 1000
    const limits: AnsiB41Row['hole'][] = [fit.hole, fit.shaft]
    expect(
      limits.flatMap(({ lower, upper }) => [thou(lower), thou(upper)]).map((value) => Number(value.toFixed(6))),
    ).toEqual(['hole_lo', 'hole_hi', 'shaft_lo', 'shaft_hi'].map((column) => figure(reference, column)))
    // The table prints the clearance besides the limits: an independent check of each row.
    const { least, most } = clearanceLimits(fit)
    expect(thou(least)).toBeCloseTo(figure(reference, 'fit_min'), 6)
    expect(thou(most)).toBeCloseTo(figure(reference, 'fit_max'), 6)
  })

  it('leaves out no row of the reference', () => {
    expect(tables.ansiB41.length).toBe(readReference('ansi-b4-1').length)
  })
})

describe('work materials', () => {
  const kienzle = readReference('kienzle')
  it.each(tables.workMaterials.filter((material) => material.vdi3323 !== undefined))(
    '$name: cutting force of its VDI 3323 group (turning-tool catalogue 2017 p.558)',
    (material) => {
      const reference = kienzle.find((candidate) => candidate.vdi3323 === String(material.vdi3323))
      if (reference === undefined) throw new Error('no such group')
      expect(material.specificForce).toBe(figure(reference, 'kc1_1'))
      expect(material.forceExponent).toBe(figure(reference, 'mc'))
    },
  )

  const speeds = readReference('cutting-speeds')
  // Our name, the table's name, the source: A owner's manual, B Machine Tool Speeds and Feeds, M from memory.
  it.each([
    ['mild-steel', 'mild steel', 'HSS', 'B'],
    ['mild-steel', 'wrought (low-carbon) steel', 'carbide', 'M'],
    ['medium-carbon-steel', 'medium-carbon steel 1045', 'HSS', 'M'],
    ['medium-carbon-steel', 'medium-carbon steel 1045', 'carbide', 'M'],
    ['alloy-steel', 'alloy steel hard', 'HSS', 'B'],
    ['tool-steel', 'tool steel', 'HSS', 'B'],
    ['stainless-steel', 'stainless', 'HSS', 'B'],
    ['grey-iron', 'cast iron hard', 'HSS', 'B'],
    ['grey-iron', 'cast iron', 'carbide', 'M'],
    ['aluminium', 'aluminium', 'HSS', 'B'],
    ['aluminium', 'aluminium', 'carbide', 'M'],
    ['brass', 'brass & bronze', 'HSS', 'B'],
    ['bronze', 'brass & bronze', 'HSS', 'B'],
    ['copper', 'copper', 'HSS', 'B'],
    ['plastic', 'plastics', 'HSS', 'A'],
  ])('%s: speed of %s, %s, source %s', (name, material, tool, source) => {
    const reference = speeds.find((r) => r.material === material && r.tool === tool && r.source === source)
    if (reference === undefined) throw new Error('no such speed')
    const found = row(tables.workMaterials, name)
    const speed = tool === 'HSS' ? found.hssSpeed : found.carbideSpeed
    expectRange(speed, figure(reference, 'sfm_low'), figure(reference, 'sfm_high'), 304.8 / 60)
  })

  it.each([
    ['grey-iron', 'cast iron hard'],
    ['aluminium', 'aluminium'],
    ['brass', 'brass & bronze'],
    ['bronze', 'brass & bronze'],
    ['copper', 'copper'],
  ])('%s: feed per tooth of %s (Machine Tool Speeds and Feeds)', (name, material) => {
    const reference = readReference('face-mill-feed-per-tooth').find((candidate) => candidate.material === material)
    if (reference === undefined) throw new Error('no such feed')
    const { feedPerTooth } = row(tables.workMaterials, name)
    expectRange(feedPerTooth, figure(reference, 'low'), figure(reference, 'high'), inch)
  })

  it.each([
    ['mild-steel', 'machine steel', 'A'],
    ['medium-carbon-steel', 'machine steel', 'A'],
    ['alloy-steel', 'tool steel (unhardened)', 'A'],
    ['tool-steel', 'tool steel (unhardened)', 'A'],
    ['stainless-steel', 'stainless steel', 'A'],
    ['grey-iron', 'cast iron', 'A'],
    ['aluminium', 'aluminum', 'A'],
    ['copper', 'copper', 'A'],
    ['brass', 'brass', 'A'],
    ['bronze', 'bronze', 'A'],
    ['plastic', 'plastics (acrylic etc.)', 'M'],
  ])(
    '%s: lathe tool angles of %s (A: Machine Shop Essentials Table A-I-1, M: from memory)',
    (name, material, source) => {
      const reference = readReference('hss-angles').find((r) => r.material === material && r.source === source)
      if (reference === undefined) throw new Error('no such angles')
      const { hssAngles } = row(tables.workMaterials, name)
      for (const [key, column] of [
        ['sideRelief', 'side_relief'],
        ['frontRelief', 'front_relief'],
        ['sideRake', 'side_rake'],
        ['backRake', 'back_rake'],
      ] as const) {
        const [one = Number.NaN, other = one] = cell(reference, column)
          .split(/ to |(?<=\d)-/)
          .map(Number)
        expectRange(hssAngles?.[key], Math.min(one, other), Math.max(one, other), Math.PI / 180)
      }
    },
  )
})

describe('strength of materials', () => {
  const ksi = (0.45359237 * 9.80665 * 1000) / inch ** 2
  // Lowest figure of the table for each condition. Sources by letter in the reference file.
  it.each([
    ['steel-1018', '1018 CD'],
    ['steel-12l14', '12L14 CD'],
    ['steel-1045', '1045 CD'],
    ['steel-4140-prehard', '4140 prehard 28-32 HRC'],
    ['aluminium-6061', '6061-T6'],
  ])('%s: %s', (name, condition) => {
    const references = readReference('materials').filter((candidate) => candidate.material === condition)
    const lowest = (column: string) =>
      Math.min(...references.flatMap((reference) => cell(reference, column).split('-').map(Number)))
    const material = row(tables.materials, name)
    expect((material.yieldStrength ?? Number.NaN) / ksi).toBeCloseTo(lowest('yield_ksi'), 6)
    expect((material.ultimateStrength ?? Number.NaN) / ksi).toBeCloseTo(lowest('ultimate_ksi'), 6)
  })

  it('M2 high-speed steel: 8.16 g/cm³, E from 190 GPa, 10.0e-6 /K (two public data sheets)', () => {
    const hss = row(tables.materials, 'hss')
    expect([hss.density, hss.youngsModulus]).toEqual([8160, 190_000])
    expect(hss.expansion).toBeCloseTo(10e-6, 15)
  })
})

function expectRange(range: Range | undefined, low: number, high: number, unit: number) {
  if (range === undefined) throw new Error('no range')
  expect(range.low / unit).toBeCloseTo(low, 6)
  expect(range.high / unit).toBeCloseTo(high, 6)
}

/** `2-1/2` or `3/8` or `7` as a number. */
function inchFraction(written: string): number {
  const [, whole = '0', , over = '0', under = '1'] = /^(?:(\d+)(-|$))?(?:(\d+)\/(\d+))?$/.exec(written) ?? []
  return Number(whole) + Number(over) / Number(under)
}

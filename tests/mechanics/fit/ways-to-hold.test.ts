import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/input/problem.ts'
import { crossPin } from '../../../src/mechanics/fit/cross-pin.ts'
import { keyed, keyFor, parallelKeys, squareInchKeys } from '../../../src/mechanics/fit/parallel-key.ts'
import { retainingCompound } from '../../../src/mechanics/fit/retaining-compound.ts'
import { screwAndWasher } from '../../../src/mechanics/fit/screw-and-washer.ts'
import { shankDrives, taperTorque } from '../../../src/mechanics/fit/shank-drive.ts'
import { threadedArbor } from '../../../src/mechanics/fit/threaded-arbor.ts'
import { type Holding, isAllowed, waysToHold } from '../../../src/mechanics/fit/way-to-hold.ts'
import { weld, weldabilities } from '../../../src/mechanics/fit/weld.ts'
import { loadTables } from '../../../src/package/load-tables.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error('no tables')
const tables = loaded.value

const good = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
const wrong = (result: Result<unknown>) => (result.ok ? [] : result.problems.map(({ where }) => where.path))
const unmet = ({ conditions }: Holding) =>
  conditions.filter(({ met }) => !met).map(({ id, level }) => `${id}: ${level}`)

it('the cheapest way comes first and the weld last', () => {
  expect([waysToHold.at(0), waysToHold.at(-1)]).toEqual(['fresh-arbor', 'weld'])
})

describe('retaining compound', () => {
  const input = {
    diameter: 22,
    length: 18,
    interference: { least: -0.06, most: -0.03 },
    heated: false,
    serviceTemperature: 40,
  }

  it('holds by shear over the wetted surface, and catches nothing once it has let go', () => {
    const holding = good(retainingCompound(input))
    expect(holding.axial).toBeCloseTo(10 * Math.PI * 22 * 18, 6)
    expect(holding.torque).toBeCloseTo(holding.axial * 11, 6)
    expect(holding.catchesHead).toBe(false)
    expect(unmet(holding)).toEqual([])
  })

  it.each([
    ['an interference fit', { interference: { least: 0.01, most: 0.03 } }, ['no-interference', 'least-clearance']],
    [
      'a fit that may be tight',
      { interference: { least: -0.05, most: 0.002 } },
      ['no-interference', 'least-clearance'],
    ],
    ['a gap too narrow to fill', { interference: { least: -0.05, most: -0.01 } }, ['least-clearance']],
    ['a gap too wide to cure', { interference: { least: -0.12, most: -0.05 } }, ['most-clearance']],
    ['a joint put together hot', { heated: true }, ['not-heated']],
  ])('never goes with %s', (_name, change, ids) => {
    const holding = good(retainingCompound({ ...input, ...change }))
    expect(unmet(holding)).toEqual(ids.map((id) => `${id}: stop`))
    expect(isAllowed(holding)).toBe(false)
  })

  it('a joint that gets hot at work is a caution', () => {
    const holding = good(retainingCompound({ ...input, serviceTemperature: 140 }))
    expect(unmet(holding)).toEqual(['service-temperature: caution'])
    expect(isAllowed(holding)).toBe(true)
  })

  it('refuses sizes that are none', () => {
    expect(wrong(retainingCompound({ ...input, diameter: 0, length: -1 }))).toEqual(['diameter', 'length'])
    const settings = { shearStrength: 0, clearance: { least: 0.2, most: 0.1 }, warmest: 120 }
    expect(wrong(retainingCompound({ ...input, settings }))).toEqual([
      'settings.shearStrength',
      'settings.clearance.least',
    ])
  })
})

describe('cross pin', () => {
  const soft = { yieldStrength: 370 }
  const input = {
    diameter: 22,
    hubOutside: 44,
    spigotBore: 0,
    pinDiameter: 6,
    fromSpigotEnd: 12,
    secured: true,
    pin: { yieldStrength: 600 },
    hub: soft,
    spigot: soft,
  }

  it('is the weakest of double shear, pressure on the spigot and pressure on the hub', () => {
    const holding = good(crossPin(input))
    const shear = ((600 / Math.sqrt(3)) * (Math.PI / 4) * 36 * 2 * 22) / 2
    const spigot = (370 * 6 * 22 ** 2) / 6
    const hub = 370 * 6 * 11 * 33
    expect(holding.torque).toBeCloseTo(Math.min(shear, spigot, hub), 6)
    expect(holding.weakest).toBe('pressure on the spigot')
    // Along the axis: 2 · 600/√3 · 28.27 mm² = 19.6 kN of shear, 370 · 6 · 22 = 48.8 kN on the spigot.
    expect(holding.axial).toBeCloseTo(19_590, -1)
    expect(holding.catchesHead).toBe(true)
    expect(unmet(holding)).toEqual([])
  })

  it('pressure on a hollow spigot adds up to its torque slice by slice', () => {
    const [d, bore, a, yieldStrength] = [22, 8, 6, 370]
    const holding = good(crossPin({ ...input, spigotBore: bore, spigot: { yieldStrength } }))
    let torque = 0
    const slices = 2000
    for (let slice = 0; slice < slices; slice++) {
      const width = (d - bore) / 2 / slices
      const x = bore / 2 + (slice + 0.5) * width
      torque += 2 * yieldStrength * (x / (d / 2)) * a * width * x
    }
    expect(holding.torque / torque).toBeCloseTo(1, 6)
  })

  it('along the axis a soft hollow spigot carries on what is left beside its hole', () => {
    const holding = good(crossPin({ ...input, spigotBore: 8, spigot: { ultimateStrength: 100 } }))
    expect(holding.axial).toBeCloseTo(100 * 6 * (22 - 8), 6)
  })

  it('a soft pin shears, a soft hub gives along its walls', () => {
    expect(good(crossPin({ ...input, pin: { yieldStrength: 200 } })).weakest).toBe('shear of the pin')
    expect(good(crossPin({ ...input, hub: { ultimateStrength: 30 } })).weakest).toBe('pressure on the hub')
  })

  it('a pin that nothing keeps in is a stop; a thick one, or one near the end, a caution', () => {
    expect(unmet(good(crossPin({ ...input, secured: false })))).toEqual(['secured: stop'])
    expect(unmet(good(crossPin({ ...input, pinDiameter: 8, fromSpigotEnd: 5 })))).toEqual([
      'pin-to-spigot: caution',
      'from-spigot-end: caution',
    ])
  })

  it('refuses what does not fit together or has no strength', () => {
    expect(wrong(crossPin({ ...input, pinDiameter: 22 }))).toEqual(['pinDiameter'])
    expect(wrong(crossPin({ ...input, hubOutside: 22 }))).toEqual(['hubOutside'])
    expect(wrong(crossPin({ ...input, spigotBore: 22 }))).toEqual(['spigotBore'])
    expect(wrong(crossPin({ ...input, spigot: {} }))).toEqual(['spigot'])
    expect(wrong(crossPin({ ...input, diameter: 0 }))).toContain('diameter')
  })
})

describe('screw and washer', () => {
  const input = {
    mouth: 24,
    washerOutside: 34,
    wholeCircle: 34,
    stressArea: 36.6,
    majorDiameter: 8,
    engagement: 14,
    engagementWanted: 1,
    proofStress: 600,
    hub: { yieldStrength: 370 },
    spigotShortBy: 0.5,
    throughBore: true,
    locked: true,
  }

  it('keeps the head on with the proof load of the screw, and turns nothing', () => {
    // ISO 898-1: M8 of class 8.8 has a proof load of 21.2 kN at 580 MPa; 36.6 mm² at 600 is 21.96 kN.
    const holding = good(screwAndWasher(input))
    expect(holding.axial).toBeCloseTo(21_960, 6)
    expect(good(screwAndWasher({ ...input, proofStress: 580 })).axial).toBeCloseTo(21_228, 6)
    expect([holding.torque, holding.catchesHead, holding.weakest]).toEqual([0, true, 'the screw'])
    expect(unmet(holding)).toEqual([])
  })

  it('a washer that barely laps the bore sinks in first', () => {
    const holding = good(screwAndWasher({ ...input, washerOutside: 24.5 }))
    expect(holding.weakest).toBe('pressure on the hub')
    expect(holding.axial).toBeCloseTo((370 * Math.PI * (24.5 ** 2 - 24 ** 2)) / 4, 6)
  })

  it('half the thread that is wanted holds half', () => {
    const holding = good(screwAndWasher({ ...input, engagement: 4 }))
    expect(holding.axial).toBeCloseTo(21_960 / 2, 6)
    expect(unmet(holding)).toEqual(['engagement: caution'])
  })

  it('a blind bore has no place for it, and a spigot that stands proud is clamped in the head’s stead', () => {
    expect(unmet(good(screwAndWasher({ ...input, throughBore: false })))).toEqual(['through-bore: stop'])
    expect(unmet(good(screwAndWasher({ ...input, spigotShortBy: 0 })))).toEqual(['clamps-head: stop'])
    expect(unmet(good(screwAndWasher({ ...input, locked: false })))).toEqual(['locked: caution'])
  })

  it('a slot or step that cuts into the washer’s ring leaves it no seat, by a hundredth', () => {
    expect(unmet(good(screwAndWasher({ ...input, wholeCircle: 33.99 })))).toEqual(['washer-room: stop'])
    expect(wrong(screwAndWasher({ ...input, wholeCircle: -1 }))).toEqual(['wholeCircle'])
  })

  it('refuses a washer that falls through the bore', () => {
    expect(wrong(screwAndWasher({ ...input, washerOutside: 24 }))).toEqual(['washerOutside'])
    expect(wrong(screwAndWasher({ ...input, hub: {}, proofStress: 0 }))).toEqual(['proofStress', 'hub'])
  })
})

describe('threaded arbor', () => {
  const input = {
    hand: 'right',
    rotation: 'clockwise',
    reversedOrBraked: false,
    majorDiameter: 20,
    pitch: 2.5,
    pitchDiameter: 18.376,
    stressArea: 245,
    engagement: 22,
    engagementWanted: 1,
    againstShoulder: true,
    torqueFactor: 0.2,
    tightened: 60_000,
    arbor: { yieldStrength: 370 },
    hub: { yieldStrength: 370 },
  } as const

  it.each([
    ['right', 'clockwise', true],
    ['right', 'anticlockwise', false],
    ['left', 'clockwise', false],
    ['left', 'anticlockwise', true],
  ] as const)('a %s-hand thread on a tool that turns %s: tightens is %s', (hand, rotation, tightens) => {
    const holding = good(threadedArbor({ ...input, hand, rotation }))
    expect(isAllowed(holding)).toBe(tightens)
    expect(unmet(holding)).toEqual(tightens ? [] : ['hand: stop'])
    if (!tightens) expect(holding.torque).toBe(holding.loosens)
  })

  it('holds the core of the thread, and the torque that pulls so hard', () => {
    const holding = good(threadedArbor(input))
    expect(holding.axial).toBeCloseTo(370 * 245, 6)
    expect(holding.torque).toBeCloseTo(0.2 * 20 * 370 * 245, 6)
    const short = good(threadedArbor({ ...input, engagement: 6 }))
    expect(short.weakest).toBe('the threads')
    expect(unmet(short)).toEqual(['engagement: caution'])
  })

  it('comes off with less torque than it was tightened with: the slope of the thread helps', () => {
    // Force from T = K·d·F; work of a turn: the slope gives F·P on the way off and takes it on the way on.
    const { loosens } = good(threadedArbor(input))
    const force = 60_000 / (0.2 * 20)
    const workOn = 60_000 * 2 * Math.PI
    const friction = workOn - force * 2.5
    expect(loosens * 2 * Math.PI).toBeCloseTo(friction - force * 2.5, 6)
    expect(loosens).toBeLessThan(60_000)
  })

  it('without a shoulder is a stop, reversed or braked a caution', () => {
    expect(unmet(good(threadedArbor({ ...input, againstShoulder: false })))).toEqual(['shoulder: stop'])
    expect(unmet(good(threadedArbor({ ...input, reversedOrBraked: true })))).toEqual(['reversed-or-braked: caution'])
  })

  it('refuses a thread that would turn off by itself, and one that is none', () => {
    expect(wrong(threadedArbor({ ...input, pitch: 15 }))).toEqual(['torqueFactor'])
    expect(wrong(threadedArbor({ ...input, pitchDiameter: 20 }))).toEqual(['pitchDiameter'])
    expect(wrong(threadedArbor({ ...input, arbor: {} }))).toEqual(['arbor'])
  })
})

describe('keyed arbor', () => {
  const input = {
    diameter: 25,
    hubOutside: 46,
    arborBore: 0,
    keyLength: 20,
    ends: 'square',
    key: { yieldStrength: 350 },
    hub: { yieldStrength: 370 },
    arbor: { yieldStrength: 530 },
    axiallyHeld: true,
    keys: parallelKeys,
  } as const

  it.each([
    [12, '4x4'],
    [12.01, '5x5'],
    [20, '6x6'],
    [25, '8x7'],
    [30, '8x7'],
    [38, '10x8'],
    [50, '14x9'],
  ])('a %d mm arbor takes a key %s (ISO 773, DIN 6885-1, from memory)', (diameter, size) => {
    const key = good(keyFor(diameter, parallelKeys))
    expect(`${key.width}x${key.height}`).toBe(size)
  })

  it.each([
    [0.5, 1 / 8],
    [0.75, 3 / 16],
    [0.875, 3 / 16],
    [1, 1 / 4],
    [1.5, 3 / 8],
    [2, 1 / 2],
  ])('a %d in arbor takes a square key of %d in, half in either (ASME B17.1, from memory)', (diameter, side) => {
    const key = good(keyFor(diameter * 25.4, squareInchKeys))
    for (const mm of [key.width, key.height, key.inShaft + key.inHub]) expect(mm / 25.4).toBeCloseTo(side, 12)
  })

  it('keyways in shaft and hub are together a little deeper than the key, and steps follow each other', () => {
    for (const [at, key] of parallelKeys.entries()) {
      const room = key.inShaft + key.inHub - key.height
      expect(room).toBeGreaterThan(0.15)
      expect(room).toBeLessThan(0.45)
      if (at > 0) expect(key.over).toBe(parallelKeys[at - 1]?.upTo)
    }
  })

  it('is the weakest of pressure in the hub, pressure in the arbor and shear', () => {
    const holding = good(keyed(input))
    // 8 × 7 key: 3 mm of its height stand in the hub, 4 in the arbor.
    const hub = (350 * 3 * 20 * 25) / 2
    const arbor = (350 * 4 * 20 * 25) / 2
    const shear = ((350 / Math.sqrt(3)) * 8 * 20 * 25) / 2
    expect(holding.torque).toBeCloseTo(Math.min(hub, arbor, shear), 6)
    expect(holding.weakest).toBe('pressure in the hub')
    expect(good(keyed({ ...input, ends: 'round' })).torque).toBeCloseTo((hub * 12) / 20, 6)
  })

  it('holds nothing along the axis, and says so', () => {
    expect(good(keyed(input)).axial).toBe(0)
    expect(unmet(good(keyed({ ...input, axiallyHeld: false })))).toEqual(['axially-held: stop'])
  })

  it('thin metal beside a keyway is a caution, none at all refused', () => {
    expect(unmet(good(keyed({ ...input, hubOutside: 35, arborBore: 12 })))).toEqual([
      'hub-wall: caution',
      'arbor-wall: caution',
    ])
    expect(wrong(keyed({ ...input, hubOutside: 31 }))).toEqual(['hubOutside'])
    expect(wrong(keyed({ ...input, arborBore: 18 }))).toEqual(['arborBore'])
    expect(wrong(keyed({ ...input, ends: 'round', keyLength: 8 }))).toEqual(['keyLength'])
  })

  it('no key is guessed outside the table', () => {
    for (const diameter of [6, 5, 75.01]) {
      const key = keyFor(diameter, parallelKeys)
      expect(key.ok ? [] : key.problems.map(({ code, remedy }) => [code, remedy])).toEqual([
        ['out-of-range', 'hold it another way'],
      ])
      expect(keyed({ ...input, diameter, hubOutside: 200 }).ok).toBe(false)
    }
  })
})

describe('weld', () => {
  const input = { diameter: 22, leg: 4, share: 1, hub: 'good', arbor: 'good' } as const

  it('holds by the throat of its fillet', () => {
    const holding = good(weld(input))
    expect(holding.axial).toBeCloseTo(60 * Math.PI * 22 * 4 * Math.SQRT1_2, 6)
    expect(holding.torque).toBeCloseTo(holding.axial * 11, 6)
    expect(good(weld({ ...input, share: 0.5 })).axial).toBeCloseTo(holding.axial / 2, 6)
    expect(holding.cautions.join(' ')).toMatch(/last resort.*spindle.*phosgene.*run-out/i)
  })

  it('free-cutting steel is a stop, medium carbon steel wants warming, an unknown one is a caution', () => {
    const of = (hub: string, arbor: string) =>
      unmet(good(weld({ ...input, hub: weldabilities[hub], arbor: weldabilities[arbor] })))
    expect(of('steel-12l14', 'steel-1018')).toEqual(['hub-takes-weld: stop'])
    expect(of('steel-1018', 'steel-1045')).toEqual(['arbor-preheat: caution'])
    expect(of('steel-1018', 'what the shop had')).toEqual(['arbor-takes-weld: caution'])
    expect(of('steel-1018', 'steel-structural')).toEqual([])
  })

  it('knows every material of the table', () => {
    expect(Object.keys(weldabilities).toSorted()).toEqual(tables.materials.map(({ name }) => name).toSorted())
  })

  it('refuses a weld of nothing', () => {
    expect(wrong(weld({ ...input, leg: 0, share: 1.2 }))).toEqual(['leg', 'share'])
    expect(wrong(weld({ ...input, allowedStress: 0, diameter: 0 }))).toEqual(['diameter', 'allowedStress'])
  })
})

describe('shanks', () => {
  it('every shank of the table is turned by what the table says, and wants a drawbar in interrupted cutting', () => {
    for (const shank of tables.shanks) {
      expect(shankDrives[shank.kind].turnedBy).toBe(shank.drive)
      expect(shankDrives[shank.kind].needsDrawbar).toBe(true)
    }
  })

  it('7:24 is driven by keys; the pin of an R8 spindle only aligns', () => {
    expect(shankDrives['7-24'].turnedBy).toBe('keys')
    expect(shankDrives.r8.turnedBy).toBe('friction')
    expect(shankDrives.r8.says).toMatch(/pin.*only aligns/)
  })

  it('tapers slimmer than friction hold themselves in', () => {
    // A taper sticks while tan of its half angle is below friction: 0.12 lies above Morse and below R8 and 7:24.
    for (const shank of tables.shanks.filter(({ taper }) => taper !== undefined)) {
      expect(shankDrives[shank.kind].selfHolding, shank.name).toBe(shank.taper! / 2 < 0.12)
    }
  })

  const morse2 = { drawForce: 3000, largeDiameter: 17.78, smallDiameter: 14.53, halfAngle: 0.025, friction: 0.12 }

  it('a taper turns as hard as its drawbar pulls', () => {
    // μ·F·r_m/(sin α + μ·cos α) = 0.12 · 3000 · 8.0775 / (0.024997 + 0.119963).
    expect(good(taperTorque(morse2))).toBeCloseTo(20_060, -1)
    fc.assert(
      fc.property(fc.double({ min: 100, max: 20_000, noNaN: true }), (drawForce) => {
        const torque = good(taperTorque({ ...morse2, drawForce }))
        expect(torque / good(taperTorque({ ...morse2, drawForce: 2 * drawForce }))).toBeCloseTo(0.5, 9)
        // A steeper taper of the same mean size holds less by friction: 7:24 needs its keys.
        expect(good(taperTorque({ ...morse2, drawForce, halfAngle: Math.atan(7 / 48) }))).toBeLessThan(torque)
      }),
    )
  })

  it('refuses a taper that is none', () => {
    expect(wrong(taperTorque({ ...morse2, drawForce: 0 }))).toEqual(['drawForce'])
    expect(wrong(taperTorque({ ...morse2, smallDiameter: 18 }))).toEqual(['largeDiameter'])
    expect(wrong(taperTorque({ ...morse2, halfAngle: 0, friction: 0 }))).toEqual(['halfAngle', 'friction'])
  })
})

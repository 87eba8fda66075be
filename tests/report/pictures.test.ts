import { describe, expect, it } from 'vitest'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { amountText, labelText } from '../../src/report/amount-text.ts'
import { forRandomHeads, headFrom, tables } from '../families/random-heads.ts'
import { type MadeReport, reportOn, reportOnDesign, sets } from './made-reports.ts'
import { type Element, elements, named, number, parsedXml, textOf, withClass } from './xml.ts'

const made = sets.map(([says, ...set]) => [says, reportOn(...set)] as const)

/** The pictures of a page by id. */
function picturesOf({ html }: MadeReport): ReadonlyMap<string, Element> {
  return new Map(
    // Views of the drawings are judged with the drawings.
    named(parsedXml(html), 'figure')
      .filter((figure) => figure.attributes.get('class') !== 'view')
      .map((figure) => [figure.attributes.get('id')!, named(figure, 'svg')[0]!]),
  )
}

interface Box {
  readonly words: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Room that words take, by their number of signs: wide letters and bold ones counted in. */
function boxOf(text: Element): Box {
  const [x, y, size] = [number(text, 'x'), number(text, 'y'), number(text, 'font-size')]
  const words = textOf(text)
  const width = words.length * size * (text.attributes.get('font-weight') === 'bold' ? 0.64 : 0.6)
  const anchor = text.attributes.get('text-anchor')
  const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x
  return { words, left, right: left + width, top: y - 0.78 * size, bottom: y + 0.22 * size }
}

function expectTidy(id: string, svg: Element): void {
  const [, , width, height] = svg.attributes.get('viewBox')!.split(' ').map(Number)
  const boxes = named(svg, 'text').map(boxOf)
  boxes.forEach((box, i) => {
    const where = `${id}: ${box.words}`
    expect(box.left, where).toBeGreaterThanOrEqual(-0.01)
    expect(box.right, where).toBeLessThanOrEqual(width! + 0.01)
    expect(box.top, where).toBeGreaterThanOrEqual(0)
    expect(box.bottom, where).toBeLessThanOrEqual(height!)
    for (const other of boxes.slice(i + 1)) {
      const apart =
        box.right <= other.left || other.right <= box.left || box.bottom <= other.top || other.bottom <= box.top
      expect(apart, `${where} over ${other.words}`).toBe(true)
    }
    // Lines that belong to the drawing, not leaders, which run up to their words.
    for (const line of named(svg, 'line')) {
      if (!['axis', 'thin', 'dimension', 'turn'].includes(line.attributes.get('class')!)) continue
      expect(crosses(line, box), `${where} crossed by a line`).toBe(false)
    }
  })
}

function crosses(line: Element, { left, right, top, bottom }: Box): boolean {
  const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((at) => number(line, at)) as [number, number, number, number]
  let [low, high] = [0, 1]
  for (const [from, run, least, most] of [
    [x1, x2 - x1, left, right],
    [y1, y2 - y1, top, bottom],
  ] as const) {
    if (run === 0) {
      if (from <= least || from >= most) return false
      continue
    }
    const ends = [(least - from) / run, (most - from) / run].sort((a, b) => a - b)
    low = Math.max(low, ends[0]!)
    high = Math.min(high, ends[1]!)
  }
  return low < high
}

/** Which way an arc runs round a centre to the eye, y down on the page. */
function senseOf(arc: Element, centre: readonly [number, number]): 'clockwise' | 'anticlockwise' {
  const found = /^M([\d.-]+) ([\d.-]+)A[\d.-]+ [\d.-]+ 0 0 ([01]) ([\d.-]+) ([\d.-]+)$/.exec(arc.attributes.get('d')!)
  if (!found) throw new Error(`no arc: ${arc.attributes.get('d')}`)
  const [x1, y1, sweep, x2, y2] = found.slice(1).map(Number) as [number, number, number, number, number]
  const cross = (x1 - centre[0]) * (y2 - centre[1]) - (y1 - centre[1]) * (x2 - centre[0])
  expect(sweep).toBe(cross > 0 ? 1 : 0)
  expect(arc.attributes.get('marker-end')).toBe('url(#head)')
  expect(arc.attributes.has('marker-start')).toBe(false)
  return cross > 0 ? 'clockwise' : 'anticlockwise'
}

describe.each(made)('the pictures of %s', (_, report) => {
  const pictures = picturesOf(report)
  const figures = named(parsedXml(report.html), 'figure')

  it('have words that do not run into each other, into lines or out of the picture', () => {
    expect(pictures.size).toBeGreaterThan(5)
    for (const [id, svg] of pictures) expectTidy(id, svg)
  })

  it('write no number that report.json does not carry', () => {
    for (const [id, svg] of pictures) {
      const readings = report.report.pictures.find((p) => p.id === id)!.readings
      const known = readings.flatMap(({ value, unit }) => [amountText(value, unit), labelText(value, unit)])
      // Names that the trade writes with digits: M6, H7/g6.
      const names = report.report.parameters
        .filter(({ path }) => ['screws.thread', 'fit.code', 'fit.class'].includes(path))
        .map(({ value }) => String(value))
      for (const text of [...named(svg, 'text'), ...named(svg, 'desc')].map(textOf)) {
        const texts = [...known.map((words) => words.replace(' ', '\u{a0}')), ...names]
        const rest = texts.sort((a, b) => b.length - a.length).reduce((left, words) => left.replaceAll(words, ''), text)
        expect(rest, `${id}: ${text}`).not.toMatch(/\d/)
      }
    }
  })

  it('show every number that report.json carries for them', () => {
    for (const { id, readings, leftOut } of report.report.pictures) {
      const svg = pictures.get(id)
      expect(svg === undefined).toBe(leftOut !== undefined)
      if (svg === undefined) continue
      const caption = textOf(figures.find((figure) => figure.attributes.get('id') === id)!)
      for (const { value, unit, label } of readings) {
        const texts = [amountText(value, unit), labelText(value, unit)].map((words) => words.replace(' ', '\u{a0}'))
        expect(
          texts.some((words) => caption.includes(words)),
          `${id}: ${label} ${texts}`,
        ).toBe(true)
      }
    }
  })

  it('have a title and a description, and coordinates to a hundredth', () => {
    for (const [id, svg] of pictures) {
      expect(svg.attributes.get('role')).toBe('img')
      expect(svg.attributes.get('aria-labelledby')).toBe(`${id}-title ${id}-desc`)
      for (const name of ['title', 'desc']) {
        const [told] = named(svg, name)
        expect(told!.attributes.get('id')).toBe(`${id}-${name}`)
        expect(textOf(told!)).not.toBe('')
      }
      for (const { attributes } of elements(svg)) {
        for (const name of ['x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'd', 'points']) {
          expect(attributes.get(name) ?? '', `${id} ${name}`).not.toMatch(/\.\d{3}|e-|NaN/)
        }
      }
    }
  })
})

describe('the plan of the swing', () => {
  const turned = {
    clockwise: reportOn('parameters'),
    anticlockwise: reportOn(
      'parameters',
      ['rotation: clockwise', 'rotation: anticlockwise'],
      ['reverse: false', 'reverse: true'],
    ),
  }

  it.each(['clockwise', 'anticlockwise'] as const)(
    'turns %s from the spindle and the other way from below',
    (rotation) => {
      const other = rotation === 'clockwise' ? 'anticlockwise' : 'clockwise'
      const svg = picturesOf(turned[rotation]).get('plan-of-swing')!
      const circles = withClass(svg, 'swept').map((c) => [number(c, 'cx'), number(c, 'cy')] as const)
      const arcs = withClass(svg, 'turn').filter((e) => e.name === 'path')
      expect(circles).toHaveLength(2)
      expect(arcs.map((arc, i) => senseOf(arc, circles[i]!))).toEqual([rotation, other])
      const words = named(svg, 'text').map(textOf)
      expect(words[0]).toBe(`${rotation}, seen from the spindle`)
      expect(words.slice(-2)).toEqual([other, 'seen from below'])
    },
  )

  it('shows the leading side of the bit ahead: below the axis on the page for a clockwise tool, above for the other', () => {
    // The demo's tip stands 1.8 mm ahead; +X to the right, clockwise moves it down the page.
    for (const [rotation, down] of [
      ['clockwise', 1],
      ['anticlockwise', -1],
    ] as const) {
      const svg = picturesOf(turned[rotation]).get('plan-of-swing')!
      const centres = withClass(svg, 'swept').map((c) => number(c, 'cy'))
      const tips = withClass(svg, 'turn').filter((e) => e.name === 'circle')
      const ahead = tips.map((tip, i) => Math.sign(number(tip, 'cy') - centres[i]!))
      expect(ahead).toEqual([down, -down])
    }
  })

  it('is true to scale: swing, width of work, place of the tip', () => {
    const svg = picturesOf(turned.clockwise).get('plan-of-swing')!
    const design = headFrom('parameters')
    const [circle] = withClass(svg, 'circle')
    const scale = number(circle!, 'r') / (design.swing / 2)
    const band = withClass(svg, 'work')[0]!
      .attributes.get('points')!
      .split(' ')
      .map((point) => Number(point.split(',')[1]))
    expect(Math.max(...band) - Math.min(...band)).toBeCloseTo(92 * scale, 1)
    const tip = withClass(svg, 'turn').find((e) => e.name === 'circle')!
    expect(number(tip, 'cx') - number(circle!, 'cx')).toBeCloseTo(design.layout.bit.tip[0] * scale, 1)
    expect(number(circle!, 'cy') - number(tip, 'cy')).toBeCloseTo(design.layout.bit.tip[1] * scale, 1)
  })
})

describe('the views of the tip', () => {
  it('are mirror images for the two hands, with the same angles', () => {
    const of = (report: MadeReport) => picturesOf(report).get('tip-views')!
    const right = of(reportOn('parameters'))
    const left = of(
      reportOn('parameters', ['rotation: clockwise', 'rotation: anticlockwise'], ['reverse: false', 'reverse: true']),
    )
    const figures = (svg: Element) =>
      named(svg, 'text')
        .map(textOf)
        .filter((words) => words.endsWith('°'))
        .sort()
    expect(figures(left)).toEqual(figures(right))
    const bits = (svg: Element) =>
      withClass(svg, 'bit').map((e) =>
        e.attributes
          .get('points')!
          .split(' ')
          .map((point) => point.split(',').map(Number) as [number, number]),
      )
    /** Panels: from below mirrored top to bottom, the other two left to right. */
    const mirrored = ([x, y]: readonly [number, number]): [number, number] =>
      y > 66 ? [2 * (24 + 21) - x, y] : x > 90 ? [2 * (90 + 24 + 21) - x, y] : [x, 2 * (10 + 21.5) - y]
    const sorted = (points: readonly (readonly [number, number])[]) =>
      points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
    const [one, other] = [sorted(bits(right).flat().map(mirrored)), sorted(bits(left).flat())]
    expect(one).toHaveLength(other.length)
    // Rounding to a hundredth may order points on one line differently.
    const nearest = (p: readonly [number, number]) =>
      Math.min(...other.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])))
    for (const point of one) expect(nearest(point)).toBeLessThan(0.03)
  })

  it('hatch stock that is ground away, and only where some is', () => {
    const { bit, ...rest } = headFrom('parameters').parameters
    const { facets: _, ...blank } = bit
    const asBought = HeadDesign.from(
      { ...rest, bit: { ...blank, 'ground-off': { leading: 0, end: 0, underside: 0 } } },
      tables,
    )
    if (!asBought.ok) throw new Error(JSON.stringify(asBought.problems))
    const views = (report: MadeReport) => picturesOf(report).get('tip-views')!
    const [ground, bought] = [views(reportOn('parameters')), views(reportOnDesign(asBought.value))]
    expect(named(ground, 'text').map(textOf)).toContain('ground away')
    expect(withClass(ground, 'ground-away').length).toBeGreaterThan(3)
    expect(named(bought, 'text').map(textOf)).toContain('Nothing is ground')
    expect(withClass(bought, 'ground-away')).toEqual([])
  })
})

describe('the section along the spindle axis', () => {
  it('draws the wall between slot and bore as long as it is', () => {
    const svg = picturesOf(reportOn('parameters')).get('wall-section')!
    const design = headFrom('parameters')
    const wall = design.walls.between('slot', 'bore')!.distance
    const heavy = withClass(svg, 'heavy').find((e) => e.name === 'line')!
    const drawn = Math.hypot(number(heavy, 'x2') - number(heavy, 'x1'), number(heavy, 'y2') - number(heavy, 'y1'))
    // Scale from the long side's dimension line, 41 + 26.56·tan 7° mm.
    const long = Math.max(
      ...withClass(svg, 'dimension')
        .filter((e) => e.name === 'line')
        .map((e) => Math.abs(number(e, 'y2') - number(e, 'y1'))),
    )
    expect(drawn / long).toBeCloseTo(wall / (41 + (46 / Math.sqrt(3)) * Math.tan((7 * Math.PI) / 180)), 2)
  })

  it('outlines an opening instead where there is no wall', () => {
    const svg = picturesOf(reportOn('parameters', ['  depth: 24\n', '  depth: 33\n'])).get('wall-section')!
    expect(withClass(svg, 'heavy').map((e) => e.name)).toEqual(['polygon'])
    expect(named(svg, 'text').map(textOf).join(' ')).toContain('slot and bore break into each other')
  })
})

describe('the speeds', () => {
  it('name every limit, mark the lowest, and keep the advised speed apart', () => {
    const { html, report } = reportOn('parameters')
    const svg = picturesOf({ html, report }).get('speed-bars')!
    const words = named(svg, 'text').map(textOf).join(' ')
    const { readings } = report.pictures.find((p) => p.id === 'speed-bars')!
    const never = readings.find((r) => r.id === 'never-exceed')!
    expect(words).toContain(`NEVER EXCEED ${labelText(never.value, never.unit)}`)
    expect(words).toContain('Advised for the life of the edge: not a safety limit')
    expect(words.match(/\(the lowest\)/g)).toHaveLength(1)
    for (const name of ['hold on the bit', 'joint of head and arbor', 'unbalance force', 'tip speed', 'proof run']) {
      expect(words).toContain(name)
    }
    // The never-exceed line lies left of the end of the shortest bar, at the share of the rules.
    const line = withClass(svg, 'limit')[0]!
    const bars = withClass(svg, 'bar-main')
    expect(bars).toHaveLength(1)
    const xs = bars[0]!.attributes
      .get('points')!
      .split(' ')
      .map((p) => Number(p.split(',')[0]))
    const share = (number(line, 'x1') - Math.min(...xs)) / (Math.max(...xs) - Math.min(...xs))
    expect(share).toBeCloseTo(0.8, 2)
  })
})

describe('a speed of the job above the never-exceed speed', () => {
  it('is called so beside it', () => {
    const fast = reportOn(
      'parameters',
      ['  overhang: 27 ', '  overhang: 60 '],
      ['  length: 78 ', '  length: 110 '],
      ['  material: aluminium\n', '  material: aluminium\n  cutting-speed: 900 m/min\n'],
    )
    const words = (report: MadeReport) => named(picturesOf(report).get('speed-bars')!, 'text').map(textOf).join(' ')
    expect(words(fast)).toContain(': MORE THAN THE NEVER-EXCEED SPEED')
    expect(words(reportOn('parameters'))).not.toContain('MORE THAN')
  })
})

describe('a picture that cannot be drawn', () => {
  it('says why instead', () => {
    const { html, report } = reportOn('parameters', [
      'kind: matched                # bore first, measure it, turn the spigot to that bore\n  assembly: heat',
      'kind: threaded\n  thread: M20',
    ])
    const band = report.pictures.find((p) => p.id === 'interference-band')!
    expect(band).toMatchObject({ leftOut: 'The head is screwed on: nothing is pressed together.', readings: [] })
    expect(picturesOf({ html, report }).has('interference-band')).toBe(false)
    const section = elements(parsedXml(html)).find((e) => e.attributes.get('id') === 'interference-band')!
    expect(textOf(section)).toBe('InterferenceNot drawn. The head is screwed on: nothing is pressed together.')
  })
})

describe('any head', () => {
  it('has tidy pictures', () => {
    forRandomHeads(12, (design) => {
      for (const [id, svg] of picturesOf(reportOnDesign(design))) expectTidy(id, svg)
    })
  })
})

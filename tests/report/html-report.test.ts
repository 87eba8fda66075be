import { describe, expect, it } from 'vitest'
import { amountText } from '../../src/report/amount-text.ts'
import { cautions } from '../../src/report/cautions.ts'
import { style } from '../../src/report/html/style.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { forRandomHeads } from '../families/random-heads.ts'
import { packageOn, reportOn, reportOnDesign, sets } from './made-reports.ts'
import { type Element, elements, named, parsedXml, textOf, withClass } from './xml.ts'

const made = sets.map(([says, ...set]) => [says, reportOn(...set)] as const)
const rows = (page: Element, kind: string) =>
  withClass(page, kind)
    .flatMap((table) => named(table, 'tbody'))
    .flatMap((body) => named(body, 'tr'))
    .map((row) => row.children.flatMap((cell) => (typeof cell === 'string' ? [] : [textOf(cell)])))

describe.each(made)('report.html of %s', (_, { report, html }) => {
  const page = parsedXml(html)

  it('is well-formed, and its ids are unique', () => {
    expect(page.name).toBe('html')
    const ids = elements(page).flatMap((e) => e.attributes.get('id') ?? [])
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('needs nothing but itself: no script, no handler, no address', () => {
    for (const { name, attributes } of elements(page)) {
      expect(['script', 'img', 'link', 'iframe', 'object', 'embed', 'base', 'form']).not.toContain(name)
      for (const [attribute, value] of attributes) {
        expect(attribute).not.toMatch(/^on|^src|^style$/)
        if (attribute === 'href') expect(value).toMatch(/^#/)
        else if (attribute !== 'xmlns') expect(value).not.toMatch(/\/\/|javascript:|url\((?!#)/)
      }
    }
    expect(textOf(named(page, 'style')[0]!)).not.toMatch(/@import|url\((?!#)|\/\//)
  })

  it('has links to sections that are there', () => {
    const ids = elements(page).flatMap((e) => e.attributes.get('id') ?? [])
    for (const link of named(page, 'a')) expect(ids).toContain(link.attributes.get('href')!.slice(1))
  })

  it('has every figure once, with its value and its limit', () => {
    const shown = rows(page, 'figures')
    expect(shown).toHaveLength(report.figures.length)
    for (const { label, value, unit, limit, limitIs, source } of report.figures) {
      const held = limit === undefined ? '' : `at ${limitIs} ${amountText(limit, unit)}`
      expect(shown.filter(([name]) => name === label)).toEqual([[label, amountText(value, unit), held, source]])
    }
  })

  it('has every finding once, its level in words, stops first', () => {
    const shown = withClass(page, 'findings').flatMap((list) => named(list, 'li'))
    expect(shown).toHaveLength(report.findings.length)
    report.findings.forEach(({ level, text, remedy, limit }, i) => {
      const words = textOf(shown[i]!)
      expect(words.startsWith(`${level.toUpperCase()}${text}`)).toBe(true)
      expect(textOf(page).split(text)).toHaveLength(2)
      if (remedy) expect(words).toContain(remedy.text)
      if (limit) expect(words).toContain(limit.reason)
    })
  })

  it('has every wall, dimension, part and parameter in a row, with where it came from', () => {
    expect(rows(page, 'walls').map(([name]) => name)).toEqual(report.walls.map((w) => w.between.join(' – ')))
    expect(rows(page, 'dimensions').map(([name]) => name)).toEqual(report.dimensions.map((d) => d.label))
    expect(rows(page, 'parts').map(([name]) => name)).toEqual(report.parts.map((p) => p.label))
    expect(rows(page, 'parameters').map(([path, , origin, says]) => [path, origin, says])).toEqual(
      report.parameters.map((p) => [p.path, p.origin, p.says]),
    )
  })

  it('has every row of every table', () => {
    expect(rows(page, 'listed')).toHaveLength(report.tables.reduce((sum, table) => sum + table.rows.length, 0))
    for (const { title } of report.tables) {
      expect(named(page, 'caption').filter((caption) => textOf(caption) === title)).toHaveLength(1)
    }
  })

  it('cautions', () => {
    const said = named(withClass(page, 'cautions')[0]!, 'li').map(textOf)
    expect(said).toEqual(cautions)
    expect(said.join(' ')).toMatch(/mock-up[^.]*turned by hand[^.]*never under power/)
  })

  it('says across its top that the job is stopped where it is, and only there', () => {
    const [title] = named(page, 'title')
    const banners = withClass(page, 'stopped')
    if (report.stops === 0) {
      expect(banners).toEqual([])
      expect(textOf(named(page, 'style')[0]!)).not.toContain('STOP')
    } else {
      expect(banners).toHaveLength(1)
      expect(textOf(banners[0]!)).toMatch(/^STOP\. (One finding stops|\d+ findings stop) this job\. Do not make/)
      const body = named(page, 'body')[0]!
      expect(textOf(body).trimStart().startsWith('STOP')).toBe(true)
      // And on top of every sheet that is printed.
      expect(textOf(named(page, 'style')[0]!)).toMatch(
        /@top-center \{ content: "STOP: do not make or run this tool as it is"/,
      )
    }
    expect(textOf(title!).startsWith('STOP: ')).toBe(report.stops > 0)
    expect(textOf(title!)).toContain(report.revision)
  })

  it('names each table and each column for those who hear it', () => {
    for (const table of named(page, 'table')) {
      expect(textOf(named(table, 'caption')[0]!)).not.toBe('')
      for (const cell of named(table, 'th')) expect(cell.attributes.get('scope')).toMatch(/^(row|col)$/)
    }
    expect(page.attributes.get('lang')).toBe('en')
  })
})

describe('report.html', () => {
  it('lies in the package beside report.json, which carries the same report', async () => {
    const { files, html } = await packageOn('parameters')
    expect(files.get('report.html')).toBe(html)
    const report = reportSchema.parse(JSON.parse(String(files.get('report.json'))))
    expect(html).toContain(`revision <strong>${report.revision}</strong>`)
    expect(report.pictures.map(({ id }) => id)).toEqual([
      'plan-of-swing',
      'wall-section',
      'tip-views',
      'screw-section',
      'interference-band',
      'speed-bars',
      'balance-sketch',
    ])
  })

  it('comes out of the same parameters byte for byte', () => {
    for (const name of ['parameters', 'parameters-inch'] as const) {
      expect(reportOn(name).html).toBe(reportOn(name).html)
    }
  })

  it('shows as words what a user typed as code', () => {
    const title = `</h1><script>alert("1")</script> & 'covers' <!--`
    const { html, report } = reportOn('parameters', [
      'title: Facing head for pump covers',
      `title: ${JSON.stringify(title)}`,
    ])
    expect(html).not.toContain('<script')
    expect(html).not.toContain('<!--')
    const page = parsedXml(html)
    expect(textOf(named(page, 'h1')[0]!)).toBe(title)
    expect(textOf(named(page, 'title')[0]!)).toContain(title)
    expect(rows(page, 'parameters').find(([path]) => path === 'title')?.[1]).toBe(title)
    expect(report.title).toBe(title)
  })

  it('comes out well-formed, with all figures, of any head that can be laid out', () => {
    forRandomHeads(15, (design) => {
      const { report, html } = reportOnDesign(design)
      reportSchema.parse(report)
      expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/)
      expect(rows(parsedXml(html), 'figures')).toHaveLength(report.figures.length)
    })
  })

  it('writes in colours that stand out from the paper', () => {
    const sheet = style(true, '00000000')
    // WCAG 2.1, success criterion 1.4.3: 4.5 to 1 for text.
    for (const [, colour] of sheet.matchAll(/[{;]\s*color: (#[0-9a-f]{3,6})/g)) {
      if (colour !== '#fff') expect(contrast(colour!, '#ffffff')).toBeGreaterThan(4.5)
    }
    expect(contrast('#9c1c12', '#fff')).toBeGreaterThan(4.5)
    expect(contrast('#767676', '#fff')).toBeCloseTo(4.54, 2)
  })
})

/** Contrast ratio of two colours, WCAG 2.1 (definitions of relative luminance and contrast ratio). */
function contrast(one: string, other: string): number {
  const luminance = (hex: string) => {
    const full = hex.length === 4 ? hex.replace(/[0-9a-f]/g, '$&$&') : hex
    const [r, g, b] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(full.slice(at, at + 2), 16) / 255
      return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
    })
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
  }
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (high! + 0.05) / (low! + 0.05)
}

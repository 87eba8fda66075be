/** An element of a parsed page: children are elements and words, in order. */
export interface Element {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly (Element | string)[]
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }

/** Reads XML strictly: everything closed, in order, attributes quoted and named once, no entity it does not know. */
export function parsedXml(text: string): Element {
  let rest = text.replace(/^<!doctype html>\n/, '')
  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    const found = pattern.exec(rest)
    if (!found || found.index !== 0) return undefined
    rest = rest.slice(found[0].length)
    return found
  }
  const words = (raw: string): string => {
    if (/[<>]/.test(raw)) throw new Error(`a bare angle bracket: ${raw.slice(0, 80)}`)
    return raw.replace(/&([^;\s]*;?)/g, (_, name: string) => {
      const sign = name.endsWith(';') ? entities[name.slice(0, -1)] : undefined
      if (sign === undefined) throw new Error(`entity &${name}`)
      return sign
    })
  }
  const element = (): Element => {
    const start = take(/<([a-zA-Z][a-zA-Z0-9]*)/)
    if (!start) throw new Error(`no element at: ${rest.slice(0, 80)}`)
    const name = start[1]!
    const attributes = new Map<string, string>()
    for (let found = take(/\s+([a-zA-Z][\w:-]*)="([^"]*)"/); found; found = take(/\s+([a-zA-Z][\w:-]*)="([^"]*)"/)) {
      if (attributes.has(found[1]!)) throw new Error(`${name}: ${found[1]} twice`)
      attributes.set(found[1]!, words(found[2]!))
    }
    if (take(/\s*\/>/)) return { name, attributes, children: [] }
    if (!take(/\s*>/)) throw new Error(`${name} is not closed at: ${rest.slice(0, 80)}`)
    const children: (Element | string)[] = []
    for (;;) {
      // The style sheet is plain text to XML; it has no signs that would need to be escaped.
      const plain = take(/[^<]+/)
      if (plain) children.push(words(name === 'style' ? plain[0].replaceAll('>', '') : plain[0]))
      const end = take(/<\/([a-zA-Z][a-zA-Z0-9]*)\s*>/)
      if (end) {
        if (end[1] !== name) throw new Error(`${name} closed by ${end[1]}`)
        return { name, attributes, children }
      }
      children.push(element())
    }
  }
  const root = element()
  if (rest.trim() !== '') throw new Error(`after the end: ${rest.slice(0, 80)}`)
  return root
}

/** Every element below, itself included, in the order of the page. */
export function elements(root: Element): Element[] {
  return [root, ...root.children.flatMap((child) => (typeof child === 'string' ? [] : elements(child)))]
}

export const named = (root: Element, name: string): Element[] => elements(root).filter((e) => e.name === name)

export const withClass = (root: Element, name: string): Element[] =>
  elements(root).filter((e) => e.attributes.get('class')?.split(' ').includes(name))

/** All words below, as they stand. */
export const textOf = (root: Element): string =>
  root.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('')

export const number = (element: Element, attribute: string): number => {
  const value = Number(element.attributes.get(attribute))
  if (!Number.isFinite(value)) throw new Error(`${element.name} ${attribute}: ${element.attributes.get(attribute)}`)
  return value
}

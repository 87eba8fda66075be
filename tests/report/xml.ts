/** An element of a parsed page: children are elements and words, in order. */
export interface Element {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly (Element | string)[]
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }

/** Reads XML strictly: everything closed, in order, attributes quoted and named once, no entity it does not know. */
export function parsedXml(text: string): Element {
  let at = text.startsWith('<!doctype html>\n') ? '<!doctype html>\n'.length : 0
  const here = () => JSON.stringify(text.slice(at, at + 80))
  /** `pattern` is sticky: it matches where the reading stands, or not at all. */
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at
    const found = pattern.exec(text)
    if (found) at = pattern.lastIndex
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
    const name = take(/<([a-zA-Z][a-zA-Z0-9]*)/y)?.[1]
    if (name === undefined) throw new Error(`no element at ${here()}`)
    const attributes = new Map<string, string>()
    for (let next = take(attribute); next; next = take(attribute)) {
      const [, key, value] = next as unknown as [string, string, string]
      if (attributes.has(key)) throw new Error(`${name}: ${key} twice`)
      attributes.set(key, words(value))
    }
    if (take(/\s*\/>/y)) return { name, attributes, children: [] }
    if (!take(/\s*>/y)) throw new Error(`${name} is not closed at ${here()}`)
    const children: (Element | string)[] = []
    for (;;) {
      const plain = take(/[^<]+/y)?.[0]
      // CSS has a sign of its own that is a bracket: the one between a parent and its child.
      if (plain !== undefined) children.push(words(name === 'style' ? plain.replaceAll('>', '') : plain))
      const end = take(/<\/([a-zA-Z][a-zA-Z0-9]*)\s*>/y)?.[1]
      if (end === undefined) children.push(element())
      else if (end === name) return { name, attributes, children }
      else throw new Error(`${name} closed by ${end}`)
    }
  }
  const root = element()
  if (text.slice(at).trim() !== '') throw new Error(`after the end: ${here()}`)
  return root
}

const attribute = /\s+([a-zA-Z][\w:-]*)="([^"]*)"/y

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

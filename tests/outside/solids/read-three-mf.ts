// @ts-expect-error no types
import lib3mf from '@3mfconsortium/lib3mf'

interface Iterator {
  MoveNext(): boolean
}
interface Library {
  readonly FS: { writeFile(name: string, bytes: Uint8Array): void }
  readonly CWrapper: new () => { CreateModel(): Model }
}
interface Colour {
  get_Red(): number
  get_Green(): number
  get_Blue(): number
}
interface Model {
  GetUnit(): { value: number } | number
  QueryReader(kind: string): {
    SetStrictModeActive(on: boolean): void
    ReadFromFile(name: string): void
    GetWarningCount(): number
  }
  GetMeshObjects(): Iterator & {
    GetCurrentMeshObject(): { GetName(): string; IsManifoldAndOriented(): boolean; IsValid(): boolean }
  }
  GetBuildItems(): Iterator & { GetCurrent(): unknown }
  GetBaseMaterialGroups(): Iterator & {
    GetCurrentBaseMaterialGroup(): {
      GetCount(): number
      GetDisplayColor(id: number): Colour
    }
  }
}

const colourIn = (c: Colour) => [c.get_Red(), c.get_Green(), c.get_Blue()].join(' ')

/** What the reference library of the 3MF Consortium reads in a file, strictly: it throws on what the standard forbids. */
export async function readThreeMf(bytes: Uint8Array) {
  const library = (await (lib3mf as () => Promise<Library>)()) as Library
  // The library's memory is its own and is given back by hand.
  const held: { delete(): void }[] = []
  const hold = <T>(one: T): T => {
    held.push(one as { delete(): void })
    return one
  }
  const all = <I extends Iterator, T>(iterator: I, current: (i: I) => T): T[] => {
    hold(iterator)
    const found: T[] = []
    while (iterator.MoveNext()) found.push(hold(current(iterator)))
    return found
  }
  try {
    const model = hold(hold(new library.CWrapper()).CreateModel())
    library.FS.writeFile('/read.3mf', bytes)
    const reader = hold(model.QueryReader('3mf'))
    reader.SetStrictModeActive(true)
    reader.ReadFromFile('/read.3mf')
    const objects = all(model.GetMeshObjects(), (i) => i.GetCurrentMeshObject()).map((o) => ({
      name: o.GetName(),
      closed: o.IsManifoldAndOriented() && o.IsValid(),
    }))
    const items = all(model.GetBuildItems(), (i) => i.GetCurrent()).length
    const colours = all(model.GetBaseMaterialGroups(), (i) => i.GetCurrentBaseMaterialGroup()).flatMap((group) => {
      // The library counts properties from one; its list of them cannot be read from JavaScript.
      return Array.from({ length: group.GetCount() }, (_, i) => colourIn(hold(group.GetDisplayColor(i + 1))))
    })
    const unit = model.GetUnit()
    // The library's list of units: 0 micrometre, 1 millimetre.
    const isMillimetre = (typeof unit === 'number' ? unit : unit.value) === 1
    return { warnings: reader.GetWarningCount(), unit: isMillimetre ? 'mm' : 'other', objects, items, colours }
  } finally {
    for (const one of held.reverse()) one.delete()
  }
}

import { pointFrom } from '../../geometry/frame.ts'
import { largestRadius, regionOf } from '../../geometry/region.ts'
import type { Vec3 } from '../../geometry/vector.ts'
import type { Result } from '../../input/problem.ts'
import { sweptRadius } from '../../mechanics/angles/swept-radius.ts'
import { type Part, solidOf } from '../../part/part.ts'
import type { Scene } from '../../part/scene.ts'
import { Walls } from '../../part/wall.ts'
import type { Units } from '../../quantity/kind.ts'
import { type Volume, volumeOf } from '../../solid/volume.ts'
import type { MaterialRow } from '../../tables/materials.ts'
import type { Tables } from '../../tables/read-tables.ts'
import { arborOf } from './arbor.ts'
import { bodyOf } from './body.ts'
import { groundBitOf } from './engineering/angles.ts'
import { engineeringProblems } from './engineering/problems.ts'
import { faceFrame } from './frames.ts'
import { type Layout, layoutOf } from './layout.ts'
import { lowestOfBar } from './lowest-point.ts'
import type { Parameters } from './parameters/parameters.ts'
import { sceneOf } from './scene.ts'
import { circumscribed, halfLengthAt } from './section.ts'

/** A fly-cutter head worked out from its parameters. What takes time is computed when first asked for, once. */
export class HeadDesign {
  readonly parameters: Parameters
  readonly tables: Tables
  readonly layout: Layout
  private readonly known = new Map<string, unknown>()

  /**
   * Builds the design, or says what no table has and what contradicts itself (paths without lines). `problemsOf`: fewer, where
   * less is asked of the design.
   */
  static from(parameters: Parameters, tables: Tables, problemsOf = engineeringProblems): Result<HeadDesign> {
    const layout = layoutOf(parameters, tables)
    if (!layout.ok) return layout
    const design = new HeadDesign(parameters, tables, layout.value)
    const problems = problemsOf(design)
    return problems.length > 0 ? { ok: false, problems } : { ok: true, value: design }
  }

  private constructor(parameters: Parameters, tables: Tables, layout: Layout) {
    this.parameters = parameters
    this.tables = tables
    this.layout = layout
  }

  get units(): Units {
    return this.parameters.units
  }

  get scene(): Scene {
    return this.once('scene', () => sceneOf(this.part('body'), this.part('arbor'), this.parameters, this.layout))
  }

  get walls(): Walls {
    return this.once('walls', () => new Walls(this.part('body')))
  }

  part(id: string): Part {
    // Body and arbor are asked for by themselves far more often than all parts together.
    if (id === 'body') return this.once('body', () => bodyOf(this.parameters, this.layout))
    if (id === 'arbor') return this.once('arbor', () => arborOf(this.parameters, this.layout))
    const found = this.scene.parts.find((p) => p.part.id === id)
    if (!found) throw new RangeError(`no part ${id}`)
    return found.part
  }

  get screwParts(): Part[] {
    return this.scene.parts.filter((p) => p.part.id.startsWith('screw-')).map((p) => p.part)
  }

  /** Middle of every set screw, body frame, mm. */
  get screwMiddles(): Vec3[] {
    const { screws, step, bit, faceAngle, depthOnAxis } = this.layout
    const onBit = this.parameters.step.side === 'leading' ? bit.leading : bit.trailing
    const face = faceFrame(faceAngle, depthOnAxis)
    return screws.xs.map((x) => pointFrom(face, [x, onBit + (step.towards * screws.length) / 2, screws.height]))
  }

  /** Diameter of the tip's circle, mm. */
  get swing(): number {
    return this.layout.bit.swing
  }

  /**
   * Largest radius of anything that turns, mm: bit, head, screws, shoulder. The head counts as its uncut bar between
   * mounting face and angled face, which is what turns past a hand.
   */
  get sweptRadius(): number {
    return this.once('swept radius', () => this.largestRadius())
  }

  /** z of the lowest point of head and set screws in the body frame, mm (the bit left out). */
  get lowestPoint(): number {
    return this.once('lowest point', () => {
      const { faceAngle, depthOnAxis, screws } = this.layout
      // The screws lie along Y: their lowest point is half a diameter below their axis.
      const face = faceFrame(faceAngle, depthOnAxis)
      const axes = screws.xs.map((x) => pointFrom(face, [x, 0, screws.height])[2])
      return Math.min(
        lowestOfBar(this.parameters, this.layout) ?? 0,
        ...axes.map((z) => z - screws.thread.majorDiameter / 2),
      )
    })
  }

  /** Volume and centroid of a part, body frame. */
  volume(partId: string): Volume {
    return this.once(`volume ${partId}`, () => volumeOf(solidOf(this.part(partId))))
  }

  /** What `make` gives, made the first time it is asked for under that name. */
  once<T>(name: string, make: () => T): T {
    if (!this.known.has(name)) this.known.set(name, make())
    return this.known.get(name) as T
  }

  /** Mass of a part, kg. */
  mass(partId: string): number {
    return this.volume(partId).volume * 1e-9 * this.materialOf(this.part(partId)).density
  }

  materialOf(part: Part): MaterialRow {
    const { materials } = this.layout
    return part.id === 'body'
      ? materials.body
      : part.id === 'arbor'
        ? materials.arbor
        : part.id === 'bit'
          ? materials.bit
          : materials.screw
  }

  /** Stretch of the slot, x in F, in which the trailing wall backs the bit: `from` on the bit side. mm */
  get gripped(): { readonly from: number; readonly to: number } {
    const { bit, slot, faceAngle } = this.layout
    const end = halfLengthAt(this.parameters.stock, slot.trailing) / Math.cos(faceAngle)
    return { from: end, to: Math.max(-end, bit.innerEnd, slot.end ? slot.end.x + slot.end.radius : -end) }
  }

  /** x in F of the outer end of the wall that the screws go through: where its shorter side ends. mm */
  get screwWallEnd(): number {
    const { screws, step, faceAngle } = this.layout
    const stock = this.parameters.stock
    return Math.min(halfLengthAt(stock, screws.seat), halfLengthAt(stock, step.wall)) / Math.cos(faceAngle)
  }

  private largestRadius(): number {
    let most = sweptRadius(groundBitOf(this)).radius
    const { layout, parameters } = this
    most = Math.max(most, circumscribed(parameters.stock))
    if (parameters.arbor.kind === 'shank') most = Math.max(most, parameters.arbor['shoulder-diameter'] / 2)
    for (const shank of layout.shank?.profile ?? []) most = Math.max(most, shank.from / 2)
    const { length, thread } = layout.screws
    this.screwMiddles.forEach((middle, i) => {
      // No need to look closer where even the ball round the screw stays inside.
      if (Math.hypot(middle[0], middle[1]) + Math.hypot(length, thread.majorDiameter) / 2 <= most) return
      const region = regionOf(this.screwParts[i]!.stock[0]!.cells, middle)!
      most = Math.max(most, largestRadius(region, [0, 0, 0], [0, 0, 1]).radius)
    })
    return most
  }
}

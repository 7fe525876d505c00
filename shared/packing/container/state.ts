/**
 * A container partly filled. Every box is fully supported, so each point of the floor plan has one level:
 * free space is kept as maximal rectangles per level, and a block touches only rectangles of its own level.
 * Numeric kernel: columns of numbers, copied whole, nothing allocated while it runs.
 */
import type { BlockTable } from './table.ts'

/** Blocks that a state holds at most; a search stops there. */
export const MOST_PLACED = 512
const MOST_SPACES = 1024

export class FillState {
  readonly table: BlockTable
  readonly length: number
  readonly width: number
  readonly height: number
  readonly left: Int32Array
  placed = 0
  spaces = 0
  volume = 0
  readonly placedBlock = new Int32Array(MOST_PLACED)
  readonly px1 = new Int32Array(MOST_PLACED)
  readonly py1 = new Int32Array(MOST_PLACED)
  readonly pz1 = new Int32Array(MOST_PLACED)
  readonly px2 = new Int32Array(MOST_PLACED)
  readonly py2 = new Int32Array(MOST_PLACED)
  readonly pz2 = new Int32Array(MOST_PLACED)
  readonly sx1 = new Int32Array(MOST_SPACES)
  readonly sy1 = new Int32Array(MOST_SPACES)
  readonly sx2 = new Int32Array(MOST_SPACES)
  readonly sy2 = new Int32Array(MOST_SPACES)
  readonly sz = new Int32Array(MOST_SPACES)
  private readonly met = new Int32Array(4 * MOST_SPACES)

  constructor(table: BlockTable, length: number, width: number, height: number) {
    this.table = table
    this.length = length
    this.width = width
    this.height = height
    this.left = table.boxCounts.slice()
    this.addSpace(0, 0, length, width, 0)
  }

  copyFrom(other: FillState): void {
    this.placed = other.placed
    this.spaces = other.spaces
    this.volume = other.volume
    this.left.set(other.left)
    copy(this.placedBlock, other.placedBlock, other.placed)
    copy(this.px1, other.px1, other.placed)
    copy(this.py1, other.py1, other.placed)
    copy(this.pz1, other.pz1, other.placed)
    copy(this.px2, other.px2, other.placed)
    copy(this.py2, other.py2, other.placed)
    copy(this.pz2, other.pz2, other.placed)
    copy(this.sx1, other.sx1, other.spaces)
    copy(this.sy1, other.sy1, other.spaces)
    copy(this.sx2, other.sx2, other.spaces)
    copy(this.sy2, other.sy2, other.spaces)
    copy(this.sz, other.sz, other.spaces)
  }

  addSpace(x1: number, y1: number, x2: number, y2: number, z: number): void {
    const at = this.spaces
    if (at >= MOST_SPACES) return
    this.sx1[at] = x1
    this.sy1[at] = y1
    this.sx2[at] = x2
    this.sy2[at] = y2
    this.sz[at] = z
    this.spaces = at + 1
  }

  dropSpace(at: number): void {
    const last = this.spaces - 1
    this.sx1[at] = this.sx1[last] as number
    this.sy1[at] = this.sy1[last] as number
    this.sx2[at] = this.sx2[last] as number
    this.sy2[at] = this.sy2[last] as number
    this.sz[at] = this.sz[last] as number
    this.spaces = last
  }

  /** Whether enough boxes are left for a block. */
  affords(block: number): boolean {
    const { uses, usesFrom } = this.table
    const to = usesFrom[block + 1] as number
    for (let at = usesFrom[block] as number; at < to; at += 2) {
      if ((this.left[uses[at] as number] as number) < (uses[at + 1] as number)) return false
    }
    return true
  }

  /** Puts a block with its low corner at x, y on level z. */
  place(block: number, x: number, y: number, z: number, mirrorX: boolean, mirrorY: boolean): void {
    const { uses, usesFrom, lengths, widths, heights, topXs, topYs, volumes, lowestBox } = this.table
    const to = usesFrom[block + 1] as number
    for (let at = usesFrom[block] as number; at < to; at += 2) {
      const type = uses[at] as number
      this.left[type] = (this.left[type] as number) - (uses[at + 1] as number)
    }
    const x2 = x + (lengths[block] as number)
    const y2 = y + (widths[block] as number)
    const z2 = z + (heights[block] as number)
    const at = this.placed
    this.placedBlock[at] = block * 4 + (mirrorX ? 1 : 0) + (mirrorY ? 2 : 0)
    this.px1[at] = x
    this.py1[at] = y
    this.pz1[at] = z
    this.px2[at] = x2
    this.py2[at] = y2
    this.pz2[at] = z2
    this.placed = at + 1
    this.volume += volumes[block] as number
    this.cut(x, y, x2, y2, z)
    if (z2 + lowestBox <= this.height) {
      const topX = topXs[block] as number
      const topY = topYs[block] as number
      this.offer(mirrorX ? x2 - topX : x, mirrorY ? y2 - topY : y, mirrorX ? x2 : x + topX, mirrorY ? y2 : y + topY, z2)
    }
  }

  /** Takes a footprint out of the rectangles of a level: those it meets go, and what is left of them comes back. */
  private cut(x1: number, y1: number, x2: number, y2: number, z: number): void {
    const { sx1, sy1, sx2, sy2, sz, met } = this
    let count = 0
    for (let at = this.spaces - 1; at >= 0; at -= 1) {
      if (sz[at] !== z) continue
      const a1 = sx1[at] as number
      const b1 = sy1[at] as number
      const a2 = sx2[at] as number
      const b2 = sy2[at] as number
      if (a1 >= x2 || x1 >= a2 || b1 >= y2 || y1 >= b2) continue
      met[count] = a1
      met[count + 1] = b1
      met[count + 2] = a2
      met[count + 3] = b2
      count += 4
      this.dropSpace(at)
    }
    for (let at = 0; at < count; at += 4) {
      const a1 = met[at] as number
      const b1 = met[at + 1] as number
      const a2 = met[at + 2] as number
      const b2 = met[at + 3] as number
      if (a1 < x1) this.addMaximal(a1, b1, x1, b2, z)
      if (x2 < a2) this.addMaximal(x2, b1, a2, b2, z)
      if (b1 < y1) this.addMaximal(a1, b1, a2, y1, z)
      if (y2 < b2) this.addMaximal(a1, y2, a2, b2, z)
    }
  }

  /** Adds a rectangle unless one of its level holds it; those that it holds go. */
  private addMaximal(x1: number, y1: number, x2: number, y2: number, z: number): boolean {
    const { sx1, sy1, sx2, sy2, sz } = this
    for (let at = this.spaces - 1; at >= 0; at -= 1) {
      if (sz[at] !== z) continue
      const a1 = sx1[at] as number
      const b1 = sy1[at] as number
      const a2 = sx2[at] as number
      const b2 = sy2[at] as number
      if (a1 <= x1 && b1 <= y1 && a2 >= x2 && b2 >= y2) return false
    }
    for (let at = this.spaces - 1; at >= 0; at -= 1) {
      if (
        sz[at] === z &&
        (sx1[at] as number) >= x1 &&
        (sy1[at] as number) >= y1 &&
        (sx2[at] as number) <= x2 &&
        (sy2[at] as number) <= y2
      )
        this.dropSpace(at)
    }
    this.addSpace(x1, y1, x2, y2, z)
    return true
  }

  /** A new flat top, joined with what lies level beside it: consensus of rectangles until no larger one comes. */
  private offer(x1: number, y1: number, x2: number, y2: number, z: number): void {
    if (!this.addMaximal(x1, y1, x2, y2, z)) return
    let grown = true
    while (grown) {
      grown = false
      for (let i = 0; i < this.spaces && !grown; i += 1) {
        if (this.sz[i] !== z) continue
        for (let j = i + 1; j < this.spaces && !grown; j += 1) {
          if (this.sz[j] === z) grown = this.consensus(i, j, z)
        }
      }
    }
  }

  private consensus(i: number, j: number, z: number): boolean {
    const { sx1, sy1, sx2, sy2 } = this
    const left = Math.max(sx1[i] as number, sx1[j] as number)
    const right = Math.min(sx2[i] as number, sx2[j] as number)
    const low = Math.max(sy1[i] as number, sy1[j] as number)
    const high = Math.min(sy2[i] as number, sy2[j] as number)
    if (left <= right && low < high) {
      const from = Math.min(sx1[i] as number, sx1[j] as number)
      const to = Math.max(sx2[i] as number, sx2[j] as number)
      if (this.addMaximal(from, low, to, high, z)) return true
    }
    if (low <= high && left < right) {
      const from = Math.min(sy1[i] as number, sy1[j] as number)
      const to = Math.max(sy2[i] as number, sy2[j] as number)
      if (this.addMaximal(left, from, right, to, z)) return true
    }
    return false
  }
}

function copy(to: Int32Array, from: Int32Array, count: number): void {
  for (let at = 0; at < count; at += 1) to[at] = from[at] as number
}

/** Places considered for one unit, kept in flat arrays and handed out cheapest first. */
import { boxAt } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import type { Vec3 } from '../types.ts'

export type Spot = { readonly bay: number; readonly pose: number; readonly box: Box }

/** Bay, pose and low corner of a place; one such object serves a whole loop. */
export type Where = { readonly bay: number; readonly pose: number; x: number; y: number; z: number }

/** Numbers kept per place: bay, pose, three of position, three of size. */
const FIELDS = 8

export class SpotList {
  private costs = new Float64Array(256)
  private data = new Int32Array(256 * FIELDS)
  private heap = new Int32Array(256)
  private count = 0
  private waiting = 0

  clear(): void {
    this.count = 0
    this.waiting = 0
  }

  push(cost: number, where: Where, sizeMm: Vec3): void {
    if (this.count === this.costs.length) this.grow()
    const at = this.count * FIELDS
    this.costs[this.count] = cost
    this.data[at] = where.bay
    this.data[at + 1] = where.pose
    this.data[at + 2] = where.x
    this.data[at + 3] = where.y
    this.data[at + 4] = where.z
    this.data[at + 5] = sizeMm[0]
    this.data[at + 6] = sizeMm[1]
    this.data[at + 7] = sizeMm[2]
    this.count++
  }

  private grow(): void {
    const costs = new Float64Array(this.costs.length * 2)
    costs.set(this.costs)
    this.costs = costs
    const data = new Int32Array(this.data.length * 2)
    data.set(this.data)
    this.data = data
    this.heap = new Int32Array(this.heap.length * 2)
  }

  /** Makes all places ready to be popped. */
  heapify(): void {
    this.waiting = this.count
    for (let at = 0; at < this.count; at++) this.heap[at] = at
    for (let at = (this.waiting >> 1) - 1; at >= 0; at--) this.sink(at)
  }

  /** Number of the cheapest place left; -1 when none is. The earlier of two equals comes first. */
  pop(): number {
    if (this.waiting === 0) return -1
    const top = this.heap[0] ?? -1
    this.waiting--
    this.heap[0] = this.heap[this.waiting] ?? 0
    this.sink(0)
    return top
  }

  private before(a: number, b: number): boolean {
    const costA = this.costs[a] ?? 0
    const costB = this.costs[b] ?? 0
    return costA < costB || (costA === costB && a < b)
  }

  private sink(from: number): void {
    let at = from
    const item = this.heap[at] ?? 0
    for (;;) {
      let child = 2 * at + 1
      if (child >= this.waiting) break
      const right = child + 1
      if (right < this.waiting && this.before(this.heap[right] ?? 0, this.heap[child] ?? 0)) child = right
      if (!this.before(this.heap[child] ?? 0, item)) break
      this.heap[at] = this.heap[child] ?? 0
      at = child
    }
    this.heap[at] = item
  }

  costAt(spot: number): number {
    return this.costs[spot] ?? Infinity
  }

  spotAt(spot: number): Spot {
    const at = spot * FIELDS
    const field = (k: number): number => this.data[at + k] ?? 0
    return {
      bay: field(0),
      pose: field(1),
      box: boxAt([field(2), field(3), field(4)], [field(5), field(6), field(7)]),
    }
  }
}

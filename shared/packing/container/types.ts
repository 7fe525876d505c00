/** One container, many boxes, nothing else: what the block-building search is given and what it gives back. */
import type { Vec3 } from '../types.ts'

export type BoxType = {
  readonly sizeMm: Vec3
  /** Which edges may stand upright. */
  readonly upright: readonly [boolean, boolean, boolean]
  readonly count: number
}

export type ContainerInput = { readonly sizeMm: Vec3; readonly boxes: readonly BoxType[] }

export type ContainerBudget = {
  /** Greedy completions; the same number gives the same packing on any machine. */
  readonly completions: number
  readonly shouldStop?: () => boolean
  readonly onProgress?: (done01: number) => void
}

export type PackedBox = { readonly type: number; readonly atMm: Vec3; readonly sizeMm: Vec3 }

export type ContainerPacking = {
  readonly boxes: readonly PackedBox[]
  /** Share of the container's volume that is filled. */
  readonly filled01: number
  readonly completions: number
}

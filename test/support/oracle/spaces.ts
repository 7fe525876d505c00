/** Free spaces by trying every box of whole cells: what stands on its whole base, meets nothing and cannot grow. */
import type { Box } from '../../../shared/packing/geometry.ts'

/** A bay cut into cells; all edges lie on the cells' edges. */
export type CellBay = {
  readonly cellMm: number
  readonly cells: readonly [number, number, number]
  /** Things in the way; `holds` where goods may stand on them. */
  readonly things: readonly { readonly box: Box; readonly holds: boolean }[]
}

/** Spaces thinner than this are not kept, mm; up to the ceiling a space may be lower. */
const LEAST_MM = 20

type Triple = readonly [number, number, number]

export function spacesByCells(bay: CellBay): readonly Box[] {
  const [nx, ny, nz] = bay.cells
  const free = freeCells(bay)
  const cell = (x: number, y: number, z: number): boolean =>
    x >= 0 && y >= 0 && x < nx && y < ny && z < nz && free[(x * ny + y) * nz + z] === true
  const topMm = nz * bay.cellMm
  const found: Box[] = []
  for (let z = 0; z < nz; z += 1) {
    const held = heldCells(bay, z)
    const stands = ([x1, y1, z1]: Triple, [x2, y2, z2]: Triple): boolean => {
      for (let x = x1; x < x2; x += 1)
        for (let y = y1; y < y2; y += 1) {
          if (held[x * ny + y] !== true) return false
          for (let up = z1; up < z2; up += 1) if (!cell(x, y, up)) return false
        }
      return true
    }
    for (const [low, high] of boxesFrom(bay.cells, z)) {
      if (!stands(low, high) || grows(low, high, bay.cells, stands)) continue
      const box = scaled(low, high, bay.cellMm)
      if (box.x2 - box.x1 < LEAST_MM || box.y2 - box.y1 < LEAST_MM) continue
      if (box.z2 < topMm && box.z2 - box.z1 < LEAST_MM) continue
      found.push(box)
    }
  }
  return found
}

function* boxesFrom([nx, ny, nz]: Triple, z: number): Generator<readonly [Triple, Triple]> {
  for (let x1 = 0; x1 < nx; x1 += 1)
    for (let x2 = x1 + 1; x2 <= nx; x2 += 1)
      for (let y1 = 0; y1 < ny; y1 += 1)
        for (let y2 = y1 + 1; y2 <= ny; y2 += 1)
          for (let top = z + 1; top <= nz; top += 1)
            yield [
              [x1, y1, z],
              [x2, y2, top],
            ]
}

/** Whether a space is part of one that is a cell larger on some side or higher. */
const grows = (
  [x1, y1, z1]: Triple,
  [x2, y2, z2]: Triple,
  [nx, ny, nz]: Triple,
  stands: (low: Triple, high: Triple) => boolean,
): boolean =>
  (x1 > 0 && stands([x1 - 1, y1, z1], [x2, y2, z2])) ||
  (y1 > 0 && stands([x1, y1 - 1, z1], [x2, y2, z2])) ||
  (x2 < nx && stands([x1, y1, z1], [x2 + 1, y2, z2])) ||
  (y2 < ny && stands([x1, y1, z1], [x2, y2 + 1, z2])) ||
  (z2 < nz && stands([x1, y1, z1], [x2, y2, z2 + 1]))

/** By cell, whether its middle lies in nothing. */
function freeCells({ cells: [nx, ny, nz], cellMm, things }: CellBay): readonly boolean[] {
  const free: boolean[] = []
  for (let x = 0.5; x < nx; x += 1)
    for (let y = 0.5; y < ny; y += 1)
      for (let z = 0.5; z < nz; z += 1) {
        const within = (box: Box): boolean =>
          box.x1 < x * cellMm &&
          x * cellMm < box.x2 &&
          box.y1 < y * cellMm &&
          y * cellMm < box.y2 &&
          box.z1 < z * cellMm &&
          z * cellMm < box.z2
        free.push(!things.some(({ box }) => within(box)))
      }
  return free
}

/** By cell of a level, whether it is the floor or the top of something that holds. */
function heldCells({ cells: [nx, ny], cellMm, things }: CellBay, level: number): readonly boolean[] {
  const held: boolean[] = []
  for (let x = 0.5; x < nx; x += 1)
    for (let y = 0.5; y < ny; y += 1) {
      const under = (box: Box): boolean =>
        box.z2 === level * cellMm &&
        box.x1 < x * cellMm &&
        x * cellMm < box.x2 &&
        box.y1 < y * cellMm &&
        y * cellMm < box.y2
      held.push(level === 0 || things.some(({ box, holds }) => holds && under(box)))
    }
  return held
}

const scaled = (low: Triple, high: Triple, by: number): Box => ({
  x1: low[0] * by,
  y1: low[1] * by,
  z1: low[2] * by,
  x2: high[0] * by,
  y2: high[1] * by,
  z2: high[2] * by,
})

/** Small changes of place made by hand or drawn: bays of a few cells, boxes of a cell or two, as the search for moves takes them. */
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import { airSharedBy } from '../../../shared/packing/changeover/between.ts'
import type { ChangeoverTask, Mover, Spot } from '../../../shared/packing/changeover/moves.ts'
import type { Face, PackBay } from '../../../shared/packing/index.ts'
import { plainBay } from './planted-load.ts'

export const CELL_MM = 100

type Triple = readonly [number, number, number]

const inMm = ([x, y, z]: Triple): Triple => [x * CELL_MM, y * CELL_MM, z * CELL_MM]

/** A bay of whole cells, each face named wholly open, its doors called after bay and face. */
export function cellBay(
  id: string,
  cells: Triple,
  faces: readonly Face[],
  change: Partial<PackBay> & { readonly originCells?: Triple } = {},
): PackBay {
  const { originCells, ...rest } = change
  const [x, y, z] = inMm(cells)
  const openings = faces.map((face) => ({
    id: `${id} ${face}`,
    face,
    fromMm: [0, 0] as const,
    toMm: face.startsWith('x') ? ([y, z] as const) : face.startsWith('y') ? ([x, z] as const) : ([x, y] as const),
    door: `door ${id} ${face}`,
    opensFromInside: false,
  }))
  return plainBay(id, inMm(originCells ?? [0, 0, 0]), [x, y, z], { openings, ...rest })
}

export const spot = (bay: number, at: Triple, size: Triple = [1, 1, 1]): Spot => ({
  kind: 'bay',
  bay,
  box: boxAt(inMm(at), inMm(size)),
})

export const away = (name: string): Spot => ({ kind: 'away', name })

type MoverChange = readonly [source: Spot, target: Spot, change?: Partial<Mover>]

/** A task of these movers, each of 100 g and bearing ten times that; nothing may wait anywhere unless `change` says so. */
export const taskOf = (
  bays: readonly PackBay[],
  movers: readonly MoverChange[],
  change: Partial<ChangeoverTask> = {},
): ChangeoverTask => {
  const models = bays.map(bayModelOf)
  return {
    bays: models,
    movers: movers.map(([source, target, own]) => ({
      source,
      target,
      late: false,
      massG: 100,
      bearsG: 1000,
      ...own,
    })),
    shareAir: airSharedBy(models),
    waitsFor: () => [],
    nodeLimit: 0,
    thorough: true,
    shouldStop: () => false,
    hostStops: () => false,
    ...change,
  }
}

export const startOf = (task: ChangeoverTask): readonly Spot[] => task.movers.map(({ source }) => source)

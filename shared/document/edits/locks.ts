/** Fixes a piece or bin to a place in one layout, or frees it. */
import { ok } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Bin, Piece } from '../schema/kit.ts'
import { changeOne, has, missing } from './target.ts'

type Lock = Piece['locks'][number]

export type LockUnit = { readonly kind: 'lock'; readonly unitId: string; readonly lock: Lock }
/** Without a layout both places are freed. */
export type UnlockUnit = { readonly kind: 'unlock'; readonly unitId: string; readonly layout?: Lock['layout'] }

export const lockUnit = (trip: Trip, { unitId, lock }: LockUnit): Result<Trip> =>
  changeLocks(trip, unitId, (locks) => [...locks.filter((one) => one.layout !== lock.layout), lock])

export const unlockUnit = (trip: Trip, { unitId, layout }: UnlockUnit): Result<Trip> =>
  changeLocks(trip, unitId, (locks) => (layout === undefined ? [] : locks.filter((one) => one.layout !== layout)))

function changeLocks(trip: Trip, unitId: string, change: (locks: readonly Lock[]) => readonly Lock[]): Result<Trip> {
  const { pieces, bins } = trip.kit
  const locked = <T extends Piece | Bin>(unit: T): T => ({ ...unit, locks: change(unit.locks) })
  if (has(pieces, unitId)) return ok({ ...trip, kit: { ...trip.kit, pieces: changeOne(pieces, unitId, locked) } })
  if (has(bins, unitId)) return ok({ ...trip, kit: { ...trip.kit, bins: changeOne(bins, unitId, locked) } })
  return missing('unit', unitId)
}

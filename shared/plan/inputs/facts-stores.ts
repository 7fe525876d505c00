/** Facts of what is used up, and of what tomorrow will lack. */
import type { ChecklistFacts } from '../../checklist/index.ts'
import type { Night, Piece, Trip } from '../../document/index.ts'
import { WATER_PER_PERSON_NIGHT_ML, waterOnBoardMl } from '../stores.ts'
import type { NightPlan, NightStores } from '../types.ts'

/** 1 ml of liquid fills 1000 mm3. */
const MM3_PER_ML = 1000

export function supplyFacts(
  trip: Trip,
  pieces: readonly Piece[],
  stores: NightStores | undefined,
): ChecklistFacts['supplies'] {
  return {
    waterMm3: (stores?.waterMl ?? waterOnBoardMl(pieces)) * MM3_PER_ML,
    waterWantedMm3: WATER_PER_PERSON_NIGHT_ML * trip.travellers.length * MM3_PER_ML,
    stoveOnBoard: pieces.some(({ purpose }) => purpose === 'stove'),
    coolBox: pieces.some(({ purpose }) => purpose === 'cool-box'),
    dirtyG: stores?.dirtyG ?? 0,
  }
}

/** All zero and null after the last night. */
export function tomorrowFacts(
  night: Night | undefined,
  plan: NightPlan | undefined,
  stores: NightStores | undefined,
): ChecklistFacts['tomorrow'] {
  const leg = plan?.outcome.leg ?? null
  return {
    site: night?.site.name ?? null,
    waterShortMm3: (stores?.waterShortMl ?? 0) * MM3_PER_ML,
    foodShortG: stores?.foodShortG ?? 0,
    legShortWh: leg === null || leg.reachable ? 0 : -leg.marginWh,
    heatRunsOut: plan?.outcome.stopsUtc !== null && plan !== undefined,
  }
}

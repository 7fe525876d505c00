/** What a window opened by some millimetres costs tonight: air, heat, and the electricity that makes up for it. */
import { S_PER_HOUR } from '../units/index.ts'
import { copAt } from './heater.ts'
import { gapM3PerH } from './network-air.ts'
import { sleepRows } from './sleepers.ts'
import type { Prepared } from './night-prepare.ts'
import type { RunColumns } from './night-state.ts'
import type { WindowCost } from './types.ts'

/** Gaps told, mm (common practice 10 to 15; 0 is shut). */
const GAPS_MM = [5, 10, 15, 20, 30, 50] as const
/** Sides where the night opens none: two openings on opposite sides (common practice). */
const SIDES = 2

/** Costs of the usual gaps at the temperatures and wind of the hours asleep. */
export function windowCosts(prepared: Prepared, columns: RunColumns): readonly WindowCost[] {
  return GAPS_MM.map((gapMm) => windowCost(prepared, columns, gapMm))
}

/**
 * Mean outdoor air through a gap over the hours asleep, m3/h, the heat it carries out, W, and the electricity that replaces it, W.
 * Gap in mm at each of the night's open sides, two where it opens none. Electricity null without a heater. Negative heat: it brings warmth in.
 */
export function windowCost(prepared: Prepared, columns: RunColumns, gapMm: number): WindowCost {
  const { input } = prepared
  const sides = input.decisions.windowSides > 0 ? input.decisions.windowSides : SIDES
  const rows = sleepRows(input, columns)
  let airM3PerH = 0
  let heatW = 0
  let electricW = 0
  for (const row of rows) {
    const outsideC = columns.outsideC[row] ?? 0
    const insideC = ((columns.frontAirC[row] ?? 0) + (columns.bedAirC[row] ?? 0)) / 2
    const flow = gapM3PerH(gapMm, sides, prepared.windMPerS[prepared.boundKnot[row + 1] ?? 0] ?? 0, insideC - outsideC)
    const watts = (flow * prepared.airJPerM3K * (insideC - outsideC)) / S_PER_HOUR
    airM3PerH += flow / rows.length
    heatW += watts / rows.length
    electricW += Math.max(0, watts) / copAt(input.heater, outsideC) / rows.length
  }
  return { gapMm, airM3PerH, heatW, electricW: input.heater.kind === 'none' ? null : electricW }
}

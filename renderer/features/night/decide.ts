/** What the dials of a night decide, as the edit that they ask for. */
import type { Night, NightDecision } from '../../../shared/document/index.ts'
import type { FrontPlan } from './front-plan.ts'

type SetPoint = Night['heating']['setPoints'][number]

/** Clocks of a night in its own order: noon first, the next forenoon last. */
const nightOrder = (clock: string): string => (clock >= '12:00' ? `0${clock}` : `1${clock}`)

/** The set-point in force when the sleepers lie down, and its place in the plan; -1 where there is none. */
export function sleepingSetPoint(night: Night): { readonly index: number; readonly tempC: number | null } {
  let index = -1
  night.heating.setPoints.forEach(({ from }, at) => {
    const best = night.heating.setPoints[index]
    if (nightOrder(from) > nightOrder(latestStart(night))) return
    if (best === undefined || nightOrder(from) >= nightOrder(best.from)) index = at
  })
  return { index, tempC: night.heating.setPoints[index]?.tempC ?? null }
}

const HOUR = 60

/** A set-point that begins within an hour of lying down is the one meant for sleeping. */
function latestStart({ sleep }: Night): string {
  const [hours, minutes] = sleep.from.split(':').map(Number)
  const at = ((hours ?? 0) * 60 + (minutes ?? 0) + HOUR) % (24 * 60)
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`
}

/** The temperature held while asleep; null turns the heat off for the night. */
export function decideSetPoint(night: Night, tempC: number | null): NightDecision {
  const { index } = sleepingSetPoint(night)
  const at: SetPoint = { from: night.heating.setPoints[index]?.from ?? night.sleep.from, tempC }
  const setPoints = index === -1 ? [at, ...night.heating.setPoints] : night.heating.setPoints.with(index, at)
  return { heating: { ...night.heating, setPoints } }
}

/** The current asked of the post; null lets the planner choose the largest worth asking for. */
export function decideCurrent(night: Night, currentA: number | null): NightDecision {
  const { currentA: _before, ...heating } = night.heating
  return { heating: currentA === null ? heating : { ...heating, currentA } }
}

export const decideGap = (night: Night, gapMm: number): NightDecision => ({
  ventilation: {
    ...night.ventilation,
    gapMm,
    sides: gapMm > 0 ? Math.max(1, night.ventilation.sides) : night.ventilation.sides,
  },
})

/** Takes over a plan from the front. */
export const decideFrontPlan = (night: Night, plan: FrontPlan): NightDecision => ({
  heating: {
    ...(decideCurrent(night, plan.currentA).heating ?? night.heating),
    setPoints: plan.setPoints,
    bedHeaterIds: plan.bedHeaterIds,
    chargeLimit01: plan.chargeLimit01,
  },
  covers: plan.covers,
  ventilation: { gapMm: plan.windowGapMm, sides: plan.windowSides },
  ...(plan.beddingPieceIds === undefined ? {} : { beddingPieceIds: plan.beddingPieceIds }),
})

/** Changes of one night that the dials ask for. */
import type { Night, Trip } from '../../../shared/document/index.ts'
import type { FrontPlan } from './front-plan.ts'

type Change = (trip: Trip) => Trip
type SetPoint = Night['heating']['setPoints'][number]

export const changeNight =
  (nightId: string, change: (night: Night) => Night): Change =>
  (trip) => ({ ...trip, nights: trip.nights.map((night) => (night.id === nightId ? change(night) : night)) })

/** Clocks of a night in its own order: noon first, the next forenoon last. */
const nightOrder = (clock: string): string => (clock >= '12:00' ? `0${clock}` : `1${clock}`)

/** The set-point in force when the sleepers lie down, and its place in the plan; -1 where there is none. */
export function sleepingSetPoint(night: Night): { readonly index: number; readonly tempC: number | null } {
  let index = -1
  night.heating.setPoints.forEach(({ from }, at) => {
    const best = night.heating.setPoints[index]
    if (nightOrder(from) > nightOrder(night.sleep.from)) return
    if (best === undefined || nightOrder(from) >= nightOrder(best.from)) index = at
  })
  return { index, tempC: night.heating.setPoints[index]?.tempC ?? null }
}

/** Sets the temperature held while asleep; null turns the heat off for the night. */
export const withSetPoint =
  (tempC: number | null) =>
  (night: Night): Night => {
    const { index } = sleepingSetPoint(night)
    const at: SetPoint = { from: night.heating.setPoints[index]?.from ?? night.sleep.from, tempC }
    const setPoints = index === -1 ? [at, ...night.heating.setPoints] : night.heating.setPoints.with(index, at)
    return { ...night, heating: { ...night.heating, setPoints } }
  }

/** Asks for a current; null lets the planner choose the largest worth asking for. */
export const withCurrent =
  (currentA: number | null) =>
  (night: Night): Night => {
    const { currentA: _before, ...heating } = night.heating
    return { ...night, heating: currentA === null ? heating : { ...heating, currentA } }
  }

export const withGap =
  (gapMm: number) =>
  (night: Night): Night => ({ ...night, ventilation: { ...night.ventilation, gapMm } })

export const withCovers =
  (covers: boolean) =>
  (night: Night): Night => ({ ...night, covers })

/** Takes over a plan from the front. */
export const withFrontPlan =
  (plan: FrontPlan) =>
  (night: Night): Night => ({
    ...withCurrent(plan.currentA)(night),
    heating: {
      ...withCurrent(plan.currentA)(night).heating,
      setPoints: plan.setPoints,
      bedHeaterIds: plan.bedHeaterIds,
      chargeLimit01: plan.chargeLimit01,
    },
    covers: plan.covers,
    ventilation: { gapMm: plan.windowGapMm, sides: plan.windowSides },
  })
